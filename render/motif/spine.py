"""Ovals: rounds worked along both sides of a foundation chain. The chain lies along the x axis, its first chain at the left."""

from __future__ import annotations

from cmath import exp
from math import pi

from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR, OVAL, OVAL_HALF, STEM_HALF
from motifold.render.motif.ground import Ground

_PITCH = 1.0
_RISE = OVAL_HALF + CLEAR + STEM_HALF


def lay_spine(ground: Ground, index: int) -> None:
    """Place the foundation chain; chains that stand up as a stitch, and turning chains past the first stitch, are not part of it."""
    fabric = ground.fabric
    upright = {chain for stitch in fabric.stitches if stitch.role == "standing" for chain in stitch.chains}
    used = {leg.base.id for stitch in fabric.stitches for leg in stitch.legs if leg.base.kind == "stitch"}
    chains = [s.id for s in fabric.round_stitches(index) if s.kind == "ch" and s.id not in upright]
    while chains and chains[-1] not in used and used.intersection(chains):
        chains.pop()
    middle = (len(chains) - 1) / 2
    for k, chain in enumerate(chains):
        x = (k - middle) * _PITCH
        ground.tips[chain] = (complex(x - OVAL / 2, 0.0), complex(x + OVAL / 2, 0.0))
        ground.normals[chain] = 1j
    ground.spine = middle * _PITCH


def feet_round_spine(ground: Ground, course: Course) -> list[list[complex]]:
    """Feet along the upper side, round the left end, back along the lower side, round the right end: counter-clockwise from the hook's
    end.
    """
    chains = [stem.stitch.legs[0].base.id if stem.stitch.legs else -1 for stem in course.stems]
    known = [chain for chain in chains if chain in ground.tips]
    if not known:
        return [[0j] * max(len(stem.stitch.legs), 1) for stem in course.stems]
    left = min(known)
    turn = [i for i, chain in enumerate(chains) if chain == left]
    first, last = turn[0], turn[-1]
    right = max(known)
    feet = []
    for i, (chain, stem) in enumerate(zip(chains, course.stems, strict=True)):
        at = sum(ground.tips[chain]) / 2 if chain in ground.tips else complex(-ground.spine if first <= i <= last else ground.spine)
        if first <= i <= last:
            way = 1j * exp(1j * pi * (i - first) / max(last - first, 1))
        elif i < first:
            way = 1j
        else:
            way = _right_end(chains, i, right)
        feet.append([at + way * _RISE] * max(len(stem.stitch.legs), 1))
    return feet


def _right_end(chains: list[int], index: int, right: int) -> complex:
    """Downwards along the lower side; round the end for the stitches that close the round in its last chain."""
    closing = [i for i in range(len(chains) // 2, len(chains)) if chains[i] == right]
    if index not in closing:
        return -1j
    opening = sum(1 for i in range(len(chains) // 2) if chains[i] == right)
    steps = len(closing) + opening - 1
    return -1j * exp(1j * pi * closing.index(index) / max(steps, 1))
