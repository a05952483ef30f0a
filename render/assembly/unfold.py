"""Panels laid flat, right side up: where the net puts them, and across their joined sides where nothing lies yet."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Sequence
from math import atan2, cos, hypot, sin, sqrt

from motifold.render.assembly.shapes import Point, Shape
from motifold.symbols.record import dataclass

Cell = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Hinge:
    """Whole sides joined without a twist: panel a's side against panel b's, all by number."""

    a: int
    side_a: int
    b: int
    side_b: int


def lay_out(
    shapes: Sequence[Shape], cells: Sequence[Cell | None], flat: Sequence[Hinge], folds: Sequence[Hinge], gap_cm: float
) -> tuple[tuple[Point, ...], ...]:
    """The outline of every panel. Net neighbours lie ``gap_cm`` apart; what no net places is laid across a joined side, if it fits."""
    floor = _Floor(max((_reach(shape.outline) for shape in shapes), default=1.0))
    placed: list[tuple[Point, ...] | None] = [None] * len(shapes)
    pitch = _pitch(shapes, cells, gap_cm)
    near = _near(flat)
    for first, cell in enumerate(cells):
        if cell is not None and placed[first] is None:
            start = _moved(shapes[first].outline, cell[1] * pitch[0], -cell[0] * pitch[1])
            _spread(first, start, shapes, near, placed, floor, gap_cm, checked=False)
    near = _near(folds)
    for panel in [i for i, outline in enumerate(placed) if outline is not None]:
        _grow(panel, shapes, near, placed, floor, gap_cm)
    loose = []
    for first, shape in enumerate(shapes):
        if placed[first] is None:
            alone = _Floor(floor.size)
            before = {i for i, outline in enumerate(placed) if outline is not None}
            _spread(first, shape.outline, shapes, near, placed, alone, gap_cm, checked=True)
            loose.append([i for i, outline in enumerate(placed) if outline is not None and i not in before])
    _shelve(placed, loose, floor.size * 0.25)
    return tuple(outline or () for outline in placed)


def across(shape: Shape, side: int, start: Point, end: Point, gap: float) -> tuple[Point, ...]:
    """``shape`` laid with its side against the side that runs from ``start`` to ``end`` of a panel lying on the left of it."""
    outline = shape.outline
    a, b = _ends(shape, outline, side)
    want = atan2(start[1] - end[1], start[0] - end[0])
    have = atan2(b[1] - a[1], b[0] - a[0]) if a != b else want
    c, s = cos(want - have), sin(want - have)
    turned = [(c * x - s * y, s * x + c * y) for x, y in outline]
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    out = ((end[1] - start[1]) / length * gap, (start[0] - end[0]) / length * gap)
    dx = (start[0] + end[0]) / 2 - (c * middle[0] - s * middle[1]) + out[0]
    dy = (start[1] + end[1]) / 2 - (s * middle[0] + c * middle[1]) + out[1]
    return tuple((_round(x + dx), _round(y + dy)) for x, y in turned)


def _round(value: float) -> float:
    return round(value, 9) + 0.0


def _moved(outline: Sequence[Point], dx: float, dy: float) -> tuple[Point, ...]:
    return tuple((_round(x + dx), _round(y + dy)) for x, y in outline)


def _reach(outline: Sequence[Point]) -> float:
    return max(max(x for x, _ in outline) - min(x for x, _ in outline), max(y for _, y in outline) - min(y for _, y in outline))


def _pitch(shapes: Sequence[Shape], cells: Sequence[Cell | None], gap: float) -> Point:
    outlines = [shape.outline for shape, cell in zip(shapes, cells, strict=True) if cell is not None]
    wide = max((max(x for x, _ in o) - min(x for x, _ in o) for o in outlines), default=1.0)
    high = max((max(y for _, y in o) - min(y for _, y in o) for o in outlines), default=1.0)
    return wide + gap, high + gap


def _near(hinges: Iterable[Hinge]) -> dict[int, list[tuple[int, int, int]]]:
    near: dict[int, list[tuple[int, int, int]]] = {}
    for hinge in hinges:
        if hinge.a != hinge.b:
            near.setdefault(hinge.a, []).append((hinge.side_a, hinge.b, hinge.side_b))
            near.setdefault(hinge.b, []).append((hinge.side_b, hinge.a, hinge.side_a))
    return near


class _Floor:
    """What lies where, in a grid of squares as wide as the largest panel, so that looking for an overlap takes constant time."""

    def __init__(self, size: float) -> None:
        self.size = size or 1.0
        self.lying: dict[Cell, list[tuple[Point, ...]]] = {}

    def _middle(self, outline: Sequence[Point]) -> Cell:
        x = (min(p[0] for p in outline) + max(p[0] for p in outline)) / 2
        y = (min(p[1] for p in outline) + max(p[1] for p in outline)) / 2
        return int(x // self.size), int(y // self.size)

    def put(self, outline: tuple[Point, ...]) -> None:
        self.lying.setdefault(self._middle(outline), []).append(outline)

    def free(self, outline: tuple[Point, ...]) -> bool:
        column, row = self._middle(outline)
        return not any(
            overlap(outline, other)
            for dx in (-2, -1, 0, 1, 2)
            for dy in (-2, -1, 0, 1, 2)
            for other in self.lying.get((column + dx, row + dy), ())
        )


def overlap(a: Sequence[Point], b: Sequence[Point]) -> bool:
    """Whether two convex outlines share more than an edge: no side of either separates them."""
    slack = 1e-3 * max(_reach(a), _reach(b))
    return not (_parted(a, b, slack) or _parted(b, a, slack))


def _parted(a: Sequence[Point], b: Sequence[Point], slack: float) -> bool:
    for (x0, y0), (x1, y1) in zip(a, [*a[1:], a[0]], strict=True):
        length = hypot(x1 - x0, y1 - y0)
        if length and all(((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / length <= slack for x, y in b):
            return True
    return False


def _spread(
    first: int,
    start: tuple[Point, ...],
    shapes: Sequence[Shape],
    near: dict[int, list[tuple[int, int, int]]],
    placed: list[tuple[Point, ...] | None],
    floor: _Floor,
    gap: float,
    checked: bool,
) -> None:
    """Lay ``first``, then all that hangs together with it. ``checked``: only where nothing lies yet."""
    placed[first] = start
    floor.put(start)
    waiting = deque([first])
    while waiting:
        panel = waiting.popleft()
        for side, other, other_side in near.get(panel, ()):
            if placed[other] is not None:
                continue
            outline = across(shapes[other], other_side, *_ends(shapes[panel], placed[panel] or (), side), gap)
            if checked and not floor.free(outline):
                continue
            placed[other] = outline
            floor.put(outline)
            waiting.append(other)


def _grow(
    panel: int,
    shapes: Sequence[Shape],
    near: dict[int, list[tuple[int, int, int]]],
    placed: list[tuple[Point, ...] | None],
    floor: _Floor,
    gap: float,
) -> None:
    """Lay unplaced panels across the joined sides of one that lies already."""
    for side, other, other_side in near.get(panel, ()):
        if placed[other] is None:
            outline = across(shapes[other], other_side, *_ends(shapes[panel], placed[panel] or (), side), gap)
            if floor.free(outline):
                _spread(other, outline, shapes, near, placed, floor, gap, checked=True)


def _ends(shape: Shape, outline: Sequence[Point], side: int) -> tuple[Point, Point]:
    """Where a panel's side starts and ends; for a circle's rim a short stretch where it hangs from what lies beside it."""
    if len(shape.names) == 1:
        return outline[0], outline[1]
    return outline[shape.starts[side]], outline[shape.starts[(side + 1) % len(shape.starts)]]


def _shelve(placed: list[tuple[Point, ...] | None], loose: Sequence[Sequence[int]], gap: float) -> None:
    """Set parts that hang together with nothing laid before on shelves below it, from left to right."""
    rest = {i for group in loose for i in group}
    fixed = [outline for i, outline in enumerate(placed) if outline is not None and i not in rest]
    boxes = [_box([placed[i] or () for i in group]) for group in loose]
    area = sum((b[2] - b[0] + gap) * (b[3] - b[1] + gap) for b in boxes)
    room = max([sqrt(area) * 1.3, *(b[2] - b[0] for b in boxes)], default=0.0)
    left = min((p[0] for o in fixed for p in o), default=0.0)
    top = min((p[1] for o in fixed for p in o), default=0.0) - (gap if fixed else 0.0)
    x, shelf = left, 0.0
    for group, box in zip(loose, boxes, strict=True):
        if x > left and x + box[2] - box[0] > left + room:
            x, top, shelf = left, top - shelf - gap, 0.0
        for i in group:
            placed[i] = _moved(placed[i] or (), x - box[0], top - box[3])
        x += box[2] - box[0] + gap
        shelf = max(shelf, box[3] - box[1])


def _box(outlines: Sequence[Sequence[Point]]) -> tuple[float, float, float, float]:
    xs = [x for o in outlines for x, _ in o]
    ys = [y for o in outlines for _, y in o]
    return min(xs), min(ys), max(xs), max(ys)
