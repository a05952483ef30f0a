"""The legs of a pass: where its line is broken on the sheet, it goes on at another place, and letters tell in which order."""

from __future__ import annotations

from math import hypot
from typing import Final

from motifold.render.assembly.flatlay import Flatlay
from motifold.render.assembly.model import PassStep, SeamPass
from motifold.render.drawing.display import Point
from motifold.symbols.record import dataclass

_FEW: Final = 2
"""So many legs need no letters: the pass starts at its dot."""
_LETTERS: Final = "abcdefghijklmnopqrstuvwxyz"


def seam_line_of(flat: Flatlay, step: PassStep) -> tuple[Point, ...]:
    """The line of a step's seam in the direction of work; only where its sides lie together."""
    line = flat.seam_line(step.seam)
    return line if step.forward else line[::-1]


@dataclass(frozen=True, slots=True)
class Leg:
    """``name``: "1", or "1a", "1b" where a pass has more than two legs, and letters enough; ``steps``: by their place in the pass."""

    name: str
    steps: tuple[int, ...]


def legs_of(flat: Flatlay, one: SeamPass) -> list[Leg]:
    """The steps of a pass that go on from each other on the sheet together, each seam that lies open alone."""
    legs: list[list[int]] = []
    for at, step in enumerate(one.steps):
        before = one.steps[at - 1] if at else None
        if before is not None and flat.touching[step.seam] and flat.touching[before.seam] and _goes_on(flat, before, step):
            legs[-1].append(at)
        else:
            legs.append([at])
    lettered = _FEW < len(legs) <= len(_LETTERS)
    return [Leg(f"{one.number}{_LETTERS[i] if lettered else ''}", tuple(leg)) for i, leg in enumerate(legs)]


def _goes_on(flat: Flatlay, before: PassStep, after: PassStep) -> bool:
    a, b = seam_line_of(flat, before)[-1], seam_line_of(flat, after)[0]
    return hypot(a[0] - b[0], a[1] - b[1]) < 0.1 + 1.5 * flat.assembly.adds_cm * flat.mm_per_cm
