"""The outline of a border: a frame of straight sides about a piece, each as long as what it goes along."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.symbols.record import dataclass

_ON_CORNER = 1e-9


@dataclass(frozen=True, slots=True)
class Wall:
    """A side of what the frame goes round: its unit normal, and how far out it lies along it."""

    normal: complex
    reach: float


@dataclass(frozen=True, slots=True)
class Frame:
    """``walls`` counter-clockwise, two or more of each two neighbours not parallel; ``apothem``: how far outside them the heads are.

    Side ``k`` lies along wall ``k`` and begins at corner ``k``; arc length counts from corner 0. It answers what an ``Outline`` does.
    """

    walls: tuple[Wall, ...]
    apothem: float
    rho: float = 0.0

    @property
    def corners(self) -> int:
        return len(self.walls)

    @property
    def perimeter(self) -> float:
        return sum(self.side_of(number) for number in range(self.corners))

    def corner(self, number: int) -> complex:
        """Where side ``number`` begins: there it meets the side before."""
        before, own = self.walls[(number - 1) % self.corners], self.walls[number % self.corners]
        across = (before.normal.conjugate() * own.normal).imag
        out = (before.reach + self.apothem, own.reach + self.apothem)
        return (out[0] * own.normal - out[1] * before.normal) * -1j / across

    def side_of(self, number: int) -> float:
        """Length of side ``number``; negative where the sides beside it meet before they reach it."""
        return ((self.corner(number + 1) - self.corner(number)) / (1j * self.normal_of(number))).real

    def start_of(self, number: int) -> float:
        """Arc length at the corner where side ``number`` begins."""
        laps, rest = divmod(number, self.corners)
        return laps * self.perimeter + sum(self.side_of(k) for k in range(rest))

    def normal_of(self, number: int) -> complex:
        """Outward normal of side ``number``."""
        return self.walls[number % self.corners].normal

    def at(self, s: float) -> tuple[complex, complex]:
        """Point and outward unit normal at arc length ``s``. On a corner the normal halves the angle."""
        s %= self.perimeter
        number = 0
        while number < self.corners - 1 and s > self.side_of(number):
            s -= self.side_of(number)
            number += 1
        if min(s, self.side_of(number) - s) < _ON_CORNER:
            beside = self.normal_of(number) + self.normal_of(number + (-1 if s < _ON_CORNER else 1))
            return self.corner(number + (0 if s < _ON_CORNER else 1)), beside / abs(beside)
        return self.corner(number) + 1j * self.normal_of(number) * s, self.normal_of(number)

    def height_on(self, point: complex, number: int) -> float:
        """How far outside wall ``number`` a point is."""
        return (point / self.normal_of(number)).real - self.walls[number % self.corners].reach

    def level(self, point: complex) -> float:
        """How far outside all the walls a point is: beyond the one that it is furthest outside of."""
        return max(self.height_on(point, number) for number in range(self.corners))

    def abreast(self, point: complex, number: int) -> float:
        """Arc length of the place square under a point on side ``number``, or on its line beyond its ends."""
        return self.start_of(number) + ((point - self.corner(number)) / (1j * self.normal_of(number))).real

    def project(self, point: complex, number: int) -> float:
        """Arc length of the place on side ``number`` that lies nearest to a point, square to the side."""
        start = self.start_of(number)
        return max(start, min(start + self.side_of(number), self.abreast(point, number)))

    def turned_to(self, sides: Sequence[Sequence[complex]]) -> Frame:
        """The same frame, its first side the one that the first of these groups of points lies along; the others follow in order."""
        count = self.corners
        fits = [
            sum(self.height_on(point, (k + turn) % count) >= self.level(point) - 1e-6 for k, side in enumerate(sides) for point in side)
            for turn in range(count)
        ]
        turn = fits.index(max(fits))
        return Frame(self.walls[turn:] + self.walls[:turn], self.apothem)
