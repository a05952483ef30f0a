"""Work in rows: a grid that follows its stitches. Foundation at y 0, first row above it, x from the left."""

from __future__ import annotations

from cmath import phase as argument
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
from statistics import median

from motifold.render.fabric.model import Fabric, Round
from motifold.render.motif.arc import bulged
from motifold.render.motif.border import goes_round, lay_border
from motifold.render.motif.branches import grow
from motifold.render.motif.breadth import Chains, columns_of, wider_than_begun
from motifold.render.motif.chains import hang, needed, string
from motifold.render.motif.columns import PITCH, along, one_to_one
from motifold.render.motif.course import Course, course_of
from motifold.render.motif.crossings import part_bars
from motifold.render.motif.extents import (
    CLEAR,
    FOOT_RISE,
    GATHERED,
    LENGTH_LEAST,
    LENGTH_MOST,
    OVAL,
    PITCH_MOST,
    of_one_height,
    stem_height,
)
from motifold.render.motif.feet import stand
from motifold.render.motif.ground import Ground, point
from motifold.render.motif.line import Line
from motifold.render.motif.margin import fill_margins
from motifold.render.motif.model import RoundShape
from motifold.render.motif.parts import Stem
from motifold.render.motif.petals import Fan, petals_of
from motifold.render.motif.place import Standing
from motifold.render.motif.posts import bend_posts, column_of, post_of
from motifold.render.motif.radial import centre_ring
from motifold.render.motif.ripple import Trail, trail_of
from motifold.render.motif.room import Room, free_width, room_of
from motifold.render.motif.slope import rays
from motifold.symbols.record import dataclass

_FULL = 1.02
_LEAST, _MOST = 0.905, 1.25
"""Stems are drawn this much of their nominal length; at least and at most so much where a row is to be level."""
_LOW = 0.93
"""And so low where its edges slant."""
_ROUND_HEAD = 0.05
"""A post stitch, bent round the head above its post, is longer than it rises by so much of its height."""
_ELSEWHERE, _STEEP = 0.6, 0.75
"""A stem whose head belongs so far beside its own column changes places with others; it rises at least so much of its length."""
_NEARLY, _LITTLE, _TIMES = 0.25, 0.01, 2
_FAN = 4
_POINT = 5
"""So many stitches in a ring are the point of a triangle at the most."""
_WAVE = 1.2
_EASY, _BROADEST = 1.03, 1.3
"""Columns are so much wider than they must be for the row that needs most; and, over the chain pitch, so wide at the most: the foundation's
ovals still make a chain.
"""
_SEEN = 7
"""So many rows tell the way that all of them take."""


def lay_rows(fabric: Fabric) -> Ground:
    """Place every row of a piece worked to and fro, along the way that its increases and decreases make: most often straight."""
    seen = _rows_along(fabric, Trail(), _SEEN, True, Chains())
    trail = trail_of(seen)
    first = columns_of(seen, PITCH, PITCH_MOST) if not trail.knots else ()
    ground = _rows_along(fabric, trail, len(fabric.rounds), bool(trail.knots), Chains(PITCH, first))
    columns = columns_of(ground, PITCH, PITCH_MOST) if not trail.knots else ()
    if columns:
        ground = _in_columns(ground, trail, first, columns)
    elif not trail.knots:
        ground = _rows_along(fabric, trail, len(fabric.rounds), False, Chains()) if first else ground
        ground.broadest = max(ground.broadest, wider_than_begun(ground))
        if ground.broadest > 1.0:
            # Columns are as wide as the row that needs most.
            ground = _rows_along(fabric, trail, len(fabric.rounds), False, Chains(PITCH * min(ground.broadest, _BROADEST)))
    _bordered(ground, trail)
    fill_margins(ground)
    return ground


def _in_columns(ground: Ground, trail: Trail, had: tuple[float, ...], wanted: tuple[float, ...]) -> Ground:
    """Rows in columns that are each as wide as their widest stitch; ``ground`` has them as wide as ``had``. In columns of their own some
    stitches need a little more than they seemed to.
    """
    for _ in range(_TIMES):
        wider = tuple(map(max, had or wanted, wanted))
        if had and max(a - b for a, b in zip(wider, had, strict=True)) <= _LITTLE:
            break
        had = wider
        ground = _rows_along(ground.fabric, trail, len(ground.fabric.rounds), False, Chains(PITCH, had))
        wanted = columns_of(ground, PITCH, PITCH_MOST) or had
    return ground


def grows_at_its_ends(fabric: Fabric) -> bool:
    """Whether rows from a ring get their increases at their ends alone: a triangle that stands on its point, not a part of a circle."""
    worked = [fabric.round_stitches(i) for i, each in enumerate(fabric.rounds) if each.kind == "row"]
    rows = [stems for row in worked if (stems := [s for s in row if s.role in ("stitch", "standing")])]
    if fabric.rounds[0].kind != "ring" or len(rows) < 2 or len(rows[0]) > _POINT or any(run.role == "space" for run in fabric.runs):
        return False
    for row in rows[1:]:
        bases = [{leg.base.id for leg in stitch.legs if leg.base.kind == "stitch"} for stitch in row]
        inner = [own for own in bases if own != bases[0] and own != bases[-1]]
        if not all(len(own) == 1 for own in bases) or len(inner) != len({min(own) for own in inner}):
            return False
    return True


def _rows_along(fabric: Fabric, trail: Trail, most: int, held: bool, begun: Chains) -> Ground:
    """The first rows, ``most`` at most. ``held``: columns lean as they must (along a trail, and in the rows that one is read off)."""
    ground = Ground.of(fabric)
    ground.ring = 0.01
    started, out = False, 0.0
    for index, worked in enumerate(fabric.rounds[:most]):
        if not started and worked.kind == "ring":
            centre_ring(ground, index)
            started = True
            continue
        if not started and worked.kind in ("foundation", "edge"):
            _foundation(ground, index, worked, trail, begun)
            started = True
            continue
        course = course_of(fabric, index, ground.picots)
        if course.size and not course.open and goes_round(ground, course):
            break
        if course.size:
            out = _row(ground, course, trail, out, held)
    return ground


def _bordered(ground: Ground, trail: Trail) -> None:
    """The rounds that go all round the piece, once its rows are placed, and rows worked on after those."""
    placed = max(ground.courses, default=-1)
    for index in range(placed + 1, len(ground.fabric.rounds)):
        course = course_of(ground.fabric, index, ground.picots)
        if course.size and not course.open and goes_round(ground, course):
            lay_border(ground, course)
        elif course.size and placed >= 0:
            _row(ground, course, trail, max(head.imag for head in ground.heads.values()), False)


def _foundation(ground: Ground, index: int, worked: Round, trail: Trail, begun: Chains) -> None:
    """The chain that row 1 is worked along: its first chain lies where row 1 ends. Chains that stand up as a stitch are not in it;
    foundation stitches, which make their own chain, stand on the same line.
    """
    fabric = ground.fabric
    upright = {chain for stitch in fabric.stitches if stitch.role == "standing" for chain in stitch.chains}
    chains = [s for s in fabric.round_stitches(index) if s.id not in upright]
    rows = [r for r in fabric.rounds[index + 1 :] if r.stitches]
    leftwards = rows[0].direction if rows else 1
    count, line, under = len(chains), trail.line(0.0), trail.under([chain.id for chain in chains])
    places = begun.places(count)
    for k, chain in enumerate(chains):
        x = places[k] if leftwards > 0 else places[-1] - places[k]
        place, normal = line.at(under.get(chain.id, -x))
        if chain.role != "stitch":
            half = (OVAL / 2 if leftwards > 0 else -OVAL / 2) * normal * -1j
            ground.tips[chain.id] = (place - half, place + half)
        else:
            ground.feet[chain.id] = (place,) * max(len(chain.legs), 1)
            ground.heads[chain.id] = place + normal * stem_height(chain)
        ground.normals[chain.id] = normal


def _row(ground: Ground, course: Course, trail: Trail, below: float, held: bool) -> float:
    """Feet, heads and chains of one row; how far out it lies. ``below``: how far out the row below lies."""
    feet = stand(ground, course)
    room = room_of(ground, course, feet, True)
    deep = frozenset(i for i, stem in enumerate(course.stems) if _is_deep(ground, course, stem))
    middles = [sum(legs) / len(legs) for legs in feet]
    columns = [column_of(ground, stem, z) for stem, z in zip(course.stems, middles, strict=True)]
    task = _Task(course, room, feet, middles, columns, deep, held, rays(ground, course), _beside(ground, course))
    ground.broadest = max(ground.broadest, _breadth(ground, task))
    if one_to_one(course) or (not ground.columns and _each_on_its_own(course)):
        ground.columns[course.round] = room.least[:-1]
    if trail.knots:
        standing = _on_trail(task, trail, below)
    else:
        standing = _lowered(task, _placed(task, *_level_of(task), petals_of(ground, course, False)))
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
    part_bars(ground, course)
    hang(ground, course, standing)
    _hang_first(ground, course)
    for branch in course.branches:
        grow(ground, course, branch)
    line = tuple(point(head) for head in standing.heads)
    ground.shapes.append(RoundShape(course.round, line, (), line[course.begins], (0.0, 1.0)))
    return standing.outline.apothem


def _breadth(ground: Ground, task: _Task) -> float:
    """How much broader than the row below a row is at the least, where every stitch of it stands alone on its place, or would like to be
    for its loops.
    """
    course = task.course
    below = max(z.real for z in task.middles) - min(z.real for z in task.middles)
    if course.size > 2 and below > PITCH and _fans_meet(course):
        return sum(task.room.least[:-1]) / below
    if course.size < 3 or not _each_on_its_own(course):
        return 1.0
    looped = any(len(gap.parts) > 2 for gap in course.gaps[:-1])
    if not looped and not one_to_one(course):
        return 1.0
    wide = free_width(ground, course, task.feet) if looped else _EASY * sum(task.room.least[:-1])
    return wide / below if below > PITCH else 1.0


def _fans_meet(course: Course) -> bool:
    """Whether fans in spaces stand side by side with no more than a stitch between them: they have no room to spread into."""
    counts = Counter(leg.base.id for stem in course.stems for leg in stem.stitch.legs if leg.base.kind == "space")
    chained = any(gap.parts for gap in course.gaps[:-1])
    return not chained and len(counts) > 1 and min(counts.values()) >= _FAN and course.size - sum(counts.values()) <= len(counts) + 2


def _each_on_its_own(course: Course) -> bool:
    return len({leg.base for stem in course.stems for leg in stem.stitch.legs}) == course.size


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


@dataclass(frozen=True, slots=True)
class _Task:
    """What placing a row starts from: its feet, the middle of each stem's, the point in whose column each stands, which stems reach down
    past the row below, and whether columns are kept however far they lean. ``rays``: see ``slope``; ``beside``: see ``columns.along``.
    """

    course: Course
    room: Room
    feet: list[list[complex]]
    middles: list[complex]
    columns: list[complex]
    deep: frozenset[int]
    held: bool
    rays: Mapping[int, complex]
    beside: list[bool]


def _placed(task: _Task, line: Line, even: bool, fans: Sequence[Fan] = ()) -> Standing:
    """Heads on their line; where heights differ, no further from their feet than the stitches are long."""
    feet = list(task.feet)
    s = along(task.course, task.room, line.along(task.columns), task.held, task.beside)
    spots = [line.at(x) for x in s]
    heads, normals = [head for head, _ in spots], [normal for _, normal in spots]
    for i, stem in enumerate(task.course.stems):
        way = heads[i] - task.middles[i]
        if not even and i not in task.deep:
            length = min(max(abs(way), LENGTH_LEAST * stem.height), _WAVE * stem.height)
            heads[i] = task.middles[i] + _in_column(way, length)
            if i in task.rays:
                heads[i], normals[i] = task.middles[i] + task.rays[i] * stem.height, task.rays[i]
    if all(leg.base.kind == "ring" for stem in task.course.stems for leg in stem.stitch.legs):
        feet, heads = _from_point(task, heads)
    for fan in fans:
        for index, foot, head, way in zip(fan.stems, fan.feet, fan.heads, fan.ways, strict=True):
            heads[index], normals[index], feet[index] = head, way, [foot]
    return Standing(line, s, heads, normals, feet, even)


def _in_column(way: complex, length: float) -> complex:
    """A way of another length that goes as far along the row, unless it would then lie down."""
    if way.imag > 0 and abs(way.real) < 0.7 * length:
        return complex(way.real, (length**2 - way.real**2) ** 0.5)
    return way / (abs(way) or 1.0) * length


def _from_point(task: _Task, heads: list[complex]) -> tuple[list[list[complex]], list[complex]]:
    """The first stitches of a triangle: each under its own head, on a bow about the ring that has room for all their feet."""
    radius = abs(task.feet[0][0])
    wide = radius
    for (one, head), (other, following) in pairwise(zip(task.course.stems, heads, strict=True)):
        wide = max(wide, (one.root + other.root + CLEAR) / abs(argument(following / head)))
    moved = [head + 1j * (wide - radius) for head in heads]
    legs = (len(feet) for feet in task.feet)
    return [[wide * head / abs(head)] * count for head, count in zip(moved, legs, strict=True)], moved


def _lowered(task: _Task, standing: Standing) -> Standing:
    """A row whose edges slant so much that stems there are too long is a little lower."""
    if not standing.even:
        return standing
    ways = zip(task.course.stems, standing.feet, standing.heads, strict=True)
    over = max(max(abs(head - foot) for foot in legs) / stem.height for stem, legs, head in ways if stem.stitch.gather not in GATHERED)
    least = min((head.imag - z.imag) / stem.height for stem, z, head in zip(task.course.stems, task.middles, standing.heads, strict=True))
    if over <= LENGTH_MOST or least <= _LOW or task.deep:
        return standing
    tallest = min(stem.height for stem in task.course.stems)
    return _placed(task, Line(standing.outline.apothem - (least - _LOW) * tallest), True)


def _on_trail(task: _Task, trail: Trail, below: float) -> Standing:
    """A row on a bent way, so far out that its stitches are as long as they should be."""
    heights = [stem.height for stem in task.course.stems]
    tallest = max(heights)
    even = tallest - min(heights) < 0.15 * tallest
    out = below + FOOT_RISE + _FULL * tallest
    standing = _placed(task, trail.line(out), True)
    for _ in range(6):
        parts = [abs(head - z) / h for head, z, h in zip(standing.heads, task.middles, heights, strict=True)]
        lacking = max(_FULL - _typical(parts), min(_LEAST - min(parts), LENGTH_MOST - max(parts)))
        if abs(lacking) < 0.004:
            break
        out = min(max(out + lacking * tallest, below + 0.8 * tallest), below + 1.8 * tallest + 0.6)
        standing = _placed(task, trail.line(out), True)
    return standing if even else _placed(task, trail.line(out), False)


def _typical(parts: Sequence[float]) -> float:
    """The usual length of a row's stems, more where many would be too long (a corner or an edge has single ones that are)."""
    ordered = sorted(parts)
    usual = median(parts)
    return max(usual, min(ordered[int(0.93 * (len(ordered) - 1))] * _FULL / LENGTH_MOST, usual * _FULL / _LOW))


def _beside(ground: Ground, course: Course) -> list[bool]:
    """For the gap after each stem, whether what it and the next are worked into are neighbours in one row, but for chains."""
    places: list[tuple[int, float] | None] = []
    for stem in course.stems:
        base = stem.stitch.legs[0].base if stem.stitch.legs else None
        place = ground.at.get(base.id) if base is not None and base.kind == "stitch" else None
        gap = ground.gap_at.get(base.id) if base is not None and base.kind == "space" else None
        places.append((gap[0], gap[1] + 0.5) if gap is not None else place)
    return [a is not None and b is not None and a[0] == b[0] and abs(a[1] - b[1]) <= 1 for a, b in pairwise(places)]


def _is_deep(ground: Ground, course: Course, stem: Stem) -> bool:
    """Whether a stitch reaches down past the row below."""
    rows = [ground.at[leg.base.id][0] for leg in stem.stitch.legs if leg.base.kind == "stitch" and leg.base.id in ground.at]
    return bool(rows) and max(rows) < course.round - 1


def _level_of(task: _Task) -> tuple[Line, bool]:
    """The height of a row's heads, and whether all stand on it: wherever no stitch is drawn much too long or too short for that."""
    every = [(z.imag, stem) for z, stem in zip(task.middles, task.course.stems, strict=True)]
    stems = [found for i, found in enumerate(every) if i not in task.deep] or every
    levels = sorted(foot + _FULL * stem.height for foot, stem in stems)
    middle = levels[len(levels) // 2]
    leaning = [(z.imag, stem) for i, (z, stem) in enumerate(zip(task.middles, _leaning(task), strict=True)) if i not in task.deep]
    low, high = _bounds(leaning or stems, _LEAST, _MOST)
    if low <= high:
        level = min(max(middle, low), high)
        # Stitches that reach over rows are no longer than they must be, if the others can be a little shorter.
        reached = min((foot + _MOST * stem.height for i, (foot, stem) in enumerate(every) if i in task.deep), default=level)
        return Line(min(level, max(reached, low)) if reached >= low - _NEARLY else level), True
    heights = [stem.height for _, stem in stems]
    if of_one_height(heights) or any(stem.stitch.gather in GATHERED for _, stem in stems):
        # Bobbles among short stitches, and what stands on them: a wave, as flat as their lengths allow.
        return Line((low + high) / 2), False
    return Line(levels[int(0.75 * (len(levels) - 1))]), False


def _leaning(task: _Task) -> list[Stem]:
    """The stems of a row, those that change places with others as tall as they rise."""
    ways = zip(task.course.stems, task.columns, sorted(task.columns, key=lambda z: -z.real), strict=True)
    asides = [(stem, abs(there.real - here.real)) for stem, here, there in ways]
    return [
        replace(stem, height=max(stem.height**2 - aside**2, (_STEEP * stem.height) ** 2) ** 0.5) if aside > _ELSEWHERE else stem
        for stem, aside in asides
    ]


def _bounds(stems: Sequence[tuple[float, Stem]], least: float, most: float) -> tuple[float, float]:
    """Between which heights a row's heads must lie."""
    low = max(foot + least * stem.height for foot, stem in stems)
    return low, min(foot + (most - (_ROUND_HEAD if post_of(stem) else 0.0)) * stem.height for foot, stem in stems)
