"""The symbols of the key can be told apart as they are printed: 3 mm, black, by a cheap printer."""

from __future__ import annotations

import io
from itertools import combinations

import numpy as np
import pytest
from numpy.typing import NDArray

from motifold.render.drawing import Drawing, to_png
from motifold.render.motif.chart.ink import operations
from motifold.symbols.ink import bounds, moved
from motifold.symbols.key import KeyEntry, key_for, whole_key
from motifold.symbols.stitches import kind

ENTRIES = [entry for section in whole_key() for entry in section.entries]
PIXELS = 3.0 / 25.4 * 300
"""3 mm at 300 dpi."""


def printed(entry: KeyEntry) -> NDArray[np.float64]:
    """The symbol 3 mm tall (a flat one: 3 mm wide) at 300 dpi, ink 1 and paper 0, blurred by a pixel, in a square of 110."""
    from PIL import Image

    x0, y0, x1, y1 = bounds(entry.marks)
    scale = 3.0 / max(y1 - y0, (x1 - x0) / 1.5)
    marks = [moved(mark, 1, 0, 0, 1, -(x0 + x1) / 2, -(y0 + y1) / 2) for mark in entry.marks]
    half = 110 / 300 * 25.4 / 2
    png = to_png(Drawing((-half, -half, half, half), operations(marks, "#000000", scale), "", ""), dpi=300)
    ink = 1.0 - np.asarray(Image.open(io.BytesIO(png)).convert("L"), dtype=float) / 255
    return blur(ink)


def blur(ink: NDArray[np.float64]) -> NDArray[np.float64]:
    """A Gaussian of one pixel."""
    weights = np.exp(-0.5 * np.arange(-3, 4) ** 2)
    weights /= weights.sum()
    for axis in (0, 1):
        ink = sum(w * np.roll(ink, i - 3, axis) for i, w in enumerate(weights))
    return ink


def difference(a: NDArray[np.float64], b: NDArray[np.float64]) -> float:
    """Ink that differs, as part of the larger symbol's, after the best shift within two pixels."""
    shifts = [(dy, dx) for dy in range(-2, 3) for dx in range(-2, 3)]
    least = min(float(np.abs(a - np.roll(b, shift, (0, 1))).sum()) for shift in shifts)
    return least / max(a.sum(), b.sum())


def test_every_pair_of_symbols_differs_in_a_tenth_of_its_ink_at_3_mm(capsys: pytest.CaptureFixture[str]) -> None:
    pictures = {entry.id: printed(entry) for entry in ENTRIES}
    del pictures["mark: pass"]  # the same ring as a yarn's, around a number
    found = sorted((difference(pictures[a], pictures[b]), a, b) for a, b in combinations(pictures, 2))
    with capsys.disabled():
        print("\nnearest symbols of the key at 3 mm: " + "; ".join(f"{a} / {b} {d:.0%}" for d, a, b in found[:5]))
    assert found[0][0] >= 0.10, found[:5]


def test_no_symbol_is_in_the_key_twice() -> None:
    assert len({entry.id for entry in ENTRIES}) == len(ENTRIES)


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.id)
def test_every_symbol_has_names_in_both_terms_and_stands_above_its_foot(entry: KeyEntry) -> None:
    assert entry.full("US")
    assert entry.full("UK")
    x0, y0, x1, y1 = bounds(entry.marks)
    assert x1 - x0 < 6
    assert y1 > 0
    if entry.stitch and "tog" not in entry.id:
        assert y0 > -0.6
        assert y1 < kind(entry.stitch).height + 1.2


def test_a_pattern_s_key_has_only_what_it_uses_in_the_order_of_the_whole_key() -> None:
    found = key_for({"dc", "ch", "petal", "dc3tog"}, {("dc", "space"), ("sc", "loops")}, {"arrow"})
    assert [entry.id for entry in found] == ["ch", "dc", "dc in space", "dc3tog", "mark: arrow"]
