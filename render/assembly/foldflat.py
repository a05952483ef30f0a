"""A soft thing laid flat in two layers: panels unfolded, turned over at their seams, or folded in half along a line of symmetry.

Every panel keeps its shape except for at most one straight fold, through two of its corners, the middles of two sides, or one of each.
A seam's two sides must come to lie on each other, and in neither layer may two panels lie on each other. It is a search, panel after
panel from the one with most neighbours, first without folded panels, then with one more at a time, for a bounded number of trials.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator, Sequence
from math import hypot

from motifold.render.assembly.hidden import turning
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.solid import panel_rings
from motifold.render.assembly.unfold import overlap
from motifold.render.drawing.display import Point
from motifold.symbols.record import dataclass

MOST_PANELS = 40
MOST_TRIALS = 12000
SLACK = 0.004  # of a side: so nearly must two sides lie on each other


@dataclass(frozen=True, slots=True)
class Piece:
    """A panel, or the part of it on one side of its fold, as it lies. ``front``: its right side looks up. ``ring``: its corners."""

    panel: int
    front: bool
    ring: tuple[Point, ...]


Side = tuple[Point, Point, Point]  # start, middle and end of a stretch of rim from corner to corner: bent where the panel folds there
Joints = Sequence[Sequence[tuple[int, int] | None]]  # for each stretch of each panel's rim, the panel and stretch that it is sewn to


@dataclass(frozen=True, slots=True)
class LaidPanel:
    """A panel as it lies: one piece, or two with a ``fold`` between. ``fronts``: for each half of each side, whether it lies in front."""

    pieces: tuple[Piece, ...]
    sides: tuple[Side, ...]
    fronts: tuple[tuple[bool, bool], ...]
    fold: tuple[Point, Point] | None = None


@dataclass(frozen=True, slots=True)
class Folded:
    """Two layers, in cm, panel by panel. ``openings``: the stretches that stay open, as (panel, side), opening by opening."""

    panels: tuple[LaidPanel, ...]
    joints: Joints
    openings: tuple[tuple[tuple[int, int], ...], ...] = ()

    @property
    def rim(self) -> list[tuple[int, int]]:
        """Every stretch that stays open."""
        return [stretch for opening in self.openings for stretch in opening]

    @property
    def points(self) -> list[Point]:
        return [point for panel in self.panels for piece in panel.pieces for point in piece.ring]


@dataclass(frozen=True, slots=True)
class _Way:
    """One way to fold a panel, in its own plane. ``parts``: (ring, kept or turned over); ``kept``: the same of each side's halves."""

    parts: tuple[tuple[tuple[Point, ...], bool], ...]
    sides: tuple[Side, ...]
    kept: tuple[tuple[bool, bool], ...]
    fold: tuple[Point, Point] | None = None


def fold_flat(assembly: Assembly, most_folds: int | None = None, mouth: bool = False) -> Folded | None:
    """Two layers that one copy of the thing makes, or None: too many panels, circles, one side only, or none found.

    ``most_folds``: at most so many panels folded themselves (None: any number). ``mouth``: every opening lies half in front and half
    behind, as a bag's does.
    """
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    if len(panels) > MOST_PANELS or not assembly.orientable or assembly.pieces != assembly.copies:
        return None
    if any(len(panel.sides) < 3 for panel in panels) or any(seam.twist for seam in assembly.seams):
        return None
    rings, shapes = panel_rings(assembly, panels)
    joints = _joints(assembly, rings)
    openings = _openings(assembly, rings)
    search = _Search(shapes, joints, openings if mouth else ())
    for folds in range((len(panels) if most_folds is None else most_folds) + 1):
        laid = search.run(folds)
        if laid is not None:
            return Folded(tuple(laid), joints, openings)
        if search.trials > MOST_TRIALS:
            return None
    return None


def _stretch_at(assembly: Assembly, rings: Sequence[Sequence[tuple[int, float]]]) -> Callable[[str, str, float], tuple[int, int]]:
    """A function from a panel, its side and a share of that side to the stretch of rim that begins there."""
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    number = {panel.name: i for i, panel in enumerate(panels)}
    place = [{round(at, 6): k for k, (_, at) in enumerate(ring)} for ring in rings]

    def stretch(panel: str, side: str, low: float) -> tuple[int, int]:
        i = number[panel]
        return i, place[i][round(panels[i].sides.index(side) + low, 6)]

    return stretch


def _openings(assembly: Assembly, rings: Sequence[Sequence[tuple[int, float]]]) -> tuple[tuple[tuple[int, int], ...], ...]:
    stretch = _stretch_at(assembly, rings)
    openings = assembly.openings[: len(assembly.openings) // assembly.copies]
    return tuple(tuple(stretch(s.panel, s.side, (s.part - 1) / s.parts) for s in opening.sides) for opening in openings)


def _joints(assembly: Assembly, rings: Sequence[Sequence[tuple[int, float]]]) -> list[list[tuple[int, int] | None]]:
    stretch = _stretch_at(assembly, rings)
    joints: list[list[tuple[int, int] | None]] = [[None] * len(ring) for ring in rings]
    for seam in assembly.seams[: len(assembly.seams) // assembly.copies]:
        low = (seam.a.part - 1) / seam.a.parts
        one = stretch(seam.a.panel, seam.a.side, low)
        if seam.b is None:
            two = stretch(seam.a.panel, seam.a.side, low + 0.5 / seam.a.parts)
        else:
            two = stretch(seam.b.panel, seam.b.side, (seam.b.part - 1) / seam.b.parts)
        joints[one[0]][one[1]], joints[two[0]][two[1]] = two, one
    return joints


# --- ways to fold one panel -----------------------------------------------------------------------------------------------


def _ways(shape: Sequence[Point], own: Sequence[tuple[int, int]] = ()) -> tuple[_Way, list[_Way]]:
    """Unfolded, and folded along each line of symmetry; if it is sewn to itself (``own``: the stretches), also along the line that brings
    all of these together, which leaves a flap."""
    pairs = list(zip(shape, [*shape[1:], shape[0]], strict=True))
    halves = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in pairs]
    sides = tuple((a, m, b) for (a, b), m in zip(pairs, halves, strict=True))
    plain = _Way(((tuple(shape), True),), sides, ((True, True),) * len(sides))
    stops = [p for pair in zip(shape, halves, strict=True) for p in pair]
    reach = max(hypot(p[0] - q[0], p[1] - q[1]) for p in shape for q in shape)
    found = []
    for i, one in enumerate(stops):
        for two in stops[i + 1 :]:
            if _symmetric(shape, reach, one, two) or (own and _brings_together(pairs, own, reach, one, two)):
                found.append(_folded(sides, one, two))
    return plain, found


def _mirrored(p: Point, a: Point, b: Point) -> Point:
    dx, dy = b[0] - a[0], b[1] - a[1]
    t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)
    return 2 * (a[0] + t * dx) - p[0], 2 * (a[1] + t * dy) - p[1]


def _left(p: Point, a: Point, b: Point) -> float:
    return ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / hypot(b[0] - a[0], b[1] - a[1])


def _symmetric(shape: Sequence[Point], reach: float, a: Point, b: Point) -> bool:
    near = 1e-6 * reach
    if max(_left(p, a, b) for p in shape) < near or min(_left(p, a, b) for p in shape) > -near:
        return False
    corners = [p for i, p in enumerate(shape) if abs(_left(p, shape[i - 1], shape[(i + 1) % len(shape)])) > near]
    return all(any(hypot(m[0] - q[0], m[1] - q[1]) < 1e-4 * reach for q in corners) for m in (_mirrored(p, a, b) for p in corners))


def _brings_together(pairs: Sequence[tuple[Point, Point]], own: Sequence[tuple[int, int]], reach: float, a: Point, b: Point) -> bool:
    def meet(p: Point, q: Point) -> bool:
        return hypot(p[0] - q[0], p[1] - q[1]) < 1e-4 * reach

    return all(meet(_mirrored(pairs[e][0], a, b), pairs[o][1]) and meet(_mirrored(pairs[e][1], a, b), pairs[o][0]) for e, o in own)


def _folded(sides: Sequence[Side], a: Point, b: Point) -> _Way:
    """The part on the left of the line stays, that on the right is turned over."""

    def put(p: Point) -> Point:
        return p if _left(p, a, b) >= 0 else _mirrored(p, a, b)

    stops = [p for start, middle, _ in sides for p in (start, middle)]
    small = 1e-6 * hypot(b[0] - a[0], b[1] - a[1])
    kept = tuple(p for p in stops if _left(p, a, b) > -small)
    turned = tuple(put(p) for p in stops if _left(p, a, b) < small)
    # A half side lies to one side of the line: the line meets the rim only at corners and middles.
    halves = tuple((_left(p, a, b) + _left(m, a, b) > 0, _left(m, a, b) + _left(q, a, b) > 0) for p, m, q in sides)
    return _Way(((kept, True), (turned[::-1], False)), tuple((put(p), put(m), put(q)) for p, m, q in sides), halves, (a, b))


def in_front(panels: Sequence[LaidPanel], opening: Sequence[tuple[int, int]]) -> float:
    """How much more of an opening's length lies in front than behind."""
    total = 0.0
    for panel, side in opening:
        start, middle, end = panels[panel].sides[side]
        one, two = panels[panel].fronts[side]
        total += hypot(middle[0] - start[0], middle[1] - start[1]) * (1 if one else -1)
        total += hypot(end[0] - middle[0], end[1] - middle[1]) * (1 if two else -1)
    return total


# --- search ------------------------------------------------------------------------------------------------------------------


class _Search:
    """Lays panel after panel; ``trials`` counts what it tried."""

    def __init__(self, shapes: Sequence[Sequence[Point]], joints: Joints, halved: Sequence[Sequence[tuple[int, int]]] = ()) -> None:
        self.joints, self.halved = joints, halved
        kinds = [(tuple(shape), _sewn_to_itself(panel, edges)) for panel, (shape, edges) in enumerate(zip(shapes, joints, strict=True))]
        alike = {kind: _ways(*kind) for kind in dict.fromkeys(kinds)}
        self.ways = [alike[kind] for kind in kinds]
        side = min(hypot(b[0] - a[0], b[1] - a[1]) for shape in shapes for a, b in zip(shape, [*shape[1:], shape[0]], strict=True))
        self.slack = SLACK * side
        self.trials = 0
        self.order = self._order()
        self.laid: list[LaidPanel | None] = [None] * len(shapes)

    def _order(self) -> list[int]:
        near = [sorted({other[0] for other in edges if other is not None and other[0] != p}) for p, edges in enumerate(self.joints)]
        first = max(range(len(near)), key=lambda p: (len(near[p]), -p))
        order, waiting, met = [], deque([first]), {first}
        while waiting:
            panel = waiting.popleft()
            order.append(panel)
            for other in near[panel]:
                if other not in met:
                    met.add(other)
                    waiting.append(other)
        return order

    def run(self, folds: int) -> list[LaidPanel] | None:
        """With at most so many folded panels."""
        self.laid = [None] * len(self.joints)
        return [one for one in self.laid if one is not None] if self._from(0, folds) else None

    def _from(self, at: int, folds: int) -> bool:
        if at == len(self.order):
            laid_all = [one for one in self.laid if one is not None]
            return all(abs(in_front(laid_all, opening)) < self.slack for opening in self.halved)
        panel = self.order[at]
        for laid, folded in self._places(panel, folds > 0):
            self.trials += 1
            if self.trials > MOST_TRIALS:
                return False
            if self._fits(panel, laid):
                self.laid[panel] = laid
                if self._from(at + 1, folds - folded):
                    return True
                self.laid[panel] = None
        return False

    def _places(self, panel: int, may_fold: bool) -> Iterator[tuple[LaidPanel, int]]:
        """Every way in which a panel can lie against one that is laid already."""
        plain, folded = self.ways[panel]
        known = next(((e, o) for e, o in enumerate(self.joints[panel]) if o is not None and o[0] != panel and self.laid[o[0]]), None)
        for way, cost in [(plain, 0), *((way, 1) for way in folded if may_fold)]:
            if known is None:
                yield _laid(panel, way, (1.0, 0.0, 0.0, 0.0), True), cost
                continue
            edge, (other, other_edge) = known
            there = self.laid[other]
            if there is None:
                continue
            end, middle, start = there.sides[other_edge]
            for front in (True, False):
                move = _move(way.sides[edge], (start, middle, end), front, self.slack)
                if move is not None:
                    yield _laid(panel, way, move, front), cost

    def _fits(self, panel: int, one: LaidPanel) -> bool:
        for edge, other in enumerate(self.joints[panel]):
            if other is None:
                continue
            there = one if other[0] == panel else self.laid[other[0]]
            if there is not None and not _same(one.sides[edge], there.sides[other[1]][::-1], self.slack):
                return False
        return not any(
            mine.front == piece.front and overlap(mine.ring, piece.ring)
            for there in self.laid
            if there is not None
            for piece in there.pieces
            for mine in one.pieces
        )


def _sewn_to_itself(panel: int, edges: Sequence[tuple[int, int] | None]) -> tuple[tuple[int, int], ...]:
    """The stretches of a panel that are sewn to another of its own, in pairs."""
    return tuple((edge, other[1]) for edge, other in enumerate(edges) if other is not None and other[0] == panel and edge < other[1])


def _same(a: Sequence[Point], b: Sequence[Point], slack: float) -> bool:
    return all(abs(p[0] - q[0]) < slack and abs(p[1] - q[1]) < slack for p, q in zip(a, b, strict=True))


def _move(
    mine: Side, there: Side, front: bool, slack: float
) -> tuple[float, float, float, float] | None:
    """(cos, sin, dx, dy) that lays a side, mirrored first where the panel lies with its right side down, where it must be; None: no way."""
    start, middle, end = ((p if front else (-p[0], p[1])) for p in mine)
    straight = hypot(end[0] - start[0], end[1] - start[1]) > 2 * slack
    tip, to = (end, there[2]) if straight else (middle, there[1])
    length = hypot(tip[0] - start[0], tip[1] - start[1])
    if abs(length - hypot(to[0] - there[0][0], to[1] - there[0][1])) > 2 * slack or length < slack:
        return None
    u, v = (tip[0] - start[0], tip[1] - start[1]), (to[0] - there[0][0], to[1] - there[0][1])
    size = hypot(*u) * hypot(*v)
    c, s = (u[0] * v[0] + u[1] * v[1]) / size, (u[0] * v[1] - u[1] * v[0]) / size
    return c, s, there[0][0] - (c * start[0] - s * start[1]), there[0][1] - (s * start[0] + c * start[1])


def _laid(panel: int, way: _Way, move: tuple[float, float, float, float], front: bool) -> LaidPanel:
    c, s, dx, dy = move

    def put(p: Point) -> Point:
        x, y = (p if front else (-p[0], p[1]))
        return c * x - s * y + dx, s * x + c * y + dy

    pieces = []
    for ring, kept in way.parts:
        laid = tuple(put(p) for p in ring)
        pieces.append(Piece(panel, front == kept, laid if turning(laid) > 0 else laid[::-1]))
    fronts = tuple((front == one, front == two) for one, two in way.kept)
    fold = (put(way.fold[0]), put(way.fold[1])) if way.fold else None
    return LaidPanel(tuple(pieces), tuple((put(a), put(m), put(b)) for a, m, b in way.sides), fronts, fold)
