"""Looking ahead: where a round has more stitches than its circle has room for, the rounds inside it are drawn a little larger."""

from __future__ import annotations

from collections.abc import Mapping

from motifold.render.motif.extents import of_one_height
from motifold.render.motif.ground import Ground

FULL, FULLEST = 1.02, 1.24
"""Stems are drawn at least so much of their nominal length, where the shape leaves the choice, and at most so much to make room."""


def longer_inside(ground: Ground, lacking: Mapping[int, float]) -> dict[int, float]:
    """How long the stems of each round inside a crowded one are drawn, over what they are; empty where no round is crowded.

    ``lacking``: how much further out each of them would have to be. What a round lacks is shared out evenly among the circles below it
    that stand on each other, down to the first that is no circle.
    """
    found: dict[int, float] = {}
    for number, lack in lacking.items():
        below = _circles_below(ground, number, lacking)
        gain = sum((FULLEST - FULL) * height for height in below.values())
        if gain <= 0:
            continue
        wish = FULL + (FULLEST - FULL) * min(1.0, lack / gain)
        for other in below:
            found[other] = max(found.get(other, 0.0), wish)
    return found


def _circles_below(ground: Ground, number: int, lacking: Mapping[int, float]) -> dict[int, float]:
    """The height of each round below one, while they are plain circles."""
    found: dict[int, float] = {}
    for other in sorted((n for n in ground.courses if n < number), reverse=True):
        course = ground.courses[other]
        heights = [stem.height for stem in course.stems]
        if course.corners or course.open or ground.spine or other in lacking:
            break
        if of_one_height(heights):
            found[other] = max(heights)
    return found
