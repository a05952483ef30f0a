"""Sheets put together again give the drawing; what is said to be so long is so long on paper.

Sources: a PDF's default unit is 1/72 inch (ISO 32000-1, 8.3.2.3), an inch is 25.4 mm (the international yard and pound agreement of 1959).
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pikepdf
import pytest
from click.testing import CliRunner
from PIL import Image

from motifold.cli import main
from motifold.render.drawing import Drawing, to_pdf, to_png
from motifold.render.drawing.display import FillPath, StrokePath, Text
from motifold.render.drawing.display import Path as Outline
from motifold.render.drawing.papers import SHEETS_MM
from motifold.render.drawing.poster import TooLarge, enlarge, poster
from motifold.render.drawing.sheets import FOOT_MM, MARGIN_MM, OVERLAP_MM, corner_of, span, split_over

MM = 72 / 25.4
DOTS = 4
"""For each mm: sheets are cut at whole dots then."""
SAMPLES = Path(__file__).parents[2] / "samples"


def _picture() -> Drawing:
    """Lines that lean, a patch, and words: 430 by 250 mm."""
    ends = [((7.0 * i, 0.0), (430.0 - 3 * i, 250.0)) for i in range(40)]
    lines = [StrokePath(Outline((("M", *a), ("L", *b))), "#334455", 0.8) for a, b in ends]
    patch = FillPath(Outline((("M", 100.0, 60.0), ("C", 180.0, 10.0, 300.0, 90.0, 250.0, 200.0), ("Z",))), "#cc8844")
    word = Text(120.0, 120.0, "Harbour", "serif-bold", 90.0)
    return Drawing((0.0, 0.0, 430.0, 250.0), (patch, *lines, word), "Lines", "Lines and a word.")


def _dots(drawing: Drawing) -> np.ndarray:
    with Image.open(io.BytesIO(to_png(drawing, 25.4 * DOTS))) as picture:
        return np.asarray(picture.convert("L"), dtype=int)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_trimmed_as_the_plan_says_the_sheets_make_the_drawing_again(paper: str) -> None:
    drawing, page = _picture(), tuple(float(round(side)) for side in SHEETS_MM[paper])  # type: ignore[index]
    pages = dict(poster(drawing, (page[0], page[1]), "test"))
    split = min((split_over((430.0, 250.0), p) for p in ((page[0], page[1]), (page[1], page[0]))), key=lambda one: one.sheets)
    assert len(pages) == split.sheets + 1 > 3
    x0, y0, x1, y1 = span(drawing, split)
    whole = _dots(Drawing((x0, y0, x1, y1), drawing.operations, "", ""))
    again, cut = np.full_like(whole, -1), np.zeros(whole.shape, bool)
    half = int(OVERLAP_MM / 2 * DOTS)
    for row in range(split.down):
        for column in range(split.across):
            sheet = _dots(pages[f"{'ABCDEFG'[row]}{column + 1}"])
            left, top = round(MARGIN_MM * DOTS), sheet.shape[0] - round((MARGIN_MM + FOOT_MM + split.high) * DOTS)
            part = sheet[top : top + round(split.high * DOTS), left : left + round(split.wide * DOTS)]
            before, above = half * (column > 0), half * (row > 0)
            after = part.shape[1] - half * (column + 1 < split.across)
            below = part.shape[0] - half * (row + 1 < split.down)
            cx, cy = corner_of(drawing, split, row, column)
            x, y = round((cx - x0) * DOTS), round((y1 - cy - split.high) * DOTS)
            again[y + above : y + below, x + before : x + after] = part[above:below, before:after]
            cut[:, [x + before, max(x + before - 1, 0)]] |= column > 0
            cut[[y + above, max(y + above - 1, 0)], :] |= row > 0
    assert (again >= 0).all()  # nothing is left out
    assert cut.mean() < 0.01
    away = np.abs(again - whole)[~cut]  # but for the dots of the broken lines, where it is cut
    assert away.max() <= 16  # edges of ink lie on hundredths of a mm in the file, a 25th of a dot: a 16th of full ink
    assert np.abs(np.roll(again, 1, axis=1) - whole)[~cut].max() > 100  # as a dot's shift would show


def _lines(page: pikepdf.Page) -> Iterator[tuple[float, float, float, float]]:
    """Every straight line of a page, in its points."""
    stack, now, at = [], np.eye(3), (0.0, 0.0)
    for operands, operator in pikepdf.parse_content_stream(page):
        match str(operator):
            case "q":
                stack.append(now)
            case "Q":
                now = stack.pop()
            case "cm":
                a, b, c, d, e, f = (float(value) for value in operands)
                now = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ now
            case "m" | "l" as kind:
                x, y, _ = np.array([float(operands[0]), float(operands[1]), 1.0]) @ now
                if kind == "l":
                    yield (*at, x, y)
                at = (float(x), float(y))


def _level(page: pikepdf.Page, longest: float = 1e9) -> list[float]:
    """The lengths of its level lines, in mm."""
    found = [abs(x1 - x0) / MM for x0, y0, x1, y1 in _lines(page) if abs(y1 - y0) < 1e-6]
    return [length for length in found if length <= longest]


def test_the_bar_on_each_sheet_measures_five_centimetres() -> None:
    pages = poster(_picture(), SHEETS_MM["A4"], "test")
    with pikepdf.open(io.BytesIO(to_pdf([drawing for _, drawing in pages]))) as document:
        assert len(document.pages) == len(pages)
        for page in document.pages:
            assert any(abs(length - 50.0) < 0.01 for length in _level(page))


def test_a_poster_is_as_wide_as_it_was_asked_to_be() -> None:
    large = enlarge(_picture(), 1000.0)
    assert (large.width_mm, large.height_mm) == pytest.approx((1000.0, 250.0 / 430.0 * 1000.0))
    with pytest.raises(TooLarge, match="sheets"):
        poster(enlarge(_picture(), 9000.0), SHEETS_MM["A4"], "test")


def test_a_chart_in_its_true_size_measures_what_the_proof_says(tmp_path: Path) -> None:
    """The ferry hat's square, 12 rounds of single crochet, measures 13.5 cm: its last round's heads stand on a square of that side."""
    out = tmp_path / "square.pdf"
    asked = ["chart", str(SAMPLES / "ferry-hat.toml"), "--motif", "square", "--size", "Adult", "--true-size", "-o", str(out)]
    result = CliRunner().invoke(main, asked)
    assert result.exit_code == 0, result.stderr
    with pikepdf.open(out) as document:
        [page] = document.pages
        xs = [x for x0, _, x1, _ in _lines(page) for x in (x0, x1)]
        assert any(abs(length - 50.0) < 0.01 for length in _level(page))
    inside = [x / MM for x in xs if MARGIN_MM + 2 < x / MM < 210 - MARGIN_MM - 2]
    assert max(inside) - min(inside) == pytest.approx(135.3, rel=0.03)
