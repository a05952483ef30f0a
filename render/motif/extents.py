"""How much room each symbol takes, in u: what the engine asks of the symbol table, and the bounds that it keeps to."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from motifold.render.fabric.model import Stitch
from motifold.symbols import sizes
from motifold.symbols.footprint import Foot, Footprint, footprint, gathered_half

CLEAR = sizes.CLEARANCE + 0.015
"""White kept between symbols that do not belong together, a little over what is promised."""
OVAL = sizes.OVAL_LENGTH
OVAL_LEAST = 0.77
"""An oval in a run, and where room is short."""
OVAL_HALF = sizes.OVAL_BREADTH / 2
PITCH_LEAST, PITCH, PITCH_MOST = 0.81, 0.95, 1.38
"""Chain pitch: the closest two ovals of one run may stand, how far apart they like to, and where a hairline takes over."""
WHITE = 0.46
"""The widest white between the tips of a run; beyond it a hairline joins them."""
STEM_HALF = sizes.STEM_WIDTH / 2
LENGTH_LEAST, LENGTH_MOST = 0.92, 1.27
"""Stem length over nominal length, inside the 0.9 to 1.3 that still reads as the same stitch."""
CHANGE_MOST = 1.55
"""The longest where a round changes the shape of the one below."""
FOOT_RISE = sizes.HEAD_WIDTH / 2 + sizes.HEAD_GAP + STEM_HALF
"""From a head point to the foot point of what stands on it."""
SPACE_RISE = OVAL_HALF + CLEAR + 2 * sizes.RING_RADIUS + sizes.RING_WIDTH / 2
"""From the middle line of a chain to the foot point of what is worked into the space: the ring of the space lies between."""
CHAIN_DROP = 0.2
"""How far under the head line a short run hangs between tall stitches, to make up for that ring."""

GATHERED = ("popcorn", "bobble", "puff", "cluster")


def of_one_height(heights: Sequence[float]) -> bool:
    """Whether stems of these heights are drawn as those of one height: their heads stand on one line."""
    return max(heights) - min(heights) < 0.15 * max(heights)


@lru_cache(maxsize=512)
def height(name: str) -> float:
    """Nominal length in u of one stem of this kind."""
    return max(footprint(name).stem, 0.3)


def stem_height(stitch: Stitch) -> float:
    """Nominal length of a stitch's tallest leg."""
    return max((height(leg.kind) for leg in stitch.legs), default=height(stitch.kind))


def print_of(stitch: Stitch) -> Footprint:
    """The footprint of a stitch, from its first leg, or its name where it has none."""
    leg = stitch.legs[0] if stitch.legs else None
    gather = stitch.gather
    foot: Foot = leg.base.foot if leg else "loops"
    return footprint(leg.kind if leg else stitch.kind, gather, max(len(stitch.legs), 1), "loops" if foot == "space" else foot)


def head_half(stitch: Stitch) -> float:
    """Half the room that a stitch needs along the outline, near its head."""
    found = print_of(stitch)
    if stitch.role == "given":
        return 0.3
    if found.body_at > 0.45 or stitch.gather in GATHERED:
        return max(found.head_half, found.body_half)
    return found.head_half


def body_of(stitch: Stitch) -> tuple[float, float]:
    """Half width of what sits on the stem, and the part of the stem where it is widest; a standing chain is even all along."""
    if stitch.role == "standing":
        return OVAL_HALF, 0.5
    found = print_of(stitch)
    return found.body_half, found.body_at


def root_half(stitch: Stitch) -> float:
    """Half the room that a stitch takes where it stands, at its foot."""
    if stitch.role == "standing":
        return OVAL_HALF
    found = print_of(stitch)
    if stitch.gather in GATHERED and stitch.gather:
        return 0.4 * gathered_half(stitch.gather, len(stitch.legs))
    if found.stem <= 1.1 and stitch.kind != "sl st":
        return max(0.19, found.foot_half)
    return max(STEM_HALF, found.foot_half)
