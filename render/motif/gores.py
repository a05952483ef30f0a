"""Balls: rounds that decrease, laid flat. After its last increase a ball has no room in the plane; like the map of a globe it is cut into
gores, each straight and tapering, and open wedges lie between them.

Where the cuts may be follows from the work: two neighbours that a later decrease draws together, through whatever rounds, belong to one
gore; neighbours whose ways never meet may part. So a gore is all that one stitch of the last decreasing round grew from.
"""

from __future__ import annotations

from collections.abc import Mapping

from motifold.render.fabric.model import Fabric, Stitch
from motifold.render.motif.course import Course


def gores_of(fabric: Fabric) -> dict[int, int]:
    """The gore of each stitch in a run of rounds that never increase, and decrease somewhere: named by the stitch that it ends in."""
    found: dict[int, int] = {}
    run: list[tuple[Stitch, ...]] = []
    for index, worked in enumerate(fabric.rounds):
        stems = _stems(fabric, index)
        if worked.kind == "round" and stems and _keeps(fabric, stems, index):
            run.append(stems)
        else:
            found.update(_named(run))
            run = []
    found.update(_named(run))
    return found


def _stems(fabric: Fabric, index: int) -> tuple[Stitch, ...]:
    return tuple(stitch for stitch in fabric.round_stitches(index) if stitch.role in ("stitch", "standing"))


def _keeps(fabric: Fabric, stems: tuple[Stitch, ...], index: int) -> bool:
    """Whether a round stands on the one below stitch on stitch, never two on one, and has no spaces of its own."""
    if any(run.round == index and run.role == "space" for run in fabric.runs):
        return False
    bases: set[int] = set()
    for stitch in stems:
        own = {leg.base.id for leg in stitch.legs}
        on_stitches = all(leg.base.kind == "stitch" and fabric.stitches[leg.base.id].round == index - 1 for leg in stitch.legs)
        if not own or bases & own or not on_stitches:
            return False
        bases |= own
    return True


def _named(run: list[tuple[Stitch, ...]]) -> dict[int, int]:
    if not any(len({leg.base.id for leg in stitch.legs}) > 1 for stems in run for stitch in stems):
        return {}
    names: dict[int, int] = {}
    for stems in reversed(run):
        for stitch in stems:
            name = names.setdefault(stitch.id, stitch.id)
            for leg in stitch.legs:
                names[leg.base.id] = name
    placed = {stitch.id for stems in run for stitch in stems}
    return {stitch: name for stitch, name in names.items() if stitch in placed}


def cuts(course: Course, gores: Mapping[int, int]) -> tuple[bool, ...]:
    """For the gap after each stem, whether it lies between two gores; empty for a round that is not part of any."""
    names = [gores.get(stem.stitch.id) for stem in course.stems]
    if None in names or len(set(names)) < 2:
        return ()
    return tuple(names[i] != names[(i + 1) % course.size] for i in range(course.size))


def kept_order(course: Course, gores: Mapping[int, int], order: int) -> int:
    """The rotations that a round keeps when it is cut: a ball that begins in eights and ends in sixes has gores that repeat but twice."""
    found = cuts(course, gores) if gores else ()
    if not found:
        return order
    for part in range(order, 1, -1):
        step = course.size // part
        if order % part == 0 and all(found[i] == found[(i + step) % course.size] for i in range(course.size)):
            return part
    return 1
