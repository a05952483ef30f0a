"""The outlines that heads stand on: one family, the regular n-gon with rounded corners. Points are complex numbers, arc length counts from corner 0.

A circle has no corners (``corners`` 0); then arc length counts from direction ``phase``.
"""

from __future__ import annotations

from cmath import exp
from cmath import phase as argument
from dataclasses import dataclass
from math import pi, tan


@dataclass(frozen=True, slots=True)
class Outline:
    """``apothem``: centre to side; ``rho``: corner radius, at most the apothem; ``phase``: direction of corner 0."""

    corners: int
    apothem: float
    phase: float
    rho: float = 0.0

    @property
    def side(self) -> float:
        """Arc length from the middle of one corner to the next (the whole perimeter of a circle)."""
        if not self.corners:
            return 2 * pi * self.apothem
        return 2 * (self.apothem - self.rho) * tan(pi / self.corners) + 2 * pi * self.rho / self.corners

    @property
    def perimeter(self) -> float:
        return self.side * max(self.corners, 1)

    def at(self, s: float) -> tuple[complex, complex]:
        """Point and outward unit normal at arc length ``s``. On a sharp corner the normal halves the angle."""
        if not self.corners:
            normal = exp(1j * (self.phase + s / self.apothem))
            return self.apothem * normal, normal
        side = self.side
        number = int(s // side)
        x = s - number * side - side / 2
        normal = self.normal_of(number)
        half = (self.apothem - self.rho) * tan(pi / self.corners)
        if abs(x) <= half - 1e-9:
            return self.apothem * normal + 1j * normal * x, normal
        sign = 1.0 if x > 0 else -1.0
        turn = (abs(x) - half) / self.rho if self.rho > 1e-9 else pi / self.corners
        centre = (self.apothem - self.rho) * normal + 1j * normal * half * sign
        out = normal * exp(1j * sign * min(turn, pi / self.corners))
        return centre + self.rho * out, out

    def normal_of(self, number: int) -> complex:
        """Outward normal of side ``number``, which runs from corner ``number`` to the next one."""
        return exp(1j * (self.phase + 2 * pi * (number + 0.5) / self.corners))

    def corner(self, number: int) -> complex:
        """The true corner, where the two sides would meet."""
        return self.apothem * (self.normal_of(number) + self.normal_of(number) * 1j * -tan(pi / self.corners))

    def project(self, point: complex, number: int) -> float:
        """Arc length of the place on side ``number`` that lies nearest to a point: square to the side, round its corners along the ray."""
        if not self.corners:
            return ((argument(point) - self.phase) % (2 * pi)) * self.apothem
        local = point / self.normal_of(number)
        side, half = self.side, (self.apothem - self.rho) * tan(pi / self.corners)
        x = local.imag
        if self.rho > 1e-9 and abs(x) > half:
            sign = 1.0 if x > 0 else -1.0
            centre = complex(self.apothem - self.rho, half * sign)
            x = sign * (half + self.rho * max(0.0, min(pi / self.corners, abs(argument(local - centre)))))
        return (number + 0.5) * side + max(-side / 2, min(side / 2, x))
