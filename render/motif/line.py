"""The outline of a row: a line walked from right to left, so that "outward" is up and "counter-clockwise" is leftwards. Straight, or
bent as its rows rise and fall.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from motifold.render.motif.arc import Arc
from motifold.symbols.record import dataclass

_SOFT = 0.35
"""Over a peak or a valley the normal turns within so much on either side."""


@dataclass(frozen=True, slots=True)
class Line:
    """Heads at height ``apothem``; arc length counts leftwards from x = 0. It has no corners and no end.

    ``bent``: the way that the row takes where it is not straight; its first point lies at arc length ``start``. ``upright``: such
    rows lie straight above one another.
    """

    apothem: float
    corners: int = 0
    rho: float = 0.0
    bent: Arc | None = None
    start: float = 0.0
    upright: bool = False

    @property
    def perimeter(self) -> float:
        return 1e12

    def at(self, s: float) -> tuple[complex, complex]:
        """Point and outward unit normal at arc length ``s``."""
        if self.bent is None:
            return complex(-s, self.apothem), 1j
        place = self.bent.at(s - self.start)[0]
        normal = self.bent.at(s - self.start - _SOFT)[1] + self.bent.at(s - self.start + _SOFT)[1]
        return place, normal / (abs(normal) or 1.0)

    def along(self, places: Sequence[complex]) -> list[float]:
        """The arc lengths of the places nearest to points that are about in order; straight above them where rows lie so."""
        if self.bent is None:
            return [-p.real for p in places]
        if not self.upright:
            return [self.start + s for s in self.bent.nearest(places)]
        xs = [-knot.real for knot in self.bent.points]
        return [self.start + _between(xs, self.bent.marks, -p.real) for p in places]

    def corner(self, number: int) -> complex:
        """A row has no corners."""
        return complex(0.0, self.apothem)


def _between(xs: Sequence[float], marks: Sequence[float], x: float) -> float:
    """The mark at x, between two knots or beyond the last."""
    i = min(max(bisect_right(xs, x) - 1, 0), len(xs) - 2)
    return marks[i] + (x - xs[i]) * (marks[i + 1] - marks[i]) / (xs[i + 1] - xs[i])
