"""Hook sizes that can be bought. The millimetre is the measure; the US letter is only a label, and charts disagree on some.

Source of the letters: hook table of the Craft Yarn Council's Standards & Guidelines for Crochet and Knitting (yarnstandards.com), as
several shop charts repeat it; 11.5 mm and larger follow that table alone. Sizes with no agreed letter have none here.
"""

from __future__ import annotations

from itertools import pairwise

US_LABELS: dict[float, str] = {
    2.25: "B-1", 2.75: "C-2", 3.25: "D-3", 3.5: "E-4", 3.75: "F-5", 4.0: "G-6", 4.5: "7", 5.0: "H-8", 5.5: "I-9", 6.0: "J-10",
    6.5: "K-10½", 8.0: "L-11", 9.0: "M/N-13", 10.0: "N/P-15", 11.5: "P-16", 15.0: "P/Q", 16.0: "Q", 19.0: "S",
}
"""Hooks with a US name, by millimetres."""

OTHER_SIZES: tuple[float, ...] = (2.0, 2.5, 3.0, 4.25, 5.25, 5.75, 7.0, 12.0, 20.0, 25.0)
"""Sold by the millimetre, with no agreed US name."""

HOOKS: tuple[float, ...] = tuple(sorted((*US_LABELS, *OTHER_SIZES)))


def us_label(hook_mm: float) -> str | None:
    """The US name of a hook ("G-6"), or None where there is no agreed one."""
    return US_LABELS.get(round(hook_mm, 2))


def hook_text(hook_mm: float) -> str:
    """"4 mm (US G-6)"; the millimetres alone where the US has no agreed name."""
    label = us_label(hook_mm)
    millimetres = f"{hook_mm:g}\N{NO-BREAK SPACE}mm"
    return f"{millimetres} (US\N{NO-BREAK SPACE}{label})" if label else millimetres


def sizes_apart(one_mm: float, other_mm: float) -> float:
    """How many sizes lie between two hooks, by the US row, and parts of a size between its steps: 1 from 5 to 5.5 mm."""
    return abs(_size_of(one_mm) - _size_of(other_mm))


def _size_of(hook_mm: float) -> float:
    """Place in the US row, between two of its steps in proportion; beyond its ends half a millimetre is a size."""
    steps = sorted(US_LABELS)
    if hook_mm <= steps[0]:
        return (hook_mm - steps[0]) / 0.5
    for place, (low, high) in enumerate(pairwise(steps)):
        if hook_mm <= high:
            return place + (hook_mm - low) / (high - low)
    return len(steps) - 1 + (hook_mm - steps[-1]) / 0.5


def nearest_hooks(wanted_mm: float) -> tuple[float, ...]:
    """The real hooks on either side of a wanted size, the nearer first; one alone where it is one, or lies beyond all hooks."""
    for hook in HOOKS:
        if abs(hook - wanted_mm) < 1e-6:
            return (hook,)
    below = [h for h in HOOKS if h < wanted_mm]
    above = [h for h in HOOKS if h > wanted_mm]
    around = [*below[-1:], *above[:1]]
    return tuple(sorted(around, key=lambda h: (abs(h - wanted_mm), h)))
