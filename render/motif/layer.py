"""Layers: a round worked into the loops that an earlier one left unused (a ruffle, a skirt, a brim) when others stand on it already.

In the plane there is no room for it where it is worked. It is drawn outside all that was worked before, after a gap, on a pale second
picture of the stitches that it goes into.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from motifold.render.motif.course import Course
from motifold.render.motif.extents import OVAL_LEAST
from motifold.render.motif.ground import Ground

_GAP = 1.7
"""White between the work and the second picture of a round of it, with room for its name."""
_LOOPS = ("front loop", "back loop")


def is_layer(ground: Ground, course: Course) -> bool:
    """Whether all of a round goes into one round that others stand on: into its unused loops, or back to it after such a layer."""
    if course.open or ground.frame is not None:
        return False
    bases = [leg.base for stem in course.stems for leg in stem.stitch.legs]
    if not bases or any(base.kind != "stitch" or base.id not in ground.at or base.id not in ground.heads for base in bases):
        return False
    rounds = {ground.at[base.id][0] for base in bases}
    if len(rounds) != 1 or min(rounds) >= course.round - 1 or any(stem.stitch.behind for stem in course.stems):
        return False
    if all(base.foot in _LOOPS for base in bases):
        used = {leg.base.id for other in ground.courses.values() for stem in other.stems for leg in stem.stitch.legs
                if leg.base.kind == "stitch" and leg.base.foot in _LOOPS}  # fmt: skip
        return all(base.id in used for base in bases)
    between = range(min(rounds) + 1, course.round)
    return all(base.foot == "loops" for base in bases) and any(n in ground.lifted for n in between)


@contextmanager
def lifted(ground: Ground, course: Course) -> Iterator[None]:
    """While its round is placed, the stitches of a layer's base stand where they are shown a second time."""
    bases = list(dict.fromkeys(leg.base.id for stem in course.stems for leg in stem.stitch.legs))
    ends = [*ground.heads.values(), *(tip for tips in ground.tips.values() for tip in tips)]
    nearest = min(abs(ground.heads[number]) for number in bases)
    scale = (max(map(abs, ends)) + OVAL_LEAST / 2 + _GAP) / max(nearest, 0.5)
    kept = {number: ground.heads[number] for number in bases}
    for number in bases:
        ground.heads[number] = kept[number] * scale
        ground.again.append((number, course.round, kept[number] * scale, ground.normals[number]))
    ground.lifted.add(course.round)
    yield
    ground.heads.update(kept)
