"""The glyph grammar: any stitch as stem, bars, head, foot and gathers, from its kind and its points. In u.

The signs that all chart readers share are kept: an open oval is a chain, a filled dot a slip stitch, a cross a single crochet, a T a half
double crochet, and one slanted bar on the stem stands for each yarn over before the hook goes in.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, hypot, sin

from motifold.symbols import sizes as s
from motifold.symbols.feet import extended_bead, foundation_oval, hook_curl, hook_start, loop_mark
from motifold.symbols.footprint import Foot, stitch_kind
from motifold.symbols.gathers import gathered_marks
from motifold.symbols.ink import Fill, Mark, Point, Stroke, circle, flatten, oval, through
from motifold.symbols.record import dataclass
from motifold.symbols.stitches import Gather, Kind


@dataclass(frozen=True, slots=True)
class LegAt:
    """One leg, placed: the stitch of its stem, where its foot stands, and what the hook went into."""

    kind: str
    foot: Point
    into: Foot = "loops"


def stitch_marks(
    name: str, legs: Sequence[LegAt], head: Point, normal: Point, gather: Gather | None = None, bend: Sequence[Point] = (),
    bars: float | None = None,
) -> tuple[Mark, ...]:
    """All marks of one stitch: ``legs`` as worked, the shared ``head``, ``normal`` the unit vector out of the work there.

    ``bend``: inner points of a curved stem, foot first (a stitch of one leg); ``bars``: how far below the head the uppermost of its bars
    stands, where they would meet another stem at their usual place. A chain or slip stitch takes its first leg's foot and
    ``head`` as its tips. The ring of a space is not drawn here, as a group has one: see ``feet.space_ring``.
    """
    found = stitch_kind(name)
    if found.family == "chain":
        return (chain_oval(legs[0].foot, head),)
    if found.family == "slip" and len(legs) == 1:
        return (dot(((legs[0].foot[0] + head[0]) / 2, (legs[0].foot[1] + head[1]) / 2)),)
    stems = [stitch_kind(leg.kind) for leg in legs]
    into = [_into(leg.into, stem) for leg, stem in zip(legs, stems, strict=True)]
    feet = [leg.foot for leg in legs]
    if gather in ("cluster", "bobble", "popcorn", "puff"):
        marks = list(gathered_marks(stems[0], gather, feet, head, normal))
        if gather != "popcorn":
            marks.append(head_bar(head, normal))
        marks += loop_mark(feet[len(feet) // 2], _unit(feet[len(feet) // 2], head), into[0])
        return tuple(marks)
    marks = []
    for foot, stem, how in zip(feet, stems, into, strict=True):
        marks += _leg(foot, head, stem, how, bend if len(legs) == 1 else (), bars if len(legs) == 1 else None, len(legs) == 1)
    tall = [stem for stem in stems if stem.yarn_overs or stem.half]
    if tall:
        marks.append(head_bar(head, normal))
    elif len(legs) > 1:
        marks.append(_shared_arm(feet, head, normal))
    if found.reverse:
        marks.append(_wave(head, normal))
    return tuple(marks)


def chain_oval(start: Point, end: Point) -> Mark:
    """A chain between its tips, ink included."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = hypot(dx, dy)
    scale = max(0.5 - s.OVAL_WIDTH / 2 / length, 0.15) if length > 1e-9 else 1.0
    half = (dx * scale, dy * scale) if length > 1e-9 else ((s.OVAL_LENGTH - s.OVAL_WIDTH) / 2, 0.0)
    center = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    return Stroke(oval(center, half, (s.OVAL_BREADTH - s.OVAL_WIDTH) / 2), s.OVAL_WIDTH, smooth=True, closed=True)


def dot(center: Point) -> Mark:
    """A slip stitch."""
    return Fill(circle(center, s.DOT_RADIUS), smooth=True)


def head_bar(head: Point, normal: Point) -> Mark:
    """The crossbar where the next round's hook goes in, its ends hanging a little."""
    (x, y), (nx, ny) = head, normal
    half, droop = s.HEAD_SPAN / 2, s.HEAD_DROOP
    ax, ay, inner, lift = half * ny, -half * nx, 0.4, 0.35 * droop
    return Stroke(
        (
            (x - ax - droop * nx, y - ay - droop * ny),
            (x - inner * ax + lift * nx, y - inner * ay + lift * ny),
            (x + inner * ax + lift * nx, y + inner * ay + lift * ny),
            (x + ax - droop * nx, y + ay - droop * ny),
        ),
        s.HEAD_WIDTH,
        smooth=True,
    )


def _into(into: Foot, stem: Kind) -> Foot:
    if stem.post is not None:
        return "front post" if stem.post == "front" else "back post"
    return into


def _leg(foot: Point, head: Point, stem: Kind, into: Foot, bend: Sequence[Point], bars: float | None, alone: bool) -> list[Mark]:
    """One stem with its foot and its bars; ``alone`` on its head. ``bars``: see ``stitch_marks``."""
    posted = into in ("front post", "back post")
    path = _Path(through([foot, *bend, head]), True) if bend else _Path((foot, head), False)
    if posted:
        path = _hooked(foot, head, bend, into)
    marks: list[Mark] = []
    up = _unit(foot, bend[0] if bend else head)
    if stem.family == "foundation":
        marks.append(foundation_oval(foot, up))
    stem_points = path.points
    if stem.family == "extended" and path.length > s.BEAD_AT + 1.2 * s.BEAD_LENGTH:
        below, above = ((foot[0] + far * up[0], foot[1] + far * up[1]) for far in (s.BEAD_AT, s.BEAD_AT + s.BEAD_LENGTH))
        marks += [extended_bead(below, up), Stroke((foot, below), s.STEM_WIDTH)]
        stem_points = (above, *stem_points[1:])
    if posted:
        marks.append(Stroke((*hook_curl(foot, bend[0] if bend else head, into), *stem_points[1:]), s.STEM_WIDTH, smooth=True))
    else:
        marks.append(Stroke(stem_points, s.STEM_WIDTH, path.smooth))
        marks += loop_mark(foot, up, into)
    if stem.yarn_overs == 0 and not stem.half:
        if alone:
            part = max(s.CROSS_AT, 1 - (1 - s.CROSS_AT) / path.length)  # a stretched stem keeps its cross by the head
            point, _ = path.at(part)
            if posted and not bend:  # on the line from post to head, not on the stem's swing
                point = (foot[0] + part * (head[0] - foot[0]), foot[1] + part * (head[1] - foot[1]))
            marks.append(_across(point, _unit(foot, head), s.CROSS_SPAN, s.HEAD_WIDTH))
    elif not stem.half or stem.family == "linked":
        at = s.BAR_AT if alone else s.BAR_AT_GATHERED
        if bars is not None:
            at = 1 - (bars + (stem.yarn_overs - 1) / 2 * s.BAR_PITCH) / path.length
        marks += _bars(path, stem.yarn_overs, at, linked=stem.family == "linked")
    return marks


def _hooked(foot: Point, head: Point, bend: Sequence[Point], into: Foot) -> _Path:
    """A post stitch's stem: it swings over from the head's line to the side of the post, and runs into the curl."""
    aim = bend[0] if bend else head
    start, (ux, uy) = hook_start(foot, aim, into), _unit(foot, aim)
    reach = 0.42 * hypot(aim[0] - foot[0], aim[1] - foot[1])
    out = (start[0] + reach * ux, start[1] + reach * uy)
    if bend:
        return _Path((start, out, *through([start, *bend, head])[2:]), True)
    return _Path((start, out, (aim[0] - reach * ux, aim[1] - reach * uy), aim), True)


def _bars(path: _Path, count: int, at: float, linked: bool) -> list[Mark]:
    """One bar for each yarn over; a linked stitch draws its loops through its neighbour's instead, to the side that it comes from."""
    pitch = min(s.BAR_PITCH, 0.7 * path.length / max(count, 1))
    middle = min(at * path.length, path.length - 0.30 - (count - 1) / 2 * pitch)
    marks: list[Mark] = []
    for i in range(count):
        (x, y), (ux, uy) = path.at((middle + (i - (count - 1) / 2) * pitch) / path.length)
        if linked:
            reach = s.LINK_SPAN - s.LINK_RADIUS
            marks.append(Stroke(((x, y), (x + reach * uy, y - reach * ux)), s.RING_WIDTH))
            center = (x + s.LINK_SPAN * uy, y - s.LINK_SPAN * ux)
            marks.append(Stroke(circle(center, s.LINK_RADIUS), s.RING_WIDTH, smooth=True, closed=True))
            continue
        bx, by = cos(s.BAR_SLANT) * uy + sin(s.BAR_SLANT) * ux, -cos(s.BAR_SLANT) * ux + sin(s.BAR_SLANT) * uy
        half = s.BAR_SPAN / 2
        marks.append(Stroke(((x - half * bx, y - half * by), (x + half * bx, y + half * by)), s.BAR_WIDTH))
    return marks


def _shared_arm(feet: Sequence[Point], head: Point, normal: Point) -> Mark:
    """Single crochets worked together: one arm across all their legs, half a u below their head."""
    ax, ay = normal[1], -normal[0]
    deep = [max((head[0] - p[0]) * normal[0] + (head[1] - p[1]) * normal[1], 0.5) for p in feet]
    down = [min(0.5, 0.5 / d) for d in deep]
    mids = [(head[0] + t * (p[0] - head[0]), head[1] + t * (p[1] - head[1])) for p, t in zip(feet, down, strict=True)]
    across = [(p[0] - head[0]) * ax + (p[1] - head[1]) * ay for p in mids]
    cx, cy = sum(p[0] for p in mids) / len(mids), sum(p[1] for p in mids) / len(mids)
    middle = (max(across) + min(across)) / 2 - ((cx - head[0]) * ax + (cy - head[1]) * ay)
    span = max(s.CROSS_SPAN, max(across) - min(across) + 0.30)
    return _across((cx + middle * ax, cy + middle * ay), normal, span, s.HEAD_WIDTH)


def _wave(head: Point, normal: Point) -> Mark:
    """Reverse single crochet: a wave over the cross, for the twisted edge that it makes."""
    ax, ay = normal[1], -normal[0]

    def at(x: float, y: float) -> Point:
        return (head[0] + x * ax + y * normal[0], head[1] + x * ay + y * normal[1])

    return Stroke((at(-0.32, -0.02), at(-0.16, 0.26), at(0.16, -0.30), at(0.32, -0.02)), s.BAR_WIDTH, smooth=True)


def _across(center: Point, along: Point, span: float, width: float) -> Mark:
    half = span / 2
    return Stroke(
        ((center[0] - half * along[1], center[1] + half * along[0]), (center[0] + half * along[1], center[1] - half * along[0])), width
    )


class _Path:
    """A stem from foot to head, straight or curved, measured along."""

    __slots__ = ("_flat", "_reach", "length", "points", "smooth")

    def __init__(self, points: tuple[Point, ...], smooth: bool) -> None:
        self.smooth = smooth
        self.points = points
        self._flat = flatten(points, smooth)
        self._reach = [0.0]
        for (ax, ay), (bx, by) in zip(self._flat, self._flat[1:], strict=False):
            self._reach.append(self._reach[-1] + hypot(bx - ax, by - ay))
        self.length = max(self._reach[-1], 1e-9)

    def at(self, part: float) -> tuple[Point, Point]:
        """The point at this part of the length, and the unit vector along the stem there."""
        want = part * self.length
        i = 1
        while i < len(self._reach) - 1 and self._reach[i] < want:
            i += 1
        (ax, ay), (bx, by) = self._flat[i - 1], self._flat[i]
        span = self._reach[i] - self._reach[i - 1] or 1e-9
        t = (want - self._reach[i - 1]) / span
        return (ax + t * (bx - ax), ay + t * (by - ay)), ((bx - ax) / span, (by - ay) / span)


def _unit(start: Point, end: Point) -> Point:
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = hypot(dx, dy)
    return (dx / length, dy / length) if length > 1e-12 else (0.0, 1.0)
