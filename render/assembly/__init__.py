"""Panels, joins and folds make a surface; seams are put in order; edgings find what waits along an opening.

The steps of the work stand in ``motifold.render.assembly.steps``, the drawings in ``motifold.render.assembly.schematics``: doors of their
own, so that proving a surface loads nothing that draws.
"""

from motifold.render.assembly.assemble import assemble
from motifold.render.assembly.edge import no_opening, opening_edge
from motifold.render.assembly.sides import corner_name, side_text

__all__ = ["assemble", "corner_name", "no_opening", "opening_edge", "side_text"]
