"""Stitches that change places with their neighbours: which passes over which, and where the bars of their stems stand clear."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from math import inf

from motifold.render.fabric.model import Fabric
from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground, point
from motifold.render.motif.ink import to_segment
from motifold.symbols import sizes
from motifold.symbols.footprint import stitch_kind
from motifold.symbols.ink import flatten, through
from motifold.symbols.record import dataclass

_BESIDE = 8
"""How many stitches before and after may change places with one."""
_WHITE = 0.06
"""Between a bar and another stem."""
_STEP = 0.05
_LEANS, _FAR, _UPRIGHT, _PAST = 0.45, 1.3, 0.5, 0.2
"""A stem round a post that leans more than so much of its rise, or another that goes so far aside, comes up so far under its head; and it
goes so far past the head of the post.
"""
_HIGHEST, _LOW, _LOWEST = 0.45, 0.95, 0.6
"""How near to the head bars may stand, or to the foot, and over how much of their stem."""


def over_and_under(fabric: Fabric, members: Sequence[int]) -> tuple[tuple[int, int], ...]:
    """The pairs of a round's stitches (front, back) of which the later is worked into an earlier place. The later one lies in front, unless
    it is worked behind, or round the back of a post.
    """
    if not _goes_back(fabric, members):
        return ()
    order = sorted(number for number in members if fabric.stitches[number].role == "stitch")
    found = []
    for at, number in enumerate(order):
        stitch = fabric.stitches[number]
        behind = stitch.behind or any(leg.base.foot == "back post" for leg in stitch.legs)
        earlier = (i for i in order[max(at - _BESIDE, 0) : at] if number - i <= _BESIDE and changed(fabric, i, number))
        found += [(i, number) if behind else (number, i) for i in earlier]
    return tuple(found)


def _goes_back(fabric: Fabric, members: Iterable[int]) -> bool:
    """Whether any stitch of a round is worked into an earlier place than one before it: most rounds have none, and are done with here."""
    last: dict[int, int] = {}
    for number in sorted(members):
        stitch = fabric.stitches[number]
        if not stitch.legs or stitch.legs[0].base.kind != "stitch":
            continue
        below = fabric.stitches[stitch.legs[0].base.id].round
        if below in last and changed(fabric, last[below], number):
            return True
        last[below] = number
    return False


def changed(fabric: Fabric, first: int, second: int) -> bool:
    """Whether the second of two stitches of a round is worked into an earlier place than the first."""
    a, b = fabric.stitches[first], fabric.stitches[second]
    if not a.legs or not b.legs or a.legs[0].base.kind != "stitch" or b.legs[0].base.kind != "stitch":
        return False
    base_a, base_b = fabric.stitches[a.legs[0].base.id], fabric.stitches[b.legs[0].base.id]
    if base_a.round != base_b.round or base_a.index == base_b.index:
        return False
    same_way = fabric.rounds[a.round].direction == fabric.rounds[base_a.round].direction
    step = base_b.index - base_a.index
    half = len(fabric.rounds[base_a.round].stitches) / 2
    return abs(step) < half and (step < 0) == same_way


def part_bars(ground: Ground, course: Course) -> None:
    """Bars of stems that cross: as near as may be to where they always stand, but clear of the other stems, at one height for all."""
    others: dict[int, list[int]] = {}
    for front, back in over_and_under(ground.fabric, [stem.stitch.id for stem in course.stems]):
        others.setdefault(front, []).append(back)
        others.setdefault(back, []).append(front)
    for number in others:
        _upright(ground, number)
    paths = {number: _path(ground, number) for number in others}
    for members in _together(others):
        # Hooks of a later round curl about the stems below their heads: then bars stand near the feet.
        low = any(number in ground.posted for number in members)
        ways = [_Way(number, paths[number], _bars(ground, number), [paths[i] for i in others[number]]) for number in members]
        ways = [way for way in ways if way.bars]
        if not ways:
            continue
        # Most crossings of a piece are one and the same, somewhere else.
        head, out = ground.heads[members[0]], ground.normals[members[0]]
        ends = [(point - head) / out for number in members for point in (ground.heads[number], ground.feet[number][0])]
        shape = (low, *(round(z.real, 4) + 1j * round(z.imag, 4) for z in ends))
        if shape not in ground.crossed:
            ground.crossed[shape] = _clearest(ways, low)
        for way in ways:
            ground.bars[way.stitch] = _below(way, ground.crossed[shape], low)


def _clearest(ways: Sequence[_Way], low: bool) -> float:
    """How far from their heads, or ``low`` from their feet, the bars of stems that cross stand clear of the others."""
    best = (-inf, 0.0)
    for far in _places(min(_length(way.path) for way in ways), max(way.bars for way in ways), low):
        white = min(_white(bar, way.others) for way in ways for bar in _spots(way, far, low))
        best = max(best, (min(white, _WHITE), far), key=lambda each: each[0])
        if white >= _WHITE:
            break
    return best[1]


@dataclass(frozen=True, slots=True)
class _Way:
    """A stem that crosses ``others``: its path from head to foot, and how many bars it has."""

    stitch: int
    path: list[complex]
    bars: int
    others: list[list[complex]]


def _below(way: _Way, far: float, low: bool) -> float:
    """How far below its head the uppermost bar stands, ``far`` from there or, ``low``, its lowest one so far from the foot."""
    return _length(way.path) - far - (way.bars - 1) * sizes.BAR_PITCH if low else far


def _spots(way: _Way, far: float, low: bool) -> list[complex]:
    return [_down(way.path, _below(way, far, low) + k * sizes.BAR_PITCH) for k in range(way.bars)]


def _together(others: Mapping[int, Sequence[int]]) -> list[list[int]]:
    """Stems that cross one another, directly or through others."""
    found: list[list[int]] = []
    seen: set[int] = set()
    for number in others:
        waiting, members = [number], []
        while waiting:
            one = waiting.pop()
            if one not in seen:
                seen.add(one)
                members.append(one)
                waiting.extend(others[one])
        if members:
            found.append(sorted(members))
    return found


def _bars(ground: Ground, number: int) -> int:
    stitch = ground.fabric.stitches[number]
    return stitch_kind(stitch.legs[0].kind).yarn_overs if len(stitch.legs) == 1 else 0


def _upright(ground: Ground, number: int) -> None:
    """A stem that crosses comes up under its head: what hooks round it there stays clear of its neighbours."""
    stitch, head, normal = ground.fabric.stitches[number], ground.heads[number], ground.normals[number]
    bends = ground.bends.get(number, ())
    start = bends[-1] if bends else ground.feet[number][0]
    way = (head - start) / normal
    if len(stitch.legs) == 1 and way.real > 0 and abs(way.imag) > (_LEANS * way.real if bends else _FAR):
        past = (start + _PAST * normal,) if bends else ()
        ground.bends[number] = (*bends, *past, head - min(_UPRIGHT, way.real / 4) * normal)


def _path(ground: Ground, number: int) -> list[complex]:
    """A stem from head to foot, as it is drawn but for the curl round a post."""
    points = [ground.feet[number][0], *ground.bends.get(number, ()), ground.heads[number]]
    return [complex(*p) for p in flatten(through([point(p) for p in points]), True)][::-1]


def _length(path: Sequence[complex]) -> float:
    return sum(abs(b - a) for a, b in pairwise(path))


def _places(length: float, count: int, low: bool) -> list[float]:
    """Where bars may stand, the best place first: as usual from the head, or just past the head of the post."""
    most = _LOWEST * length - (count - 1) * sizes.BAR_PITCH
    least = _LOW if low else _HIGHEST
    usual = least if low else (1 - sizes.BAR_AT) * length - (count - 1) / 2 * sizes.BAR_PITCH
    found = [least + _STEP * k for k in range(int(max(most - least, 0.0) / _STEP) + 1)]
    return sorted(found, key=lambda far: abs(far - usual))


def _down(path: Sequence[complex], way: float) -> complex:
    for a, b in pairwise(path):
        if way <= abs(b - a):
            return a + (b - a) / (abs(b - a) or 1.0) * way
        way -= abs(b - a)
    return path[-1]


def _white(bar: complex, lines: Iterable[Sequence[complex]]) -> float:
    """The white between a bar, taken as a disc, and the stems that cross its own."""
    half = (sizes.BAR_SPAN + sizes.BAR_WIDTH) / 2
    return min(to_segment(bar, a, b) for line in lines for a, b in pairwise(line)) - half - sizes.STEM_WIDTH / 2
