"""The schematics of a worked pattern: which size, and which drawings in which order."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.schematics import draw_finished, draw_net, draw_steps
from motifold.render.charts import NamedDrawing, largest_size
from motifold.render.worked import Worked


def drawn_assembly(worked: Worked) -> Assembly | None:
    """The assembly of the largest size; None where there is none to draw."""
    size = largest_size(worked)
    return size.assembly if size is not None and size.assembly is not None and size.assembly.panels else None


def drawn_rims(worked: Worked) -> tuple[Rim, ...]:
    """The edgings of the largest size's assembly."""
    size = largest_size(worked)
    return size.rims if size is not None else ()


def draw_schematics(assembly: Assembly, steps: bool = False, rims: Sequence[Rim] = ()) -> tuple[NamedDrawing, ...]:
    """The net and the finished thing with its edgings ``rims``; with ``steps`` one drawing for each seam pass and fold instead."""
    if steps:
        return tuple(NamedDrawing(f"step-{i:02d}", drawing) for i, drawing in enumerate(draw_steps(assembly), 1))
    finished = draw_finished(assembly, rims=rims)
    drawings = [NamedDrawing("net", draw_net(assembly))]
    return tuple(drawings + ([NamedDrawing("finished", finished)] if finished is not None else []))
