"""The weighed swatch, worked: what its grams are the weight of."""

from __future__ import annotations

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import Gauge, Pattern


def weighed_rounds(gauge: Gauge) -> int | None:
    """How many rounds the weighed swatch has: as the gauge says, else as many as the largest that was measured."""
    return gauge.grams_rounds or max((point.rounds for point in gauge.points), default=None)


def weighed_swatch(pattern: Pattern) -> Fabric | None:
    """The gauge's motif for the rounds that were weighed (see ``weighed_rounds``).

    None where nothing was weighed, or its motif is not in the pattern.
    """
    from motifold.render.fabric import Workshop, work_motif

    gauge = pattern.gauge
    motif = next((m for m in pattern.motifs if gauge is not None and m.name == gauge.motif), None)
    if gauge is None or motif is None or not gauge.grams:
        return None
    rounds = weighed_rounds(gauge) or motif.last_round
    definitions = {s.key: s.definition for s in pattern.stitches if s.definition is not None}
    workshop = Workshop(
        definitions=definitions, yarns=tuple(yarn.key for yarn in pattern.yarns), rounds=rounds, size=0, row_height_cm=None,
        terms=pattern.terms, counts_as=motif.counts_as,
    )  # fmt: skip
    return work_motif(motif, workshop)[0]
