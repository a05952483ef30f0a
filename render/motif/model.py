"""Where everything stands: positions of a Fabric, in pitches u, before anything is drawn.

y up, origin at the motif's centre, angles counter-clockwise, as the right side is seen. Rows: x from left, the foundation at y 0.
"""

from __future__ import annotations

from typing import Literal

from motifold.symbols.record import dataclass

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Placed:
    """One stitch of the Fabric, placed. ``feet``: one for each leg. A chain's foot and head are the tips of its oval.

    ``bend``: inner points of a stem that is not straight (foot first). ``normal``: unit vector out of the work at the head. ``bars``: how
    far below the head the uppermost bar of a stem stands that crosses others (None: where it always stands).
    """

    stitch: int
    feet: tuple[Point, ...]
    head: Point
    normal: Point
    bend: tuple[Point, ...] = ()
    bars: float | None = None


@dataclass(frozen=True, slots=True)
class Link:
    """A hairline from tip to tip where a lace leaves room between ovals of one run."""

    run: int
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class RoundShape:
    """The outline that a round's heads stand on: a closed polyline, its corners, and where the round starts.

    ``order``: how many times this round repeats round the centre, together with all the rounds that it stands on (1: not at all).
    """

    round: int
    outline: tuple[Point, ...]
    corners: tuple[Point, ...]
    start: Point
    start_normal: Point
    order: int = 1


@dataclass(frozen=True, slots=True)
class Again:
    """A stitch shown a second time, outside all that was worked before: ``round`` goes into a loop of it that was left unused."""

    stitch: int
    round: int
    head: Point
    normal: Point


@dataclass(frozen=True, slots=True)
class Layout:
    """A Fabric's positions, in the same order as ``Fabric.stitches`` (stitches without a place of their own left out)."""

    worked: Literal["rounds", "rows"]
    placed: tuple[Placed, ...]
    links: tuple[Link, ...]
    shapes: tuple[RoundShape, ...]
    turn: float = 0.0    # how far the whole chart was turned to stand level, radians (already applied)
    again: tuple[Again, ...] = ()
