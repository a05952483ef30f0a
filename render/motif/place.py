"""One round on its outline: how large it is, where its heads stand, and which way they look."""

from __future__ import annotations

from cmath import exp
from cmath import phase as argument
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import pi, sqrt, tan

from motifold.render.motif.course import Course
from motifold.render.motif.extents import CHANGE_MOST, CLEAR, LENGTH_LEAST, LENGTH_MOST
from motifold.render.motif.feet import shared
from motifold.render.motif.ground import Ground
from motifold.render.motif.line import Line
from motifold.render.motif.outline import Outline
from motifold.render.motif.petals import Fan
from motifold.render.motif.posts import post_of
from motifold.render.motif.room import Room
from motifold.render.motif.spread import part_around, part_between, spread_around, spread_between
from motifold.render.motif.symmetry import symmetric

_FULL = 1.02
"""Stems are drawn this much of their nominal length, where the shape leaves the choice: beginning chains then fit upright."""
_SHORTER = (_FULL, 0.98, 0.95, LENGTH_LEAST)
_PULL_SOLID, _PULL_LACE, _PULL_SIDE = 0.02, 0.25, 0.3
"""How strongly heads are pulled over their bases: weakly in a solid circle, or every increase would start a spiral arm."""
_SLACK = 0.12
"""Stiffness of a gap of chains between different bases, against 1 for neighbours."""
_HOOKED = 0.2
"""A post stitch starts lower than its neighbours and is drawn so much longer, part of its height."""
_WAVE = 1.2
"""A short stitch among tall ones reaches up to the outline by at most so much of its length."""


@dataclass(frozen=True, slots=True)
class Standing:
    """A placed round. ``s``: arc length of each head on the outline (unclamped); ``even``: all heads lie on the outline."""

    outline: Outline | Line
    s: list[float]
    heads: list[complex]
    normals: list[complex]
    feet: list[list[complex]]
    even: bool


@dataclass(frozen=True, slots=True)
class _Task:
    course: Course
    room: Room
    middles: list[complex]
    sides: list[int]
    groups: list[list[int]]
    ring: bool
    corners: int
    phase: float
    fans: bool = False
    changed: bool = False
    spine: float = 0.0


def place(ground: Ground, course: Course, feet: list[list[complex]], room: Room, order: int, fans: Sequence[Fan] = (), more: float = 0.0) -> Standing:
    """Find the outline and the places of a round. ``more``: raise the outline by so much over what the stitches ask."""
    task = _task(ground, course, feet, room)
    if fans:
        task = replace(task, fans=True)
    if task.ring:
        task = _under_ring_heads(task)
    outline, s = _fitted(task, more)
    heads = [outline.at(x)[0] for x in s]
    normals = [outline.at(x)[1] for x in s]
    if course.open and task.corners:
        normals[0], normals[-1] = 1 + 0j, -1 + 0j
    feet = _turned_ring_feet(task, feet, heads)
    even = _even(task)
    heads, normals = _held(task, heads, normals, feet, even)
    for fan in fans:
        for stem, foot, head, way in zip(fan.stems, fan.feet, fan.heads, fan.ways, strict=True):
            heads[stem], normals[stem], feet[stem] = head, way, [foot]
    heads, normals = symmetric(heads, order), symmetric(normals, order)
    return Standing(outline, s, heads, normals, _symmetric_feet(feet, order), even)


def _fitted(task: _Task, more: float) -> tuple[Outline, list[float]]:
    """The outline on which no stem is drawn too long, or the one that comes nearest to that."""
    if task.changed:
        levels = [_level(task, i, Outline(task.corners, 1.0, task.phase)) for i in range(task.course.size)]
        low = min(level + stem.height for level, stem in zip(levels, task.course.stems, strict=True))
        high = max(level + stem.height for level, stem in zip(levels, task.course.stems, strict=True))
        sizes = [max(low + (high - low) * k / 24 + more, _roomy(task)) for k in range(25)]
        outlines = [Outline(task.corners, size, task.phase) for size in sizes]
    else:
        outlines = [_size(task, fullness, more) for fullness in _SHORTER]
    best: tuple[float, Outline, list[float]] | None = None
    for outline in outlines:
        s = _places(task, outline)
        parts = [abs(outline.at(x)[0] - m) / stem.height for x, m, stem in zip(s, task.middles, task.course.stems, strict=True)]
        # As much too short counts like as much too long.
        worst = max(max(parts), 1.0 / max(min(parts), 0.01), _squeezed(task, parts)) if task.changed else max(parts)
        if best is None or worst < best[0] - 1e-6:
            best = (worst, outline, s)
        if worst <= LENGTH_MOST and not task.changed:
            break
    assert best is not None
    return best[1], best[2]


def _squeezed(task: _Task, parts: list[float]) -> float:
    """How badly beginning chains, which cannot shrink, lack the height to stand upright."""
    return max((1.3 / part for part, stem in zip(parts, task.course.stems, strict=True) if stem.stitch.role == "standing"), default=0.0)


def is_crowded(course: Course, feet: list[list[complex]], room: Room) -> bool:
    """Whether a round's heads would need a much larger outline than its stitches reach."""
    if course.corners or course.open:
        return False
    levels = sorted(abs(sum(legs) / len(legs)) + 1.2 * stem.height for legs, stem in zip(feet, course.stems, strict=True))
    return sum(room.least) / (2 * pi) > levels[len(levels) // 2]


def _task(ground: Ground, course: Course, feet: list[list[complex]], room: Room) -> _Task:
    middles = [sum(legs) / len(legs) for legs in feet]
    groups = [sorted({s for s, _ in members}, key=[s for s, _ in members].index) for members in shared(course).values()]
    ring = all(leg.base.kind == "ring" for stem in course.stems for leg in stem.stitch.legs)
    corners = _corner_count(course)
    sides = _sides(course) if corners else [0] * course.size
    phase = 0.0
    spine = 0.0 if corners or course.open else ground.spine
    if course.open or spine:
        pass
    elif corners and not ring:
        turned = 0j
        for number, corner in enumerate(course.corners):
            after = middles[corner.at] if corner.on_stem else middles[corner.at] + middles[(corner.at + 1) % course.size]
            turned += after / (abs(after) or 1.0) * exp(-2j * pi * number / corners)
        phase = argument(turned)
    elif not corners and not ring:
        phase = argument(middles[0])
    heights = [stem.height for stem in course.stems]
    before = ground.courses.get(course.round - 1)
    changed = corners > 0 and not ring and (max(heights) - min(heights) > 0.3 or (before is not None and _corner_count(before) != corners))
    return _Task(course, room, middles, sides, groups, ring, corners, phase, changed=changed, spine=spine)


def _corner_count(course: Course) -> int:
    """Corners of the whole outline. A half motif is cut from corner to corner, so that its rows have the corners between."""
    found = len(course.corners)
    if course.open:
        return 2 * (found + 1) if found else 0
    return found if found > 2 else 0


def _sides(course: Course) -> list[int]:
    """The side of each stem, by counting corners: side j runs from corner j to the next. A stem on a corner begins its side."""
    sides = [0] * course.size
    if course.open:
        for corner in course.corners:
            for index in range(corner.at + (0 if corner.on_stem else 1), course.size):
                sides[index] += 1
        return sides
    number = len(course.corners) - 1
    starts = {(corner.at if corner.on_stem else (corner.at + 1) % course.size): j for j, corner in enumerate(course.corners)}
    first = min(starts)
    for step in range(course.size):
        index = (first + step) % course.size
        number = starts.get(index, number)
        sides[index] = number
    return sides


def _level(task: _Task, index: int, outline: Outline) -> float:
    """How far out a stem's foot is, square to its side."""
    middle = task.middles[index]
    if not task.corners or task.ring:
        return outline.level(middle)
    return (middle / outline.normal_of(task.sides[index])).real


def _size(task: _Task, fullness: float, more: float) -> Outline:
    """The outline: as large as the stitches are tall, or as the heads need room."""
    outline = Outline(task.corners, 1.0, task.phase, spine=task.spine)
    wishes = sorted(_level(task, i, outline) + (fullness + (_HOOKED if post_of(stem) else 0.0)) * stem.height
                    for i, stem in enumerate(task.course.stems))  # fmt: skip
    tall = _even(task)
    apothem = wishes[len(wishes) // 2] if tall else wishes[min(len(wishes) - 1, int(0.75 * len(wishes)))]
    return replace(outline, apothem=max(apothem + more, _roomy(task)))


def _roomy(task: _Task) -> float:
    """The least apothem that has room for all heads at their least gaps."""
    if not task.corners:
        return sum(task.room.least[:-1]) / pi if task.course.open else (sum(task.room.least) - 4 * task.spine) / (2 * pi)
    needs = [0.0] * task.corners
    on_corner = {corner.at for corner in task.course.corners if corner.on_stem}
    for i, least in enumerate(task.room.least[: -1 if task.course.open else None]):
        after = (i + 1) % task.course.size
        side = task.sides[i]
        corner = task.room.corner[i]
        if corner is not None:
            needs[side] += corner[0]
            needs[task.sides[after]] += corner[1]
        elif after in on_corner:
            needs[side] += least * 1.1
        else:
            needs[side] += least
    return max(needs) / (2 * tan(pi / task.corners))


def _even(task: _Task) -> bool:
    """All stems of one height: then the heads stand on the outline whatever happens."""
    heights = [stem.height for stem in task.course.stems]
    return (bool(task.corners) and not task.fans) or max(heights) - min(heights) < 0.15 * max(heights)


def _places(task: _Task, outline: Outline) -> list[float]:
    return _on_sides(task, outline) if task.corners else _on_circle(task, outline)


def _filled(likes: Sequence[float], fulls: Sequence[float], slack: Sequence[bool], total: float) -> list[float]:
    """Gaps that add up to ``total``: all grow together until they are full; what is still over goes mostly to chains that may give."""
    whole, most = sum(likes), sum(fulls)
    if total <= whole:
        return [g * total / whole for g in likes]
    if total <= most:
        part = (total - whole) / (most - whole)
        return [like + part * (full - like) for like, full in zip(likes, fulls, strict=True)]
    loose = sum(g for g, free in zip(fulls, slack, strict=True) if free)
    if loose <= 0:
        return [g * total / most for g in fulls]
    tight, over = most - loose, total - most
    grown = min(0.25 * tight, 0.5 * over * tight / most)
    return [g * (1 + (over - grown) / loose) if free else g * (1 + grown / max(tight, 1e-9)) for g, free in zip(fulls, slack, strict=True)]


def _fan(task: _Task, gaps: Sequence[float], at: Sequence[float]) -> list[float]:
    """Targets: each base's place, and the fan of its stems about it. ``at``: the place of each stem's own foot."""
    sums = [0.0] * len(at)
    counts = [0] * len(at)
    for group in task.groups:
        places = [0.0]
        for before in group[:-1]:
            places.append(places[-1] + gaps[before])
        middle = (places[0] + places[-1]) / 2
        base = sum(at[i] for i in group) / len(group)
        for i, x in zip(group, places, strict=True):
            sums[i] += base + x - middle
            counts[i] += 1
    return [total / count if count else a for total, count, a in zip(sums, counts, at, strict=True)]


def _on_circle(task: _Task, outline: Outline) -> list[float]:
    room, perimeter = task.room, outline.perimeter
    if task.course.open:
        return _on_half_circle(task, perimeter / 2)
    gaps = _filled(room.like, room.full, room.slack, perimeter)
    even = _running(gaps)
    if task.ring:
        return part_around(even, room.least, perimeter)
    at = _unwrapped(task, outline)
    if at is None:
        return part_around(even, room.least, perimeter)
    at = _fan_round(task, gaps, at, perimeter)
    loose = any(room.slack)
    pull = _PULL_LACE if loose else _PULL_SOLID
    stiff = [_SLACK if free else 1.0 for free in room.slack]
    return part_around(spread_around(at, [pull] * len(at), gaps, stiff, perimeter), room.least, perimeter)


def _on_half_circle(task: _Task, length: float) -> list[float]:
    """From one end of the cut to the other: the first and the last stitch of a row lie along it."""
    room, count = task.room, task.course.size
    if count < 3:
        return [length * (k + 0.5) / count for k in range(count)] if count < 2 else [0.0, length]
    gaps = _filled(room.like[:-1], room.full[:-1], room.slack[:-1], length)
    stiff = [_SLACK if free else 1.0 for free in room.slack[:-1]]
    angles = [0.0]
    for before, after in zip(task.middles, task.middles[1:], strict=False):
        angles.append(angles[-1] + argument(after / before))
    at = [max(0.0, argument(task.middles[0])) + angle for angle in angles]
    targets = [x * length / pi for x in at[1:-1]]
    pull = 0.0 if task.ring else _PULL_LACE if any(room.slack[:-1]) else _PULL_SOLID
    inner = spread_between(targets, [max(pull, 1e-6)] * (count - 2), gaps, stiff, 0.0, length)
    return [0.0, *part_between(inner, room.least[:-1], 0.0, length), length]


def _running(gaps: Sequence[float]) -> list[float]:
    places = [0.0]
    for gap in gaps[:-1]:
        places.append(places[-1] + gap)
    return places


def _unwrapped(task: _Task, outline: Outline) -> list[float] | None:
    """Places of the feet along the outline, counted on from stem to stem; None when they do not go round exactly once."""
    perimeter = outline.perimeter
    places = [outline.project(middle, 0) for middle in task.middles]
    counted = [places[0] - perimeter if places[0] > perimeter / 2 else places[0]]
    for before, after in pairwise(places):
        counted.append(counted[-1] + _wrapped(after - before, perimeter))
    last = counted[-1] + _wrapped(places[0] - places[-1], perimeter) - counted[0]
    return counted if abs(last - perimeter) < 0.02 * perimeter else None


def _wrapped(step: float, perimeter: float) -> float:
    return (step + perimeter / 2) % perimeter - perimeter / 2


def _fan_round(task: _Task, gaps: Sequence[float], at: list[float], perimeter: float) -> list[float]:
    """``_fan`` on a closed outline: members of a group that lie across the start are read one turn later."""
    count = len(at)
    sums, counts = [0.0] * count, [0] * count
    for group in task.groups:
        places, laps, lap = [0.0], [0.0], 0.0
        for before, after in pairwise(group):
            lap += perimeter if after < before else 0.0
            places.append(places[-1] + (gaps[before] if (after - before) % count == 1 else at[after] + lap - at[before] - laps[-1]))
            laps.append(lap)
        base = sum(at[i] + lap for i, lap in zip(group, laps, strict=True)) / len(group)
        middle = (places[0] + places[-1]) / 2
        for i, x, lap in zip(group, places, laps, strict=True):
            sums[i] += base + x - middle - lap
            counts[i] += 1
    return [total / number if number else a for total, number, a in zip(sums, counts, at, strict=True)]


def _on_sides(task: _Task, outline: Outline) -> list[float]:
    """Each side by itself, between its corners."""
    s = [0.0] * task.course.size
    cut = 1 if task.course.open else 0
    on_corner = {corner.at: number + cut for number, corner in enumerate(task.course.corners) if corner.on_stem}
    members: list[list[int]] = [[] for _ in range(task.corners)]
    corner0 = task.course.corners[0]
    first = 0 if cut else corner0.at if corner0.on_stem else (corner0.at + 1) % task.course.size
    for step in range(task.course.size):
        index = (first + step) % task.course.size
        if index in on_corner:
            s[index] = on_corner[index] * outline.side
        else:
            members[task.sides[index]].append(index)
    for number, stems in enumerate(members):
        _one_side(task, outline, number, stems, on_corner, s)
    return s


def _one_side(task: _Task, outline: Outline, number: int, stems: list[int], on_corner: dict[int, int], s: list[float]) -> None:
    if not stems:
        return
    room, size = task.room, task.course.size
    start, end = number * outline.side, (number + 1) * outline.side
    before = (stems[0] - 1) % size
    head, tail = room.corner[before], room.corner[stems[-1]]
    after_corner = (head[1], head[3]) if head else (room.least[before], room.like[before]) if before in on_corner else (0.4, 0.5)
    to_corner = (tail[0], tail[2]) if tail else (room.least[stems[-1]], room.like[stems[-1]])
    if task.course.open and (stems[0] == 0 or stems[-1] == size - 1):
        # The first and the last stitch of a row lie on the cut.
        if stems[0] == 0:
            s[0], after_corner, stems = start, (room.least[0], room.like[0]), stems[1:]
        if stems and stems[-1] == size - 1:
            s[size - 1], to_corner, stems = end, (room.least[size - 2], room.like[size - 2]), stems[:-1]
        if not stems:
            return
    least = [after_corner[0], *(room.least[i] for i in stems[:-1]), to_corner[0]]
    like = [after_corner[1], *(room.like[i] for i in stems[:-1]), to_corner[1]]
    full = [after_corner[1] * 1.15, *(room.full[i] for i in stems[:-1]), to_corner[1] * 1.15]
    slack = [False, *(room.slack[i] for i in stems[:-1]), False]
    gaps = _filled(like, full, slack, end - start)
    at = [outline.project(task.middles[i], number) for i in stems]
    local = {stem: k for k, stem in enumerate(stems)}
    own = [[local[i] for i in group if i in local] for group in task.groups]
    sub = replace(task, groups=[group for group in own if group])
    whole = {i for group in task.groups if any(j not in local for j in group) for i in group if i in local}
    fanned = _fan(sub, gaps[1:], at)
    targets = [at[k] if stem in whole else fanned[k] for k, stem in enumerate(stems)]
    pulls = [0.0 if task.ring else 0.05 if stem in whole else _PULL_SIDE for stem in stems]
    stiff = [1.0, *(_SLACK if free else 1.0 for free in slack[1:-1]), 1.0]
    spread = spread_between(targets, pulls, gaps, stiff, start, end)
    if not task.ring:
        low, high = _reach(task, outline, number, stems)
        spread = _between(part_between(spread, least, start, end), low, high)
    for stem, x in zip(stems, part_between(spread, least, start, end), strict=True):
        s[stem] = x


def _reach(task: _Task, outline: Outline, number: int, stems: list[int]) -> tuple[list[float], list[float]]:
    """How far along the side each stem can lean before it is drawn too long."""
    low, high = [], []
    for i in stems:
        middle, height = task.middles[i], task.course.stems[i].height
        rise = outline.apothem - _level(task, i, outline)
        most = CHANGE_MOST if task.changed else LENGTH_MOST
        lean = sqrt(max((most * height) ** 2 - rise * rise, (0.2 * height) ** 2))
        centre = (number + 0.5) * outline.side + (middle / outline.normal_of(number)).imag
        low.append(centre - lean)
        high.append(centre + lean)
    return low, high


def _between(places: list[float], low: list[float], high: list[float]) -> list[float]:
    """Places held between their bounds, still in order."""
    held = [min(max(x, a), b) if a <= b else x for x, a, b in zip(places, low, high, strict=True)]
    for i in range(1, len(held)):
        held[i] = max(held[i], held[i - 1])
    return held


def _under_ring_heads(task: _Task) -> _Task:
    """The same task with the feet in the ring turned to where their heads will be."""
    outline = _size(task, _FULL, 0.0)
    radius = abs(task.middles[0])
    heads = [outline.at(x)[0] for x in _places(task, outline)]
    return replace(task, middles=[radius * head / abs(head) for head in heads])


def _turned_ring_feet(task: _Task, feet: list[list[complex]], heads: list[complex]) -> list[list[complex]]:
    """Stitches worked into the ring stand under their own heads, on a circle that keeps their feet apart."""
    if not task.ring:
        return feet
    radius = abs(feet[0][0])
    stems = task.course.stems
    for i in range(len(heads) - (1 if task.course.open else 0)):
        j = (i + 1) % len(heads)
        angle = abs(argument(heads[j] / heads[i]))
        if 1e-6 < angle < 1.5:
            radius = max(radius, (stems[i].root + stems[j].root + CLEAR) / angle)
    return [[radius * head / abs(head)] * len(legs) for head, legs in zip(heads, feet, strict=True)]


def _held(
    task: _Task, heads: list[complex], normals: list[complex], feet: list[list[complex]], even: bool
) -> tuple[list[complex], list[complex]]:
    """Heads no further from their feet than the stitch is long, and no nearer: where heights differ the outline is a wave."""
    if even:
        return heads, normals
    least, most = LENGTH_LEAST, _WAVE
    moved, out = [], []
    for stem, head, normal, legs in zip(task.course.stems, heads, normals, feet, strict=True):
        foot = sum(legs) / len(legs)
        way = head - foot
        length = abs(way) or 1.0
        held = min(max(length, least * stem.height), most * stem.height)
        if abs(held - length) > 1e-9:
            head = foot + way / length * held
        moved.append(head)
        out.append(normal if even else _unit(way / length + normal))
    return moved, out


def _unit(z: complex) -> complex:
    return z / (abs(z) or 1.0)


def _symmetric_feet(feet: list[list[complex]], order: int) -> list[list[complex]]:
    if order < 2:
        return feet
    step = len(feet) // order
    if any(len(feet[i]) != len(feet[i % step]) for i in range(len(feet))):
        return feet
    columns = []
    for leg in range(max(len(legs) for legs in feet)):
        columns.append(symmetric([legs[min(leg, len(legs) - 1)] for legs in feet], order))
    return [[columns[leg][i] for leg in range(len(feet[i]))] for i in range(len(feet))]

