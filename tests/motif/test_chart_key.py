"""The key drawn: what a pattern uses, and the whole set as one sheet."""

from __future__ import annotations

import pytest
from chart_by_hand import disc
from chart_pieces import fabric_of_text

from motifold.render.drawing import to_svg
from motifold.render.drawing.display import Group, StrokePath, Text
from motifold.render.drawing.measure import bounds
from motifold.render.motif.chart import ChartLook, draw_key, draw_key_sheet, entries_used
from motifold.symbols.key import whole_key
from motifold.symbols.lesson import lessons
from motifold.symbols.terms import Terms


def test_a_pattern_s_key_shows_its_stitches_and_marks() -> None:
    entries = entries_used([disc("dc", 2, "AB")[0], disc("sc", 1)[0]], ChartLook())
    assert [e.id for e in entries] == ["sc", "dc", "mark: ring", "mark: arrow", "mark: yarn"]
    drawing = draw_key(entries, "UK", 80)
    words = [op.words for op in drawing.operations if isinstance(op, Text)]
    assert "tr" in words
    assert "treble" in words
    assert "single" not in " ".join(words)


PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4), "A5": (148.0, 210.0)}


@pytest.mark.parametrize("mono", [False, True])
@pytest.mark.parametrize("terms", [None, "US", "UK"])
@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_the_sheet_has_every_symbol_once_and_keeps_to_the_margins_of_its_paper(paper: str, terms: Terms | None, mono: bool) -> None:
    width, height = PAPERS[paper]
    pages = draw_key_sheet(width, height, terms, mono)
    assert len(pages) <= (3 if paper == "A5" else 2)
    symbols = [op for page in pages for op in page.operations if isinstance(op, Group) and op.css_class == "key"]
    assert len(symbols) == sum(len(section.entries) for section in whole_key())
    for page in pages:
        assert (page.width_mm, page.height_mm) == (width, height)
        x0, y0, x1, y1 = bounds(page.operations) or page.box
        assert x0 >= 9.5 and x1 <= width - 9.5 and y1 <= -9.5 and y0 >= 9.0 - height
        assert to_svg(page)


def test_no_two_things_of_a_sheet_lie_on_each_other() -> None:
    for paper in PAPERS.values():
        for page in draw_key_sheet(*paper):
            boxes = [box for op in page.operations if not isinstance(op, StrokePath) and (box := bounds((op,)))]
            for i, a in enumerate(boxes):
                for b in boxes[i + 1 :]:
                    apart = a[2] <= b[0] + 0.1 or b[2] <= a[0] + 0.1 or a[3] <= b[1] + 0.4 or b[3] <= a[1] + 0.4
                    assert apart, (page.title, a, b)


def test_the_sheet_teaches_each_part_of_the_grammar_with_an_example() -> None:
    first = draw_key_sheet()[0]
    words = {op.words for op in first.operations if isinstance(op, Text)}
    assert {"Stem", "Bars", "Head", "Foot", "Gathers"} <= words
    examples = [op for op in first.operations if isinstance(op, Group) and op.css_class == "lesson"]
    assert len(examples) == 5
    for example, one in zip(examples, lessons(), strict=True):
        inks = {op.color for op in example.children if isinstance(op, StrokePath)}
        assert len(inks) == (2 if one.pale else 1)


def test_a_sheet_for_a_black_and_white_printer_has_no_grey_words() -> None:
    for page in draw_key_sheet(mono=True):
        assert {op.color for op in page.operations if isinstance(op, Text)} == {"#000000"}


def test_nothing_runs_over_the_edge_of_a_key() -> None:
    drawing = draw_key([e for s in whole_key() for e in s.entries], "US", 120)
    box = bounds(drawing.operations)
    assert box is not None
    assert box[0] >= drawing.box[0] - 0.5
    assert box[2] <= drawing.box[2] + 0.5
    assert box[1] >= drawing.box[1] - 0.5
    assert box[3] <= drawing.box[3] + 0.5


def test_a_pattern_s_own_symbol_is_in_its_key() -> None:
    from motifold.render.fabric.model import Fabric

    base = disc("dc", 1)[0]
    fabric = Fabric("own", "circle", 0, "rounds", (base.stitches[0],), (), (), base.rounds, ())
    look = ChartLook(symbols={"dc": "M0 0 L4 10 L8 0 Z"}, names={"dc": "tent"})
    assert any(e.words == "tent" for e in entries_used([fabric], look))


def test_the_sprites_are_one_symbol_each_with_title_and_description() -> None:
    from xml.etree import ElementTree

    from motifold.render.motif.chart import key_sprites

    svg = "{http://www.w3.org/2000/svg}"
    symbols = ElementTree.fromstring(key_sprites()).findall(f"{svg}symbol")
    assert len(symbols) == sum(len(s.entries) for s in whole_key())
    assert len({s.get("id") for s in symbols}) == len(symbols)
    for symbol in symbols:
        assert symbol.findtext(f"{svg}title")
        assert symbol.findtext(f"{svg}desc")
        assert symbol.find(f"{svg}path") is not None


OWN = """
[stitch.petal]
means = "(2 dc, ch 2, 2 dc) in same sp"
[stitch.bob]
means = "dc5tog in same st"
[motif.m]
rows = '''
Chain: With A, ch 12.
Row 1 (RS): Sc in 2nd ch from hook, [ch 2, sk next 2 ch, sc in next ch] 3 times, sc in last ch, turn.
Row 2: Ch 1 (does not count as a st), sc in first st, [sc in next sc, petal in next ch-2 sp] 3 times, bob in last st, turn.
'''
"""


def test_a_pattern_s_own_stitch_says_what_it_is_made_of() -> None:
    fabric = fabric_of_text(OWN)
    look = ChartLook(names={"petal": "petal", "bob": "bob"})
    made = {entry.short("US"): entry.made(("US",)) for entry in entries_used([fabric], look)}
    assert made["petal"] == "2 dc, ch 2, 2 dc"
    assert made["bob"] == "5 dc, closed into one"
    assert [entry.made(("UK",)) for entry in entries_used([fabric], look) if entry.label == "petal"] == ["2 tr, ch 2, 2 tr"]


def test_the_key_of_a_left_handed_chart_is_its_mirror_image() -> None:
    fabric = fabric_of_text(OWN)
    right, left = (entries_used([fabric], ChartLook(left_handed=hand)) for hand in (False, True))
    for one, other in zip(right, left, strict=True):
        sign = 1 if one.id.startswith("mark: ") else -1
        assert [[(sign * x, y) for x, y in mark.points] for mark in one.marks] == [list(mark.points) for mark in other.marks]
