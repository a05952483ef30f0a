"""Whose ink is nearest: a number is read as that of the round it stands next to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from motifold.render.motif.chart.scene import Symbol
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

_STEP = 0.25
"""How far apart, in u, the points are that stand for a stem."""
_REACH = 2.5
"""Ink further away than this is nobody's."""
_CLEARLY = 0.12
"""By how much, in u, the own round has to be nearer than any other."""

_AT_A_TIME = 100
"""How many places are compared with all the ink around them at a time."""


@dataclass(frozen=True, slots=True)
class Nearest:
    """Points (x, y) along all stems and chains, from the left to the right, and the round that each belongs to."""

    points: NDArray[np.float64]
    rounds: NDArray[np.int64]

    def first_own(self, places: NDArray[np.float64], index: int) -> Iterator[tuple[float, float]]:
        """Of ``places``, in their order, those where ink of this round is clearly the nearest; looked for only as far as they are asked."""
        for at in range(0, len(places), _AT_A_TIME):
            some = places[at : at + _AT_A_TIME]
            yield from ((x, y) for x, y in some[self.own(some, index)].tolist())

    def own(self, places: NDArray[np.float64], index: int) -> NDArray[np.bool_]:
        """For each row (x, y) of ``places`` whether ink of this round is clearly the nearest."""
        import numpy as np

        if not len(places) or not len(self.points):
            return np.zeros(len(places), dtype=bool)
        low, high = places.min(axis=0) - _REACH, places.max(axis=0) + _REACH
        first, last = np.searchsorted(self.points[:, 0], (low[0], high[0])).tolist()
        points, rounds = self.points[first:last], self.rounds[first:last]
        near = (points[:, 1] >= low[1]) & (points[:, 1] <= high[1])
        return _least(places, points[near & (rounds == index)]) + _CLEARLY < _least(places, points[near & (rounds != index)])


def nearest_of(symbols: Sequence[Symbol]) -> Nearest:
    """The stems of these symbols in points; joins and what is worked before round 1 too."""
    import numpy as np

    inked = [symbol for symbol in symbols if symbol.marks]
    feet = np.asarray([symbol.foot for symbol in inked]).reshape(-1, 2)
    along = np.asarray([symbol.head for symbol in inked]).reshape(-1, 2) - feet
    parts = np.maximum(1, np.ceil(np.hypot(along[:, 0], along[:, 1]) / _STEP)).astype(np.int64)
    first = np.asarray([1 if symbol.into else 0 for symbol in inked], dtype=np.int64)
    counts = parts + 1 - first
    of = np.repeat(np.arange(len(inked)), counts)
    part = np.arange(len(of)) - np.repeat(np.cumsum(counts) - counts, counts) + first[of]
    points = feet[of] + along[of] * part[:, None] / parts[of, None]
    rounds = np.asarray([symbol.round_index for symbol in inked], dtype=np.int64)[of]
    rising = np.argsort(points[:, 0], kind="stable")
    return Nearest(points[rising], rounds[rising])


def _least(places: NDArray[np.float64], points: NDArray[np.float64]) -> NDArray[np.float64]:
    """How far the nearest of ``points`` is from each place; places that follow each other lie near each other."""
    import numpy as np

    found = np.full(len(places), _REACH)
    for at in range(0, len(places), _AT_A_TIME):
        some = places[at : at + _AT_A_TIME]
        near = points[((points >= some.min(axis=0) - _REACH) & (points <= some.max(axis=0) + _REACH)).all(axis=1)]
        if len(near):
            apart = np.hypot(some[:, None, 0] - near[None, :, 0], some[:, None, 1] - near[None, :, 1])
            found[at : at + _AT_A_TIME] = np.minimum(apart.min(axis=1), _REACH)
    return found
