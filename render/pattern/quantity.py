"""Quantities as a pattern writes them: "12.5 cm", "5 1/8 in", "13 g", "110 m / 50 g", "-8 % to 0 %".

A small grammar of our own. Text from the file never reaches an expression parser. Numbers are exact, and so are the
conversions: the international yard is 0.9144 m and the international pound 0.45359237 kg, both by definition (agreement
of 1 July 1959, NBS / Federal Register 24 FR 5348).
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Literal

from motifold.symbols.record import dataclass

Kind = Literal["length", "mass", "share", "number"]

_CM = {
    "mm": Fraction(1, 10),
    "cm": Fraction(1),
    "m": Fraction(100),
    "in": Fraction(254, 100),
    "ft": Fraction(3048, 100),
    "yd": Fraction(9144, 100),
}
_POUND = Fraction(45359237, 100000)
_GRAMS = {"g": Fraction(1), "kg": Fraction(1000), "oz": _POUND / 16, "lb": _POUND}
_BY_FRACTIONS = ("in", "ft", "yd", "oz", "lb")
_UNIT_WORDS = {
    "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "in": "in", "ins": "in", "inch": "in", "inches": "in", '"': "in", "″": "in", "”": "in",
    "ft": "ft", "foot": "ft", "feet": "ft", "yd": "yd", "yds": "yd", "yard": "yd", "yards": "yd",
    "g": "g", "gram": "g", "grams": "g", "gramme": "g", "grammes": "g",
    "kg": "kg", "kilogram": "kg", "kilograms": "kg", "oz": "oz", "ounce": "oz", "ounces": "oz",
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "%": "%",
}  # fmt: skip
_VULGAR = {
    "¼": Fraction(1, 4), "½": Fraction(1, 2), "¾": Fraction(3, 4), "⅐": Fraction(1, 7), "⅑": Fraction(1, 9), "⅒": Fraction(1, 10),
    "⅓": Fraction(1, 3), "⅔": Fraction(2, 3), "⅕": Fraction(1, 5), "⅖": Fraction(2, 5), "⅗": Fraction(3, 5), "⅘": Fraction(4, 5),
    "⅙": Fraction(1, 6), "⅚": Fraction(5, 6), "⅛": Fraction(1, 8), "⅜": Fraction(3, 8), "⅝": Fraction(5, 8), "⅞": Fraction(7, 8),
}  # fmt: skip

MOST_DIGITS = 9
"""No length or weight of a crocheted thing needs more digits than this before or after the point."""
LONGEST_TEXT = 100

# Spaces that people and word processors put between a number and its unit: plain, tab, no-break, figure, thin, narrow no-break.
_SPACE = "[ \t\u00a0\u2007\u2009\u202f]"
_SPACES = re.compile(f"{_SPACE}*")
_DIGITS = f"[0-9]{{1,{MOST_DIGITS}}}"
_NUMBER = re.compile(
    rf"(?P<sign>[-−+]?){_SPACE}*(?:"
    rf"(?:(?P<whole>{_DIGITS})(?:{_SPACE}+|-))?(?P<top>{_DIGITS})[/⁄](?P<bottom>{_DIGITS})(?!{_SPACE}*[0-9.])"
    rf"|(?P<integer>{_DIGITS})?{_SPACE}?(?P<vulgar>[{''.join(_VULGAR)}])"
    rf"|(?P<decimal>{_DIGITS}(?:\.{_DIGITS})?|\.{_DIGITS})"
    r")"
)
_COMMA = re.compile(r"[-−+]?([0-9]+),([0-9]+)(?![0-9,])")
_UNIT = re.compile(r"[A-Za-z]+|%|\"|″|”|''")


class QuantityError(ValueError):
    """What is wrong with a quantity, where in its text (``offset``, ``length`` in characters), and what would mend it.

    ``exact``: the hint says what to write in this very case, not what quantities look like.
    """

    def __init__(self, message: str, offset: int = 0, length: int = 1, hint: str | None = None, exact: bool = False) -> None:
        super().__init__(message)
        self.message = message
        self.offset = offset
        self.length = length
        self.hint = hint
        self.exact = exact


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact number and its unit: one of mm cm m in ft yd g kg oz lb %, or "" for none. "5 inches" has the unit "in"."""

    value: Fraction
    unit: str

    @property
    def kind(self) -> Kind:
        if self.unit in _CM:
            return "length"
        if self.unit in _GRAMS:
            return "mass"
        return "share" if self.unit == "%" else "number"

    @property
    def cm(self) -> Fraction:
        """A length in centimetres; ValueError for what is no length."""
        return self.value * self._factor(_CM, "length")

    @property
    def metres(self) -> Fraction:
        """A length in metres; ValueError for what is no length."""
        return self.cm / 100

    @property
    def grams(self) -> Fraction:
        """A mass in grams; ValueError for what is no mass."""
        return self.value * self._factor(_GRAMS, "weight")

    @property
    def fraction(self) -> Fraction:
        """A share of one: -8 % is -0.08. ValueError for what is not in percent."""
        if self.unit != "%":
            raise ValueError(f"{self} is not in percent")
        return self.value / 100

    def _factor(self, table: dict[str, Fraction], what: str) -> Fraction:
        if self.unit not in table:
            raise ValueError(f"{self} is no {what}")
        return table[self.unit]

    def __str__(self) -> str:
        """As a pattern would write it: "12.5 cm", "5 1/8 in"."""
        whole, part = divmod(abs(self.value), 1)
        if part and self.unit in _BY_FRACTIONS and part.denominator <= 16:
            text = f"{whole} {part}" if whole else str(part)
        else:
            text = f"{float(abs(self.value)):.10g}"
        return f"{'-' if self.value < 0 else ''}{text} {self.unit}".rstrip()


@dataclass(frozen=True, slots=True)
class PerLength:
    """``110 m / 50 g``: a length of yarn and its mass."""

    length: Quantity
    mass: Quantity

    @property
    def metres_per_gram(self) -> Fraction:
        return self.length.metres / self.mass.grams


@dataclass(frozen=True, slots=True)
class Range:
    """``-8 % to 0 %``: both ends in the same kind of unit, low first."""

    low: Quantity
    high: Quantity


def parse_quantity(text: str) -> Quantity:
    """Reads ``number unit``; raises QuantityError.

    >>> parse_quantity("5 1/8 in")
    Quantity(value=Fraction(41, 8), unit='in')
    """
    quantity, at = _one(_bounded(text), 0)
    _nothing_after(text, at)
    return quantity


def parse_per_length(text: str) -> PerLength:
    """Reads ``110 m / 50 g`` (or the other way round, as some labels have it); raises QuantityError."""
    first, at = _one(_bounded(text), 0)
    at = _skip_space(text, at)
    if text[at : at + 1] not in ("/", "⁄"):
        raise QuantityError("this needs a length and the weight that it has", 0, len(text), 'write length, slash, weight: "110 m / 50 g"')
    second_at = _skip_space(text, at + 1)
    second, at = _one(text, second_at)
    _nothing_after(text, at)
    length, mass = (second, first) if first.kind == "mass" else (first, second)
    if length.kind != "length" or mass.kind != "mass":
        raise QuantityError(
            f"this needs a length and a weight, not {first} and {second}", 0, len(text), 'for example "110 m / 50 g" or "120 yd / 1.75 oz"'
        )
    for quantity in (length, mass):
        if quantity.value <= 0:
            raise QuantityError(f"{quantity} of yarn is nothing: both numbers must be more than 0", 0, len(text))
    return PerLength(length, mass)


def parse_range(text: str) -> Range:
    """Reads ``number [unit] to number unit``, low first; raises QuantityError."""
    low, at = _one(_bounded(text), 0, unit_needed=False)
    at = _skip_space(text, at)
    word = re.match(r"to(?![A-Za-z])|[–—]", text[at:])
    if word is None:
        raise QuantityError("this needs two ends", 0, len(text), 'write the smaller, then "to", then the larger: "0 % to 12 %"')
    high_at = _skip_space(text, at + word.end())
    try:
        high, at = _one(text, high_at)
    except QuantityError as error:
        if low.unit or "unit is missing" not in error.message:
            raise
        ends = f"{text[: word.start() + at].strip()} % to {text[high_at:].strip()} %"
        raise QuantityError(error.message, error.offset, error.length, f'in percent or in cm: "{ends}"', exact=True) from None
    _nothing_after(text, at)
    if low.unit == "":
        low = Quantity(low.value, high.unit)
    if low.kind != high.kind:
        raise QuantityError(f"{low} and {high} do not compare", 0, len(text), "both ends need the same kind of unit")
    if _size(low) > _size(high):
        raise QuantityError(f"the first end, {low}, is more than the second, {high}", 0, len(text), f'turned round: "{high} to {low}"')
    return Range(low, high)


def _size(quantity: Quantity) -> Fraction:
    """A number to compare two quantities of one kind by."""
    if quantity.kind == "length":
        return quantity.cm
    return quantity.grams if quantity.kind == "mass" else quantity.value


def _bounded(text: str) -> str:
    if not text.strip():
        raise QuantityError("nothing is written here", 0, len(text), 'a quantity is a number and its unit: "12.5 cm"')
    if len(text) > LONGEST_TEXT:
        raise QuantityError("this is too long to be a quantity", 0, LONGEST_TEXT, 'a quantity is a number and its unit: "12.5 cm"')
    return text


def _skip_space(text: str, at: int) -> int:
    match = _SPACES.match(text, at)
    return match.end() if match else at


def _one(text: str, at: int, unit_needed: bool = True) -> tuple[Quantity, int]:
    """One number and its unit from ``at`` on, and where they end."""
    value, after = _number(text, _skip_space(text, at))
    unit_at = _skip_space(text, after)
    match = _UNIT.match(text, unit_at)
    word = match.group() if match else ""
    if not word or (not unit_needed and word == "to"):
        rest = text[unit_at:].rstrip()
        if rest and not re.match("[0-9/⁄–—]|to(?![A-Za-z])", rest):
            raise QuantityError(f'"{rest}" is not read here', unit_at, len(rest), 'a quantity is a number and its unit: "12.5 cm"')
        if unit_needed:
            number = text[_skip_space(text, at) : after]
            raise QuantityError(f"{number} of what? The unit is missing", unit_at, 0, f'for example "{number} cm"')
        return Quantity(value, ""), after
    if word == "''":
        word = '"'
    unit = _UNIT_WORDS.get(word) or _UNIT_WORDS.get(word.lower())
    if unit is None:
        raise QuantityError(
            f'"{word}" is no unit that is read here', unit_at, len(word), "units are mm, cm, m, in, ft, yd, g, kg, oz, lb and %"
        )
    end = unit_at + len(match.group() if match else "")
    if text[end : end + 1] == "." and word.isalpha():  # "in." as a full abbreviation
        end += 1
    return Quantity(value, unit), end


def _number(text: str, at: int) -> tuple[Fraction, int]:
    comma = _COMMA.match(text, at)
    if comma:
        raise _comma_error(text, comma)
    match = _NUMBER.match(text, at)
    if match is None:
        if at >= len(text):
            raise QuantityError("a number is missing here", at, 0, 'a quantity is a number and its unit: "12.5 cm"')
        if re.match(rf"[-−+]?[0-9]{{{MOST_DIGITS + 1}}}", text[at:]):
            raise _too_many(text, at)
        word = re.match(r"[^ \t]+", text[at:])
        shown = word.group() if word else text[at]
        raise QuantityError(f'"{shown}" is no number', at, len(shown), 'a quantity is a number and its unit: "12.5 cm", "5 1/8 in"')
    end = match.end()
    if re.match("[0-9]", text[end:]):
        raise _too_many(text, at)
    if match["top"]:
        if int(match["bottom"]) == 0:
            raise QuantityError("a fraction cannot have 0 below its line", match.start("bottom"), len(match["bottom"]))
        value = Fraction(int(match["whole"] or 0)) + Fraction(int(match["top"]), int(match["bottom"]))
    elif match["vulgar"]:
        value = Fraction(int(match["integer"] or 0)) + _VULGAR[match["vulgar"]]
    else:
        value = Fraction(match["decimal"])
    return (-value if match["sign"] in ("-", "−") else value), end


def _comma_error(text: str, comma: re.Match[str]) -> QuantityError:
    pointed = f"{comma[1]}.{comma[2]}"
    rest = text[comma.end() :].strip()
    hint = f"write {pointed} {rest}".rstrip()
    if len(comma[2]) == 3:
        hint += f", or {comma[1]}{comma[2]} {rest}".rstrip() + " if the comma marks thousands"
    return QuantityError("numbers are written with a point here, not a comma", comma.end(1), 1, hint, exact=True)


def _too_many(text: str, at: int) -> QuantityError:
    match = re.match(r"[-−+]?[0-9.]*", text[at:])
    return QuantityError(f"a number here has at most {MOST_DIGITS} digits on either side of its point", at, match.end() if match else 1)


def _nothing_after(text: str, at: int) -> None:
    at = _skip_space(text, at)
    rest = text[at:]
    if rest.strip():
        raise QuantityError(f'"{rest.strip()}" is more than one quantity', at, len(rest.rstrip()), 'one number and its unit: "12.5 cm"')
