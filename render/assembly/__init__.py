"""Panels, joins and folds make a surface; seams are put in order; edgings find what waits along an opening.

The drawings stand in ``motifold.render.assembly.schematics``.
"""

from motifold.render.assembly.assemble import assemble
from motifold.render.assembly.edge import opening_edge
from motifold.render.assembly.sides import corner_name, side_text
from motifold.render.assembly.steps import AssemblyStep, assembly_steps

__all__ = ["AssemblyStep", "assemble", "assembly_steps", "corner_name", "opening_edge", "side_text"]
