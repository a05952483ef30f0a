"""Head sizes against a published reckoner of the growth references that their tables come from.

rcpchgrowth (Royal College of Paediatrics and Child Health, AGPL) computes them from the published LMS values; it is no dependency
of ours and need not be installed: without it this check is left out.
"""

from __future__ import annotations

import warnings

import pytest

from motifold.render.sizing.tables import look_up

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    growth = pytest.importorskip("rcpchgrowth")


@pytest.mark.parametrize("sex", ["boys", "girls"])
@pytest.mark.parametrize(
    "age", ["6 months", "1 year", "2 years", "3 years", "3.5 years", "5 years", "8 years", "10 years", "12 years", "16 years"]
)
def test_a_childs_head_is_the_median_of_the_growth_reference(age: str, sex: str) -> None:
    found = look_up(f"table: head, {age}, {sex}")
    assert found is not None
    number, unit = age.split()
    years = float(number) / (12 if unit.startswith("month") else 1)
    median = growth.measurement_from_sds("uk-who", 0.0, "ofc", "male" if sex == "boys" else "female", years)
    assert found.cm == pytest.approx(float(median), abs=0.15)


@pytest.mark.parametrize("sex", ["boys", "girls"])
@pytest.mark.parametrize("age", ["1 month", "6 months", "2 years", "4 years", "6 years", "12 years", "16 years"])
def test_the_band_runs_from_the_third_to_the_97th_centile(age: str, sex: str) -> None:
    found = look_up(f"table: head, {age}, {sex}")
    assert found is not None and found.band_cm is not None
    number, unit = age.split()
    years = float(number) / (12 if unit.startswith("month") else 1)
    reference = "who" if years < 5 else "uk-who"
    for ours, z in zip(found.band_cm, (-1.880794, 1.880794), strict=True):
        theirs = growth.measurement_from_sds(reference, z, "ofc", "male" if sex == "boys" else "female", years)
        assert ours == pytest.approx(float(theirs), abs=0.06)
