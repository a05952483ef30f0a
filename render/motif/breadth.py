"""How broad a piece in rows is: a straight one is as broad at its foundation as in the rows that need most."""

from __future__ import annotations

from statistics import median

from motifold.render.motif.columns import PITCH
from motifold.render.motif.ground import Ground
from motifold.symbols.record import dataclass

_STEADY = 0.06
"""Rows whose breadths differ from the usual one by less, as a part of it, are those of a straight piece."""
_FEWEST = 3


@dataclass(frozen=True, slots=True)
class Chains:
    """How far apart the chains of a foundation lie: ``gaps`` from the first one on, as far as these go, then ``pitch``."""

    pitch: float = PITCH
    gaps: tuple[float, ...] = ()

    def places(self, count: int) -> list[float]:
        """Along the foundation, from its first chain."""
        found = [0.0]
        for k in range(count - 1):
            found.append(found[-1] + (self.gaps[k] if k < len(self.gaps) else self.pitch))
        return found


def wider_than_begun(ground: Ground) -> float:
    """How much broader the rows of a straight piece are than what they were begun on: shells take more room than the chains below them.
    1 where rows grow, shrink or are too few to tell.
    """
    rows = [course for course in ground.courses.values() if course.open]
    if len(rows) < _FEWEST or ground.fabric.rounds[0].kind != "foundation":
        return 1.0
    widths = [_across([ground.heads[stem.stitch.id].real for stem in course.stems]) for course in rows]
    begun = _across([foot.real for stem in rows[0].stems for foot in ground.feet[stem.stitch.id]])
    usual = median(widths[1:])
    straight = all(abs(width - usual) < _STEADY * usual for width in widths[1:])
    return usual / begun if straight and begun > 1.0 else 1.0


def columns_of(ground: Ground, pitch: float, most: float) -> tuple[float, ...]:
    """How far apart the columns of a piece are that stands stitch on stitch from its foundation on, from the first chain: each as wide as
    its widest stitch, from ``pitch`` to ``most``. Nothing where that is everywhere the same, or where rows are of another kind.
    """
    rows = [course for course in ground.courses.values() if course.open]
    if not rows or ground.fabric.rounds[0].kind != "foundation" or any(course.round not in ground.columns for course in rows):
        return ()
    if len({course.size for course in rows}) > 1 or any(gap.parts for course in rows for gap in course.gaps[:-1]):
        return ()
    widest = [min(max(pitch, *gaps), most) for gaps in zip(*ground.columns.values(), strict=True)]
    # Chains that stand up as row 1's first stitch lie beside the first one that is worked into.
    begun = rows[0].stems[rows[0].begins].stitch
    widest = widest if begun.role != "standing" else widest[1:] if rows[0].direction > 0 else widest[:-1]
    found = widest[::-1] if rows[0].direction > 0 else widest
    return tuple(found) if max(found, default=pitch) > pitch else ()


def _across(places: list[float]) -> float:
    return max(places) - min(places)
