"""Pages as numbers: nothing outside the margins, nothing split that belongs together, text on one grid."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest

from motifold.render.booklet import BookletContent
from motifold.render.booklet.boxes import LineOfWords, Page, Picture
from motifold.render.booklet.linebreak import line_width
from motifold.render.booklet.paper import grid_for
from motifold.render.booklet.plan import best_plan, pages_of
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.words.model import Paragraph, RoundText, Table

Make = Callable[..., BookletContent]
PAPERS = ["A4", "Letter", "A5"]


def lines_of(page: Page) -> Iterator[tuple[float, float, LineOfWords]]:
    for placed in page.placed:
        for mark in placed.box.marks:
            if isinstance(mark, LineOfWords):
                yield placed.x + mark.x, placed.y + mark.y, mark


def words(mark: LineOfWords) -> str:
    return " ".join("".join(piece for piece, _ in word.pieces) for word in mark.words)


def pictures_of(page: Page) -> list[tuple[float, float, Picture]]:
    return [(placed.x + m.x, placed.y + m.y, m) for placed in page.placed for m in placed.box.marks if isinstance(m, Picture)]


@pytest.mark.parametrize("paper", PAPERS)
def test_everything_stands_inside_the_margins(make_content: Make, paper: str) -> None:
    content = make_content(paper)
    grid = grid_for(content.style.paper)
    for page in pages_of(content)[1:]:
        left, right, bottom = grid.left(page.number), grid.left(page.number) + grid.text_width, grid.top + grid.text_height
        for x, y, mark in lines_of(page):
            assert left - 0.01 <= x and x + line_width(mark.words) <= right + 0.5, words(mark)
            assert grid.top <= y <= bottom + 0.01, words(mark)
        for x, y, picture in pictures_of(page):
            assert left - 0.01 <= x and x + picture.drawing.width_mm / MM_PER_PT * picture.scale <= right + 0.01
            assert y + picture.drawing.height_mm / MM_PER_PT * picture.scale <= bottom + 0.01


@pytest.mark.parametrize("paper", PAPERS)
def test_no_drawing_is_split_from_its_caption(make_content: Make, paper: str) -> None:
    captions = {figure.caption for figure in make_content(paper).figures if figure.caption}
    for page in pages_of(make_content(paper)):
        shown = {mark.tags[-2].key for _, _, mark in pictures_of(page) if mark.tags[-1].name == "Figure"}
        captioned = {mark.tags[-2].key for _, _, mark in lines_of(page) if [tag.name for tag in mark.tags[-2:]] == ["Div", "Caption"]}
        assert captioned <= shown
        captions -= {words(mark) for _, _, mark in lines_of(page)}
    assert not captions


@pytest.mark.parametrize("paper", PAPERS)
def test_every_figure_is_printed_once_and_legible(make_content: Make, paper: str) -> None:
    content = make_content(paper)
    printed = [picture for page in pages_of(content)[1:] for _, _, picture in pictures_of(page)]
    assert len(printed) == len(content.figures)
    for figure in content.figures:
        [scale] = [picture.scale for picture in printed if picture.drawing is figure.drawing]
        assert figure.smallest <= scale <= figure.largest


@pytest.mark.parametrize("paper", PAPERS)
def test_a_heading_is_never_the_last_thing_in_its_column(make_content: Make, paper: str) -> None:
    for page in pages_of(make_content(paper))[1:]:
        for placed in page.placed:
            if placed.box.keep:
                below = [other for other in page.placed if other.x == placed.x and other.y > placed.y]
                assert below, [words(m) for m in placed.box.marks if isinstance(m, LineOfWords)]


def test_text_of_both_columns_stands_on_one_grid(make_content: Make) -> None:
    plan = best_plan(make_content("A4"))
    grid = plan.grid
    body = [(y - grid.top) / grid.leading for page in plan.pages[1:] for _, y, mark in lines_of(page)
            if mark.tags and mark.tags[-1].name == "LBody" and len(mark.tags) == 5 and mark.tags[1].key.startswith("motif")]
    assert body
    halves = [2 * (line - 0.74) for line in body]  # rounds stand half a line apart
    assert all(abs(half - round(half)) < 0.02 for half in halves), body


@pytest.mark.parametrize("paper", PAPERS)
def test_the_chart_stands_on_the_page_of_its_rounds_or_on_the_one_that_faces_it(make_content: Make, paper: str) -> None:
    content = make_content(paper)
    pages = pages_of(content)
    [chart_page] = [p.number for p in pages[1:] for _, _, picture in pictures_of(p) if picture.drawing is content.figures[0].drawing]
    rounds_page = min(p.number for p in pages for _, _, mark in lines_of(p) if words(mark).startswith("Rnd\u00a02\u00a0(WS)"))
    facing = chart_page + 1 if chart_page % 2 == 0 else chart_page - 1
    assert rounds_page in (chart_page, facing)


@pytest.mark.parametrize("count", [1, 2, 3, 5, 17, 60])
def test_a_paragraph_of_any_length_leaves_no_line_alone(plain_content: BookletContent, count: int) -> None:
    text = " ".join(f"Word{i} is followed by some others that fill the line." for i in range(count * 4))
    section = replace(plain_content.document.sections[0], blocks=(Paragraph(text),) * 3)
    content = replace(plain_content, document=replace(plain_content.document, sections=(section,)))
    for page in pages_of(content)[1:]:
        columns: dict[float, dict[str, int]] = {}
        for x, _, mark in lines_of(page):
            if mark.tags and mark.tags[-1].name == "P":
                column = columns.setdefault(round(x), {})
                column[mark.tags[-1].key] = column.get(mark.tags[-1].key, 0) + 1
        assert all(lines >= 2 or count == 1 for column in columns.values() for lines in column.values())


def test_a_table_that_breaks_prints_its_head_again(plain_content: BookletContent) -> None:
    table = Table("Many sizes.", ("Size", "Width"), tuple((f"Size {i}", f"{i} cm") for i in range(150)))
    section = replace(plain_content.document.sections[0], blocks=(table,))
    pages = pages_of(replace(plain_content, document=replace(plain_content.document, sections=(section,))))
    heads = [mark for page in pages for _, _, mark in lines_of(page) if words(mark) == "Size"]
    assert len([mark for mark in heads if mark.tags]) == 1
    assert len([mark for mark in heads if not mark.tags]) >= 2
    rows = [words(mark) for page in pages for _, _, mark in lines_of(page) if mark.tags and mark.tags[-1].scope == "Row"]
    assert rows == [f"Size {i}" for i in range(150)]


def test_a_dozen_pages_of_rounds_come_out_in_order(make_content: Make) -> None:
    content = make_content("A4")
    line = "Ch 3, 2 dc in same sp, ch 1, [3 dc in next ch-1 sp, ch 1] to next ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, join."
    many = tuple(RoundText(f"Rnd {i}", line, "(36 dc)", i, i, i) for i in range(1, 300))
    sections = tuple(replace(section, blocks=many) if section.key == "motif" else section for section in content.document.sections)
    pages = pages_of(replace(content, document=replace(content.document, sections=sections)))
    marks = [mark for page in pages for _, _, mark in lines_of(page) if mark.tags and mark.tags[-1].name == "Lbl"]
    labels = [words(mark) for mark in marks if mark.tags[-1].key.startswith("motif")]
    assert labels == [f"Rnd\u00a0{i}:" for i in range(1, 300)]
    assert len(pages) >= 12


def test_a_pattern_of_words_alone_has_no_empty_page(plain_content: BookletContent) -> None:
    pages = pages_of(plain_content)
    assert all(page.placed for page in pages)
    assert [page.number for page in pages] == list(range(1, len(pages) + 1))
