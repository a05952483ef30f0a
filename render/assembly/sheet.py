"""A sheet to draw on: lines, arrows, tags and words in mm, and a memory of where lines lie so that words keep clear of them."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from math import atan2, cos, degrees, hypot, pi, sin

from motifold.render.assembly.style import ARROW_MM, BAR_MM, DOT_MM, INK, LETTER_PT, MM_PER_PT, PAPER, TAG_MM, THICK_MM, THIN_MM
from motifold.render.drawing.display import Drawing, Face, FillPath, Group, Operation, Path, Point, StrokePath, Text
from motifold.render.drawing.fonts import text_width_mm

Box = tuple[float, float, float, float]
CELL_MM = 8.0
CAP = 0.66  # height of capitals, in em
DROP = 0.2  # descenders


class Sheet:
    """Collects operations in order of painting. Lines and boxes that words must keep clear of are remembered in a grid."""

    def __init__(self) -> None:
        self.operations: list[Operation] = []
        self._groups: list[tuple[list[Operation], str, str | None, tuple[tuple[str, str], ...]]] = []
        self._lines: dict[tuple[int, int], list[tuple[Point, Point]]] = {}
        self._boxes: dict[tuple[int, int], list[Box]] = {}
        self._rules: list[tuple[str, Point, Point]] = []
        self.extent: Box | None = None

    # --- painting ---

    def begin(self, css_class: str, title: str | None = None, data: tuple[tuple[str, str], ...] = ()) -> None:
        self._groups.append((self.operations, css_class, title, data))
        self.operations = []

    def end(self) -> None:
        inner = tuple(self.operations)
        self.operations, css_class, title, data = self._groups.pop()
        if inner:
            self.operations.append(Group(inner, css_class=css_class, title=title, data=data))

    def line(
        self, points: Sequence[Point], color: str, width: float, dash: tuple[float, ...] = (), closed: bool = False, solid: bool = True
    ) -> None:
        """A polyline. ``solid``: words keep clear of it."""
        if len(points) < 2:
            return
        cap = "butt" if dash else "round"
        self.operations.append(StrokePath(polyline(points, closed), color, width, dash, cap))  # type: ignore[arg-type]
        self._reach(points, width / 2)
        if solid:
            ring = [*points, points[0]] if closed else points
            for a, b in itertools.pairwise(ring):
                self.block_line(a, b)

    def curve(self, start: Point, one: Point, two: Point, end: Point, color: str, width: float, dash: tuple[float, ...] = ()) -> None:
        path = Path((("M", *start), ("C", *one, *two, *end)))
        self.operations.append(StrokePath(path, color, width, dash))
        points = [bezier(start, one, two, end, i / 16) for i in range(17)]
        self._reach(points, width / 2)
        for a, b in itertools.pairwise(points):
            self.block_line(a, b)

    def fill(self, points: Sequence[Point], color: str) -> None:
        self.operations.append(FillPath(polyline(points, True), color))
        self._reach(points, 0.0)

    def disc(self, centre: Point, radius: float, color: str) -> None:
        self.operations.append(FillPath(circle(centre, radius), color))
        self._reach([centre], radius)
        self.block_box((centre[0] - radius, centre[1] - radius, centre[0] + radius, centre[1] + radius))

    def ring(self, centre: Point, radius: float, color: str, width: float) -> None:
        self.operations.append(StrokePath(circle(centre, radius), color, width))
        self._reach([centre], radius + width / 2)
        self.block_box((centre[0] - radius, centre[1] - radius, centre[0] + radius, centre[1] + radius))

    def dot(self, at: Point, color: str) -> None:
        self.disc(at, DOT_MM, color)

    def bar(self, at: Point, along: Point, color: str, width: float) -> None:
        """An end of seam: a stroke across the line."""
        x, y = -along[1] * BAR_MM / 2, along[0] * BAR_MM / 2
        self.line([(at[0] - x, at[1] - y), (at[0] + x, at[1] + y)], color, width)

    def arrow(self, tip: Point, along: Point, color: str, size: float = ARROW_MM, slim: bool = False) -> None:
        """A filled arrowhead that points along the unit vector ``along``."""
        half = size * (0.17 if slim else 0.42)
        back = (tip[0] - along[0] * size, tip[1] - along[1] * size)
        side = (-along[1] * half, along[0] * half)
        self.fill([tip, (back[0] + side[0], back[1] + side[1]), (back[0] - side[0], back[1] - side[1])], color)
        self.block_box(_box([tip, (back[0] + side[0], back[1] + side[1]), (back[0] - side[0], back[1] - side[1])]))

    def words(
        self,
        at: Point,
        text: str,
        size: float = LETTER_PT,
        face: Face = "sans",
        color: str = INK,
        anchor: str = "middle",
        angle: float = 0.0,
    ) -> None:
        """Words with their baseline at ``at``."""
        self.operations.append(Text(at[0], at[1], text, face, size, color, anchor, angle))  # type: ignore[arg-type]
        for box in words_boxes(at, text, size, face, anchor, angle):
            self._reach([(box[0], box[1]), (box[2], box[3])], 0.0)
            self.block_box(box)

    def tag(self, centre: Point, text: str, color: str, filled: bool) -> None:
        """A number (filled) or a letter (outlined) in a disc; long texts get a lozenge."""
        wide = beyond_disc(text)
        x, y = centre
        shape = _lozenge(centre, TAG_MM, wide)
        self.operations.append(FillPath(shape, color if filled else PAPER))
        if not filled:
            self.operations.append(StrokePath(shape, color, THICK_MM / 2))
        self._reach([(x - TAG_MM - wide, y - TAG_MM), (x + TAG_MM + wide, y + TAG_MM)], 0.2)
        ink = PAPER if filled else color
        self.operations.append(Text(x, y - CAP / 2 * LETTER_PT * MM_PER_PT, text, "sans-bold", LETTER_PT, ink, "middle"))
        self.block_box((x - TAG_MM - wide, y - TAG_MM, x + TAG_MM + wide, y + TAG_MM))

    def rule(self, a: Point, b: Point, kind: str) -> None:
        """A thin line of a dimension or of a leader ("leader"), which those of the other kind do not cross."""
        self.line([a, b], INK, THIN_MM)
        self._rules.append((kind, a, b))

    # --- keeping clear ---

    def crosses_rule(self, a: Point, b: Point, kind: str) -> bool:
        """Whether a line would cross a dimension's or leader's line of that kind."""
        return any(one == kind and _cross(a, b, c, d) for one, c, d in self._rules)

    def block_line(self, a: Point, b: Point) -> None:
        for cell in _cells((min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))):
            self._lines.setdefault(cell, []).append((a, b))

    def block_box(self, box: Box) -> None:
        for cell in _cells(box):
            self._boxes.setdefault(cell, []).append(box)

    def free(self, box: Box, clear: float = 0.35) -> bool:
        """Whether nothing that must be kept clear of lies in the box."""
        grown = x0, y0, x1, y1 = (box[0] - clear, box[1] - clear, box[2] + clear, box[3] + clear)
        for cell in _cells(grown):
            for o in self._boxes.get(cell, ()):
                if o[0] < x1 and x0 < o[2] and o[1] < y1 and y0 < o[3]:
                    return False
            for a, b in self._lines.get(cell, ()):
                if line_meets_box(a, b, grown):
                    return False
        return True

    def worded(self, box: Box) -> bool:
        """Whether a word or a tag lies in the box."""
        return any(
            o[0] < box[2] and box[0] < o[2] and o[1] < box[3] and box[1] < o[3] for cell in _cells(box) for o in self._boxes.get(cell, ())
        )

    def _reach(self, points: Iterable[Point], more: float) -> None:
        box = self.extent
        for x, y in points:
            small = (x - more, y - more, x + more, y + more)
            box = small if box is None else (min(box[0], small[0]), min(box[1], small[1]), max(box[2], small[2]), max(box[3], small[3]))
        self.extent = box

    def drawing(self, title: str, description: str, margin: float = 1.5) -> Drawing:
        x0, y0, x1, y1 = self.extent or (0.0, 0.0, 1.0, 1.0)
        return Drawing((x0 - margin, y0 - margin, x1 + margin, y1 + margin), tuple(self.operations), title, description)


# --- geometry -------------------------------------------------------------------------------------------------------


def polyline(points: Sequence[Point], closed: bool = False) -> Path:
    commands: list[tuple[str | float, ...]] = [("M", *points[0]), *(("L", *p) for p in points[1:])]
    return Path(tuple([*commands, ("Z",)] if closed else commands))


def circle(centre: Point, radius: float) -> Path:
    return _lozenge(centre, radius, 0.0)


def _lozenge(centre: Point, radius: float, wide: float) -> Path:
    """A disc drawn out sideways by ``wide`` on either side (four cubic arcs)."""
    x, y = centre
    k = radius * 0.5522847498
    left, right = x - wide, x + wide
    return Path(
        (
            ("M", right, y - radius),
            ("C", right + k, y - radius, right + radius, y - k, right + radius, y),
            ("C", right + radius, y + k, right + k, y + radius, right, y + radius),
            ("L", left, y + radius),
            ("C", left - k, y + radius, left - radius, y + k, left - radius, y),
            ("C", left - radius, y - k, left - k, y - radius, left, y - radius),
            ("Z",),
        )
    )


def bezier(a: Point, b: Point, c: Point, d: Point, t: float) -> Point:
    u = 1 - t
    return (
        u**3 * a[0] + 3 * u * u * t * b[0] + 3 * u * t * t * c[0] + t**3 * d[0],
        u**3 * a[1] + 3 * u * u * t * b[1] + 3 * u * t * t * c[1] + t**3 * d[1],
    )


def unit(a: Point, b: Point) -> Point:
    length = hypot(b[0] - a[0], b[1] - a[1])
    return ((b[0] - a[0]) / length, (b[1] - a[1]) / length) if length else (1.0, 0.0)


def mean_point(points: Sequence[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def toward(a: Point, b: Point, share: float) -> Point:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def moved(a: Point, along: Point, by: float) -> Point:
    return a[0] + along[0] * by, a[1] + along[1] * by


def reading_angle(along: Point) -> float:
    """The angle of words along a line, read from below or from the right (ISO 129-1)."""
    angle = degrees(atan2(along[1], along[0]))
    while angle > 90 + 1e-6:
        angle -= 180
    while angle <= -90 + 1e-6:
        angle += 180
    return angle


def beyond_disc(text: str) -> float:
    """How much wider than a disc the tag of a text is, each way, in mm."""
    return max(0.0, text_width_mm(text, "sans-bold", LETTER_PT) - 1.35 * TAG_MM) / 2


def words_box(at: Point, text: str, size: float, face: Face = "sans", anchor: str = "middle", angle: float = 0.0) -> Box:
    em = size * MM_PER_PT
    wide = text_width_mm(text, face, size)
    start = {"start": 0.0, "middle": -wide / 2, "end": -wide}[anchor]
    if angle == 0.0:
        return at[0] + start, at[1] - DROP * em, at[0] + start + wide, at[1] + CAP * em
    c, s = cos(angle * pi / 180), sin(angle * pi / 180)
    corners = [(start, -DROP * em), (start + wide, -DROP * em), (start + wide, CAP * em), (start, CAP * em)]
    return _box([(at[0] + c * x - s * y, at[1] + s * x + c * y) for x, y in corners])


def words_boxes(at: Point, text: str, size: float, face: Face = "sans", anchor: str = "middle", angle: float = 0.0) -> list[Box]:
    """Boxes that together cover the words: for slanted ones many small ones along them."""
    if angle % 90 == 0:
        return [words_box(at, text, size, face, anchor, angle)]
    em = size * MM_PER_PT
    wide = text_width_mm(text, face, size)
    start = {"start": 0.0, "middle": -wide / 2, "end": -wide}[anchor]
    c, s = cos(angle * pi / 180), sin(angle * pi / 180)
    count = max(2, round(wide / (0.5 * em)))
    boxes = []
    for i in range(count):
        low, high = start + wide * i / count, start + wide * (i + 1) / count
        corners = [(low, -DROP * em), (high, -DROP * em), (high, CAP * em), (low, CAP * em)]
        boxes.append(_box([(at[0] + c * x - s * y, at[1] + s * x + c * y) for x, y in corners]))
    return boxes


def _box(points: Sequence[Point]) -> Box:
    return min(x for x, _ in points), min(y for _, y in points), max(x for x, _ in points), max(y for _, y in points)


def _cells(box: Box) -> list[tuple[int, int]]:
    return [
        (i, j)
        for i in range(int(box[0] // CELL_MM), int(box[2] // CELL_MM) + 1)
        for j in range(int(box[1] // CELL_MM), int(box[3] // CELL_MM) + 1)
    ]


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two stretches of line cross or touch (those along one line do not)."""

    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    one, two, three, four = side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)
    return one * two <= 0 and three * four <= 0 and not (abs(one) < 1e-9 and abs(two) < 1e-9)


def line_meets_box(a: Point, b: Point, box: Box) -> bool:
    """Whether a stretch of line enters a box (Liang and Barsky's clipping)."""
    if max(a[0], b[0]) <= box[0] or min(a[0], b[0]) >= box[2] or max(a[1], b[1]) <= box[1] or min(a[1], b[1]) >= box[3]:
        return False
    low, high = 0.0, 1.0
    for start, step, least, most in ((a[0], b[0] - a[0], box[0], box[2]), (a[1], b[1] - a[1], box[1], box[3])):
        if abs(step) < 1e-12:
            if not least < start < most:
                return False
            continue
        one, two = sorted(((least - start) / step, (most - start) / step))
        low, high = max(low, one), min(high, two)
        if low >= high:
            return False
    return True
