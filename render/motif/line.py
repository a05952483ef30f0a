"""The outline of a row: a straight line, walked from right to left, so that "outward" is up and "counter-clockwise" is leftwards."""

from __future__ import annotations

from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Line:
    """Heads at height ``apothem``; arc length counts leftwards from x = 0. It has no corners and no end."""

    apothem: float
    corners: int = 0
    rho: float = 0.0

    @property
    def perimeter(self) -> float:
        return 1e12

    def at(self, s: float) -> tuple[complex, complex]:
        """Point and outward unit normal at arc length ``s``."""
        return complex(-s, self.apothem), 1j

    def corner(self, number: int) -> complex:
        """A row has no corners."""
        return complex(0.0, self.apothem)
