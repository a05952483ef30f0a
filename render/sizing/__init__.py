"""Gauge, sizes, ease and yarn: what fits whom, and how much yarn it takes.

``size_table`` and ``choose_sizes`` say how many rounds each size works, ``pattern_of_size`` and ``own_of`` what one size has of its own;
``yarn_needs`` (with the ``scale_of_size``) what a worked size takes; ``motif_width_cm``, ``motif_height_cm``,
``row_height_cm`` what the swatch measures;
``gauge_doubts`` and ``piece_doubts`` what will not come out. None of them imports a unit library: that is for print (``units``).
"""

from motifold.render.sizing.choice import choose_sizes
from motifold.render.sizing.colourways import yarns_of_text
from motifold.render.sizing.fit import size_table
from motifold.render.sizing.gauge import row_height_cm, width_after
from motifold.render.sizing.own import own_of, pattern_of_size
from motifold.render.sizing.piece import piece_doubts
from motifold.render.sizing.report import gauge_doubts
from motifold.render.sizing.swatch import weighed_swatch
from motifold.render.sizing.width import motif_height_cm, motif_width_cm
from motifold.render.sizing.yarn import scale_of_size, yarn_needs

__all__ = [
    "choose_sizes", "gauge_doubts", "motif_height_cm", "motif_width_cm", "own_of", "pattern_of_size", "piece_doubts",
    "row_height_cm", "scale_of_size", "size_table", "weighed_swatch", "width_after", "yarn_needs", "yarns_of_text",
]  # fmt: skip
