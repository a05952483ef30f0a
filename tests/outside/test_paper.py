"""Sheets against the standards that define them, read off the pages of a finished booklet."""

from __future__ import annotations

from io import BytesIO
from math import sqrt
from pathlib import Path

import pytest
from pypdf import PdfReader

from motifold.render.booklet import Look, booklet_content, make_booklet
from motifold.render.booklet.paper import PAPERS_MM
from motifold.render.pattern import read_pattern
from motifold.render.worked import work_pattern

SAMPLE = Path(__file__).parents[2] / "samples" / "tidepool-coaster.toml"

# ISO 216:2007: A4 is 210 x 297 mm, A5 148 x 210 mm, each side within 1.5 mm up to 150 mm and 2 mm up to 600 mm.
# US letter: ANSI/ASME Y14.1, size A, 8.5 x 11 in; 1 in = 25.4 mm by definition (international yard and pound agreement, 1959).
STANDARD_MM = {"A4": (210.0, 297.0), "A5": (148.0, 210.0), "Letter": (8.5 * 25.4, 11 * 25.4)}


@pytest.mark.parametrize("paper", ["A4", "A5", "Letter"])
def test_every_page_of_a_booklet_has_the_size_of_its_standard(paper: str) -> None:
    data = SAMPLE.read_bytes()
    reading = read_pattern(str(SAMPLE), data)
    assert reading.pattern is not None
    names = {"A4": "A4", "A5": "A5", "Letter": "Letter"}
    look = Look(paper=names[paper])  # type: ignore[arg-type]
    pages = PdfReader(BytesIO(make_booklet(booklet_content(work_pattern(reading.pattern), look)))).pages
    assert len(pages) > 1
    for page in pages:
        size = [float(length) * 25.4 / 72 for length in (page.mediabox.width, page.mediabox.height)]
        assert sorted(size) == pytest.approx(sorted(STANDARD_MM[paper]), abs=0.1)


def test_the_a_sheets_keep_the_ratio_of_the_root_of_two() -> None:
    # ISO 216:2007, clause 3: sides as 1 to the root of 2, sizes rounded to whole millimetres.
    for width, height in (PAPERS_MM["A4"], PAPERS_MM["A5"]):
        assert abs(height / width - sqrt(2)) < 0.5 / width * 3
    assert PAPERS_MM["A5"][1] == PAPERS_MM["A4"][0]
