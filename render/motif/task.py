"""What placing a round starts from: its stems with their feet, sides and groups, the shape of its outline, and how large that must be."""

from __future__ import annotations

from cmath import exp
from cmath import phase as argument
from collections.abc import Mapping, Sequence
from dataclasses import field, replace
from math import copysign, floor, pi, tan

from motifold.render.motif.course import Course
from motifold.render.motif.extents import of_one_height
from motifold.render.motif.feet import shared
from motifold.render.motif.frame import Frame
from motifold.render.motif.ground import Ground
from motifold.render.motif.outline import Outline
from motifold.render.motif.posts import post_of
from motifold.render.motif.room import Room
from motifold.symbols.record import dataclass

PULL_SOLID, PULL_LACE, PULL_SIDE = 0.02, 0.25, 0.3
"""How strongly heads are pulled over their bases: weakly in a solid circle, or every increase would start a spiral arm."""
SLACK = 0.12
"""Stiffness of a gap of chains between different bases, against 1 for neighbours."""
_SHORT = 1.6
"""Post stitches no taller than this stand much lower than what is worked beside them into spaces."""
_HOOKED = 0.08
"""A post stitch starts lower than its neighbours and is drawn so much longer, part of its height."""


@dataclass(frozen=True, slots=True)
class Task:
    """What placing a round starts from. ``middles``: the middle of each stem's feet; ``sides``: the side that each stem is on; ``groups``:
    stems by base; ``pins``: heads that petals fix; ``changed``: the round changes the shape of the one below; ``spine``: see ``Outline``;
    ``cuts``: see ``gores.cuts``. ``over``: stems that reach down over a whole round, or several, whatever they are: they reach the line of
    their own round all the same. ``frame``: what the outline is, where that is no regular one, at any apothem; its first side is side 0.
    """

    course: Course
    room: Room
    middles: list[complex]
    sides: list[int]
    groups: list[list[int]]
    ring: bool
    corners: int
    phase: float
    fans: bool = False
    pins: Mapping[int, complex] = field(default_factory=dict)
    changed: bool = False
    spine: float = 0.0
    cuts: tuple[bool, ...] = ()
    frame: Frame | None = None
    over: frozenset[int] = frozenset()


def outline_of(task: Task, apothem: float) -> Outline | Frame:
    """The outline of a round at a given size."""
    if task.frame is not None:
        return replace(task.frame, apothem=apothem)
    return Outline(task.corners, apothem, task.phase, spine=task.spine)


def task_of(ground: Ground, course: Course, feet: list[list[complex]], room: Room) -> Task:
    """Sort out a round: its sides and groups, the phase of its outline, and whether it changes shape."""
    middles = [sum(legs) / len(legs) for legs in feet]
    over = _reaching_over(ground, course)
    groups = [sorted({s for s, _ in members}, key=[s for s, _ in members].index) for members in shared(course).values()]
    ring = all(leg.base.kind == "ring" for stem in course.stems for leg in stem.stitch.legs)
    corners = corner_count(course)
    sides = _sides(course) if corners else [0] * course.size
    phase = 0.0
    spine = 0.0 if course.open else ground.spine
    frame = ground.frame if ground.frame is not None and ground.frame.corners == corners and not course.open else None
    if frame is not None:
        frame = frame.turned_to([[middles[i] for i in range(course.size) if sides[i] == number] for number in range(corners)])
        return Task(course, room, middles, sides, groups, ring, corners, 0.0, frame=frame, over=over)
    if course.open or (spine and not corners):
        pass
    elif spine:
        phase = _level_phase(course, middles)
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
    hooked = sum(1 for stem in course.stems if post_of(stem))
    uneven = max(heights) - min(heights) > 0.3 or (0 < hooked < course.size and max(heights) < _SHORT)
    changed = corners > 0 and not ring and (uneven or (before is not None and corner_count(before) != corners))
    return Task(course, room, middles, sides, groups, ring, corners, phase, changed=changed, spine=spine, over=over)


def _reaching_over(ground: Ground, course: Course) -> frozenset[int]:
    """Stems on stitches of a round before the last, among others that stand on the last."""
    found = frozenset(
        i
        for i, stem in enumerate(course.stems)
        if any(leg.base.kind == "stitch" and ground.at.get(leg.base.id, (course.round,))[0] < course.round - 1 for leg in stem.stitch.legs)
    )
    return found if 2 * len(found) < course.size and not course.open else frozenset()


def _level_phase(course: Course, middles: Sequence[complex]) -> float:
    """Where the first corner of a rectangle lies: its sides are level, so that only the quarter must be found."""
    turned = 0j
    for number, corner in enumerate(course.corners):
        after = middles[corner.at] if corner.on_stem else middles[corner.at] + middles[(corner.at + 1) % course.size]
        turned += complex(copysign(1.0, after.real), copysign(1.0, after.imag)) * exp(-0.5j * pi * number)
    return (floor(argument(turned) / (pi / 2)) + 0.5) * pi / 2


def corner_count(course: Course) -> int:
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


def level_of(task: Task, index: int, outline: Outline | Frame) -> float:
    """How far out a stem's foot is, square to its side."""
    middle = task.middles[index]
    if not task.corners or task.ring:
        return outline.level(middle)
    return outline.height_on(middle, task.sides[index])


def size_of(task: Task, fullness: float, more: float) -> Outline | Frame:
    """The outline: as large as the stitches are tall, or as the heads need room."""
    outline = outline_of(task, 1.0)
    wishes = sorted(level_of(task, i, outline) + (fullness + (_HOOKED if post_of(stem) else 0.0)) * stem.height
                    for i, stem in enumerate(task.course.stems) if i not in task.over)  # fmt: skip
    tall = is_even(task)
    apothem = wishes[len(wishes) // 2] if tall else wishes[min(len(wishes) - 1, int(0.75 * len(wishes)))]
    room = _room_between_petals(task, apothem) if task.pins and not task.corners else roomy(task)
    return replace(outline, apothem=max(apothem + more, room))


def _room_between_petals(task: Task, wish: float) -> float:
    """The least radius that has room for what stands between petals; the petals have theirs, as an angle."""
    count = task.course.size
    angle, needs = 0.0, 0.0
    for i in range(count):
        after = (i + 1) % count
        if i in task.pins and after in task.pins and not task.course.gaps[i].parts:
            angle += abs(argument(task.pins[after] / task.pins[i]))
        else:
            needs += task.room.least[i]
    free = 2 * pi - angle
    return min(needs / free, 1.25 * wish) if free > 0.3 else wish


def roomy(task: Task) -> float:
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
    if task.frame is not None:
        none, one = outline_of(task, 0.0), outline_of(task, 1.0)
        return max((need - none.side_of(k)) / (one.side_of(k) - none.side_of(k)) for k, need in enumerate(needs))
    if task.spine:
        outline = Outline(task.corners, 1.0, task.phase, spine=task.spine)
        needs = [need - (2 * task.spine if outline.is_long(side) else 0.0) for side, need in enumerate(needs)]
    return max(needs) / (2 * tan(pi / task.corners))


def is_even(task: Task) -> bool:
    """All stems of one height: then the heads stand on the outline whatever happens."""
    heights = [stem.height for i, stem in enumerate(task.course.stems) if i not in task.over]
    return (bool(task.corners) and not task.fans) or of_one_height(heights)


def filled(likes: Sequence[float], fulls: Sequence[float], slack: Sequence[bool], total: float) -> list[float]:
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
