"""Where rounds begin: what furniture is set by."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.scene import Symbol
from motifold.render.motif.model import Layout, Point
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Start:
    """Where a round begins: the point on its outline, outward and onward unit vectors, how tall its first stitch is, where its last one
    ends, and whether nothing lies outside it.

    ``outline``: points (x, y) in rows, no further apart than a fifth of u. ``ways`` and ``reaches``: the same as angles, rising, and how
    far out it is there. ``turning``: 1 where it is worked counter-clockwise as it is seen, else -1.
    """

    point: Point
    out: Point
    on: Point
    tall: float
    end: Point
    last: bool
    outline: NDArray[np.float64]
    ways: NDArray[np.float64]
    reaches: NDArray[np.float64]
    turning: float

    @property
    def middle(self) -> Point:
        """The middle of its first stitch."""
        return (self.point[0] - self.tall / 2 * self.out[0], self.point[1] - self.tall / 2 * self.out[1])

    def way_at(self, place: Point) -> Point:
        """The direction of work where the outline comes nearest to ``place``: a unit vector along it."""
        import numpy as np

        k = int(np.argmin(np.hypot(self.outline[:, 0] - place[0], self.outline[:, 1] - place[1])))
        (ax, ay), (bx, by) = self.outline[k - 1].tolist(), self.outline[(k + 1) % len(self.outline)].tolist()
        long = hypot(bx - ax, by - ay)
        if long < 1e-9:
            return self.on
        sign = self.turning if ax * by - ay * bx > 0 else -self.turning
        return (sign * (bx - ax) / long, sign * (by - ay) / long)


def starts_of(fabric: Fabric, layout: Layout, symbols: tuple[Symbol, ...], left_handed: bool) -> dict[int, Start]:
    """The start of every round that has an outline and a stitch, by its index; ``left_handed`` mirrors the outlines as the symbols are."""
    import numpy as np

    by_round: dict[int, list[Symbol]] = {}
    for symbol in symbols:
        if fabric.stitches[symbol.number].role in ("stitch", "standing"):
            by_round.setdefault(symbol.round_index, []).append(symbol)
    flip = -1.0 if left_handed else 1.0
    outermost = max((shape.round for shape in layout.shapes if by_round.get(shape.round)), default=-1)
    starts: dict[int, Start] = {}
    for shape in layout.shapes:
        members = by_round.get(shape.round)
        if not members:
            continue
        out = (flip * shape.start_normal[0], shape.start_normal[1])
        turn = flip * fabric.rounds[shape.round].direction
        first, last = members[0], members[-1]
        tall = hypot(first.head[0] - first.foot[0], first.head[1] - first.foot[1])
        on = (-out[1] * turn, out[0] * turn)
        ring = _filled(tuple((flip * x, y) for x, y in shape.outline))
        at = (flip * shape.start[0], shape.start[1])
        ways = np.arctan2(ring[:, 1], ring[:, 0])
        rising = np.argsort(ways, kind="stable")
        reaches = np.hypot(ring[:, 0], ring[:, 1])[rising]
        starts[shape.round] = Start(at, out, on, max(tall, 1.0), last.head, shape.round == outermost, ring, ways[rising], reaches, turn)
    return starts


def anchors_of(fabric: Fabric, symbols: tuple[Symbol, ...]) -> dict[int, tuple[Point, Point]]:
    """Where each round is begun and ended, by its index: the slip stitch that attaches yarn or the foot of the first stitch or chain, and
    the join or the last stitch. What has no stitch of its own, such as a finish, is at the end of the work before it."""
    found: dict[int, tuple[Point, Point]] = {}
    by_round: dict[int, list[Symbol]] = {}
    for symbol in symbols:
        if symbol.marks and not symbol.given:
            by_round.setdefault(symbol.round_index, []).append(symbol)
    end: Point | None = None
    for index in range(len(fabric.rounds)):
        members = sorted(by_round.get(index, ()), key=lambda symbol: symbol.number)
        if members:
            first, last = members[0], members[-1]
            end = last.place
            found[index] = (first.head if fabric.stitches[first.number].role == "travel" else first.foot, end)
        elif end is not None:
            found[index] = (end, end)
    return found


def yarn_changes(fabric: Fabric) -> dict[int, str]:
    """The rounds that begin in another yarn than the one before ended, where there are several yarns at all."""
    if len({yarn for r in fabric.rounds for yarn in r.yarns}) < 2:
        return {}
    changes: dict[int, str] = {}
    before: str | None = None
    for index, this in enumerate(fabric.rounds):
        if this.number is None or not this.yarns:
            continue
        if this.yarns[0] != before:
            changes[index] = this.yarns[0]
        before = this.yarns[-1]
    return changes


def _filled(ring: tuple[Point, ...]) -> NDArray[np.float64]:
    """The ring with points no further apart than a fifth of u, and no more than two hundred to a side."""
    import numpy as np

    corners = np.asarray(ring)
    sides = np.roll(corners, -1, axis=0) - corners
    counts = np.clip(np.round(np.hypot(sides[:, 0], sides[:, 1]) / 0.2).astype(int), 1, 200)
    side = np.repeat(np.arange(len(corners)), counts)
    part = (np.arange(len(side)) - np.repeat(np.cumsum(counts) - counts, counts)) / counts[side]
    filled: NDArray[np.float64] = corners[side] + sides[side] * part[:, None]
    return filled
