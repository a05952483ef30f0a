"""Where every stitch stands: ``lay_out`` turns a Fabric into a Layout, in pitches u, before anything is drawn."""

from motifold.render.motif.layout import lay_out
from motifold.render.motif.model import Layout, Link, Placed, RoundShape

__all__ = ["Layout", "Link", "Placed", "RoundShape", "lay_out"]
