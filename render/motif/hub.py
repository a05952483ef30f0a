"""Work that begins in one chain: that chain is the ring which the first round stands round."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.fabric.model import Base, Fabric, Stitch

_LEAST = 3
"""Fewer stitches in one chain are no round: a row that begins at a point."""


def hub_of(fabric: Fabric) -> int | None:
    """The one chain that all of the first round, or row, is worked into, and nothing else; None where there is no such chain."""
    if not fabric.rounds or fabric.rounds[0].kind != "foundation":
        return None
    first = next((i for i, worked in enumerate(fabric.rounds) if i and _stems(fabric, i)), None)
    if first is None or len(_stems(fabric, first)) < _LEAST:
        return None
    worked = {leg.base.id for stitch in fabric.stitches if stitch.role == "stitch" and stitch.round == first for leg in stitch.legs}
    hub = min(worked, default=-1)
    others = (leg.base.id for stitch in fabric.stitches if stitch.round > first for leg in stitch.legs if leg.base.kind == "stitch")
    if len(worked) != 1 or fabric.stitches[hub].round or fabric.stitches[hub].kind != "ch" or hub in others:
        return None
    return hub if fabric.rounds[first].kind == "round" or _fans_out(fabric) else None


def about(fabric: Fabric, hub: int) -> Fabric:
    """The same work with the chain ``hub`` for its ring."""
    stitches = tuple(_moved(fabric, stitch, hub) for stitch in fabric.stitches)
    return replace(fabric, stitches=stitches, rounds=(replace(fabric.rounds[0], kind="ring"), *fabric.rounds[1:]))


def _moved(fabric: Fabric, stitch: Stitch, hub: int) -> Stitch:
    """A stitch of the first round with its legs in the ring: those in the chain, and the one that beginning chains stand for."""
    first = {leg.base.id == hub or fabric.stitches[leg.base.id].round == 0 for leg in stitch.legs if leg.base.kind in ("stitch", "gap")}
    if True not in first or stitch.role == "travel":
        return stitch
    return replace(stitch, legs=tuple(replace(leg, base=Base("ring", 0, "ring")) for leg in stitch.legs))


def _stems(fabric: Fabric, index: int) -> list[Stitch]:
    return [stitch for stitch in fabric.round_stitches(index) if stitch.role in ("stitch", "standing")]


def _fans_out(fabric: Fabric) -> bool:
    """Whether rows increase between their ends: in a place that is neither their first nor their last."""
    for index, worked in enumerate(fabric.rounds):
        own = [leg.base for stitch in _stems(fabric, index) for leg in stitch.legs] if worked.kind == "row" else []
        inner = [base.id for base in own if base.kind != "ring" and base not in (own[0], own[-1])]
        if len(set(inner)) < len(inner) and not any(len(stitch.legs) > 1 for stitch in _stems(fabric, index)):
            return True
    return False
