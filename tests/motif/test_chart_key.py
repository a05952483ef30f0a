"""The key drawn: what a pattern uses, and the whole set as one sheet."""

from __future__ import annotations

from chart_by_hand import disc

from motifold.render.drawing import to_svg
from motifold.render.drawing.display import Group, Text
from motifold.render.motif.chart import ChartLook, draw_key, draw_key_sheet, entries_used
from motifold.symbols.key import whole_key


def test_a_pattern_s_key_shows_its_stitches_and_marks() -> None:
    entries = entries_used([disc("dc", 2, "AB")[0], disc("sc", 1)[0]], ChartLook())
    assert [e.id for e in entries] == ["sc", "dc", "mark: ring", "mark: arrow", "mark: yarn"]
    drawing = draw_key(entries, "UK", 80)
    words = [op.words for op in drawing.operations if isinstance(op, Text)]
    assert "tr" in words
    assert "treble" in words
    assert "single" not in " ".join(words)


def test_the_sheet_fits_an_a4_and_a_letter_page_and_has_every_symbol() -> None:
    sheet = draw_key_sheet()
    assert sheet.width_mm <= 190
    assert sheet.height_mm <= 259
    assert sum(isinstance(op, Group) for op in sheet.operations) == sum(len(s.entries) for s in whole_key())
    assert to_svg(sheet)


def test_nothing_runs_over_the_edge_of_a_key() -> None:
    from motifold.render.drawing.measure import bounds

    for drawing in (draw_key_sheet(), draw_key([e for s in whole_key() for e in s.entries], "US", 120)):
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
