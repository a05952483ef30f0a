"""The parts of a round: stems that stand, gaps of chains between them, corners."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.model import Run, Stitch
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Stem:
    """A stitch that stands on the round below. ``half``, ``body``, ``root``: half its room at its head, on its stem (at the part
    ``body_at`` of its length) and at its foot; ``picots``: rings on its head.
    """

    stitch: Stitch
    height: float
    half: float
    body: float
    body_at: float
    root: float
    picots: tuple[Run, ...] = ()


@dataclass(frozen=True, slots=True)
class Gap:
    """What hangs between one stem and the next, counter-clockwise: chains, and stitches that stand in for chains (``parts``).

    ``runs``: each space with its range of parts. ``picots``: each ring with the part that it sits on. ``behind``: worked behind earlier
    work.
    """

    parts: tuple[int, ...] = ()
    runs: tuple[tuple[int, int, int], ...] = ()
    picots: tuple[tuple[Run, int], ...] = ()
    corner: bool = False
    behind: bool = False


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner lies on stem ``at`` (``on_stem``), or in the gap after it."""

    at: int
    on_stem: bool


def cyclic_order(indices: Sequence[int], size: int) -> list[int]:
    """Sorted round the circle, cut at the largest gap: what lies together stays together where the round starts in its midst.

    >>> cyclic_order([0, 1, 11], 12)
    [11, 0, 1]
    """
    ordered = sorted(indices)
    if len(ordered) < 2:
        return ordered
    leaps = [(ordered[i] - ordered[i - 1]) % size for i in range(len(ordered))]
    cut = max(range(len(ordered)), key=lambda i: (leaps[i], -i))
    return ordered[cut:] + ordered[:cut]
