"""The weighed swatch, worked: what its grams are the weight of."""

from __future__ import annotations

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import Gauge, MotifSource, Pattern
from motifold.render.sizing.colourways import yarns_of_text
from motifold.render.sizing.gauge import row_height_cm


def weighed_rounds(gauge: Gauge) -> int | None:
    """How many rounds the weighed swatch has: as the gauge says, else as many as the largest that was measured."""
    return gauge.grams_rounds or max((point.rounds for point in gauge.points), default=None)


def weighed_swatch(pattern: Pattern) -> Fabric | None:
    """The gauge's motif for the rounds that were weighed (see ``weighed_rounds``).

    None where nothing was weighed, where the swatch is so many stitches by so many rows, or where its motif is not in the pattern.
    """
    gauge = pattern.gauge
    motif = next((m for m in pattern.motifs if gauge is not None and m.name == gauge.motif), None)
    rounds = weighed_rounds(gauge) if gauge is not None else None
    if gauge is None or motif is None or not gauge.grams or rounds is None:
        return None
    return worked_alone(pattern, motif, rounds, 0)


def worked_alone(pattern: Pattern, motif: MotifSource, rounds: int | None, size: int) -> Fabric:
    """A motif worked for so many rounds with the numbers of one size, its problems left to whoever works the whole pattern."""
    from motifold.render.fabric import Workshop, work_motif

    definitions = {s.key: s.definition for s in pattern.stitches if s.definition is not None}
    workshop = Workshop(
        definitions=definitions, yarns=yarns_of_text(pattern), rounds=rounds, size=size,
        row_height_cm=row_height_cm(pattern.gauge),
        terms=pattern.terms, counts_as=motif.counts_as,
    )  # fmt: skip
    return work_motif(motif, workshop)[0]
