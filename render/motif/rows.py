"""Work in rows: a grid that follows its stitches. Foundation at y 0, first row above it, x from the left."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from motifold.render.fabric.model import Fabric, Round
from motifold.render.motif.arc import bulged
from motifold.render.motif.chains import hang, needed, string
from motifold.render.motif.course import Course, course_of
from motifold.render.motif.extents import CHANGE_LEAST, CHANGE_MOST, GATHERED, LENGTH_LEAST, OVAL, stem_height
from motifold.render.motif.feet import shared, stand
from motifold.render.motif.ground import Ground, point
from motifold.render.motif.line import Line
from motifold.render.motif.margin import fill_margins
from motifold.render.motif.model import RoundShape
from motifold.render.motif.parts import Gap
from motifold.render.motif.petals import Fan, petals_of
from motifold.render.motif.place import Standing
from motifold.render.motif.posts import bend_posts
from motifold.render.motif.ripple import Wave, wave_of
from motifold.render.motif.room import Room, room_of
from motifold.render.motif.spread import pooled, spread_between

_PITCH = 1.0
"""Column width where nothing else is asked: the chain pitch."""
_FULL = 1.02
_SLANTED = 1.06
"""Rows that rise and fall stand a little further apart straight up, so that square to their slope they are as far as they should be."""
_PULL, _PULL_LACE = 0.08, 0.6
_LOOSE = 0.05
"""How strongly heads are drawn over their bases, and how stiff a gap of chains is, against 1 for neighbours."""
_WAVE = 1.2


def lay_rows(fabric: Fabric) -> Ground:
    """Place every row of a piece worked to and fro: flat first, then over the wave that its increases and decreases make, if they do."""
    ground = _rows_over(fabric, Wave())
    wave = wave_of(ground)
    if wave.xs:
        ground = _rows_over(fabric, wave)
    fill_margins(ground)
    return ground


def _rows_over(fabric: Fabric, wave: Wave) -> Ground:
    ground = Ground.of(fabric)
    ground.ring = 0.01
    started = False
    for index, worked in enumerate(fabric.rounds):
        if not started and worked.kind in ("foundation", "ring", "edge"):
            _foundation(ground, index, worked, wave)
            started = True
            continue
        course = course_of(fabric, index, ground.picots)
        if course.size:
            _row(ground, course, wave)
    return ground


def _foundation(ground: Ground, index: int, worked: Round, wave: Wave) -> None:
    """The chain that row 1 is worked along: its first chain lies where row 1 ends. Chains that stand up as a stitch are not in it;
    foundation stitches, which make their own chain, stand on the same line.
    """
    fabric = ground.fabric
    upright = {chain for stitch in fabric.stitches if stitch.role == "standing" for chain in stitch.chains}
    chains = [s for s in fabric.round_stitches(index) if s.id not in upright]
    rows = [r for r in fabric.rounds[index + 1 :] if r.stitches]
    leftwards = rows[0].direction if rows else 1
    count = len(chains)
    for k, chain in enumerate(chains):
        x = k * _PITCH if leftwards > 0 else (count - 1 - k) * _PITCH
        if chain.role != "stitch":
            half = (OVAL / 2 if leftwards > 0 else -OVAL / 2) * wave.normal(x) * -1j
            ground.tips[chain.id] = (complex(x, wave.at(x)) - half, complex(x, wave.at(x)) + half)
        else:
            foot = complex(x, wave.at(x))
            ground.feet[chain.id] = (foot,) * max(len(chain.legs), 1)
            ground.heads[chain.id] = foot + wave.normal(x) * stem_height(chain)
        ground.normals[chain.id] = wave.normal(x)


def _row(ground: Ground, course: Course, wave: Wave) -> None:
    """Feet, heads and chains of one row."""
    feet = stand(ground, course)
    room = room_of(ground, course, feet)
    standing = _placed(ground, course, feet, room, petals_of(ground, course, False), wave)
    ground.courses[course.round] = course
    ground.order[course.round] = 1
    for index, stem in enumerate(course.stems):
        stitch = stem.stitch.id
        ground.heads[stitch], ground.normals[stitch] = standing.heads[index], standing.normals[index]
        ground.feet[stitch] = tuple(standing.feet[index])
        ground.at[stitch] = (course.round, index)
    for index, gap in enumerate(course.gaps):
        ground.gap_at.update({run: (course.round, index) for run, _, _ in gap.runs})
        ground.at.update(dict.fromkeys(gap.parts, (course.round, index)))
    bend_posts(ground, course)
    hang(ground, course, standing)
    _hang_first(ground, course)
    line = tuple(point(head) for head in standing.heads)
    ground.shapes.append(RoundShape(course.round, line, (), line[course.begins], (0.0, 1.0)))


def _hang_first(ground: Ground, course: Course) -> None:
    """Chains that begin a row as a loop hang from the stitch that the row below ended with to the first stitch of this one."""
    gap = course.gaps[-1]
    below = ground.courses.get(course.round - 1)
    if not gap.parts or below is None:
        return
    rightwards = course.direction < 0
    old, new = (below.stems[-1], course.stems[-1]) if rightwards else (below.stems[0], course.stems[0])
    ends = [ground.heads[old.stitch.id] + 0.35j, ground.heads[new.stitch.id] + (0.3 if not rightwards else -0.3)]
    start, end = reversed(ends) if rightwards else ends
    arc = bulged(start, end, max(needed(ground, gap) * 1.08, abs(end - start)))
    string(ground, gap, arc)


def _placed(ground: Ground, course: Course, feet: list[list[complex]], room: Room, fans: list[Fan], wave: Wave) -> Standing:
    middles = [sum(legs) / len(legs) for legs in feet]
    heights = [stem.height for stem in course.stems]
    full = _FULL if not wave.xs else _FULL * _SLANTED
    levels = sorted(z.imag - wave.at(z.real) + full * h for z, h in zip(middles, heights, strict=True))
    even = max(heights) - min(heights) < 0.15 * max(heights) and levels[-1] - levels[0] < 0.6
    line = Line(levels[len(levels) // 2] if even else levels[int(0.75 * (len(levels) - 1))])
    if not even and not fans and any(stem.stitch.gather in GATHERED for stem in course.stems):
        level = _fair_level(course, middles, wave)
        even, line = level is not None, Line(level if level is not None else line.apothem)
    s = _along(course, room, [-z.real for z in middles])
    heads, normals = [line.at(x)[0] + 1j * wave.at(-x) for x in s], [wave.normal(-x) for x in s]
    for i, stem in enumerate(course.stems):
        way = heads[i] - middles[i]
        if not even:
            length = min(max(abs(way), LENGTH_LEAST * stem.height), _WAVE * stem.height)
            heads[i] = middles[i] + way / (abs(way) or 1.0) * length
    for fan in fans:
        for index, foot, head, way in zip(fan.stems, fan.feet, fan.heads, fan.ways, strict=True):
            heads[index], normals[index], feet[index] = head, way, [foot]
    return Standing(line, s, heads, normals, feet, even)


def _fair_level(course: Course, middles: list[complex], wave: Wave) -> float | None:
    """The level of a row with bobbles: they stand out of the cloth and do not make it uneven, so that all heads are level, short stitches
    drawn as much too long as tall ones too short; None where that would be more than still reads.
    """
    feet = [z.imag - wave.at(z.real) for z in middles]
    stems = list(zip(feet, (stem.height for stem in course.stems), strict=True))
    low, high = max(foot + CHANGE_LEAST * height for foot, height in stems), min(foot + CHANGE_MOST * height for foot, height in stems)
    if low > high:
        return None
    levels = [low + (high - low) * k / 40 for k in range(41)]
    return min(levels, key=lambda y: max(max((y - foot) / height, height / (y - foot)) for foot, height in stems))


def _along(course: Course, room: Room, at: list[float]) -> list[float]:
    """Places along a row: over their bases, fans spread, neighbours no closer than they may be; the ends are free."""
    count = course.size
    least, like = list(room.least[:-1]), [max(gap, _PITCH) if not g.parts else gap for gap, g in zip(room.like, course.gaps, strict=True)]
    targets = _targets(course, at, like)
    gaps = [0.0, *(max(b - a, low) if gap.parts else wish for (a, b), low, gap, wish in _neighbours(course, at, least, like)), 0.0]
    stiff = [0.0, *(_LOOSE if gap.parts else 1.0 for gap in course.gaps[:-1]), 0.0]
    pull = _PULL_LACE if any(gap.parts for gap in course.gaps[:-1]) or _uneven(course) else _PULL
    places = spread_between(targets, [pull] * count, gaps, stiff, 0.0, 0.0)
    run, offsets = 0.0, [0.0]
    for gap in least:
        run += gap
        offsets.append(run)
    moved = pooled([place - offset for place, offset in zip(places, offsets, strict=True)])
    return [value + offset for value, offset in zip(moved, offsets, strict=True)]


def _uneven(course: Course) -> bool:
    heights = [stem.height for stem in course.stems]
    return max(heights) - min(heights) > 0.3


def _neighbours(
    course: Course, at: list[float], least: list[float], like: list[float]
) -> Iterator[tuple[tuple[float, float], float, Gap, float]]:
    return zip(pairwise(at), least, course.gaps[:-1], like[:-1], strict=True)


def _targets(course: Course, at: list[float], like: list[float]) -> list[float]:
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

