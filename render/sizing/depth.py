"""How far an edging stands out from the edge that it is worked along. Lengths in cm."""

from __future__ import annotations

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import EdgingSource, Pattern
from motifold.render.sizing.gauge import row_height_cm, stitch_width
from motifold.render.sizing.loops import height_in_widths
from motifold.render.sizing.width import width_of_a_stitch


def edging_depth_cm(pattern: Pattern, edging: EdgingSource, fabric: Fabric) -> float | None:
    """Each of its rounds as high as its tallest stitch, by the width of a stitch; or as a row of its own gauge.

    None where nothing tells that width, or where a round's stitches have no known height.
    """
    rounds = [r for r in fabric.rounds if r.kind in ("round", "row") and r.number is not None]
    own = row_height_cm(edging.gauge)
    if own is not None:
        return own * len(rounds) or None
    width = (stitch_width(edging.gauge) if edging.gauge is not None else None) or width_of_a_stitch(pattern)
    if width is None or not rounds:
        return None
    heights = []
    for one in rounds:
        kinds = {fabric.stitches[i].kind for i in one.stitches if fabric.stitches[i].role in ("stitch", "standing")}
        heights.append(max((height_in_widths(kind) for kind in kinds), default=0.0))
    return width * sum(heights) if min(heights) > 0 else None
