"""Posters and templates from the command line."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result
from pypdf import PdfReader

Run = Callable[..., Result]
COASTER, BASKET, BAND = "tidepool-coaster.toml", "lighthouse-basket.toml", "watch-headband.toml"


def test_a_poster_is_one_pdf_with_its_plan_first(motifold: Run, folder: Path, tmp_path: Path) -> None:
    out = tmp_path / "poster.pdf"
    assert motifold("chart", folder / COASTER, "--poster", "40cm", "-o", out).exit_code == 0
    pages = PdfReader(out).pages
    assert len(pages) == 1 + 6
    assert "6 sheets" in pages[0].extract_text() and "A1" in pages[1].extract_text()


def test_a_folder_gets_a_file_for_each_sheet(motifold: Run, folder: Path, tmp_path: Path) -> None:
    assert motifold("schematic", folder / BASKET, "--poster", "16in", "--format", "svg", "-o", f"{tmp_path / 'sheets'}/").exit_code == 0
    names = {path.name for path in (tmp_path / "sheets").iterdir()}
    assert "lighthouse-basket-schematic-net-plan.svg" in names and "lighthouse-basket-schematic-net-A1.svg" in names


@pytest.mark.parametrize(
    ("file", "options", "words"),
    [
        (COASTER, ("--poster", "wide"), "a width such as 60cm"),
        (COASTER, ("--poster", "1cm"), "from 5 cm to 5 m"),
        (COASTER, ("--poster", "60cm", "-o", "a.png"), "several sheets"),
        (COASTER, ("--poster", "60cm", "--steps"), "--steps cannot go with it"),
        (COASTER, ("--true-size", "--one-repeat"), "--one-repeat cannot go with it"),
        (COASTER, ("--poster", "60cm", "--key"), "motifold key"),
        (COASTER, ("--true-size", "--poster", "60cm"), "three different things"),
        (BAND, ("--true-size", "--motif", "band"), "nothing can be drawn in its true size"),
    ],
)
def test_what_cannot_be_a_poster_is_told(motifold: Run, folder: Path, file: str, options: tuple[str, ...], words: str) -> None:
    result = motifold("chart", folder / file, *options)
    assert result.exit_code == 2 and words in result.stderr
