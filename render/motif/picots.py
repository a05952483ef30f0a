"""Small closed rings of ovals: the ring at a motif's centre, and picots on heads and chains."""

from __future__ import annotations

from cmath import exp
from collections.abc import Sequence
from itertools import pairwise
from math import cos, pi, sin, sqrt, tan

from motifold.render.fabric.model import Fabric, Run
from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR, OVAL_HALF, OVAL_LEAST, PITCH, PITCH_LEAST, WHITE
from motifold.render.motif.ground import Ground
from motifold.symbols.sizes import DOT_RADIUS

_FANNED = 1.15
"""Between two picots of one place, as an angle; more of them share out what three have."""
_TO_DOT = 0.17
"""From what bears a picot to its dot."""


def picot_place(ground: Ground, course: Course, index: int) -> tuple[complex, complex]:
    """On the head that a picot was worked on; in the midst of a group ("sc, picot, sc" in one place) between its two middle heads."""
    stitch = course.stems[index].stitch
    head, normal = ground.heads[stitch.id], ground.normals[stitch.id]
    after = course.stems[(index + course.direction) % course.size].stitch
    gap = course.gaps[index if course.direction > 0 else index - 1]
    if gap.parts or after.id == stitch.id or not {leg.base for leg in stitch.legs} & {leg.base for leg in after.legs}:
        return head, normal
    out = normal + ground.normals[after.id]
    return (head + ground.heads[after.id]) / 2, out / abs(out) if abs(out) > 0.2 else normal


def ring_radius(count: int, dot: bool) -> float:
    """Radius of a closed ring of so many ovals (and a dot): straight ovals on a circle, inner edges clear of each other."""
    places = count + (0.55 if dot else 0.0)
    if places < 3:
        return 0.5
    return max(0.44, PITCH * places / (2 * pi), OVAL_LEAST / 2 / tan(min(pi / places, 1.5)) * 1.02 + OVAL_HALF * 0.9)


def picots_on(ground: Ground, runs: Sequence[Run], at: complex, normal: complex, rise: float, direction: float) -> None:
    """All picots of one place, one or, as in a trefoil, several: these fan out in the order worked, and stand off as far as that asks, each
    tied to its place by a hairline.
    """
    step = min(_FANNED, 2 * _FANNED / max(len(runs) - 1, 1))
    reaches = [_picot_radius(len(picot_parts(ground.fabric, run)[0])) for run in runs]
    off = max((_stand_off(a, b, step) for a, b in pairwise(reaches)), default=0.0)
    off = max(off - rise - _TO_DOT, 0.0)
    for k, run in enumerate(runs):
        way = normal * exp(1j * direction * step * (k - (len(runs) - 1) / 2))
        picot(ground, run, at, way, rise + off)
        if off > WHITE:
            ground.links.setdefault(run.id, []).append((at + way * rise, at + way * (rise + off + _TO_DOT - DOT_RADIUS)))


def _stand_off(one: float, other: float, turn: float) -> float:
    """How far out two picots of these radii begin, so that their rings are clear of each other with this angle between them."""
    # Middles at ``one + x`` and ``other + x`` from the place, ``apart`` between them.
    apart, c = one + other + 2 * OVAL_HALF + CLEAR, cos(turn)
    square, line, rest = 2 - 2 * c, (2 - 2 * c) * (one + other), one * one + other * other - 2 * one * other * c - apart * apart
    clear = (-line + sqrt(max(line * line - 4 * square * rest, 0.0))) / (2 * square)
    return max(clear, (DOT_RADIUS + CLEAR) / sin(turn / 2))


def picot_parts(fabric: Fabric, run: Run) -> tuple[list[int], list[int]]:
    """The chains of a picot, and what closes it: a stitch among them, or the slip stitch after them."""
    chains = [s for s in run.stitches if fabric.stitches[s].role == "chain"]
    closers = [s for s in run.stitches if fabric.stitches[s].role != "chain"]
    following = max(run.stitches, default=-1) + 1
    if following < len(fabric.stitches) and fabric.stitches[following].role == "picot":
        closers.append(following)
    return chains, closers


def _picot_radius(count: int) -> float:
    """Of a picot's ring. Straight across, neighbouring ovals of the ring stand a pitch apart too."""
    return max(ring_radius(count, True), PITCH_LEAST / (2 * sin(pi / (count + 0.75))) if count > 1 else 0.0)


def picot(ground: Ground, run: Run, at: complex, normal: complex, rise: float) -> None:
    """A picot: a ring of ovals closed by its dot, on the head (or chain) that it was worked on."""
    chains, closers = picot_parts(ground.fabric, run)
    count = len(chains)
    if not count:
        return
    share = 2 * pi / (count + 0.75)
    radius = _picot_radius(count)
    base = at + normal * (rise + _TO_DOT)
    centre = base + normal * radius
    for k, chain in enumerate(chains):
        turn = -normal * exp(1j * (share * (k + 0.875)))
        middle = centre + radius * turn
        ground.tips[chain] = (middle - 1j * turn * OVAL_LEAST / 2, middle + 1j * turn * OVAL_LEAST / 2)
        ground.normals[chain] = turn
    for closer in closers:
        ground.tips[closer] = (base, base)
        ground.normals[closer] = normal


def picots_on_chain(ground: Ground, runs: Sequence[Run], part: int, direction: float) -> None:
    """The picots on one chain of a run."""
    if part in ground.tips:
        start, end = ground.tips[part]
        picots_on(ground, runs, (start + end) / 2, ground.normals[part], OVAL_HALF + 0.03, direction)
