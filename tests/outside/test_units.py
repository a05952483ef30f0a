"""Units, hooks and body tables against their sources."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import pytest

from motifold.render.pattern.quantity import Quantity
from motifold.render.sizing.hooks import HOOKS, nearest_hooks, us_label
from motifold.render.sizing.tables import look_up
from motifold.render.sizing.units import cm_text, convert, fraction_text, inches_text, one_length, percent_text

pint = pytest.importorskip("pint")


def test_the_yard_and_the_pound_are_those_of_the_agreement_of_1959() -> None:
    """1 yd = 0.9144 m, 1 lb = 0.45359237 kg exactly (NBS, Federal Register 24 FR 5348)."""
    assert convert(1, "yd", "m") == pytest.approx(0.9144, rel=1e-12)
    assert convert(1, "lb", "kg") == pytest.approx(0.45359237, rel=1e-12)
    assert convert(1, "oz", "g") == pytest.approx(28.349523125, rel=1e-12)


@pytest.mark.parametrize("unit", ["mm", "cm", "m", "in", "ft", "yd"])
def test_the_files_own_conversions_agree_with_pint(unit: str) -> None:
    assert float(Quantity(Fraction(7, 8), unit).cm) == pytest.approx(convert(0.875, unit, "cm"), rel=1e-12)


@pytest.mark.parametrize("unit", ["g", "kg", "oz", "lb"])
def test_the_files_own_weights_agree_with_pint(unit: str) -> None:
    assert float(Quantity(Fraction(7, 8), unit).grams) == pytest.approx(convert(0.875, unit, "g"), rel=1e-12)


def test_a_length_is_no_weight() -> None:
    with pytest.raises(ValueError, match="cannot be turned into"):
        convert(1, "m", "g")


@pytest.mark.parametrize(
    ("cm", "text"),
    [(13.0, "5⅛\u00a0in"), (2.54, "1\u00a0in"), (1.27, "½\u00a0in"), (0, "0\u00a0in"), (30.48, "12\u00a0in"), (-1.27, "−½\u00a0in")],
)
def test_inches_are_printed_in_eighths(cm: float, text: str) -> None:
    assert inches_text(cm) == text


@pytest.mark.parametrize("cm", [0.05, 0.9, 3.333, 12.84, 45.7, 228.6, -4.4])
def test_problems_tell_inches_as_print_does(cm: float) -> None:
    """Problems are told without a unit library (2.54 cm are an inch exactly); what they say is what pint makes of it."""
    assert one_length(cm, True) == inches_text(cm)


def test_a_check_in_inches_never_loads_a_unit_library(tmp_path: Path) -> None:
    """Even where a problem names lengths in inches."""
    text = (
        '[pattern]\ntitle = "X"\nterms = "US"\n[gauge]\nrounds = 5\nwidth = "5 in"\n[size]\nacross = 4\nease = "0 % to 1 %"\n'
        '[size.bodies]\nOne = "21 in"\n[motif.disc]\nrounds = "Ring: Make a magic ring.\\nRnd 1: Ch 1, 6 sc in ring; join.\\n'
        'Rnd 2 and following: Ch 1, 2 sc in each st around; join."\n'
    )
    (tmp_path / "x.toml").write_text(text, encoding="utf-8")
    code = (
        "import sys\nfrom motifold.cli import main\ntry:\n    main(['check', sys.argv[1]])\nexcept SystemExit:\n    pass\n"
        "print('pint' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code, str(tmp_path / "x.toml")], capture_output=True, text=True, check=True)
    assert "size-fit" in done.stderr and "in (" in done.stderr.replace("\u00a0", " ")
    assert done.stdout.split()[-1] == "False"


@pytest.mark.parametrize(
    ("name", "band"),
    [("head, 6 months, boys", (41.0, 45.6)), ("head, 24 months, girls", (44.6, 49.8)), ("head, 8 years, girls", (50.7, 55.3)),
     ("head, men", (54.8, 60.1)), ("hand, women", (17.3, 20.2)), ("head, 2 years", (44.6, 50.8))],
)  # fmt: skip
def test_bands_are_the_published_centiles(name: str, band: tuple[float, float]) -> None:
    """3rd to 97th centile of WHO 2007 and UK 1990; 5th to 95th of ANSUR II."""
    found = look_up(name)
    assert found is not None
    assert found.band_cm == pytest.approx(band)


def test_numbers_are_printed_without_empty_decimals_and_with_a_real_minus() -> None:
    assert cm_text(12.0) == "12\u00a0cm"
    assert cm_text(12.84) == "12.8\u00a0cm"
    assert percent_text(-4.04) == "−4\u00a0%"
    assert percent_text(6.67) == "+6.7\u00a0%"
    assert percent_text(0.01) == "0\u00a0%"
    assert fraction_text(Fraction(7, 16)) == "7/16"


def test_hooks_have_the_names_of_the_published_table() -> None:
    """Craft Yarn Council hook table, as repeated by shop charts (second-hand): 4 mm G-6, 5 mm H-8, 6.5 mm K-10½."""
    assert (us_label(4.0), us_label(5.0), us_label(6.5), us_label(4.25)) == ("G-6", "H-8", "K-10½", None)


def test_the_nearest_hooks_are_those_on_either_side() -> None:
    assert nearest_hooks(4.6) == (4.5, 5.0)
    assert nearest_hooks(5.0) == (5.0,)
    assert nearest_hooks(99.0) == (HOOKS[-1],)


@pytest.mark.parametrize(
    ("name", "cm"),
    [
        ("table: head, 0 months, boys", 34.5), ("table: head, 24 months, girls", 47.2), ("head, 4 years, boys", 50.2),
        ("head, 5 years, boys", 52.8), ("head, 10 years, girls", 53.7), ("table: head, men", 57.4), ("table: hand, women", 18.7),
    ],
)  # fmt: skip
def test_body_tables_hold_the_published_medians(name: str, cm: float) -> None:
    """WHO 2007 (0 to 5 years), UK 1990 (5 to 17), ANSUR II (adults)."""
    found = look_up(name)
    assert found is not None
    assert found.cm == pytest.approx(cm, abs=0.051)


def test_nothing_is_interpolated_across_the_joint_of_two_sources() -> None:
    below, above = look_up("head, 4.99 years, boys"), look_up("head, 5 years, boys")
    assert below is not None
    assert above is not None
    assert below.cm < 50.71
    assert above.cm == 52.8
    assert below.source != above.source


@pytest.mark.parametrize("name", ["head", "table: head, 18 years", "table: tail, men", "head, 2 years, men", "table: head, 9**9 years", ""])
def test_what_no_table_has_is_not_made_up(name: str) -> None:
    assert look_up(name) is None


def test_who_medians_agree_with_the_reference_library() -> None:
    reference = pytest.importorskip("rcpchgrowth.global_functions", reason="rcpchgrowth is a cross-check, not a dependency")
    for months in (3, 12, 24, 48):
        for sex, ours in (("male", "boys"), ("female", "girls")):
            found = look_up(f"head, {months} months, {ours}")
            assert found is not None
            assert found.cm == pytest.approx(float(reference.measurement_from_sds("who", 0.0, "ofc", sex, months / 12)), abs=0.06)
