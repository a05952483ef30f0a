"""Gauge, sizes, ease and yarn: what fits whom, and how much yarn it takes.

``size_table`` and ``choose_sizes`` say how many rounds each size works; ``yarn_needs`` what a worked size takes;
``motif_width_cm`` and ``row_height_cm`` what the swatch measures. None of them imports a unit library: that is for print (``units``).
"""

from motifold.render.sizing.choice import choose_sizes
from motifold.render.sizing.fit import size_table
from motifold.render.sizing.gauge import row_height_cm, width_after
from motifold.render.sizing.swatch import weighed_swatch
from motifold.render.sizing.width import motif_width_cm
from motifold.render.sizing.yarn import yarn_needs

__all__ = ["choose_sizes", "motif_width_cm", "row_height_cm", "size_table", "weighed_swatch", "width_after", "yarn_needs"]
