"""The outlines that heads stand on: one family, the regular n-gon with rounded corners. Points are complex numbers, arc length counts
from corner 0.

A circle has no corners (``corners`` 0); then arc length counts from direction ``phase``.
"""

from __future__ import annotations

from cmath import exp
from cmath import phase as argument
from math import pi, tan

from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Outline:
    """``apothem``: centre to side; ``rho``: corner radius, at most the apothem; ``phase``: direction of corner 0.

    ``spine``: half the length of the foundation chain that an oval or a rectangle is worked round (0: none); it lies along the x axis. A
    rectangle (four corners and a spine) has true corners and level sides.
    """

    corners: int
    apothem: float
    phase: float
    rho: float = 0.0
    spine: float = 0.0

    @property
    def side(self) -> float:
        """Arc length from the middle of one corner to the next (the whole perimeter of a circle)."""
        if not self.corners:
            return 2 * pi * self.apothem + 4 * self.spine
        return 2 * (self.apothem - self.rho) * tan(pi / self.corners) + 2 * pi * self.rho / self.corners

    def start_of(self, number: int) -> float:
        """Arc length at the corner where side ``number`` begins."""
        if not (self.corners and self.spine):
            return number * self.side
        laps, rest = divmod(number, self.corners)
        return laps * self.perimeter + sum(self.side_of(k) for k in range(rest))

    def side_of(self, number: int) -> float:
        """Length of side ``number``."""
        return self.side + (2 * self.spine if self.corners and self.is_long(number) else 0.0)

    def is_long(self, number: int) -> bool:
        """Whether a side of a rectangle runs along its spine."""
        return abs(self.normal_of(number).imag) > 0.7

    @property
    def perimeter(self) -> float:
        return self.side * max(self.corners, 1) + (4 * self.spine if self.corners else 0.0)

    def at(self, s: float) -> tuple[complex, complex]:
        """Point and outward unit normal at arc length ``s``. On a sharp corner the normal halves the angle."""
        if not self.corners:
            if not self.spine:
                normal = exp(1j * (self.phase + s / self.apothem))
                return self.apothem * normal, normal
            return self._at_oval(s % self.perimeter)
        if self.spine:
            return self._at_rectangle(s % self.perimeter)
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

    def _at_rectangle(self, s: float) -> tuple[complex, complex]:
        number = 0
        while number < self.corners - 1 and s > self.side_of(number):
            s -= self.side_of(number)
            number += 1
        normal = self.normal_of(number)
        out = self.apothem + (0.0 if self.is_long(number) else self.spine)
        return out * normal + 1j * normal * (s - self.side_of(number) / 2), normal

    def _at_oval(self, s: float) -> tuple[complex, complex]:
        """Two half circles and two straight sides, from the direction of ``phase`` (an oval: from its right end)."""
        arc = pi * self.apothem
        for start, centre in ((0.0, self.spine), (arc / 2 + 2 * self.spine, -self.spine), (1.5 * arc + 4 * self.spine, self.spine)):
            turn = s - start
            straight = start - 2 * self.spine
            if self.spine and straight <= s < start and start:
                up = 1.0 if centre < 0 else -1.0
                return complex(up * (self.spine - (s - straight)), up * self.apothem), complex(0.0, up)
            if 0 <= turn <= (arc / 2 if start == 0 and self.spine else arc if self.spine else 2 * arc):
                first = 0.0 if start == 0 else pi / 2 if centre < 0 else 1.5 * pi
                normal = exp(1j * (self.phase + first + turn / self.apothem))
                return centre + self.apothem * normal, normal
        return complex(self.spine + self.apothem, 0.0), 1 + 0j

    def level(self, point: complex) -> float:
        """How far out a point is, from the centre or the spine."""
        return abs(point - max(-self.spine, min(self.spine, point.real)))

    def normal_of(self, number: int) -> complex:
        """Outward normal of side ``number``, which runs from corner ``number`` to the next one."""
        return exp(1j * (self.phase + 2 * pi * (number + 0.5) / self.corners))

    def corner(self, number: int) -> complex:
        """The true corner, where the two sides would meet."""
        if self.spine:
            return self._at_rectangle(self.start_of(number % self.corners) + 1e-12)[0]
        return self.apothem * (self.normal_of(number) + self.normal_of(number) * 1j * -tan(pi / self.corners))

    def height_on(self, point: complex, number: int) -> float:
        """How far out a point is, square to side ``number``; from the end of the spine where the side stands across it."""
        return (point / self.normal_of(number)).real - (self.spine if self.spine and not self.is_long(number) else 0.0)

    def abreast(self, point: complex, number: int) -> float:
        """Arc length of the place square under a point on side ``number``, or on its line beyond its ends."""
        return self.start_of(number) + self.side_of(number) / 2 + (point / self.normal_of(number)).imag

    def project(self, point: complex, number: int) -> float:
        """Arc length of the place on side ``number`` that lies nearest to a point: square to the side, round its corners along the ray."""
        if not self.corners:
            return self._along_oval(point)
        local = point / self.normal_of(number)
        if self.spine:
            half = self.side_of(number) / 2
            return self.start_of(number) + half + max(-half, min(half, local.imag))
        side, half = self.side, (self.apothem - self.rho) * tan(pi / self.corners)
        x = local.imag
        if self.rho > 1e-9 and abs(x) > half:
            sign = 1.0 if x > 0 else -1.0
            centre = complex(self.apothem - self.rho, half * sign)
            x = sign * (half + self.rho * max(0.0, min(pi / self.corners, abs(argument(local - centre)))))
        return (number + 0.5) * side + max(-side / 2, min(side / 2, x))

    def _along_oval(self, point: complex) -> float:
        if not self.spine:
            return ((argument(point) - self.phase) % (2 * pi)) * self.apothem
        arc = pi * self.apothem
        if abs(point.real) <= self.spine:
            if point.imag >= 0:
                return arc / 2 + self.spine - point.real
            return 1.5 * arc + 3 * self.spine + point.real
        if point.real < 0:
            return arc / 2 + 2 * self.spine + ((argument(point + self.spine) - pi / 2) % (2 * pi)) * self.apothem
        angle = argument(point - self.spine)
        return angle * self.apothem if angle >= 0 else self.perimeter + angle * self.apothem
