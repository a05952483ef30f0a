"""The weighed swatch, worked: what its grams are the weight of."""

from __future__ import annotations

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import Pattern


def weighed_swatch(pattern: Pattern) -> Fabric | None:
    """The gauge's motif for the rounds that were weighed (those of its first measured width, if nothing else is said).

    None where nothing was weighed, or its motif is not in the pattern.
    """
    from motifold.render.fabric import Workshop, work_motif

    gauge = pattern.gauge
    motif = next((m for m in pattern.motifs if gauge is not None and m.name == gauge.motif), None)
    if gauge is None or motif is None or not gauge.grams:
        return None
    rounds = gauge.grams_rounds or (gauge.points[0].rounds if gauge.points else motif.last_round)
    definitions = {s.key: s.definition for s in pattern.stitches if s.definition is not None}
    workshop = Workshop(
        definitions=definitions, yarns=tuple(yarn.key for yarn in pattern.yarns), rounds=rounds, size=0, row_height_cm=None,
        terms=pattern.terms, counts_as=motif.counts_as,
    )  # fmt: skip
    return work_motif(motif, workshop)[0]
