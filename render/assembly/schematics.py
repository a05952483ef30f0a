"""All schematics of an assembly, as drawings and as data. (A door of its own, so that proving a surface loads no fonts.)"""

from __future__ import annotations

from typing import Any

from motifold.render.assembly.finished import draw_finished
from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.net_drawing import draw_net, net_room
from motifold.render.assembly.sides import side_text
from motifold.render.assembly.step_drawings import draw_steps
from motifold.render.assembly.style import A5_TEXT_HEIGHT_MM, A5_TEXT_WIDTH_MM

__all__ = ["draw_finished", "draw_net", "draw_steps", "schematic_json"]


def schematic_json(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> dict[str, Any]:
    """The net that ``draw_net`` draws, in mm, y up. ``pass`` and ``order`` (within it) count from 1; null for a seam that no pass sews.

    A side folded on itself names that side twice. With several copies: the first.
    """
    flat = lay(assembly, *net_room(width_mm, height_mm))
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
    return {"panels": panels, "seams": seams}
