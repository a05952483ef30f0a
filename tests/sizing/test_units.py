"""Our few units against pint's own definitions of all units."""

from __future__ import annotations

from itertools import permutations

import pint
import pytest

from motifold.render.sizing.units import convert

LENGTHS = {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot", "yd": "yard"}
MASSES = {"g": "gram", "kg": "kilogram", "oz": "ounce", "lb": "pound"}


def test_every_pair_of_units_converts_as_pints_full_registry_does() -> None:
    full = pint.UnitRegistry()
    for names in (LENGTHS, MASSES):
        for unit, to in permutations(names, 2):
            assert convert(3.7, unit, to) == pytest.approx(full.Quantity(3.7, names[unit]).to(names[to]).magnitude, rel=1e-12)


@pytest.mark.parametrize(("unit", "to"), [("cm", "g"), ("oz", "yd"), ("cm", "parsec")])
def test_what_measures_something_else_is_refused(unit: str, to: str) -> None:
    with pytest.raises(ValueError, match=r"unit|cannot"):
        convert(1.0, unit, to)
