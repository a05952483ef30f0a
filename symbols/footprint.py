"""How much room a symbol takes, for whoever places symbols: half widths along its stem and what stands out past foot and head. In u."""

from __future__ import annotations

from functools import lru_cache
from math import cos
from typing import Literal

from motifold.symbols import sizes as s
from motifold.symbols.record import dataclass
from motifold.symbols.stitches import Gather, Kind, kind

Foot = Literal["loops", "back loop", "front loop", "front post", "back post", "space", "ring", "gap", "row end"]
"""How the hook went in."""


@dataclass(frozen=True, slots=True)
class Footprint:
    """The room of one symbol standing on its foot point with its head point above, stroke widths included.

    ``stem``: nominal distance foot point to head point. ``head_half``: half the width at the head, square to the normal. ``body_half``:
    half the width of what sits on the stem (bars, the bulge of a cluster, a cross's arm) and ``body_at``, the part of the stem (0 foot,
    1 head) where that is widest. ``foot_half``: half the width at the foot. ``head_rise`` and ``foot_depth``: how far ink reaches past
    the head point and the foot point. A foot that stands on a head wants its foot point ``head_rise`` (of the base) + ``sizes.HEAD_GAP``
    + ``foot_depth`` (its own) further out than the base's head point. The ring of a space hangs below the middle of its group's feet: its
    depth is in theirs. A post's foot point lies on the post, and the curl goes round it. A chain lies between its tips: ``stem`` is its
    length, ``head_half`` half its breadth.
    """

    stem: float
    head_half: float
    body_half: float
    body_at: float
    foot_half: float
    head_rise: float
    foot_depth: float


@lru_cache(maxsize=2048)
def footprint(name: str, gather: Gather | None = None, n_legs: int = 1, foot: Foot = "loops") -> Footprint:
    """Room of a stitch of this kind. ``name`` is the kind of the stitch or of its leg; ``gather`` and ``n_legs`` go before what it says.

    A name that the trade does not have (a pattern's own) is given the room of a double crochet.
    """
    found = stitch_kind(name)
    gather = gather or found.gather
    legs = max(n_legs, found.legs if gather else 1)
    foot = ("front post" if found.post == "front" else "back post") if found.post else foot
    foot_half, foot_depth = _foot(foot, found)
    if found.family == "chain":
        half = s.OVAL_BREADTH / 2
        return Footprint(s.OVAL_LENGTH, half, half, 0.5, half, 0.0, 0.0)
    if found.family == "slip":
        return Footprint(found.height, s.DOT_RADIUS, s.DOT_RADIUS, 0.5, s.DOT_RADIUS, 0.02, 0.02)
    head_half = (s.HEAD_SPAN + s.HEAD_WIDTH) / 2
    head_rise = s.HEAD_WIDTH / 2
    if gather in ("cluster", "bobble", "popcorn", "puff"):
        half = gathered_half(gather, legs) + s.OUTLINE_WIDTH / 2
        if gather in ("cluster", "bobble"):
            half = max(half, (gathered_half(gather, legs) + s.BAR_OVER) * cos(s.BAR_SLANT_GATHERED) + s.BAR_WIDTH / 2)
        rise = s.CAP_BREADTH / 2 if gather == "popcorn" else head_rise
        half += s.OUTLINE_WIDTH / 2 if gather == "popcorn" else 0.0
        return Footprint(found.height, half if gather == "popcorn" else head_half, half, _WIDEST[gather], foot_half, rise, foot_depth)
    if found.yarn_overs == 0 and not found.half:
        half = (s.CROSS_SPAN + s.HEAD_WIDTH) / 2
        return Footprint(found.height, s.STEM_WIDTH / 2 if not found.reverse else half, half, s.CROSS_AT, foot_half, head_rise, foot_depth)
    body = (s.BAR_SPAN * 0.88 + s.BAR_WIDTH) / 2 if found.yarn_overs and not found.half else s.STEM_WIDTH / 2
    if found.family == "linked":
        body = s.LINK_SPAN + s.LINK_RADIUS + s.RING_WIDTH / 2
    if found.family == "extended":
        body = max(body, s.BEAD_BREADTH / 2)
    return Footprint(found.height, head_half, body, s.BAR_AT, foot_half, head_rise, foot_depth)


_WIDEST = {"cluster": 0.5, "bobble": 0.6, "popcorn": 1.0, "puff": 0.5}


def gathered_half(gather: str, legs: int) -> float:
    """Half the breadth of a gathered stitch where it is widest, to the middle of its outline."""
    spread = s.LEG_PITCH * (min(max(legs, 2), 9) - 1) / 2
    least = {"cluster": 0.26, "bobble": 0.42, "popcorn": 0.42, "puff": 0.30}[gather]
    return max(spread, least) if gather != "puff" else max(0.8 * spread, least)


def stitch_kind(name: str) -> Kind:
    """The kind with this name; a pattern's own stitch is drawn like a double crochet where it has no symbol."""
    try:
        return kind(name)
    except KeyError:
        return kind("dc")


def _foot(foot: Foot, found: Kind) -> tuple[float, float]:
    """Half width and depth of what the foot draws."""
    if found.family == "foundation":
        return s.OVAL_LENGTH / 2, s.OVAL_BREADTH + s.STEM_WIDTH / 2
    if foot == "space":
        return s.RING_RADIUS + s.RING_WIDTH / 2, 2 * s.RING_RADIUS + s.RING_WIDTH / 2
    if foot in ("back loop", "front loop"):
        return s.LOOP_HALF + s.LOOP_WIDTH / 2, (s.LOOP_DEPTH if foot == "front loop" else 0.0) + s.LOOP_WIDTH / 2
    if foot in ("front post", "back post"):
        return s.HOOK_RADIUS + s.STEM_WIDTH / 2, s.HOOK_RADIUS + s.STEM_WIDTH / 2
    return s.STEM_WIDTH / 2, s.STEM_WIDTH / 2
