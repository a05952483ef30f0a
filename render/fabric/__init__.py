"""Works written instructions into a Fabric, stitch by stitch, and proves them on the way.

``work_motif`` works one motif for one size, ``work_edging`` an edging on what waits along an opening; ``motif_edge`` is the edge that
a lone motif offers to an edging; ``unmet_joins`` asks whether motifs joined as they go meet what is there. ``Workshop`` is what they
need to know of the rest of the file, ``MOST_STITCHES`` how many all of it may make.
"""

from motifold.render.fabric.bench import MOST_STITCHES, Workshop
from motifold.render.fabric.doubts import unmet_joins
from motifold.render.fabric.given import motif_edge, work_edging
from motifold.render.fabric.motif import work_motif

__all__ = ["MOST_STITCHES", "Workshop", "motif_edge", "unmet_joins", "work_edging", "work_motif"]
