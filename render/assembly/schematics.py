"""All schematics of an assembly, as drawings and as data. (A door of its own, so that proving a surface loads no fonts.)"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from motifold.render.assembly.finished import draw_finished
from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.form import finished_measures
from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.net_drawing import draw_net, fitted_net, net_room
from motifold.render.assembly.sides import side_text
from motifold.render.assembly.step_drawings import draw_steps
from motifold.render.assembly.style import A5_TEXT_HEIGHT_MM, A5_TEXT_WIDTH_MM, INK, NAME_PT
from motifold.render.drawing.display import Drawing, Text
from motifold.render.drawing.fonts import text_width_mm

__all__ = ["draw_finished", "draw_net", "draw_steps", "headed", "schematic_json"]

HEAD_MM = 6.0


def headed(drawing: Drawing, words: str) -> Drawing:
    """The drawing with words above it, at its left."""
    x0, y0, x1, y1 = drawing.box
    head = Text(x0 + 1.5, y1 + HEAD_MM / 3, words, "sans-bold", NAME_PT, INK, "start")
    wide = text_width_mm(words, "sans-bold", NAME_PT) + 3.0
    return replace(drawing, box=(x0, y0, max(x1, x0 + wide), y1 + HEAD_MM), operations=(*drawing.operations, head))


def schematic_json(
    assembly: Assembly,
    rims: Sequence[Rim] = (),
    size: str | None = None,
    width_mm: float = A5_TEXT_WIDTH_MM,
    height_mm: float = A5_TEXT_HEIGHT_MM,
) -> dict[str, Any]:
    """The net that ``draw_net`` draws, in mm, y up. ``pass`` and ``order`` (within it) count from 1; null for a seam that no pass sews.

    A side folded on itself names that side twice. With several copies: the first. ``measures`` of the finished thing and ``edgings`` are
    in cm, each with whether it is an estimate; there are none where nothing was measured.
    """
    flat = lay(assembly, *net_room(fitted_net(assembly, width_mm, height_mm)[1], height_mm))
    sewn = {step.seam: (one.number, at) for one in assembly.passes for at, step in enumerate(one.steps, start=1)}
    panels = [
        {"name": panel.name, "outline": [[round(x, 3), round(y, 3)] for x, y in outline]}
        for panel, outline in zip(flat.panels, flat.outlines, strict=True)
    ]
    seams = []
    for index in flat.seams:
        seam = assembly.seams[index]
        number, order = sewn.get(index, (None, None))
        sides = [side_text(seam.a), side_text(seam.b or seam.a)]
        seams.append({"name": seam.name, "sides": sides, "pass": number, "order": order})
    measures = [{"name": one.name, "cm": round(one.cm, 4), "estimate": one.estimate} for one in finished_measures(assembly, rims)]
    edgings = [
        {
            "name": rim.name,
            "opening": rim.opening + 1,
            "depth_cm": round(rim.depth_cm, 4),
            "turned_back": rim.turned,
            "estimate": rim.estimate,
        }
        for rim in rims
    ]
    return {"size": size, "panels": panels, "seams": seams, "measures": measures, "edgings": edgings}
