"""Sheets beside the booklet from the command line: one at a time, in black unless in colour, and what makes no sense is refused."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

Run = Callable[..., Result]


@pytest.mark.parametrize("kind", ["handout", "class-sheet", "tester-sheet"])
def test_a_sheet_is_written_beside_the_pattern_under_its_own_name(motifold: Run, folder: Path, kind: str) -> None:
    assert motifold("booklet", folder / "tidepool-coaster.toml", f"--{kind}", "--terms", "US").exit_code == 0
    assert (folder / f"tidepool-coaster-{kind}.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--handout", "--class-sheet"), "ask for one at a time"),
        (("--errata", "--tester-sheet"), "ask for one at a time"),
        (("--fold", "--handout"), "not folded"),
        (("--large-print", "--handout"), "too small for large print"),
        (("--numbers", "--class-sheet"), "pages of the booklet"),
        (("--colour", "--mono", "--handout"), "contradict"),
        (("--colour",), "--colour is for --handout"),
    ],
)
def test_what_makes_no_sense_together_is_refused(motifold: Run, folder: Path, options: tuple[str, ...], words: str) -> None:
    result = motifold("booklet", folder / "tidepool-coaster.toml", *options)
    assert result.exit_code == 2 and words in " ".join(result.stderr.split())
