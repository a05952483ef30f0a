"""Quantities as the trade writes them, exact, and nothing else."""

from __future__ import annotations

import time
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from motifold.render.pattern.quantity import Quantity, QuantityError, parse_per_length, parse_quantity, parse_range

THIN, NBSP, NARROW = "\u2009", "\u00a0", "\u202f"


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("12.5 cm", Fraction(25, 2), "cm"),
        ("5 1/8 in", Fraction(41, 8), "in"),
        ("5-1/8 in.", Fraction(41, 8), "in"),
        ("5½ inches", Fraction(11, 2), "in"),
        ("5 ½ inches", Fraction(11, 2), "in"),
        ("5 1⁄8″", Fraction(41, 8), "in"),
        ('½"', Fraction(1, 2), "in"),
        ("13g", Fraction(13), "g"),
        ("-8 %", Fraction(-8), "%"),
        ("−8%", Fraction(-8), "%"),
        ("- 8 %", Fraction(-8), "%"),
        ("+8 %", Fraction(8), "%"),
        (f"4{THIN}mm", Fraction(4), "mm"),
        (f"4{NBSP}mm", Fraction(4), "mm"),
        (f" 4{NARROW}mm ", Fraction(4), "mm"),
        ("3/4 yd", Fraction(3, 4), "yd"),
        (".5 kg", Fraction(1, 2), "kg"),
        ("1.75 oz", Fraction(7, 4), "oz"),
        ("2 YARDS", Fraction(2), "yd"),
        ("1 lb", Fraction(1), "lb"),
        ("110 metres", Fraction(110), "m"),
        ("1 ft", Fraction(1), "ft"),
    ],
)
def test_a_number_and_its_unit(text: str, value: Fraction, unit: str) -> None:
    assert parse_quantity(text) == Quantity(value, unit)


@pytest.mark.parametrize(
    ("text", "message", "offset", "hint"),
    [
        ("12,5 cm", "a point here, not a comma", 2, "write 12.5 cm"),
        ("1,200 m", "a point here, not a comma", 1, "write 1.200 m, or 1200 m if the comma marks thousands"),
        ("12.5", "unit is missing", 4, '"12.5 cm"'),
        ("12 cms", '"cms" is no unit', 3, "units are"),
        ("12 cm 3", '"3" is more than one', 6, "one number and its unit"),
        ("110 m / 50 g", '"/ 50 g" is more than one', 6, "one number and its unit"),
        ("9**9**9 m", '"**9**9 m" is not read here', 1, "a number and its unit"),
        ("__import__('os')", "is no number", 0, "a number and its unit"),
        ("1e9 m", '"e" is no unit', 1, "units are"),
        ("", "nothing is written", 0, "a number and its unit"),
        ("   ", "nothing is written", 0, "a number and its unit"),
        ("cm", '"cm" is no number', 0, "a number and its unit"),
        ("1/0 in", "0 below its line", 2, ""),
        ("1234567890 m", "at most 9 digits", 0, ""),
        ("1." + "1" * 80 + " m", "at most 9 digits", 0, ""),
        ("1" * 5000, "too long to be a quantity", 0, "a number and its unit"),
        ("1.5.2 cm", '".2 cm" is not read here', 3, "a number and its unit"),
        ("３ cm", '"３" is no number', 0, "a number and its unit"),
        ("3 3 in", "3 of what?", 2, '"3 cm"'),
    ],
)
def test_anything_else_is_a_problem_at_its_place(text: str, message: str, offset: int, hint: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse_quantity(text)
    assert message in caught.value.message
    assert caught.value.offset == offset
    assert hint in (caught.value.hint or "")


UNITS = pint.UnitRegistry()
PINT = {"mm": "mm", "cm": "cm", "m": "m", "in": "inch", "ft": "foot", "yd": "yard", "g": "g", "kg": "kg", "oz": "ounce", "lb": "pound"}


@pytest.mark.parametrize("unit", PINT)
def test_units_are_those_of_the_reference_library(unit: str) -> None:
    quantity = Quantity(Fraction(7, 3), unit)
    there = UNITS.Quantity(7 / 3, PINT[unit])
    if quantity.kind == "length":
        assert float(quantity.cm) == pytest.approx(there.to("cm").magnitude, rel=1e-12)
        assert float(quantity.metres) == pytest.approx(there.to("m").magnitude, rel=1e-12)
    else:
        assert float(quantity.grams) == pytest.approx(there.to("g").magnitude, rel=1e-12)


def test_conversions_are_exact() -> None:
    assert parse_quantity("1 yd").metres == Fraction(9144, 10000)
    assert parse_quantity("16 oz").grams == parse_quantity("1 lb").grams == Fraction(45359237, 100000)
    assert parse_quantity("12 in").cm == parse_quantity("1 ft").cm == Fraction(3048, 100)
    assert parse_quantity("-3 %").fraction == Fraction(-3, 100)


def test_a_weight_has_no_length() -> None:
    with pytest.raises(ValueError, match="13 g is no length"):
        _ = parse_quantity("13 g").cm
    with pytest.raises(ValueError, match="13 cm is not in percent"):
        _ = parse_quantity("13 cm").fraction


@pytest.mark.parametrize("text", ["110 m / 50 g", "110m/50g", "50 g / 110 m", f"110{THIN}m ⁄ 50{NBSP}g"])
def test_a_label_gives_length_for_weight(text: str) -> None:
    label = parse_per_length(text)
    assert (label.length, label.mass) == (Quantity(Fraction(110), "m"), Quantity(Fraction(50), "g"))
    assert label.metres_per_gram == Fraction(11, 5)


@pytest.mark.parametrize(
    "text", ["110 m", "110 m / 50 m", "50 g / 1 kg", "110 m / 0 g", "110 / 50", "110 m / 50 g / 2 g", "110 m per 50 g"]
)
def test_what_is_no_label_is_a_problem(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_per_length(text)


@pytest.mark.parametrize(
    ("text", "low", "high", "unit"),
    [
        ("-8 % to 0 %", -8, 0, "%"),
        ("-8 to 0 %", -8, 0, "%"),
        ("−5 cm to −2 cm", -5, -2, "cm"),
        ("0%–12%", 0, 12, "%"),
        ("0 % to 0 %", 0, 0, "%"),
    ],
)
def test_two_ends_low_first(text: str, low: int, high: int, unit: str) -> None:
    ends = parse_range(text)
    assert (ends.low, ends.high) == (Quantity(Fraction(low), unit), Quantity(Fraction(high), unit))


@pytest.mark.parametrize(
    "text", ["0 % to -8 %", "5 %", "0 % to", "to 5 %", "0 % to 5 cm", "2 in to 5 cm", "0 % to 5 % to 9 %", "0 % tom 5 %"]
)
def test_what_has_no_two_ends_is_a_problem(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_range(text)


@given(st.integers(-999_999, 999_999), st.sampled_from([1, 2, 3, 4, 8, 10, 16, 100, 1000]), st.sampled_from([*PINT, "%"]))
def test_what_is_printed_reads_back(top: int, bottom: int, unit: str) -> None:
    quantity = Quantity(Fraction(top, bottom), unit)
    again = parse_quantity(str(quantity))
    assert again.unit == unit
    assert float(again.value) == pytest.approx(float(quantity.value), rel=1e-8)


@given(st.text(st.sampled_from("0123456789.,/⁄½ -−+%cmingtoyd\"'\u00a0*e()"), max_size=30))
def test_any_text_is_a_quantity_or_a_problem_inside_it(text: str) -> None:
    for parse in (parse_quantity, parse_per_length, parse_range):
        try:
            parse(text)
        except QuantityError as error:
            assert 0 <= error.offset <= len(text)
            assert 0 <= error.length <= max(len(text), 1)


@pytest.mark.parametrize("text", ["1" * 10**6, " " * 10**6, "1 " * 10**5, "/" * 10**6])
def test_long_texts_cost_no_time(text: str) -> None:
    began = time.perf_counter()
    for parse in (parse_quantity, parse_per_length, parse_range):
        with pytest.raises(QuantityError):
            parse(text)
    assert time.perf_counter() - began < 0.5
