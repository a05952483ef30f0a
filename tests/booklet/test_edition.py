"""What a designer adds of her own: edition, rights, changes, photographs, an address, and words that lead somewhere."""

from __future__ import annotations

import re
from io import BytesIO
from pathlib import Path as FilePath

import pikepdf
import pypdf
import pytest
from PIL import Image

import motifold.samples
from motifold.render.booklet import Look, booklet_content, errata_of, make_booklet, make_sheet
from motifold.render.booklet.own import web_code
from motifold.render.pattern import read_pattern
from motifold.render.worked import Worked, work_pattern

EDITION = """[pattern]
version = "1.2"
date = 2026-03-01
copyright = "© 2026 Example Yarn Room"
licence = "For your own use"
web = "https://example.org/basket?a=1&b=2"
"""
MORE = """
[pattern.changes]
"1.1" = "Rnd 3: 36 dc, not 38"
"1.2" = ["A new size", "A new chart"]

[picture.front]
file = "front.jpg"
at = "cover"
alt = "The basket on a table."

[picture.inside]
file = "inside.png"
at = "assembly"
caption = "The seam from inside."
width = "6 cm"

[picture.gone]
file = "gone.png"
"""


@pytest.fixture(scope="module")
def basket(tmp_path_factory: pytest.TempPathFactory) -> Worked:
    folder = tmp_path_factory.mktemp("pattern")
    Image.linear_gradient("L").resize((900, 600)).convert("RGB").save(folder / "front.jpg")
    Image.new("RGB", (400, 300), "#c08040").save(folder / "inside.png")
    text = (FilePath(motifold.samples.__path__[0]) / "signal-bunting.toml").read_text(encoding="utf-8")
    reading = read_pattern(str(folder / "basket.toml"), (text.replace("[pattern]\n", EDITION, 1) + MORE).encode())
    assert reading.pattern is not None
    assert not reading.problems
    return work_pattern(reading.pattern, None, None)


@pytest.fixture(scope="module")
def printed(basket: Worked) -> bytes:
    return make_booklet(booklet_content(basket, Look()))


def test_the_cover_and_the_file_say_which_edition_it_is(printed: bytes) -> None:
    reader = pypdf.PdfReader(BytesIO(printed))
    assert re.search(r"Edition\s+1\.2, March\s1, 2026", reader.pages[0].extract_text())
    assert reader.metadata is not None
    assert reader.metadata.creation_date_raw == "D:20260301000000Z"
    xmp = reader.trailer["/Root"]["/Metadata"].get_data().decode()  # type: ignore[index]
    for said in ("<xmpMM:VersionID>1.2<", "© 2026 Example Yarn Room", "For your own use", "2026-03-01T00:00:00Z", "?a=1&amp;b=2"):
        assert said in xmp


def test_the_changes_stand_at_the_end_the_newest_first(printed: bytes) -> None:
    said = " ".join(" ".join(page.extract_text().split()) for page in pypdf.PdfReader(BytesIO(printed)).pages)
    order = ("Cautions", "What has changed", "A new size.", "A new chart.", "36 dc, not 38", "This edition")
    places = [said.index(words) for words in order]
    assert places == sorted(places)


def test_errata_are_a_sheet_with_nothing_else(basket: Worked) -> None:
    reader = pypdf.PdfReader(BytesIO(make_sheet(errata_of(booklet_content(basket, Look(paper="A5"))))))
    assert len(reader.pages) == 1
    said = reader.pages[0].extract_text()
    assert "36 dc, not 38" in said.replace("\xa0", " ")
    assert "Materials" not in said
    assert round(float(reader.pages[0].mediabox.width) / 72 * 25.4) == 148


def test_photographs_are_in_the_file_once_each_and_one_that_is_missing_takes_nothing_else_along(printed: bytes) -> None:
    with pikepdf.open(BytesIO(printed)) as pdf:
        images = [one for one in pdf.objects if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/Image"]
        assert sorted((int(one.Width), int(one.Height)) for one in images) == [(400, 300), (900, 600)]
        assert {str(one.Filter) for one in images} == {"/DCTDecode", "/FlateDecode"}
        alts = [str(one.Alt) for one in pdf.objects if isinstance(one, pikepdf.Dictionary) and one.get("/S") == "/Figure"]
    assert "The basket on a table." in alts
    assert "The seam from inside." in alts


def test_without_colour_there_is_none_in_photographs_either(basket: Worked) -> None:
    with pikepdf.open(BytesIO(make_booklet(booklet_content(basket, Look(mono=True))))) as pdf:
        images = [one for one in pdf.objects if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/Image"]
        assert {str(one.ColorSpace) for one in images} == {"/DeviceGray"}
        coloured = {"rg", "RG", "k", "K", "sc", "SC", "scn", "SCN", "cs", "CS"}
        used = {str(instruction.operator) for page in pdf.pages for instruction in pikepdf.parse_content_stream(page)}
    assert not used & coloured


def test_a_photograph_without_a_width_is_never_printed_coarser_than_150_dots_an_inch(basket: Worked) -> None:
    content = booklet_content(basket, Look())
    hero = content.cover.hero
    assert hero is not None
    assert 900 / (hero.width_mm * content.cover.finest / 25.4) == pytest.approx(150)


def links_of(pdf: pikepdf.Pdf) -> list[tuple[int, pikepdf.Object]]:
    return [(place, link) for place, page in enumerate(pdf.pages) for link in page.get("/Annots", [])]


def test_links_lead_to_places_that_the_file_has(printed: bytes) -> None:
    with pikepdf.open(BytesIO(printed)) as pdf:
        names = {str(name) for name in list(pdf.Root.Names.Dests.Names)[::2]}
        links = links_of(pdf)
        inside = [str(link.Dest) for _, link in links if "/Dest" in link]
        outside = [str(link.A.URI) for _, link in links if "/A" in link]
    assert inside
    assert set(inside) <= names
    assert outside == ["https://example.org/basket?a=1&b=2"]


def test_a_step_leads_to_the_plan_of_its_passes(printed: bytes) -> None:
    with pikepdf.open(BytesIO(printed)) as pdf:
        links = [link for _, link in links_of(pdf) if "/Dest" in link]
        assert {str(link.Contents)[:4] for link in links} == {"Pass"}
        [plan] = {str(link.Dest) for link in links}
        assert plan.endswith("/overview")


def test_every_link_belongs_to_the_tree_and_the_tree_knows_it(printed: bytes) -> None:
    """ISO 14289-1, 7.18.1 and 7.18.5: links are tagged, and have a description."""
    with pikepdf.open(BytesIO(printed)) as pdf:
        numbers = list(pdf.Root.StructTreeRoot.ParentTree.Nums)
        element_of = dict(zip(map(int, numbers[::2]), numbers[1::2], strict=True))
        for _, link in links_of(pdf):
            element = element_of[int(link.StructParent)]
            assert element.S == "/Link"
            references = [kid for kid in element.K if isinstance(kid, pikepdf.Dictionary) and kid.get("/Type") == "/OBJR"]
            assert [kid.Obj.objgen for kid in references] == [link.objgen]
            assert str(link.Contents)


def test_a_link_s_words_are_under_it(printed: bytes) -> None:
    reader = pypdf.PdfReader(BytesIO(printed))
    for page in reader.pages:
        for link in page.get("/Annots", []):
            left, bottom, right, top = (float(value) for value in link.get_object()["/Rect"])
            found: list[str] = []

            def seen(text: str, _cm: object, tm: list[float], *_: object, box: tuple[float, ...] = (left, bottom, right, top),
                     found: list[str] = found) -> None:
                if text.strip() and box[0] - 1 <= tm[4] <= box[2] and box[1] <= tm[5] <= box[3]:
                    found.append(text.strip())

            page.extract_text(visitor_text=seen)
            assert "".join(found).replace("\xa0", " ").startswith(link.get_object()["/Contents"].replace("\xa0", " ")[:4])


def test_the_code_has_the_quiet_zone_that_the_standard_wants() -> None:
    """ISO/IEC 18004, 6.3.8 (from memory): four modules of white on each side."""
    from motifold.render.drawing.measure import bounds

    drawing = web_code("https://example.org").drawing
    box = bounds(drawing.operations)
    assert box is not None
    modules = drawing.width_mm / 0.8
    assert modules == round(modules)
    assert (round(modules) - 8 - 17) % 4 == 0  # 17 + 4 v modules a side
    assert [round(side / 0.8, 6) for side in (box[0], box[1], drawing.width_mm - box[2], drawing.height_mm - box[3])] == [4, 4, 4, 4]


def test_the_same_pattern_gives_the_same_bytes(basket: Worked, printed: bytes) -> None:
    assert make_booklet(booklet_content(basket, Look())) == printed
