"""Places along a row. Solid work stands in columns: every stitch over its own, and what is increased or decreased leans by itself."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot

from motifold.render.motif.course import Course
from motifold.render.motif.extents import of_one_height
from motifold.render.motif.feet import shared
from motifold.render.motif.room import Room
from motifold.render.motif.spread import pooled, spread_between

PITCH = 1.0
"""Column width where nothing else is asked: the chain pitch."""
_PULL_LACE = 0.6
_LOOSE = 0.05
"""How strongly heads are drawn over their bases, and how stiff a gap of chains is, against 1 for neighbours."""
_PULLS = (0.002, 0.01, 0.03, 0.08, 0.2)
"""How strongly they are drawn in solid work whose columns would lean too far."""
_LEAN = 1.3
"""Stems no longer than this over their height keep their columns."""
_NARROW, _WIDE = 0.8, 1.65
"""Neighbours whose bases are further apart have others between them."""
_OVER_CHAINS = 3.6
"""Or chains that are passed by; over more of these than that a row draws together."""


def is_solid(course: Course) -> bool:
    """Stitches of one height, with chains only where both neighbours stand in one place (an increase with a space in its middle), and
    not everywhere.
    """
    heights = [stem.height for stem in course.stems]
    if not of_one_height(heights):
        return False
    chained = [i for i, gap in enumerate(course.gaps[:-1]) if gap.parts]
    if not chained:
        return True
    shared = sum(1 for i in range(course.size - 1) if _one_place(course, i))
    return all(_one_place(course, i) for i in chained) and shared < course.size / 3


def along(course: Course, room: Room, at: Sequence[float], held: bool = False, beside: Sequence[bool] = ()) -> list[float]:
    """Places along a row, over the places ``at`` of their feet; the ends are free. ``held``: columns are kept however far they lean.
    ``beside``: for the gap after each stem, whether nothing but chains was passed by in it.
    """
    like = [max(gap, PITCH) if not g.parts else gap for gap, g in zip(room.like, course.gaps, strict=True)]
    targets = _targets(course, at, like)
    single = one_to_one(course)
    chained = any(gap.parts for gap in course.gaps[:-1])
    laced: list[float] | None = None
    if not single and not held and (chained or not is_solid(course)):
        gaps = [max(b - a, low) if gap.parts else wish
                for (a, b), low, gap, wish in zip(pairwise(at), room.least, course.gaps, like, strict=False)]  # fmt: skip
        laced = _drawn(course, room, targets, gaps, _PULL_LACE if chained or _uneven(course) else _PULLS[3])
    if laced and not is_solid(course):
        return laced
    # Stitches that change places stand in each other's columns.
    columns = sorted(at) if single else at
    gaps = like[:-1] if held else _wishes(course, room, columns, like, beside)
    places = [0.0]
    for gap in gaps:
        places.append(places[-1] + gap)
    shift = _usual([a - place for a, place in zip(columns, places, strict=True)])
    best = _parted([place + shift for place in places], room)
    worst = _longest(course, best, at)
    if laced and _longest(course, laced, at) < worst:
        return laced
    if held or worst <= _LEAN:
        return best
    for pull in _PULLS:
        found = _drawn(course, room, targets, gaps, pull)
        longest = _longest(course, found, at)
        if longest < worst - 1e-6:
            best, worst = found, longest
        if worst <= _LEAN:
            break
    return best


def _usual(values: Sequence[float]) -> float:
    """The mean of the middle half: most columns keep their place, and equal halves that lean opposite ways are both as far off."""
    ordered = sorted(values)
    cut = len(ordered) // 4
    middle = ordered[cut : len(ordered) - cut]
    return sum(middle) / len(middle)


def _drawn(course: Course, room: Room, targets: Sequence[float], gaps: Sequence[float], pull: float) -> list[float]:
    """The compromise between even gaps and standing over one's base; neighbours no closer than they may be."""
    stiff = [0.0, *(_LOOSE if gap.parts and not _one_place(course, i) else 1.0 for i, gap in enumerate(course.gaps[:-1])), 0.0]
    return _parted(spread_between(targets, [pull] * course.size, [0.0, *gaps, 0.0], stiff, 0.0, 0.0), room)


def _parted(places: Sequence[float], room: Room) -> list[float]:
    """Places moved as little as may be until no neighbours are closer than they may be."""
    run, offsets = 0.0, [0.0]
    for gap in room.least[:-1]:
        run += gap
        offsets.append(run)
    moved = pooled([place - offset for place, offset in zip(places, offsets, strict=True)])
    return [value + offset for value, offset in zip(moved, offsets, strict=True)]


def _wishes(course: Course, room: Room, at: Sequence[float], like: Sequence[float], beside: Sequence[bool]) -> list[float]:
    """Gaps of solid work: as far apart as their own columns; a pitch where columns begin or end between them."""
    found = []
    for i in range(course.size - 1):
        apart = at[i + 1] - at[i]
        plain = _upright(course, i) and _upright(course, i + 1) and not course.gaps[i].parts
        neighbours = bool(beside) and beside[i]
        low, most = (0.0, _OVER_CHAINS) if neighbours else (min(_NARROW, room.least[i]), max(_WIDE, room.like[i]))
        keeps = plain and not _one_place(course, i) and low <= apart <= most
        found.append(max(apart, room.least[i]) if keeps else like[i])
    return found


def one_to_one(course: Course) -> bool:
    """Every stitch alone on a stitch of its own, without chains between."""
    legs = [stem.stitch.legs for stem in course.stems]
    bases = {own[0].base.id for i, own in enumerate(legs) if own and own[0].base.kind == "stitch" and _upright(course, i)}
    return len(bases) == course.size and not any(gap.parts for gap in course.gaps[:-1])


def _upright(course: Course, index: int) -> bool:
    """Whether a stitch stands on one place."""
    return len({leg.base for leg in course.stems[index].stitch.legs}) < 2


def _longest(course: Course, places: Sequence[float], at: Sequence[float]) -> float:
    return max(hypot(1.0, (place - a) / stem.height) for place, a, stem in zip(places, at, course.stems, strict=True))


def _one_place(course: Course, index: int) -> bool:
    """Whether a stem and the next one are worked into one place."""
    bases = {leg.base for leg in course.stems[index].stitch.legs}
    return any(leg.base in bases for leg in course.stems[index + 1].stitch.legs)


def _uneven(course: Course) -> bool:
    heights = [stem.height for stem in course.stems]
    return max(heights) - min(heights) > 0.3


def _targets(course: Course, at: Sequence[float], like: Sequence[float]) -> list[float]:
    """Over each base, fans spread about it."""
    sums, counts = [0.0] * len(at), [0] * len(at)
    for members in shared(course).values():
        stems = sorted({stem for stem, _ in members})
        places = [0.0]
        for before, after in pairwise(stems):
            places.append(places[-1] + (like[before] if after == before + 1 else at[after] - at[before]))
        middle = (places[0] + places[-1]) / 2
        base = sum(at[i] for i in stems) / len(stems)
        for i, x in zip(stems, places, strict=True):
            sums[i] += base + x - middle
            counts[i] += 1
    return [total / number if number else a for total, number, a in zip(sums, counts, at, strict=True)]
