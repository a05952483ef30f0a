"""Lines of type: fractions, dashes, even lines, nothing lost and nothing too wide."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from io import BytesIO

import pikepdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from motifold.render.booklet import BookletContent, make_booklet
from motifold.render.booklet.inline import Type, Word, typeset, width_of, words_of
from motifold.render.booklet.linebreak import break_lines, line_width
from motifold.render.booklet.model import PageStyle
from motifold.render.booklet.paper import PAPERS_MM, grid_for
from motifold.render.booklet.styles import accent_of
from motifold.render.drawing.measure import contrast
from motifold.render.words.model import Paragraph, Section

BODY = Type("serif", 9.8)


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("5 1/8 in", "5⅛\u00a0in"),
        ("1/2 in", "½\u00a0in"),
        ("5/16 in", "⁵⁄₁₆\u00a0in"),
        ("110 m / 50 g", "110\u00a0m / 50\u00a0g"),
        ("12 x 12 cm", "12 × 12\u00a0cm"),
        ("[3 dc, ch 2] x 3", "[3 dc, ch 2] × 3"),
        ("Rnds 4-6", "Rnds 4–6"),
        ("ch-2 sp", "ch-2 sp"),
        ("C.top[1/2]", "C.top[½]"),
        ('"petal"', "“petal”"),
        ("don't", "don’t"),
        ("4/6/8", "4/6/8"),
        ("2026-11-25", "2026-11-25"),
        ("max 8 exx", "max 8 exx"),
    ],
)
def test_what_is_typed_is_printed_as_the_trade_prints_it(typed: str, printed: str) -> None:
    assert typeset(typed) == printed


def test_the_parts_of_a_composed_fraction_stand_on_the_baseline_and_hang_from_the_capitals() -> None:
    (word,) = words_of([(typeset("5/16"), BODY)], 500)
    assert [piece for piece, _ in word.pieces] == ["⁵", "⁄", "₁₆"]
    assert word.pieces[0][1].rise < 0 < word.pieces[2][1].rise


TEXT = "Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next ch-2 sp; rep from * 2 more times, join."


@pytest.mark.parametrize("width", [120.0, 180.0, 230.0, 400.0])
def test_no_line_is_wider_than_its_column_and_no_word_is_lost(width: float) -> None:
    lines = break_lines(words_of([(TEXT, BODY)], width), width)
    assert all(line_width(line) <= width + 0.01 for line in lines)
    assert " ".join("".join(piece for piece, _ in word.pieces) for line in lines for word in line) == TEXT


def greedy_lines(words: tuple[Word, ...], width: float) -> list[list[Word]]:
    lines: list[list[Word]] = [[]]
    for word in words:
        if lines[-1] and line_width([*lines[-1], word]) > width:
            lines.append([])
        lines[-1].append(word)
    return lines


def unevenness(lines: Sequence[Sequence[Word]], width: float) -> float:
    return sum((width - line_width(line)) ** 2 for line in lines[:-1])


def test_lines_are_more_even_than_those_that_are_filled_one_by_one() -> None:
    better = 0
    for width in range(110, 300, 10):
        words = tuple(replace(word, penalty=0.0) for word in words_of([(TEXT, BODY)], width))
        even, filled = break_lines(words, width), greedy_lines(words, width)
        if len(even) == len(filled) and line_width(filled[-1]) > 0.12 * width:  # a last line of one short word is worse than uneven ones
            assert unevenness(even, width) <= unevenness(filled, width) + 1e-6
            better += unevenness(even, width) < 0.8 * unevenness(filled, width)
    assert better


def test_a_number_stays_on_the_line_of_what_it_counts() -> None:
    for width in range(150, 320, 10):
        lines = break_lines(words_of([(TEXT, BODY)], width), width)
        ends = ["".join(piece for piece, _ in line[-1].pieces) for line in lines[:-1]]
        assert not [end for end in ends if end.isdigit()], width


def test_no_break_space_is_no_break() -> None:
    assert len(words_of([("12.8\u00a0cm across", BODY)], 500)) == 2


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=120), st.floats(40, 400))
def test_any_words_are_set_and_none_is_wider_than_the_line(text: str, width: float) -> None:
    lines = break_lines(words_of([(typeset(text), BODY)], width), width)
    assert all(line_width(line) <= width + 0.01 or len(line) == 1 for line in lines)
    assert all(word.width <= width + 0.01 or len(word.pieces[0][0]) == 1 for line in lines for word in line)


def test_paper_is_as_large_as_the_standards_say() -> None:
    # ISO 216: A0 is a square metre of ratio 1 to the root of 2, each size half of the one before, rounded down to mm.
    assert PAPERS_MM["A4"] == (210, 297) and PAPERS_MM["A5"] == (148, 210)
    # ANSI/ASME Y14.1: 8.5 by 11 inches
    assert PAPERS_MM["Letter"] == pytest.approx((8.5 * 25.4, 11 * 25.4))
    assert [grid_for("Letter").width, grid_for("Letter").height] == pytest.approx([612, 792])


@pytest.mark.parametrize("paper", ["A4", "Letter", "A5"])
def test_a_column_holds_between_forty_and_seventy_five_characters(paper: str) -> None:
    grid = grid_for(paper)  # type: ignore[arg-type]
    sample = "Slip stitch in the next chain space, chain three, two double crochet in the same space, "
    characters = grid.column_width / (width_of(sample, Type("serif", grid.body)) / len(sample))
    assert 40 <= characters <= 75
    assert grid.top + grid.text_height < grid.height


@pytest.mark.parametrize("color", ["#ffff00", "#8c9aa5", "#b3402e", "#000000", "#ffffff", "#56b4e9"])
@pytest.mark.parametrize("mono", [True, False])
def test_the_accent_reads_on_white_whatever_the_yarn(color: str, mono: bool) -> None:
    accent = accent_of(PageStyle("A4", color, mono))
    assert contrast(accent, "#ffffff") >= 4.5
    assert not mono or accent[1:3] == accent[3:5] == accent[5:7]




def test_a_fraction_is_read_as_it_is_typed(make_content: Callable[..., BookletContent]) -> None:
    content = make_content("A4")
    said = Section("gauge", "Gauge", (Paragraph("It is 5 1/8 in or 3 5/16 in across."),))
    booklet = make_booklet(replace(content, document=replace(content.document, sections=(said,)), figures=()))
    with pikepdf.open(BytesIO(booklet)) as pdf:
        read = [
            str(operands[1]["/ActualText"]).strip()
            for operands, operator in pikepdf.parse_content_stream(pdf.pages[1])
            if str(operator) == "BDC" and "/ActualText" in operands[1]
        ]
    assert read == ["5 1/8\u00a0in", "3 5/16\u00a0in"]
