"""What every writer must do, and what each promises of its own."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass, replace
from io import BytesIO
from xml.etree import ElementTree

import pypdf
import pytest

from motifold.render.drawing import record, to_pdf, to_png, to_svg
from motifold.render.drawing.display import Drawing, FillPath, Group, Path, StrokePath, Text, UnsupportedOperation

WRITERS: dict[str, Callable[[Drawing], object]] = {
    "svg": to_svg, "pdf": to_pdf, "png": lambda drawing: to_png(drawing, 72), "record": record,
}
SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Hologram:
    """An operation that nobody draws."""


@pytest.mark.parametrize("name", WRITERS)
def test_every_writer_draws_everything_and_draws_it_again_the_same(name: str, everything: Drawing) -> None:
    first = WRITERS[name](everything)
    assert first
    assert WRITERS[name](everything) == first


@pytest.mark.parametrize("name", WRITERS)
def test_every_writer_draws_an_empty_drawing(name: str) -> None:
    assert WRITERS[name](Drawing((0, 0, 10, 10), (), "Nothing", "An empty sheet."))


@pytest.mark.parametrize("name", WRITERS)
@pytest.mark.parametrize("words", ["", " ", "漢字 and \N{HOT BEVERAGE}", "a\x00b\ud800c", "line\nbreak", "<&>\"'()\\", "Ж α é ½"])
def test_every_writer_draws_any_words(name: str, words: str) -> None:
    assert WRITERS[name](Drawing((0, 0, 60, 10), (Group((Text(1, 1, words),), title=words, data=(("x", words),)),), words, words))


@pytest.mark.parametrize("name", WRITERS)
def test_every_writer_refuses_what_it_cannot_draw(name: str) -> None:
    drawing = Drawing((0, 0, 10, 10), (Group((Hologram(),)),), "x", "x")  # type: ignore[arg-type]
    with pytest.raises(UnsupportedOperation, match="Hologram"):
        WRITERS[name](drawing)


def test_the_svg_is_valid_in_every_attribute_and_child(everything: Drawing) -> None:
    assert to_svg(everything, validate=True) == to_svg(everything)


def test_the_svg_says_what_it_shows_and_how_large_it_is(everything: Drawing) -> None:
    root = ElementTree.fromstring(to_svg(everything, language="en-GB"))
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("80mm", "50mm", "0 0 80 50")
    assert root.get("role") == "img"
    assert root.get("lang") == "en-GB"
    assert [root[0].tag, root[0].text, root[1].tag, root[1].text] == [SVG + "title", "Everything", SVG + "desc", "One of each operation."]
    assert root.get("aria-labelledby") == f"{root[0].get('id')} {root[1].get('id')}"


def test_a_group_keeps_its_class_its_data_and_its_title_in_svg(everything: Drawing) -> None:
    root = ElementTree.fromstring(to_svg(everything))
    stitches = root.findall(f".//{SVG}g[@class='stitch']")
    assert [stitch.get("data-index") for stitch in stitches] == ["1", *map(str, range(8))]
    assert {stitch.get("data-round") for stitch in stitches} == {"1"}
    assert stitches[0][0].tag == SVG + "title"


def test_words_are_outlines_with_the_words_as_label_in_svg(everything: Drawing) -> None:
    svg = to_svg(everything)
    assert "<text" not in svg
    assert 'aria-label="AVATAR To ½ 24 × 36 “fiber”"' in svg


def test_ids_are_counted_for_each_document_and_can_be_kept_apart(everything: Drawing) -> None:
    assert set(re.findall(r'id="([^"]+)"', to_svg(everything))) == {"clip1", "title", "description"}
    assert set(re.findall(r'id="([^"]+)"', to_svg(everything, id_prefix="a-"))) == {"a-clip1", "a-title", "a-description"}
    assert "url(#a-clip1)" in to_svg(everything, id_prefix="a-")


def test_words_are_text_in_embedded_subset_fonts_in_pdf(everything: Drawing) -> None:
    reader = pypdf.PdfReader(BytesIO(to_pdf(everything, author="Example Yarn Room", language="en-GB")))
    page = reader.pages[0]
    assert "AVATAR To ½ 24 × 36 “fiber”" in page.extract_text()
    for font in page["/Resources"]["/Font"].values():  # type: ignore[index]
        assert re.match(r"/[A-Z]{6}\+Source", font.get_object()["/BaseFont"])
        assert "/FontFile2" in font.get_object()["/FontDescriptor"]
    assert (reader.metadata.title, reader.metadata.author) == ("Everything", "Example Yarn Room")  # type: ignore[union-attr]
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"  # type: ignore[index]
    assert [round(float(side) * 25.4 / 72, 2) for side in page.mediabox[2:]] == [80, 50]


def test_a_drawing_in_greys_holds_no_colour_operator() -> None:
    corner = FillPath(Path((("M", 0, 0), ("L", 9, 0), ("L", 9, 9), ("Z",))), "#777777")
    drawing = Drawing((0, 0, 9, 9), (corner, Text(1, 1, "grey")), "g", "g")
    content = pypdf.PdfReader(BytesIO(to_pdf(drawing))).pages[0].get_contents().get_data().decode("latin-1")  # type: ignore[union-attr]
    assert not re.search(r"\b(rg|RG|k|K|scn|SCN)\b", content)


def test_a_page_for_each_drawing(everything: Drawing) -> None:
    small = Drawing((0, 0, 10, 20), (), "Small", "Small.")
    assert len(pypdf.PdfReader(BytesIO(to_pdf([everything, small]))).pages) == 2


def test_a_picture_notes_its_resolution_and_refuses_to_fill_the_memory(everything: Drawing) -> None:
    from PIL import Image

    picture = Image.open(BytesIO(to_png(everything, 254)))
    assert picture.size == (800, 500)
    assert [round(dots) for dots in picture.info["dpi"]] == [254, 254]
    with pytest.raises(UnsupportedOperation, match="dots"):
        to_png(everything, 100_000)
    assert Image.open(BytesIO(to_png(everything, 50, background=None))).getpixel((0, 0))[3] == 0  # type: ignore[index]


def test_the_record_is_exact_text() -> None:
    line = StrokePath(Path((("M", 0, 0), ("L", 1.5, -0.0001))), "#000000", 0.25, dash_mm=(1, 0.5))
    drawing = Drawing((0, 0, 4, 5), (Group((line, Text(1, 2, "dc", size_pt=7)), css_class="stitch dc", data=(("round", "2"),)),), "T", "D")
    assert record(drawing) == (
        "drawing 0,0,4,5 'T'\n"
        "group .stitch dc round='2'\n"
        "  stroke #000000 0.25 round/round dash 1,0.5 M0 0L1.5 0\n"
        "  text #000000 sans 7pt start at 1,2 'dc'\n"
    )


SCRIPT = """
import hashlib, importlib.util, sys
spec = importlib.util.spec_from_file_location("conftest_copy", sys.argv[1])
module = importlib.util.module_from_spec(spec); spec.loader.exec_module(module)
from motifold.render.drawing import record, to_pdf, to_svg
drawing = module.everything.__wrapped__()
for data in (to_svg(drawing).encode(), to_pdf(drawing), record(drawing).encode()):
    print(hashlib.sha256(data).hexdigest())
"""


def test_the_bytes_do_not_depend_on_the_hash_seed(request: pytest.FixtureRequest) -> None:
    command = [sys.executable, "-c", SCRIPT, str(request.path.parent / "conftest.py")]
    outputs = {
        subprocess.run(command, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=True).stdout for seed in ("1", "77")
    }
    assert len(outputs) == 1
    assert len(outputs.pop().split()) == 3


def test_a_place_that_is_no_number_is_refused() -> None:
    line = StrokePath(Path((("M", 0, float("nan")), ("L", 1, 1))), "#000000", 0.25)
    for write in (to_svg, to_pdf, record):
        with pytest.raises(ValueError, match="nan"):
            write(Drawing((0, 0, 1, 1), (line,), "", ""))


def test_source_date_epoch_is_the_pdfs_date(everything: Drawing, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    metadata = pypdf.PdfReader(BytesIO(to_pdf(replace(everything, operations=())))).metadata
    assert metadata is not None and metadata.creation_date is not None
    assert metadata.creation_date.timestamp() == 1700000000
