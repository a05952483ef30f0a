"""How deep an edging is, by the gauge."""

from __future__ import annotations

from importlib import resources

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.worked import work_pattern


def depths(sample: str, *swaps: tuple[str, str]) -> dict[str, tuple[float, bool]]:
    """The depth of each edging of the largest size, and whether it is turned back."""
    text = (resources.files("motifold.samples") / f"{sample}.toml").read_text(encoding="utf-8")
    for old, new in swaps:
        assert old in text
        text = text.replace(old, new)
    read = read_pattern("pattern.toml", text.encode())
    assert read.pattern is not None
    return {rim.name: (rim.depth_cm, rim.turned) for rim in work_pattern(read.pattern).sizes[-1].rims}


def test_each_round_is_as_deep_as_its_tallest_stitch() -> None:
    """A round of sc adds half of 12.4 / 11 cm at a side; sc to hdc is 0.88 to 1.30. The brim: one of sc, four of hdc."""
    single = 12.4 / 11 / 2
    assert depths("ferry-hat") == {"brim": (pytest.approx(single + 4 * single * 1.30 / 0.88), True)}


def test_a_brim_that_hangs_down_is_not_turned() -> None:
    assert depths("ferry-hat", ('form = "hat, brim up"', 'form = "hat, brim down"'))["brim"][1] is False


def test_an_edging_with_rows_of_its_own_gauge_goes_by_them() -> None:
    own = ("[edging.brim]\n", '[edging.brim.gauge]\nrows = 10\nheight = "8 cm"\n\n[edging.brim]\n')
    assert depths("ferry-hat", own)["brim"][0] == pytest.approx(5 * 0.8)
