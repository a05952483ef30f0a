"""Widths of words, boxes of drawings, and what changes when a drawing is placed or restyled."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO

import numpy as np
import pytest

from motifold.render.drawing import to_pdf, to_png
from motifold.render.drawing.display import Drawing, Face, FillPath, Path, StrokePath, Text, Transform
from motifold.render.drawing.fonts import cap_height_mm, font_path, has_character, kerning, shape, text_width_mm
from motifold.render.drawing.measure import apply, around, bounds, compose, contrast, grey_of, in_greys, path_box, place, restyle, transform

FACES: tuple[Face, ...] = ("sans", "sans-bold", "sans-italic", "serif", "serif-bold", "serif-italic")


@pytest.mark.parametrize("face", FACES)
def test_every_face_is_packaged_and_has_what_the_trade_prints(face: Face) -> None:
    assert font_path(face).suffix == ".ttf"
    assert all(has_character(character, face) for character in "½¼¾⅓⅔⅛⅜⅝⅞×–—“”‘’…•°±⁄⁰⁵₀₈′″©")
    assert text_width_mm("HH", face, 10) == pytest.approx(2 * text_width_mm("H", face, 10))


def test_width_grows_with_size_and_kerning_brings_letters_nearer() -> None:
    assert text_width_mm("chain", "sans", 18) == pytest.approx(2 * text_width_mm("chain", "sans", 9))
    assert kerning("serif", "A", "V") < 0
    assert text_width_mm("AV", "serif", 10) < text_width_mm("A", "serif", 10) + text_width_mm("V", "serif", 10)


@pytest.mark.parametrize("face", FACES)
def test_kerning_is_what_the_font_library_reads_from_the_same_table(face: Face) -> None:
    from fontTools.ttLib import TTFont

    file = TTFont(font_path(face))
    gpos, cmap = file["GPOS"].table, file.getBestCmap()
    tables = [table for lookup in gpos.LookupList.Lookup if lookup.LookupType == 2 for table in lookup.SubTable]

    def reference(left: str, right: str) -> int:
        for table in tables:
            if left in table.Coverage.glyphs:
                if table.Format == 2:
                    row = table.Class1Record[table.ClassDef1.classDefs.get(left, 0)]
                    return getattr(row.Class2Record[table.ClassDef2.classDefs.get(right, 0)].Value1, "XAdvance", 0) or 0
                pairs = table.PairSet[table.Coverage.glyphs.index(left)].PairValueRecord
                found = [pair.Value1.XAdvance for pair in pairs if pair.SecondGlyph == right]
                if found:
                    return int(found[0])
        return 0

    letters = "AVToYarn.,;:-–1274½×(“”’fgijé"
    for left in letters:
        for right in letters:
            assert kerning(face, left, right) == reference(cmap[ord(left)], cmap[ord(right)]), left + right


def test_a_missing_character_becomes_a_lozenge_and_an_arrow_comes_from_another_face() -> None:
    assert [glyph.character for glyph in shape("a漢", "serif")] == ["a", "◊"]
    assert shape("→", "serif-italic")[0].face == "serif" or shape("→", "serif-italic")[0].character == "→"
    assert [glyph.character for glyph in shape("ch\u20113\u2009cm", "sans")] == ["c", "h", "-", "3", "", "c", "m"]


def test_a_capital_stands_as_high_as_its_face_says() -> None:
    box = bounds([Text(0, 0, "H", "sans", 20)])
    assert box is not None
    assert box[3] - box[1] == pytest.approx(cap_height_mm("sans", 20), rel=0.01)


def test_a_curve_is_measured_by_its_own_extremes() -> None:
    assert path_box(Path((("M", 0, 0), ("C", 0, 4, 4, 4, 4, 0)))) == pytest.approx((0, 0, 4, 3))


def test_a_box_holds_the_ink_and_hardly_more(everything: Drawing) -> None:
    from PIL import Image

    fitted = around(everything.operations, 1.0, "", "")
    picture = np.asarray(Image.open(BytesIO(to_png(fitted, 254))).convert("L"))  # ten dots a mm
    rows, columns = np.nonzero(picture < 200)
    margins = (columns.min(), picture.shape[1] - 1 - columns.max(), rows.min(), picture.shape[0] - 1 - rows.max())
    assert all(8 <= margin <= 14 for margin in margins), margins


def test_transforms_compose_from_the_inside_out() -> None:
    turn, move = Transform(0, 1, -1, 0, 0, 0), Transform(e=3)
    assert apply(compose(move, turn), (1, 0)) == pytest.approx(apply(move, apply(turn, (1, 0))))


def test_a_placed_drawing_has_its_corner_where_it_was_put() -> None:
    line = StrokePath(Path((("M", 10, 10), ("L", 20, 10))), "#000000", 1.0)
    drawing = Drawing((9.5, 9.5, 20.5, 10.5), (line,), "", "")
    assert bounds(place(drawing, 0, 0, 2)) == pytest.approx((0, 0, 22, 2))
    assert bounds(transform(drawing.operations, Transform(e=5))) == pytest.approx((14.5, 9.5, 25.5, 10.5))


def test_restyling_gives_a_new_drawing_and_leaves_the_old(everything: Drawing) -> None:
    before = repr(everything)
    greys = in_greys(everything)
    assert repr(everything) == before
    colors: set[str] = set()
    restyle(greys.operations, lambda mark: (colors.add(mark.color), mark)[1])  # type: ignore[func-returns-value]
    assert all(color[1:3] == color[3:5] == color[5:7] for color in colors)
    thin = restyle(everything.operations, lambda mark: replace(mark, width_mm=0.1) if isinstance(mark, StrokePath) else mark)
    assert thin != everything.operations


def test_grey_keeps_the_lightness_and_contrast_follows_the_published_formula() -> None:
    # WCAG 2 contrast of the Okabe-Ito blue and vermillion on white
    assert contrast("#0072B2", "#ffffff") == pytest.approx(5.19, abs=0.01)
    assert contrast("#D55E00", "#ffffff") == pytest.approx(3.87, abs=0.01)
    assert contrast(grey_of("#0072b2"), "#ffffff") == pytest.approx(5.19, abs=0.05)


def test_nothing_inked_has_no_box() -> None:
    assert bounds([Text(0, 0, "  "), FillPath(Path(()), "#000000")]) is None


def test_a_picture_in_greys_has_no_colour(everything: Drawing) -> None:
    from PIL import Image

    assert b"/DeviceRGB" in to_pdf(everything)
    grey = in_greys(everything)
    assert b"/DeviceRGB" not in to_pdf(grey)
    dots = np.asarray(Image.open(BytesIO(to_png(grey, 100))).convert("RGB")).astype(int)
    assert (dots.max(axis=2) - dots.min(axis=2)).max() <= 1
