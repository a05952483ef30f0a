"""Ovals: rounds worked along both sides of a foundation chain. The chain lies along the x axis, its first chain at the left."""

from __future__ import annotations

from cmath import exp
from collections.abc import Mapping
from itertools import pairwise
from math import pi

from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR, OVAL, OVAL_HALF, STEM_HALF
from motifold.render.motif.ground import Ground

_PITCH = 1.0
_RISE = OVAL_HALF + CLEAR + STEM_HALF
_LONGER, _UPRIGHT = OVAL / 2 - OVAL_HALF, 0.06
_FAN = 0.2
"""Between the feet of an increase."""


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
    ground.spine = middle * _PITCH + _LONGER


def feet_round_spine(ground: Ground, course: Course) -> list[list[complex]]:
    """Feet along the upper side, round the left end, back along the lower side, round the right end: counter-clockwise from the hook's
    end.
    """
    chains = [stem.stitch.legs[0].base.id if stem.stitch.legs else -1 for stem in course.stems]
    known = [chain for chain in chains if chain in ground.tips]
    if not known:
        return [[0j] * max(len(stem.stitch.legs), 1) for stem in course.stems]
    left, right = min(known), max(known)
    turn = [i for i, chain in enumerate(chains) if chain == left]
    first, last = turn[0], turn[-1]
    half = len(chains) // 2
    closing = [i for i in range(half, len(chains)) if chains[i] == right]
    # Which stems go round an end of the chain, in order; without a closing stitch in its last chain the right end is not gone round.
    ends = (list(range(first, last + 1)), closing + [i for i in range(half) if chains[i] == right] if closing else [])
    ways: dict[int, complex] = {}
    for start, end in zip((1j, -1j), ends, strict=True):
        ways.update({i: start * exp(1j * pi * k / max(len(end) - 1, 1)) for k, i in enumerate(end)})
    rise = max(_RISE, *(_rise_round(course, end) for end in ends))
    aside = _aside(chains, ways)
    feet = []
    for i, (chain, stem) in enumerate(zip(chains, course.stems, strict=True)):
        end_at = (_LONGER - ground.spine) * (1.0 if first <= i <= last else -1.0)
        at = sum(ground.tips[chain]) / 2 if chain in ground.tips else complex(end_at)
        way = ways.get(i, 1j if i < first else -1j)
        # An end is as long as half its oval; beginning chains start a little lower than a stem does.
        out = (rise if i in ways else _RISE) + (_UPRIGHT if stem.stitch.role == "standing" else 0.0)
        foot = at + way * out + (_LONGER * way.real if i in ways else 0.0) + 1j * way * aside.get(i, 0.0)
        feet.append([foot] * max(len(stem.stitch.legs), 1))
    return feet


def _rise_round(course: Course, end: list[int]) -> float:
    """How far from the end of the chain the feet of the stems that go round it stand clear of each other."""
    return sum(course.stems[a].root + course.stems[b].root + CLEAR for a, b in pairwise(end)) / pi


def _aside(chains: list[int], ways: Mapping[int, complex]) -> dict[int, float]:
    """How far beside the middle of its chain each of several stems stands that share it on one side."""
    found: dict[int, float] = {}
    start = 0
    for i in range(1, len(chains) + 1):
        if i == len(chains) or chains[i] != chains[start] or i in ways:
            members = [k for k in range(start, i) if k not in ways]
            found.update({k: (place - (len(members) - 1) / 2) * _FAN for place, k in enumerate(members)})
            start = i
    return found
