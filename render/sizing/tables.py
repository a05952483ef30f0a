"""Body sizes by name, "table: head, 2 years", each with the source that is printed beside it. All in cm.

Two growth references meet at five years of age and do not agree there (UK 1990 reads about 2 cm more), so nothing is ever interpolated from
one to the other: under five years the WHO's tables, from five on the UK's.
"""

from __future__ import annotations

import re
from itertools import pairwise

from motifold.symbols.record import dataclass

WHO = "WHO Child Growth Standards, head circumference-for-age (2007)"
UK1990 = "UK 1990 growth reference, reanalysed 2009"
ANSUR = "US Army ANSUR II (Gordon et al. 2014, NATICK/TR-15/007; adults in service, 2010-2012)"
CYC = "Craft Yarn Council's www.YarnStandards.com, head sizes"

_WHO_MONTHS = (0, 1, 2, 3, 6, 9, 12, 18, 24, 36, 48, 60)
_WHO_BOYS = (34.5, 37.3, 39.1, 40.5, 43.3, 45.0, 46.1, 47.4, 48.3, 49.5, 50.2, 50.7)
_WHO_GIRLS = (33.9, 36.5, 38.3, 39.5, 42.2, 43.8, 44.9, 46.2, 47.2, 48.5, 49.3, 49.9)
_WHO_BOYS_BAND = (
    (32.1, 35.1, 36.9, 38.3, 41.0, 42.6, 43.6, 44.9, 45.7, 46.8, 47.5, 47.9),
    (36.9, 39.5, 41.3, 42.7, 45.6, 47.4, 48.5, 49.9, 50.8, 52.1, 53.0, 53.5),
)
_WHO_GIRLS_BAND = (
    (31.7, 34.3, 36.0, 37.2, 39.7, 41.3, 42.3, 43.6, 44.6, 45.9, 46.7, 47.2),
    (36.1, 38.8, 40.5, 41.9, 44.6, 46.3, 47.5, 48.8, 49.8, 51.2, 52.0, 52.6),
)
_UK_YEARS = (5, 6, 8, 10, 12, 14, 16, 17)
_UK_BOYS = (52.8, 53.2, 53.9, 54.5, 55.1, 55.9, 56.6, 56.9)
_UK_GIRLS = (51.7, 52.2, 53.0, 53.7, 54.4, 54.9, 55.3, 55.5)
_UK_BOYS_BAND = ((49.9, 50.3, 50.9, 51.5, 52.1, 52.7, 53.4, 53.7), (55.6, 56.1, 56.8, 57.5, 58.2, 59.0, 59.8, 60.1))
_UK_GIRLS_BAND = ((49.4, 49.9, 50.7, 51.4, 51.9, 52.4, 52.7, 52.9), (53.9, 54.4, 55.3, 56.1, 56.8, 57.4, 57.9, 58.1))
"""Third and 97th centiles."""
_ADULTS: dict[str, tuple[float, float]] = {  # median of men, of women
    "head": (57.4, 56.0), "hand": (21.2, 18.7), "wrist": (17.6, 15.4), "hand length": (19.3, 18.0),
    "foot": (25.2, 22.7), "foot length": (27.1, 24.6), "chest": (105.6, 94.0),
}
_ADULT_BANDS: dict[str, tuple[tuple[float, float], tuple[float, float]]] = {  # 5th and 95th centile of men, of women
    "head": ((54.8, 60.1), (53.2, 59.7)), "hand": ((19.5, 23.0), (17.3, 20.2)), "wrist": ((16.2, 19.1), (14.2, 16.8)),
    "hand length": ((17.7, 21.0), (16.5, 19.9)), "foot": ((23.1, 27.3), (20.9, 24.8)), "foot length": ((25.0, 29.3), (22.6, 26.8)),
    "chest": ((92.2, 120.7), (82.2, 109.4)),
}  # fmt: skip
_CYC_WARNING = "this table reads like finished hats: measured heads are larger, so allow no further negative ease"
_CYC_HEADS = {"preemie": 30.5, "newborn": 33.0, "baby": 35.5, "toddler": 40.5, "child": 45.5, "woman": 50.5, "man": 56.0}

_AGE = re.compile(r"(\d{1,3}(?:\.\d{1,2})?) ?(months?|mo|years?|yrs?|y)")
_SEXES = {"boy": "boys", "boys": "boys", "girl": "girls", "girls": "girls", "man": "men", "men": "men", "woman": "women", "women": "women",
          "adult": "adults", "adults": "adults"}


@dataclass(frozen=True, slots=True)
class TableValue:
    """A body measurement of a published table; ``warning``: what its reader must know."""

    cm: float
    source: str
    warning: str | None = None
    band_cm: tuple[float, float] | None = None  # between these lie nearly all: the source says which share


def known_names() -> str:
    """What a body table may be asked for, in one sentence."""
    return (
        'known: "table: head, 6 months", "table: head, 2 years", "table: head, 8 years, girls" (birth to 17 years); '
        "for men, women or adults: "
        + ", ".join(_ADULTS)
    )


def look_up(name: str) -> TableValue | None:
    """A measurement by name, with or without the word "table:" before it; None where no table here has it."""
    text = name.strip().lower().removeprefix("table:")
    parts = [" ".join(part.split()) for part in text.split(",") if part.strip()]
    if len(parts) < 2:
        return None
    measure, rest = parts[0].removesuffix(" circumference").removesuffix(" girth"), parts[1:]
    if measure in ("craft yarn council head", "cyc head"):
        return _cyc(rest[0])
    sex = next((_SEXES[part] for part in rest if part in _SEXES), None)
    age = next((match for part in rest if (match := _AGE.fullmatch(part))), None)
    if len(rest) != (sex is not None) + (age is not None):
        return None
    if age is not None:
        years = float(age.group(1)) / (12 if age.group(2).startswith("m") else 1)
        return _child(years, sex) if measure == "head" and sex in (None, "boys", "girls") else None
    return _adult(measure, sex)


def _child(years: float, sex: str | None) -> TableValue | None:
    young = years < 5
    ages = tuple(m / 12 for m in _WHO_MONTHS) if young else tuple(float(y) for y in _UK_YEARS)
    boys: tuple[float, ...] = _WHO_BOYS if young else _UK_BOYS
    girls: tuple[float, ...] = _WHO_GIRLS if young else _UK_GIRLS
    source = WHO if young else UK1990
    values = [_between(years, ages, column) for column in (boys, girls)]
    if values[0] is None or values[1] is None:
        return None
    value = {"boys": values[0], "girls": values[1]}.get(sex or "", (values[0] + values[1]) / 2)
    who = f"median of {sex}" if sex else "mean of the medians of boys and girls"
    bands = (_WHO_BOYS_BAND, _WHO_GIRLS_BAND) if young else (_UK_BOYS_BAND, _UK_GIRLS_BAND)
    chosen = {"boys": bands[:1], "girls": bands[1:]}.get(sex or "", bands)
    lowest = min(_between(years, ages, band[0]) or 0.0 for band in chosen)
    highest = max(_between(years, ages, band[1]) or 0.0 for band in chosen)
    return TableValue(round(value, 2), f"{source}, {who}; 3rd to 97th centile", None, (round(lowest, 2), round(highest, 2)))


def _between(age: float, ages: tuple[float, ...], values: tuple[float, ...]) -> float | None:
    """Straight between the two ages of one table; None outside it."""
    for i, (young, old) in enumerate(pairwise(ages)):
        if young <= age <= old + 1e-9:
            return values[i] + (values[i + 1] - values[i]) * (age - young) / (old - young)
    return None


def _adult(measure: str, sex: str | None) -> TableValue | None:
    if measure not in _ADULTS or sex not in ("men", "women", "adults"):
        return None
    men, women = _ADULTS[measure]
    of_men, of_women = _ADULT_BANDS[measure]
    if sex == "adults":
        band = (min(of_men[0], of_women[0]), max(of_men[1], of_women[1]))
        return TableValue(round((men + women) / 2, 2), f"{ANSUR}, mean of the medians of men and women; 5th to 95th centile", None, band)
    value, band = (men, of_men) if sex == "men" else (women, of_women)
    return TableValue(value, f"{ANSUR}, median of {sex}; 5th to 95th centile", None, band)


def _cyc(size: str) -> TableValue | None:
    value = _CYC_HEADS.get(size)
    if value is None:
        return None
    return TableValue(value, f"Source: {CYC}", _CYC_WARNING)
