"""Points and leaves: a chain that sticks out, and stitches worked back along it. They stand beside their chain, square to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from motifold.render.fabric.model import Fabric, Stitch
from motifold.render.motif.extents import CLEAR, OVAL, OVAL_HALF, PITCH, STEM_HALF, stem_height
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import DOT_RADIUS

if TYPE_CHECKING:
    from motifold.render.motif.ground import Ground

_START = 0.6
"""How far above its root the middle of a branch's first chain lies; and how far beside it."""
_BESIDE = 0.3


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


def branch_width(fabric: Fabric, branch: Branch) -> float:
    """The room along the outline that a branch takes: its chain, and the tallest stitch lying beside it."""
    tallest = max((stem_height(fabric.stitches[s]) for s in branch.stitches), default=0.3)
    return _BESIDE + 2 * OVAL_HALF + tallest + 0.6


def lay_branch(ground: Ground, branch: Branch, start: complex, out: complex, along: complex) -> None:
    """Place a branch. ``start``: the head that it grows beside; ``out``: the way it points; ``along``: the way the round goes on."""
    fabric = ground.fabric
    for k, chain in enumerate(fabric.runs[branch.run].stitches):
        middle = start + along * _BESIDE + out * (_START + k * PITCH)
        ground.tips[chain] = (middle - out * OVAL / 2, middle + out * OVAL / 2)
        ground.normals[chain] = along
    for number in branch.stitches:
        stitch = fabric.stitches[number]
        bases = [sum(ground.tips[leg.base.id]) / 2 for leg in stitch.legs if leg.base.id in ground.tips]
        if not bases:
            continue
        if stitch.kind == "sl st":
            at = bases[0] + along * (OVAL_HALF + DOT_RADIUS + CLEAR)
            ground.feet[number], ground.heads[number] = (at,), at
        else:
            feet = [base + along * (OVAL_HALF + CLEAR + STEM_HALF) for base in bases]
            feet += [feet[-1]] * (len(stitch.legs) - len(feet))
            ground.feet[number] = tuple(feet)
            ground.heads[number] = sum(feet) / len(feet) + along * stem_height(stitch)
        ground.normals[number] = along
