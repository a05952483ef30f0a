"""Every sample as a booklet, each made once: its structure, its type, its paper."""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from typing import Any

import pikepdf

from motifold.render.booklet.boxes import LineOfWords, Picture, Rectangle
from motifold.render.booklet.styles import WASH
from motifold.render.booklet.worth import NEARLY_EMPTY, filled
from motifold.render.drawing.measure import contrast

IN_COLOUR = {"rg", "RG", "k", "K", "sc", "SC", "scn", "SCN", "cs", "CS"}


def elements(pdf: pikepdf.Pdf) -> Iterator[pikepdf.Dictionary]:
    waiting = [pdf.Root.StructTreeRoot]
    while waiting:
        element = waiting.pop()
        kids = element.get("/K", [])
        for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
            if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
                yield kid
                waiting.append(kid)


def marks_of(pdf: pikepdf.Pdf) -> dict[tuple[int, int], int]:
    """How often each piece of marked content, (page, id), stands in the tree."""
    pages = {page.obj.objgen: number for number, page in enumerate(pdf.pages)}
    found: dict[tuple[int, int], int] = {}
    for element in elements(pdf):
        kids = element.get("/K", [])
        for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
            if isinstance(kid, int):
                place = (pages[element.Pg.objgen], kid)
            elif isinstance(kid, pikepdf.Dictionary) and kid.get("/Type") == "/MCR":
                place = (pages[kid.Pg.objgen], int(kid.MCID))
            else:
                continue
            found[place] = found.get(place, 0) + 1
    return found


def test_every_piece_of_marked_content_stands_in_the_tree_once(sample: str, samples: Any) -> None:
    with pikepdf.open(BytesIO(samples.made(sample))) as pdf:
        written = {
            (number, int(operands[1]["/MCID"])): 1
            for number, page in enumerate(pdf.pages)
            for operands, operator in pikepdf.parse_content_stream(page, "BDC")
            if "/MCID" in operands[1]
        }
        assert marks_of(pdf) == written


def test_figures_say_what_they_show_and_header_cells_what_they_head(sample: str, samples: Any) -> None:
    with pikepdf.open(BytesIO(samples.made(sample))) as pdf:
        found = list(elements(pdf))
        spoken = [str(one.Alt) for one in found if one.S == "/Figure"]
        assert spoken and all(len(words.split()) >= 4 for words in spoken)
        assert any(re.search(r"(?i)\b(rnds?|rounds?|rows?) 1\b", words) for words in spoken)
        assert all(str(one.A.Scope) in ("/Column", "/Row") for one in found if one.S == "/TH")
        tables = [one for one in found if one.S == "/Table"]
        assert all(any(cell.S == "/TH" for row in table.K if row.S == "/TR" for cell in row.K) for table in tables)


def test_fonts_are_embedded_subsets_and_the_file_is_light(sample: str, samples: Any) -> None:
    assert len(samples.made(sample)) < 400_000
    with pikepdf.open(BytesIO(samples.made(sample))) as pdf:
        fonts = [one for one in pdf.objects if isinstance(one, pikepdf.Dictionary) and one.get("/Type") == "/Font"]
        assert fonts
        assert all(re.match(r"/[A-Z]{6}\+Source", str(font.BaseFont)) and "/FontFile2" in font.FontDescriptor for font in fonts)
        assert len(pdf.pages) == len(samples.plan(sample).pages)
        assert "/Outlines" in pdf.Root and "/PageLabels" in pdf.Root


def test_in_mono_there_is_no_colour_in_pages_or_forms(samples: Any) -> None:
    with pikepdf.open(BytesIO(samples.made("cargo-bag"))) as pdf:
        forms = [one for one in pdf.objects if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/Form"]
        for stream in (*pdf.pages, *forms):
            assert not {str(operator) for _, operator in pikepdf.parse_content_stream(stream)} & IN_COLOUR


def test_the_stitches_of_a_large_chart_are_in_the_file_once(samples: Any) -> None:
    """The cover and the page of the basket's square draw one form: it holds nearly all that is stroked there."""
    with pikepdf.open(BytesIO(samples.made("lighthouse-basket"))) as pdf:
        [form] = [one for one in pdf.objects if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/Form"]
        drawn = [number for number, page in enumerate(pdf.pages) for _ in pikepdf.parse_content_stream(page, "Do")]
        assert len(drawn) == 2 and drawn[0] == 0
        cover, chart = (len(pdf.pages[number].Contents.read_bytes()) for number in drawn)
        assert cover < len(form.read_bytes()) / 5 and chart < len(form.read_bytes())


def test_all_words_read_on_their_ground(sample: str, samples: Any) -> None:
    """WCAG 2.2, 1.4.3: 4.5 to 1, on white and on the wash of cautions."""
    plain: set[str] = set()
    washed: set[str] = set()
    for page in samples.plan(sample).pages:
        for marks in (page.furniture, *(placed.box.marks for placed in page.placed)):
            grounds = [mark.color for mark in marks if isinstance(mark, Rectangle)]
            lines = [mark for mark in marks if isinstance(mark, LineOfWords)]
            (washed if WASH in grounds else plain).update(kind.color for line in lines for word in line.words for _, kind in word.pieces)
    assert plain and washed
    assert all(contrast(color, "#ffffff") >= 4.5 for color in plain)
    assert all(contrast(color, WASH) >= 4.5 for color in washed)


def test_no_page_within_a_booklet_is_nearly_white(sample: str, samples: Any) -> None:
    pages = samples.plan(sample).pages
    assert all(filled(page, samples.plan(sample).grid) > NEARLY_EMPTY for page in pages[1:-1])


def test_no_key_is_printed_twice_in_one_sight(sample: str, samples: Any) -> None:
    """On a page, or on the two that face each other."""
    sights: dict[int, list[str]] = {}
    for page in samples.plan(sample).pages:
        for placed in page.placed:
            for mark in placed.box.marks:
                if isinstance(mark, Picture) and mark.drawing.title == "Key to the symbols":
                    sights.setdefault(page.number // 2, []).append(mark.drawing.description)
    assert all(len(set(keys)) == len(keys) for keys in sights.values())


def test_a_small_pattern_is_one_leaf_without_a_cover(samples: Any) -> None:
    """Its title at the head of the first page, chart and rounds together on the second."""
    pages = samples.plan("tidepool-coaster").pages
    assert len(pages) == 2
    assert pages[0].running is None
    pictures = [mark for placed in pages[1].placed for mark in placed.box.marks if isinstance(mark, Picture)]
    assert ["Stitch chart" in picture.drawing.title for picture in pictures].count(True) == 1
    assert all(filled(page, samples.plan("tidepool-coaster").grid) > 0.5 for page in pages)
