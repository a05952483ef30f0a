"""Small closed rings of ovals: the ring at a motif's centre, and picots on heads and chains."""

from __future__ import annotations

from cmath import exp
from math import pi, sin, tan

from motifold.render.fabric.model import Run
from motifold.render.motif.course import Course
from motifold.render.motif.extents import OVAL_HALF, OVAL_LEAST, PITCH, PITCH_LEAST
from motifold.render.motif.ground import Ground


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


def picot(ground: Ground, run: Run, at: complex, normal: complex, rise: float) -> None:
    """A picot: a ring of ovals closed by its dot, on the head (or chain) that it was worked on."""
    chains = [s for s in run.stitches if ground.fabric.stitches[s].role == "chain"]
    closers = [s for s in run.stitches if ground.fabric.stitches[s].role != "chain"]
    following = max(run.stitches, default=-1) + 1
    if following < len(ground.fabric.stitches) and ground.fabric.stitches[following].role == "picot":
        closers.append(following)
    count = len(chains)
    if not count:
        return
    share = 2 * pi / (count + 0.75)
    # Straight across, neighbouring ovals of the ring stand a pitch apart too.
    radius = max(ring_radius(count, True), PITCH_LEAST / (2 * sin(share / 2)) if count > 1 else 0.0)
    base = at + normal * (rise + 0.17)
    centre = base + normal * radius
    for k, chain in enumerate(chains):
        turn = -normal * exp(1j * (share * (k + 0.875)))
        middle = centre + radius * turn
        ground.tips[chain] = (middle - 1j * turn * OVAL_LEAST / 2, middle + 1j * turn * OVAL_LEAST / 2)
        ground.normals[chain] = turn
    for closer in closers:
        ground.tips[closer] = (base, base)
        ground.normals[closer] = normal


def picot_on_chain(ground: Ground, run: Run, part: int) -> None:
    """A picot on one chain of a run."""
    if part in ground.tips:
        start, end = ground.tips[part]
        picot(ground, run, (start + end) / 2, ground.normals[part], OVAL_HALF + 0.03)
