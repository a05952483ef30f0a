"""Points and leaves: a chain that sticks out, and stitches worked back along it. They stand beside their chain, square to it."""

from __future__ import annotations

from math import atan2, pi
from typing import TYPE_CHECKING

from motifold.render.fabric.model import Fabric, Stitch
from motifold.render.motif.extents import CLEAR, OVAL, OVAL_HALF, PITCH, STEM_HALF, WHITE, stem_height
from motifold.render.motif.spread import pooled
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import DOT_RADIUS, HEAD_WIDTH

if TYPE_CHECKING:
    from motifold.render.motif.course import Course
    from motifold.render.motif.ground import Ground

_FOOT = OVAL_HALF + CLEAR + STEM_HALF
"""From the middle of a chain to the foot of what lies beside it."""
_BETWEEN = 0.35
"""From a head of one branch to the middle of the next one's chains."""
_BREADTH = 0.83
"""Of a stitch that lies beside a chain."""


@dataclass(frozen=True, slots=True)
class Branch:
    """A run of chains worked back along: the run, the stitches on it, and how many stems of its round were worked before it."""

    run: int
    stitches: tuple[int, ...]
    after: int


def spine_chains(fabric: Fabric) -> dict[int, int]:
    """The run of each chain that is worked back along."""
    return {chain: run.id for run in fabric.runs if run.role == "spine" for chain in run.stitches}


def on_spine(stitch: Stitch, spines: dict[int, int]) -> int | None:
    """The run that a stitch is worked back along, if it is."""
    for leg in stitch.legs:
        if leg.base.kind == "stitch" and leg.base.id in spines:
            return spines[leg.base.id]
    return None


def grow(ground: Ground, course: Course, branch: Branch) -> None:
    """Place a branch on the head that it was begun on, straight out: its stitches reach into the sector up to the next branch. Where that
    is too narrow near the centre it begins further out, tied by a hairline to where it was begun.
    """
    size, way = course.size, course.direction
    index = (branch.after - 1 if way > 0 else size - branch.after) % size
    stem = course.stems[index]
    start, out = ground.heads[stem.stitch.id], ground.normals[stem.stitch.id]
    if not branch.after and stem.stitch.kind != "sl st":
        # Begun before the first stitch of its round, it grows where that round begins.
        start -= out * stem.height
    along = 1j * out * way
    reaches = _reaches(ground, branch)
    lift = 0.0
    if not course.open and start:
        free = _sector(course, branch)
        while lift < 8.0 and not all(_fits(abs(start) + lift + up, aside, free) for up, aside in reaches):
            lift += 0.1
    rise = (DOT_RADIUS if stem.stitch.kind == "sl st" else HEAD_WIDTH / 2) + CLEAR + lift
    _lay(ground, branch, start + out * rise, out, along)
    if lift > WHITE:
        ground.links.setdefault(branch.run, []).append((start + out * (rise - lift), start + out * (rise - 0.05)))


def room_beside(ground: Ground, course: Course, branch: Branch) -> float:
    """How much further apart than a pitch each the stitches up to the next branch must stand, so that two branches of a row have room."""
    between = [other.after - branch.after for other in course.branches if other.after > branch.after]
    widest = max((aside for _, aside in _reaches(ground, branch)), default=0.0)
    return max(widest + _BETWEEN - min(between) * PITCH, 0.0) if between else 0.0


def _reaches(ground: Ground, branch: Branch) -> list[tuple[float, float]]:
    """For each stitch of a branch how far out, and how far aside of the chain, its head reaches."""
    chains = {chain: k for k, chain in enumerate(ground.fabric.runs[branch.run].stitches)}
    found = []
    for number in branch.stitches:
        stitch = ground.fabric.stitches[number]
        at = [chains[leg.base.id] for leg in stitch.legs if leg.base.id in chains]
        if at:
            found.append((OVAL / 2 + min(at) * PITCH, _FOOT + (stem_height(stitch) if stitch.kind != "sl st" else 2 * DOT_RADIUS)))
    return found


def _sector(course: Course, branch: Branch) -> float:
    """The angle, in a round of evenly spaced stitches, up to the next branch."""
    afters = sorted({other.after for other in course.branches})
    following = afters[(afters.index(branch.after) + 1) % len(afters)]
    return 2 * pi * ((following - branch.after) % course.size or course.size) / course.size


def _fits(radius: float, aside: float, free: float) -> bool:
    """Whether a stitch that lies square to its branch, that far out, stays clear of the next one."""
    return free > pi or atan2(aside + _BETWEEN, radius) < free


def _lay(ground: Ground, branch: Branch, root: complex, out: complex, along: complex) -> None:
    """Ovals from ``root`` on, and what is worked back along them beside, each square to its chain; several in one chain fan out."""
    fabric = ground.fabric
    for k, chain in enumerate(fabric.runs[branch.run].stitches):
        middle = root + out * (OVAL / 2 + k * PITCH)
        ground.tips[chain] = (middle - out * OVAL / 2, middle + out * OVAL / 2)
        ground.normals[chain] = along
    standing = [s for s in branch.stitches if any(leg.base.id in ground.tips for leg in fabric.stitches[s].legs)]
    bases = [_bases(ground, fabric.stitches[s]) for s in standing]
    places = [((sum(at) / len(at) - root) / out).real for at in bases]
    # Worked from the tip down: the nearest places in that order that leave each its breadth.
    spread = pooled([-place - _BREADTH * i for i, place in enumerate(places)])
    lowest = min(places, default=0.0)
    for i, number in enumerate(standing):
        stitch = fabric.stitches[number]
        place = -(spread[i] + _BREADTH * i) + max(lowest + spread[-1] + _BREADTH * (len(standing) - 1), 0.0)
        lean = out * (place - places[i])
        if stitch.kind == "sl st":
            at = sum(bases[i]) / len(bases[i]) + along * (OVAL_HALF + DOT_RADIUS + CLEAR)
            ground.feet[number], ground.heads[number] = (at,), at
        else:
            feet = [base + along * _FOOT + lean * 0.3 for base in bases[i]]
            ground.feet[number] = tuple(feet + [feet[-1]] * (len(stitch.legs) - len(feet)))
            middle = sum(feet) / len(feet)
            way = along * stem_height(stitch) + lean * 0.7
            ground.heads[number] = middle + way / abs(way) * max(abs(way) * 0.95, stem_height(stitch))
        ground.normals[number] = along


def _bases(ground: Ground, stitch: Stitch) -> list[complex]:
    return [sum(ground.tips[leg.base.id]) / 2 for leg in stitch.legs if leg.base.id in ground.tips]
