"""The last turn: the whole chart stands level, a side at the bottom; a circle with its last round the same on the left and on the right."""

from __future__ import annotations

from cmath import phase as argument
from math import pi

from motifold.render.motif.ground import Ground


def level(ground: Ground) -> float:
    """The angle to turn everything by."""
    if not ground.courses:
        return 0.0
    course = ground.courses[max(ground.courses)]
    if course.open or ground.spine or ground.frame is not None:
        return 0.0
    shape = next((shape for shape in reversed(ground.shapes) if len(shape.corners) > 2), None)
    if shape is not None:
        # The sides of the last polygon themselves, whatever stands on them: a shell over a corner need not lie true to it.
        first, second = (complex(*corner) for corner in shape.corners[:2])
        return _least(-pi / 2 - argument((first - second) * 1j), 2 * pi / len(shape.corners))
    corners = len(course.corners)
    if corners > 2:
        corner = course.corners[0]
        at = ground.heads[course.stems[corner.at].stitch.id]
        if not corner.on_stem:
            at = at / abs(at) + _unit(ground.heads[course.stems[(corner.at + 1) % course.size].stitch.id])
        # A side's middle at the bottom: corners half a side's angle from it.
        wish = -pi / 2 + pi / corners
        return _least(wish - argument(at), 2 * pi / corners)
    tallest = max(range(course.size), key=lambda i: (round(abs(ground.heads[course.stems[i].stitch.id]), 6), -i))
    order = ground.order[course.round]
    return _least(pi / 2 - argument(ground.heads[course.stems[tallest].stitch.id]), 2 * pi / order if order > 1 else 2 * pi)


def _unit(z: complex) -> complex:
    return z / (abs(z) or 1.0)


def _least(angle: float, period: float) -> float:
    return (angle + period / 2) % period - period / 2
