"""Rows that are not straight: where increases and decreases stand above one another rows rise and fall (a ripple), bend (a mitred
square), or turn at corners as they grow (a yoke). The way that they take is read off flat rows whose stitches stand evenly.

A stem square to its edge, leaning by ``lean`` over its height and the white below it, tells the edge's slope. Where the lean changes by
d from one stretch to the next the edge turns: stretches either side of a turn by phi grow by 2 h tan(phi / 2) for a row of height h
(parallels of a polygon), so that phi = 2 atan(d / 2 h).
"""

from __future__ import annotations

from cmath import exp
from cmath import phase as argument
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import atan, pi

from motifold.render.motif.arc import arc_of
from motifold.render.motif.columns import is_solid, one_to_one
from motifold.render.motif.course import Course
from motifold.render.motif.extents import FOOT_RISE, PITCH_LEAST
from motifold.render.motif.ground import Ground
from motifold.render.motif.line import Line
from motifold.render.motif.spread import pooled, spread_between
from motifold.symbols.record import dataclass

_LEAST = 0.9
"""A way that rises and falls by less than this is drawn straight."""
_STEEPEST = 0.62
"""Radians that a ripple may rise by."""
_WIDEST = 1.8 * pi
"""The most that a yoke's row turns by in all."""
_UNDER = 0.1
"""How strongly the chains of a foundation are drawn under their stitches, against 1 for even gaps."""
_ALIKE = 0.3
"""Stretches whose leans differ by less are one."""


@dataclass(frozen=True, slots=True)
class Trail:
    """The way that rows take: ``knots`` from right to left, and how each moves as rows come to lie further out by 1. The first knot lies at
    arc length ``start``; the knots as they are lie at ``out``. ``over``: for each chain that the first row of a yoke is worked into, where
    along that row the stitches stand that are worked into it.
    """

    knots: tuple[complex, ...] = ()
    moves: tuple[complex, ...] = ()
    start: float = 0.0
    out: float = 0.0
    over: tuple[tuple[int, float], ...] = ()

    def line(self, out: float) -> Line:
        """The line of a row so far out."""
        if not self.knots:
            return Line(out)
        points = [knot + move * (out - self.out) for knot, move in zip(self.knots, self.moves, strict=True)]
        return Line(out, bent=arc_of(points), start=self.start, upright=all(move == 1j for move in self.moves))


    def under(self, chains: Sequence[int]) -> dict[int, float]:
        """Where along the foundation of a yoke its chains lie: evenly, as nearly as may be under what stands on them."""
        line, row = self.line(0.0), self.line(self.out)
        over = sorted((s, chain) for chain, s in self.over if chain in chains)
        known = dict(zip((chain for _, chain in over), line.along([row.at(s)[0] for s, _ in over]), strict=True))
        if len(known) < 2:
            return {}
        ordered = list(range(min(known), max(known) + 1))
        if known[ordered[0]] > known[ordered[-1]]:
            ordered.reverse()
        count, first = len(ordered), known[ordered[0]]
        gap = (known[ordered[-1]] - first) / (count - 1)
        targets, pulls = [known.get(chain, 0.0) for chain in ordered], [_UNDER if chain in known else 0.0 for chain in ordered]
        places = spread_between(targets, pulls, [gap] * (count + 1), [0.0, *([1.0] * (count - 1)), 0.0], 0.0, 0.0)
        least = 1.03 * PITCH_LEAST
        moved = pooled([place - least * i for i, place in enumerate(places)])
        return {chain: place + least * i for i, (chain, place) in enumerate(zip(ordered, moved, strict=True))}


@dataclass(frozen=True, slots=True)
class _Stretch:
    """Stitches of a row that lean alike: how far along they reach, by how much, and how high and how far out their row is."""

    start: float
    end: float
    lean: float
    height: float
    out: float


def trail_of(ground: Ground) -> Trail:
    """The way that the flat rows ask for; straight where they do not agree on one."""
    rows = [_stretches(ground, course) for _, course in sorted(ground.courses.items())[:6] if course.size > 3]
    lines = [(row, way, _heights(row, way)) for row in rows if len(row) > 1 for way in [_way(row)]]
    lines = [line for line in lines if max(y for _, y in line[2]) - min(y for _, y in line[2]) > _LEAST]
    for (first, one, heights), (second, other, others) in pairwise(lines):
        if not _agree(heights, others):
            continue
        # The first row on a foundation chain may be unlike those that follow it; one that grows is drawn with the turns of the second.
        if _turns_one_way(other) and len(one) == len(other):
            return replace(_trail(first, other), over=_over(ground, min(ground.courses)))
        return _trail(second, other)
    return Trail()


def _over(ground: Ground, row: int) -> tuple[tuple[int, float], ...]:
    """For each chain that a row is worked into, the middle of the stitches on it."""
    places: dict[int, list[float]] = {}
    for stem in ground.courses[row].stems:
        for leg in stem.stitch.legs:
            places.setdefault(leg.base.id, []).append(-ground.heads[stem.stitch.id].real)
    return tuple(sorted((chain, sum(at) / len(at)) for chain, at in places.items()))


def _stretches(ground: Ground, course: Course) -> list[_Stretch]:
    """A row parted where its lean changes. The group at either end leans with its neighbours: edges that slant bend no row."""
    leans: list[float] = []
    places: list[float] = []
    for stem in course.stems:
        head, feet = ground.heads[stem.stitch.id], ground.feet[stem.stitch.id]
        places.append(-head.real)
        leans.append((sum(feet) / len(feet) - head).real)
    feet_at = [place - lean for place, lean in zip(places, leans, strict=True)]
    leans = _sorted_out(course, leans)
    for end, step in ((0, 1), (course.size - 1, -1)):
        inner = end + step * min(2, course.size // 2)
        for index in range(end, inner, step):
            leans[index] = leans[inner]
    if one_to_one(course) or not is_solid(course):
        return []
    if any(b - a < 0.05 for a, b in pairwise(places)) or any(b - a < -0.3 for a, b in pairwise(feet_at)):
        return []
    height, out = course.stems[0].height + FOOT_RISE, ground.heads[course.stems[0].stitch.id].imag
    edges = [places[0] - 0.5, *((a + b) / 2 for a, b in pairwise(places)), places[-1] + 0.5]
    found = [_Stretch(edges[0], edges[1], leans[0], height, out)]
    for i in range(1, course.size):
        last = found[-1]
        if abs(leans[i] - last.lean) < _ALIKE:
            whole, part = edges[i + 1] - last.start, edges[i + 1] - edges[i]
            found[-1] = _Stretch(last.start, edges[i + 1], last.lean + (leans[i] - last.lean) * part / whole, height, out)
        else:
            found.append(_Stretch(edges[i], edges[i + 1], leans[i], height, out))
    return found


def _sorted_out(course: Course, leans: list[float]) -> list[float]:
    """Leans without those of increases and decreases among plain stitches: either half of a group leans with its own side's neighbour."""
    bases = [{leg.base for leg in stem.stitch.legs} for stem in course.stems]
    plain = [len(own) == 1 and not any(own & bases[j] for j in (i - 1, i + 1) if 0 <= j < course.size) for i, own in enumerate(bases)]
    found = list(leans)
    index = 0
    while index < course.size:
        end = index
        while end + 1 < course.size and not plain[index] and not plain[end + 1] and bases[end] & bases[end + 1]:
            end += 1
        if not plain[index] and index > 0 and end < course.size - 1 and plain[index - 1] and plain[end + 1]:
            for i in range(index, end + 1):
                side = (2 * i > index + end) - (2 * i < index + end)
                found[i] = (leans[index - 1] + leans[end + 1]) / 2 if not side else leans[index - 1] if side < 0 else leans[end + 1]
        index = end + 1
    return found


def _way(row: Sequence[_Stretch]) -> list[complex]:
    """The direction of each stretch, from right to left, turned so that both ends are level."""
    turns = [2 * atan((b.lean - a.lean) / (2 * a.height)) for a, b in pairwise(row)]
    if all(turn > 0 for turn in turns):
        scale = min(1.0, _WIDEST / sum(turns))
        angles = [0.0]
        for turn in turns:
            angles.append(angles[-1] + turn * scale)
        ways = [-exp(1j * angle) for angle in angles]
    else:
        ways = [-exp(1j * max(-_STEEPEST, min(_STEEPEST, atan(part.lean / part.height)))) for part in row]
    chord = sum(way * (part.end - part.start) for way, part in zip(ways, row, strict=True))
    return [way * -abs(chord) / chord for way in ways] if abs(chord) > 1e-9 else ways


def _turns_one_way(ways: Sequence[complex]) -> bool:
    """Whether a row only ever turns down, as the rows of a yoke do."""
    return all(argument(b / a) > -1e-6 for a, b in pairwise(ways))


def _heights(row: Sequence[_Stretch], ways: Sequence[complex]) -> list[tuple[float, float]]:
    at = 0j
    found = [(row[0].start, 0.0)]
    for part, way in zip(row, ways, strict=True):
        at += way * (part.end - part.start)
        found.append((part.end, at.imag))
    return found


def _trail(row: Sequence[_Stretch], ways: Sequence[complex]) -> Trail:
    knots = [complex(-row[0].start, 0.0)]
    for part, way in zip(row, ways, strict=True):
        knots.append(knots[-1] + way * (part.end - part.start))
    low = min(knot.imag for knot in knots)
    knots = [knot - 1j * low for knot in knots]
    normals = [-1j * way for way in ways]
    if _turns_one_way(ways):
        inner = [(a + b) / (1 + (a * b.conjugate()).real) for a, b in pairwise(normals)]
        return Trail(tuple(knots), (normals[0], *inner, normals[-1]), row[0].start, row[0].out)
    return Trail(tuple(knots), (1j,) * len(knots), row[0].start, row[0].out)


def _agree(first: Sequence[tuple[float, float]], second: Sequence[tuple[float, float]]) -> bool:
    """Whether two rows rise and fall together."""
    low, high = max(first[0][0], second[0][0]), min(first[-1][0], second[-1][0])
    places = [low + (high - low) * k / 60 for k in range(61)]
    return _alike([_height_at(first, x) for x in places], [_height_at(second, x) for x in places]) > 0.8


def _height_at(line: Sequence[tuple[float, float]], x: float) -> float:
    for (a, low), (b, high) in pairwise(line):
        if x <= b:
            return low + (high - low) * (x - a) / (b - a)
    return line[-1][1]


def _alike(one: Sequence[float], other: Sequence[float]) -> float:
    mean, mean_other = sum(one) / len(one), sum(other) / len(other)
    both = sum((a - mean) * (b - mean_other) for a, b in zip(one, other, strict=True))
    size = sum((a - mean) ** 2 for a in one) * sum((b - mean_other) ** 2 for b in other)
    return float(both / size**0.5) if size > 1e-12 else 0.0
