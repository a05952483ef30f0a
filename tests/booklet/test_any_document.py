"""Whatever is written is printed: no document stops the press, and nothing runs off the sheet."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from motifold.render.booklet import BookletContent, Figure, make_booklet
from motifold.render.booklet.boxes import LineOfWords, Picture
from motifold.render.booklet.linebreak import line_width
from motifold.render.booklet.paper import grid_for
from motifold.render.booklet.plan import pages_of
from motifold.render.drawing.display import Drawing, Text
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.words.model import Block, Items, Paragraph, RoundText, Section, Table

texts = st.one_of(st.text(max_size=30), st.builds(lambda n: "ch 3, 2 dc in next sp, " * n, st.integers(0, 60)), st.just("W" * 200))


def table(columns: int, rows: int, cell: str) -> Table:
    body = tuple((f"Row {r}", *[cell[:25]] * (columns - 1)) for r in range(rows))
    return Table(cell[:40], tuple(f"Size {i}" for i in range(columns)), body)


blocks: st.SearchStrategy[Block] = st.one_of(
    st.builds(Paragraph, texts, st.sampled_from(["body", "note", "caution"])),
    st.builds(Items, st.lists(texts, max_size=12).map(tuple), st.booleans()),
    st.builds(RoundText, st.text(max_size=60), texts, texts, st.just(1)),
    st.builds(table, st.integers(1, 16), st.integers(0, 30), texts),
)
sections = st.builds(
    Section,
    st.sampled_from(["about", "materials", "motif", "assembly", "finishing"]),
    texts,
    st.lists(blocks, max_size=4).map(tuple),
    st.sampled_from([None, "square"]),
)
drawings = st.builds(lambda w, h: Drawing((0, 0, w, h), (Text(1, 1, "x"),), "t", "d"), st.floats(0, 900), st.floats(0, 900))
figures = st.builds(
    Figure,
    st.sampled_from(["chart", "key", "growth", "net", "step", "finished"]),
    drawings,
    texts,
    st.sampled_from([None, "square"]),
    st.sampled_from([None, 1, 2, 3]),
)


@settings(
    max_examples=8, deadline=None, phases=[Phase.explicit, Phase.reuse, Phase.generate],
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(st.data())
def test_any_document_is_set_within_its_margins(make_content: Callable[..., BookletContent], data: st.DataObject) -> None:
    some, shown = data.draw(st.lists(sections, max_size=5)), data.draw(st.lists(figures, max_size=6))
    title = data.draw(texts)
    whole = make_content(data.draw(st.sampled_from(["A4", "Letter", "A5"])))
    document = replace(whole.document, title=title, sections=tuple(some))
    content = replace(whole, document=document, figures=tuple(shown), cover=replace(whole.cover, title=title, summary=title))
    grid = grid_for(content.style.paper)
    pages = pages_of(content)
    for page in pages[1:]:
        left, bottom = grid.left(page.number), grid.top + grid.text_height
        for placed in page.placed:
            assert placed.y + placed.box.height <= bottom + 0.5 or len(page.placed) == 1
            for mark in placed.box.marks:
                if isinstance(mark, LineOfWords):
                    assert placed.x + mark.x + line_width(mark.words) <= left + grid.text_width + 0.5
                if isinstance(mark, Picture):
                    assert placed.x + mark.x + mark.drawing.width_mm / MM_PER_PT * mark.scale <= left + grid.text_width + 0.5
    assert make_booklet(content).startswith(b"%PDF-1.7")
