"""One round on its outline: how large it is, where its heads stand, and which way they look."""

from __future__ import annotations

from cmath import phase as argument
from collections.abc import Sequence
from dataclasses import replace
from math import pi

from motifold.render.motif.circle import on_circle
from motifold.render.motif.course import Course
from motifold.render.motif.crowd import hollow, lack, parted
from motifold.render.motif.extents import CLEAR, LENGTH_LEAST, LENGTH_MOST
from motifold.render.motif.frame import Frame
from motifold.render.motif.gores import cuts
from motifold.render.motif.ground import CHANGED_MOST, Ground
from motifold.render.motif.line import Line
from motifold.render.motif.outline import Outline
from motifold.render.motif.petals import Fan
from motifold.render.motif.room import Room
from motifold.render.motif.sides import on_sides
from motifold.render.motif.symmetry import symmetric
from motifold.render.motif.task import Task, is_even, level_of, outline_of, roomy, size_of, task_of
from motifold.symbols.record import dataclass

_FULL = 1.02
"""Stems are drawn this much of their nominal length, where the shape leaves the choice: beginning chains then fit upright."""
_CUT = (0.92, 0.94, 0.96, 0.98, 1.0, 1.02, 1.04, 1.06, 1.08, 1.1)
_SHORT = 0.905
"""Rows of a half motif are as near to one another as their stems allow, none drawn shorter than this."""
_FURTHER = 0.35
"""So much further out than on its base, at the most, a stitch starts that would be drawn too long."""
_SHORTER = (_FULL, 0.98, 0.95, LENGTH_LEAST)
_WAVE = 1.2
"""A short stitch among tall ones reaches up to the outline by at most so much of its length."""

_CHANGED = (0.62, CHANGED_MOST)
"""The bounds of stems in a round that changes shape."""
_OUT = 9.0
"""The strain of what is no shape for a round at all."""
_KEPT = 1.5
"""No longer stem than this, in such a round, starts further out than on its base."""
_SHARP, _SIZES = 1.7, 8
"""The last round has true corners unless a stem would be longer than this; so many sizes are tried."""
_CORNERED = 1.25
"""Stitches in the corners of a border reach further than others by so much."""
_HOLLOW = 0.2
_LOW = 0.55
"""A common outline so low over any foot, in the stitch's height, is none: the round is a wave."""
_OUT_OF_REACH = 1.3
"""A head that would be further out than this over its foot, in the stitch's length, does not stand on the common circle."""


@dataclass(frozen=True, slots=True)
class Standing:
    """A placed round. ``s``: arc length of each head on the outline (unclamped); ``even``: all heads lie on the outline."""

    outline: Outline | Frame | Line
    s: list[float]
    heads: list[complex]
    normals: list[complex]
    feet: list[list[complex]]
    even: bool


def place(
    ground: Ground, course: Course, feet: list[list[complex]], room: Room, order: int, fans: Sequence[Fan] = (), more: float = 0.0
) -> Standing:
    """Find the outline and the places of a round. ``more``: raise the outline by so much over what the stitches ask."""
    task = task_of(ground, course, feet, room)
    if ground.gores and not task.corners and not course.open:
        task = replace(task, cuts=cuts(course, ground.gores))
    if fans:
        pins = {stem: head for fan in fans for stem, head in zip(fan.stems, fan.heads, strict=True)}
        task = replace(task, fans=True, pins=pins)
    if task.ring:
        task = _under_ring_heads(task)
    fullness = ground.fullness.get(course.round)
    outline, s, spots = _fitted(task, more, (fullness,) if fullness else _SHORTER)
    squared = not course.open and not task.ring and not task.spine and (task.changed or course.round - 1 in ground.rounded)
    if isinstance(outline, Outline) and squared:
        outline, s, spots = _squared(ground, task, outline, s, spots)
    heads = [head for head, _ in spots]
    normals = [normal for _, normal in spots]
    if course.open and task.corners:
        normals[0], normals[-1] = 1 + 0j, -1 + 0j
    radius = abs(feet[0][0])
    feet = _turned_ring_feet(task, feet, heads)
    wider = min((abs(legs[0]) for legs in feet), default=0.0) - radius
    if task.ring and course.open and task.corners and wider > 0.05 and not more:
        # Feet that stand on a wider circle than the ring's own, so that they have room, take their heads out with them.
        return place(ground, course, stand_wider(feet, radius + wider), room, order, fans, wider)
    if course.open and task.corners:
        feet = _started_further((0, -1), course, feet, heads)
    elif squared and task.frame is None:
        feet = _started_further(range(course.size), course, feet, heads, _KEPT)
    elif task.frame is not None:
        feet = _started_further([corner.at for corner in course.corners if corner.on_stem], course, feet, heads)
    even = is_even(task)
    if even and not task.corners and not (_within_reach(task, outline) and _over_all(task, outline)):
        # Over a scalloped edge the round dips with it, where its heads then still have room.
        even = False
    low, ways = _held(task, outline, heads, normals, feet, even)
    if not even and not course.open and not task.corners and len(heads) > 2:
        low, ways, lacking = _apart(task, low, ways, feet, fans)
        # In a hollow too narrow for all of its stitches they are drawn longer, out to where they have room.
        even = lacking > _HOLLOW and is_even(task) and not fans and _over_all(task, outline)
    heads, normals = (heads, normals) if even else (low, ways)
    for fan in fans:
        for stem, foot, head, way in zip(fan.stems, fan.feet, fan.heads, fan.ways, strict=True):
            heads[stem], normals[stem], feet[stem] = head, way, [foot]
    heads, normals = symmetric(heads, order), symmetric(normals, order)
    return Standing(outline, s, heads, normals, _symmetric_feet(feet, order), even)


def _fitted(task: Task, more: float, lengths: Sequence[float]) -> tuple[Outline | Frame, list[float], list[tuple[complex, complex]]]:
    """The outline on which no stem is drawn too long, or the one that comes nearest to that. ``lengths``: of stems over what they are,
    tried in this order.
    """
    if task.changed:
        levels = [level_of(task, i, outline_of(task, 1.0)) for i in range(task.course.size)]
        low = min(level + stem.height for level, stem in zip(levels, task.course.stems, strict=True))
        high = max(level + stem.height for level, stem in zip(levels, task.course.stems, strict=True))
        sizes = [max(low + (high - low) * k / 24 + more, roomy(task)) for k in range(25)]
        outlines = [outline_of(task, size) for size in sizes]
    else:
        outlines = [size_of(task, fullness, more) for fullness in lengths]
    cut = task.course.open and bool(task.corners)
    if cut:
        outlines = [size_of(task, fullness, more) for fullness in _CUT]
    best: tuple[float, Outline | Frame, list[float], list[tuple[complex, complex]]] | None = None
    for outline in outlines:
        s = _places(task, outline)
        spots = [outline.at(x) for x in s]
        parts = [abs(head - m) / stem.height for (head, _), m, stem in zip(spots, task.middles, task.course.stems, strict=True)]
        # As much too short counts like as much too long.
        worst = max(max(parts), 1.0 / max(min(parts), 0.01), _squeezed(task, parts)) if task.changed else max(parts)
        if task.frame is not None:
            worst = max(max(parts) / _CORNERED, 1.0 / max(min(parts), 0.01))
        if cut:
            worst = max(_SHORT / min(parts[1:-1], default=1.0), _ends_over(task, spots), 1.0)
        if best is None or worst < best[0] - 1e-6:
            best = (worst, outline, s, spots)
        if worst <= (1.0 if cut else LENGTH_MOST) and (cut or not task.changed):
            break
    assert best is not None
    return best[1], best[2], best[3]


def _squared(
    ground: Ground, task: Task, outline: Outline, s: list[float], spots: list[tuple[complex, complex]]
) -> tuple[Outline, list[float], list[tuple[complex, complex]]]:
    """The outline of a round that changes shape: a last round has true corners, if its stems can reach them, others round them."""
    last = task.course.round == ground.last
    if last:
        outline, s, spots = _sharp(task, outline, s, spots)
    if not last or _strain(task, spots, _SHARP) > 1.0:
        outline, s, spots = _rounded(task, outline, s, spots, ground.stretch)
    if outline.rho:
        ground.rounded.add(task.course.round)
    ground.strain = max(ground.strain, _strain(task, spots), _OUT if outline.rho and last else 0.0)
    return outline, s, spots


def _sharp(
    task: Task, outline: Outline, s: list[float], spots: list[tuple[complex, complex]]
) -> tuple[Outline, list[float], list[tuple[complex, complex]]]:
    """The same outline, of the size at which its true corners strain its stems least, none of them drawn too short."""
    if _strain(task, spots) <= 1.0:
        return outline, s, spots
    best = (_OUT, outline, s, spots)
    low = max(_shortest(task, outline), roomy(task))
    for k in range(_SIZES):
        sharp = replace(outline, apothem=low + max(outline.apothem - low, 0.0) * k / (_SIZES - 1))
        places = on_sides(task, sharp)
        found = [sharp.at(x) for x in places]
        strain = _strain(task, found)
        if strain < best[0] - 1e-6:
            best = (strain, sharp, places, found)
    return best[1:]


def _rounded(
    task: Task, outline: Outline, s: list[float], spots: list[tuple[complex, complex]], most: float
) -> tuple[Outline, list[float], list[tuple[complex, complex]]]:
    """The same outline, its corners rounded as little as will do, where a true corner lies out of its stitches' reach. ``most``: how long
    stems may be drawn, over what they are.
    """
    task = replace(task, room=replace(task.room, least=tuple(1.05 * least for least in task.room.least)))
    best = (_strain(task, spots, most), outline, s, spots)
    sizes = _rounded_sizes(task, outline) if best[0] > 1.0 else []
    for step in range(1, 31):
        if best[0] <= 1.0:
            break
        for size in sizes:
            round_one = replace(outline, apothem=size, rho=0.03 * step * size)
            places = on_sides(task, round_one)
            found = [round_one.at(x) for x in places]
            strain = _strain(task, found, most)
            if strain < best[0] - 0.005:
                best = (strain, round_one, places, found)
    return best[1:]


def _shortest(task: Task, outline: Outline) -> float:
    """The apothem at which the shortest stem of an outline has its least length."""
    return max(level_of(task, i, outline) + _CHANGED[0] * 1.02 * stem.height for i, stem in enumerate(task.course.stems))


def _rounded_sizes(task: Task, outline: Outline) -> list[float]:
    """From where its shortest stem has its least length to as large as it is."""
    low = max(_shortest(task, outline), roomy(task))
    return [low + (max(outline.apothem, low) - low) * k / 3 for k in range(4)]


def _strain(task: Task, spots: list[tuple[complex, complex]], most: float = CHANGED_MOST) -> float:
    """How far the stems of a round that changes shape are out of their bounds: 1 or less where all are within."""
    lengths = [(abs(head - m), stem.height) for (head, _), m, stem in zip(spots, task.middles, task.course.stems, strict=True)]
    # Long stems start a little further out than on their base.
    longest = max(max(length - _FURTHER, min(length, _KEPT * height)) / height for length, height in lengths)
    return max(longest / most, _CHANGED[0] / max(min(length / height for length, height in lengths), 0.01))


def _ends_over(task: Task, spots: list[tuple[complex, complex]]) -> float:
    """By how much the longer of the first and the last stem of a half motif's row is too long: they may start a little further out."""
    stems = task.course.stems
    return max((abs(spots[i][0] - task.middles[i]) - _FURTHER) / (LENGTH_MOST * stems[i].height) for i in (0, -1))


def _squeezed(task: Task, parts: list[float]) -> float:
    """How badly beginning chains, which cannot shrink, lack the height to stand upright."""
    return max((1.55 / part for part, stem in zip(parts, task.course.stems, strict=True) if stem.stitch.role == "standing"), default=0.0)


def is_crowded(course: Course, feet: list[list[complex]], room: Room) -> bool:
    """Whether a round's heads would need a much larger outline than its stitches reach."""
    if course.corners or course.open:
        return False
    levels = sorted(abs(sum(legs) / len(legs)) + 1.2 * stem.height for legs, stem in zip(feet, course.stems, strict=True))
    return sum(room.least) / (2 * pi) > levels[len(levels) // 2]


def _places(task: Task, outline: Outline | Frame) -> list[float]:
    return on_sides(task, outline) if task.corners or isinstance(outline, Frame) else on_circle(task, outline)


def _under_ring_heads(task: Task) -> Task:
    """The same task with the feet in the ring turned to where their heads will be."""
    outline = size_of(task, _FULL, 0.0)
    radius = abs(task.middles[0])
    heads = [outline.at(x)[0] for x in _places(task, outline)]
    return replace(task, middles=[radius * head / abs(head) for head in heads])


def _turned_ring_feet(task: Task, feet: list[list[complex]], heads: list[complex]) -> list[list[complex]]:
    """Stitches worked into the ring stand under their own heads, on a circle that keeps their feet apart."""
    if not task.ring:
        return feet
    stems = task.course.stems
    # No stem of a ring that must be wide is drawn much too long.
    radius = max(abs(feet[0][0]), min(abs(head) - 1.2 * stem.height for head, stem in zip(heads, stems, strict=True)))
    for i in range(len(heads) - (1 if task.course.open else 0)):
        j = (i + 1) % len(heads)
        angle = abs(argument(heads[j] / heads[i]))
        if 1e-6 < angle < 1.5:
            radius = max(radius, (stems[i].root + stems[j].root + CLEAR) / angle)
    # A head in a corner lies further out: its stitch need not reach down all the way.
    cornered = bool(task.corners)
    reach = [max(radius, abs(head) - LENGTH_MOST * stem.height if cornered else 0.0) for head, stem in zip(heads, stems, strict=True)]
    return [[r * head / abs(head)] * len(legs) for r, head, legs in zip(reach, heads, feet, strict=True)]


def _started_further(
    which: Sequence[int], course: Course, feet: list[list[complex]], heads: list[complex], most: float = LENGTH_MOST
) -> list[list[complex]]:
    """The feet of some stitches moved out along their stems, where these would be longer than ``most``: along the cut of a half motif, in
    the corners of a border or of a round that is squared.
    """
    moved = list(feet)
    for i in which:
        height, middle = course.stems[i].height, sum(feet[i]) / len(feet[i])
        off = min(abs(heads[i] - middle) - most * height, _FURTHER)
        if off > 0:
            moved[i] = [foot + _unit(heads[i] - middle) * off for foot in feet[i]]
    return moved


def stand_wider(feet: list[list[complex]], radius: float) -> list[list[complex]]:
    """The same feet in the ring on a circle of this radius."""
    return [[radius * foot / (abs(foot) or 1.0) for foot in legs] for legs in feet]


def _within_reach(task: Task, outline: Outline | Frame) -> bool:
    """Whether every stem of a circle reaches its outline."""
    stems = [(i, stem) for i, stem in enumerate(task.course.stems) if i not in task.over]
    return all(outline.apothem - outline.level(task.middles[i]) <= _OUT_OF_REACH * stem.height for i, stem in stems)


def _over_all(task: Task, outline: Outline | Frame) -> bool:
    """Whether an outline lies well over every foot."""
    stems = enumerate(task.course.stems)
    return all(outline.level(task.middles[i]) + _LOW * stem.height <= outline.apothem for i, stem in stems)


def _held(
    task: Task, outline: Outline | Frame, heads: list[complex], normals: list[complex], feet: list[list[complex]], even: bool
) -> tuple[list[complex], list[complex]]:
    """Heads no further from their feet than the stitch is long, and no nearer: where heights differ the outline is a wave."""
    if even:
        return heads, normals
    least, most = LENGTH_LEAST, _WAVE
    moved, out = [], []
    for i, (stem, head, normal, legs) in enumerate(zip(task.course.stems, heads, normals, feet, strict=True)):
        foot = sum(legs) / len(legs)
        # Over the top of a fan a foot may stand as high as the common outline: its stitch goes up from there, not along it.
        lift = 0.0 if task.corners else outline.level(foot) + stem.height - outline.level(head)
        way = head + normal * max(lift, 0.0) - foot
        length = abs(way) or 1.0
        held = min(max(length, least * stem.height), max(length, most * stem.height) if i in task.over else most * stem.height)
        if lift > 0 or abs(held - length) > 1e-9:
            head = foot + way / length * held
        moved.append(head)
        out.append(normal if even else _unit(way / length + normal))
    return moved, out


def _apart(
    task: Task, heads: list[complex], normals: list[complex], feet: list[list[complex]], fans: Sequence[Fan]
) -> tuple[list[complex], list[complex], float]:
    """Heads below the common outline, where some lack room beside each other, leaned apart; they look the way that they lean. And what the
    worst pair of others still lacks.
    """
    pinned = dict(task.pins)
    at = [pinned.get(i, head) for i, head in enumerate(heads)]
    if lack(at, task.room.least) < 0.02:
        return heads, normals, 0.0
    middles = [sum(legs) / len(legs) for legs in feet]
    for fan in fans:
        for stem, foot in zip(fan.stems, fan.feet, strict=True):
            middles[stem] = foot
    moved = parted(task.course.stems, middles, at, task.room.least, pinned.keys())
    ways = [_unit(head - middle) for head, middle in zip(moved, middles, strict=True)]
    return moved, [_unit(normal + way) for normal, way in zip(normals, ways, strict=True)], hollow(task.course.stems, moved)


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
