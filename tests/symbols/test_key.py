"""The symbols of the key can be told apart as they are printed: 3 mm, black, by a cheap printer."""

from __future__ import annotations

import io
from dataclasses import replace
from itertools import product

import numpy as np
import pytest
from numpy.typing import NDArray

from motifold.render.drawing import Drawing, to_png
from motifold.render.motif.chart.key import INKS, draw_symbol
from motifold.symbols.footprint import Foot
from motifold.symbols.ink import bounds
from motifold.symbols.key import KeyEntry, key_for, whole_key
from motifold.symbols.specimens import specimen
from motifold.symbols.stitches import kind

ENTRIES = [entry for section in whole_key() for entry in section.entries]
SIDE = 64
"""Pixels of a picture's side: 3 mm at 300 dpi are 35, a flat symbol's 4.5 mm 53."""
LEAST = 0.10


def every_symbol() -> dict[str, KeyEntry]:
    """The key, and what else the notation reads: heights, feet, posts, extended, linked, foundation, decreases, gathers of every size."""
    found = {entry.id: entry for entry in ENTRIES}
    stems = ("sc", "hdc", "dc", "tr", "dtr")
    posts = [f"{letter}{stem}" for letter in ("FP", "BP", "e", "l", "f") for stem in stems if (letter, stem) != ("l", "sc")]
    together = [f"{stem}{legs}tog" for stem in ("sc", "hdc", "dc", "tr", "FPdc", "BPdc") for legs in (2, 3, 4, 5)]
    gathers = [f"{n}-{stem} {closed}" for stem in ("hdc", "dc", "tr") for n in range(2, 7) for closed in ("cl", "bobble", "pc", "puff")]
    fans = ["3-dc shell", "4-dc shell", "7-dc shell", "ch-4 picot", "ch-5 picot", "crossed tr", "quadtr", "rev sc"]
    usual = {"3-dc cl", "5-dc bobble", "5-dc pc", "4-hdc puff"}  # in the key under their plain names
    found |= {name: KeyEntry(name, specimen(name)) for name in (*posts, *together, *gathers, *fans) if name not in usual}
    feet: tuple[Foot, ...] = ("back loop", "front loop", "space")
    return found | {name: KeyEntry(name, specimen(stem, foot)) for stem in stems[:4] for foot in feet if (name := f"{stem} in {foot}")}


def printed(entry: KeyEntry) -> NDArray[np.float64]:
    """The symbol 3 mm tall (a flat one: 4.5 mm wide at most) at 300 dpi, as a key prints it, ink 1 and paper 0, blurred by a pixel.

    A letter in a ring is printed with it, one beside a mark is not.
    """
    from PIL import Image

    x0, y0, x1, y1 = bounds(entry.marks)
    pitch = 3.0 / max(y1 - y0, (x1 - x0) / 1.5)
    alone = replace(entry, id="") if entry.id == "mark: arrow" else entry
    half = SIDE / 300 * 25.4 / 2
    png = to_png(Drawing((-half, -half, half, half), (draw_symbol(alone, 0.0, 0.0, 9.0, pitch, INKS[True]),), "", ""), dpi=300)
    ink = 1.0 - np.asarray(Image.open(io.BytesIO(png)).convert("L"), dtype=float) / 255
    return blur(ink)


def blur(ink: NDArray[np.float64]) -> NDArray[np.float64]:
    """A Gaussian of one pixel."""
    weights = np.exp(-0.5 * np.arange(-3, 4) ** 2)
    weights /= weights.sum()
    for axis in (0, 1):
        ink = sum(w * np.roll(ink, i - 3, axis) for i, w in enumerate(weights))
    return ink


def differences(pictures: NDArray[np.float64]) -> NDArray[np.float64]:
    """For all pairs: ink that differs, as part of the larger symbol's, after the best shift within two pixels."""
    count = len(pictures)
    flat, sums = pictures.reshape(count, -1), pictures.sum((1, 2))
    least = np.full((count, count), np.inf)
    for shift in product(range(-2, 3), range(-2, 3)):
        other = np.roll(pictures, shift, (1, 2)).reshape(count, -1)
        for i in range(count):
            least[i, i + 1 :] = np.minimum(least[i, i + 1 :], np.abs(other[i + 1 :] - flat[i]).sum(1))
    return least / np.maximum(sums[:, None], sums[None, :])


def test_every_pair_of_symbols_differs_in_a_tenth_of_its_ink_at_3_mm(capsys: pytest.CaptureFixture[str]) -> None:
    symbols = every_symbol()
    names = list(symbols)
    pictures = np.stack([printed(entry) for entry in symbols.values()]).astype(np.float32)
    apart = differences(pictures)
    nearest = sorted((float(apart[i, j]), names[i], names[j]) for i, j in np.argwhere(apart < 0.2))
    in_key = [pair for pair in nearest if {pair[1], pair[2]} <= {entry.id for entry in ENTRIES}]
    with capsys.disabled():
        for what, pairs in (("the key", in_key), (f"all {len(names)} symbols", nearest)):
            print(f"\nnearest of {what} at 3 mm: " + "; ".join(f"{a} / {b} {d:.1%}" for d, a, b in pairs[:5]))
    assert nearest[0][0] >= LEAST, [pair for pair in nearest if pair[0] < LEAST]


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
