"""Where the small open ring of each space lies: under the middle of the feet of all that one round works into it."""

from __future__ import annotations

from collections.abc import Callable

from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground, point
from motifold.symbols.feet import space_ring
from motifold.symbols.ink import Mark


def rings_of(ground: Ground, course: Course, near: Callable[[complex], bool] = lambda _: True) -> dict[int, Mark]:
    """The ring of each space (run id) that a course works into; only of those with a foot ``near``."""
    feet: dict[int, tuple[list[complex], list[complex]]] = {}
    for stem in course.stems:
        for leg, foot in zip(stem.stitch.legs, ground.feet[stem.stitch.id], strict=False):
            if leg.base.foot == "space":
                found = feet.setdefault(leg.base.id, ([], []))
                found[0].append(foot)
                found[1].append(ground.heads[stem.stitch.id])
    shown = {run: both for run, both in feet.items() if any(map(near, both[0]))}
    return {run: space_ring([point(f) for f in legs], [point(h) for h in heads]) for run, (legs, heads) in shown.items()}
