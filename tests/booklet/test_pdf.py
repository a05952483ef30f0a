"""The finished file: its structure, its text, its fonts, its bytes."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from io import BytesIO
from pathlib import Path as FilePath

import pikepdf
import pypdf
import pytest

from motifold.render.booklet import BookletContent, make_booklet
from motifold.render.words.model import Items, Paragraph, RoundText, Table

Make = Callable[..., BookletContent]


@pytest.fixture(scope="module")
def booklet(request: pytest.FixtureRequest) -> bytes:
    namespace: dict[str, object] = {"__name__": "made_by_hand"}
    exec(compile((request.path.parent / "conftest.py").read_text(), "conftest.py", "exec"), namespace)
    return make_booklet(namespace["content"]())  # type: ignore[operator]


def elements(pdf: pikepdf.Pdf) -> Iterator[pikepdf.Dictionary]:
    """Every structure element, in reading order."""
    waiting = [pdf.Root.StructTreeRoot]
    while waiting:
        element = waiting.pop(0)
        if element.get("/Type") == "/StructElem":
            yield element
        kids = element.get("/K")
        kids = list(kids) if isinstance(kids, pikepdf.Array) else [kids]
        waiting = [kid for kid in kids if isinstance(kid, pikepdf.Dictionary) and kid.get("/Type") != "/MCR"] + waiting


def contents_of(element: pikepdf.Dictionary) -> Iterator[tuple[pikepdf.Dictionary, int]]:
    kids = element.get("/K")
    for kid in list(kids) if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary):
            if kid.get("/Type") == "/MCR":
                yield kid.Pg, int(kid.MCID)
        elif kid is not None:
            yield element.Pg, int(kid)


def test_pdfua_finds_nothing_but_the_claim_that_is_not_made(booklet: bytes, tmp_path: FilePath) -> None:
    from pdfua import validate

    path = tmp_path / "booklet.pdf"
    path.write_bytes(booklet)
    findings = validate(str(path)).findings
    assert [finding.message for finding in findings if finding.rule_id != "UA-28-004"] == []  # that one misses the claim of conformance


def test_every_marked_content_stands_in_the_tree_once(booklet: bytes) -> None:
    with pikepdf.open(BytesIO(booklet)) as pdf:
        in_tree = [(page.objgen, mcid) for element in elements(pdf) for page, mcid in contents_of(element)]
        on_pages = [
            (page.obj.objgen, int(operands[1].MCID))
            for page in pdf.pages
            for operands, operator in pikepdf.parse_content_stream(page)
            if str(operator) == "BDC" and "/MCID" in operands[1]
        ]
        assert len(in_tree) == len(set(in_tree))
        assert sorted(in_tree) == sorted(on_pages)


def test_the_parent_tree_leads_from_the_content_back_to_its_element(booklet: bytes) -> None:
    with pikepdf.open(BytesIO(booklet)) as pdf:
        numbers = list(pdf.Root.StructTreeRoot.ParentTree.Nums)
        parents = dict(zip([int(n) for n in numbers[0::2]], numbers[1::2], strict=True))
        for element in elements(pdf):
            for page, mcid in contents_of(element):
                assert parents[int(page.StructParents)][mcid].objgen == element.objgen


def test_everything_drawn_is_marked(booklet: bytes) -> None:
    with pikepdf.open(BytesIO(booklet)) as pdf:
        for page in pdf.pages:
            depth = read = 0
            for operands, operator in pikepdf.parse_content_stream(page):
                if str(operator) == "BDC" and "/ActualText" in operands[1]:
                    read = depth = depth + 1  # words to be read for a fraction, inside what is marked
                    continue
                depth += {"BDC": 1, "BMC": 1, "EMC": -1}.get(str(operator), 0)
                if str(operator) in ("Tj", "TJ", "S", "f", "f*", "B", "Do"):
                    assert depth == (2 if read == depth else 1)
            assert depth == 0


def text_of(block: object) -> list[str]:
    match block:
        case Paragraph(text=text):
            return [text]
        case Items(items=items):
            return list(items)
        case RoundText(label=label, text=text, counts=counts):
            return [f"{label}: {text} {counts}".strip()]
        case Table(header=header, rows=rows):
            return [*header, *(cell for row in rows for cell in row)]
    raise TypeError(block)


def bare(text: str) -> str:
    """Letters and digits alone: what is said, without how it is spaced."""
    return re.sub(r"\W+", "", text)


def test_the_text_in_reading_order_is_the_written_pattern(booklet: bytes, make_content: Make) -> None:
    reader = pypdf.PdfReader(BytesIO(booklet))
    printed = bare("".join(page.extract_text() for page in reader.pages[1:]))
    for section in make_content("A4").document.sections:
        for block in section.blocks:
            for text in text_of(block):
                if not re.search(r"\d/\d", text):
                    assert bare(text) in printed or isinstance(block, RoundText | Items), text
    rounds = [block for section in make_content("A4").document.sections for block in section.blocks if isinstance(block, RoundText)]
    for block in rounds:
        assert bare(block.text)[:60] in printed, block.label


def test_words_at_the_end_of_a_line_are_kept_apart_by_real_spaces(booklet: bytes) -> None:
    text = pypdf.PdfReader(BytesIO(booklet)).pages[1].extract_text()
    assert "A soft basket of five open squares: one for the base" in text.replace("\n", "")


def test_figures_have_words_tables_have_headers_lists_have_labels(booklet: bytes, make_content: Make) -> None:
    with pikepdf.open(BytesIO(booklet)) as pdf:
        found = list(elements(pdf))
        by_type: dict[str, list[pikepdf.Dictionary]] = {}
        for element in found:
            by_type.setdefault(str(element.S), []).append(element)
        assert len(by_type["/Figure"]) == len(make_content("A4").figures) + 1
        assert all(str(figure.Alt).strip() for figure in by_type["/Figure"])
        assert {str(cell.A.Scope) for cell in by_type["/TH"]} == {"/Column", "/Row"}
        assert all(str(part.P.S) == "/LI" for part in by_type["/Lbl"] + by_type["/LBody"])
        assert all(str(item.P.S) == "/L" and "/A" in item.P for item in by_type["/LI"])
        assert len(by_type["/H1"]) == 1
        assert all(str(row.P.S) == "/Table" for row in by_type["/TR"])


def test_the_catalog_says_title_language_layout_and_labels(booklet: bytes) -> None:
    reader = pypdf.PdfReader(BytesIO(booklet))
    root = reader.trailer["/Root"]
    assert root["/Lang"] == "en-US"  # type: ignore[index]
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]  # type: ignore[index]
    assert root["/PageLayout"] == "/TwoPageRight"  # type: ignore[index]
    assert reader.metadata is not None
    assert (reader.metadata.title, reader.metadata.author) == ("Harbour Light Basket", "Example Yarn Room")
    assert reader.page_labels == [str(number) for number in range(1, len(reader.pages) + 1)]
    xmp = reader.xmp_metadata
    assert xmp is not None and xmp.dc_title == {"x-default": "Harbour Light Basket"}
    assert b"pdfuaid" not in booklet


def test_the_outline_leads_to_every_part(booklet: bytes, make_content: Make) -> None:
    reader = pypdf.PdfReader(BytesIO(booklet))
    titles = [entry.title for entry in reader.outline]  # type: ignore[union-attr]
    assert titles == ["Harbour Light Basket", *(section.title for section in make_content("A4").document.sections)]
    places = [reader.get_destination_page_number(entry) for entry in reader.outline]  # type: ignore[arg-type]
    assert places == sorted(places)  # type: ignore[type-var]


def test_every_font_is_embedded_and_a_subset(booklet: bytes) -> None:
    for page in pypdf.PdfReader(BytesIO(booklet)).pages:
        for font in page["/Resources"]["/Font"].values():  # type: ignore[index]
            font = font.get_object()
            assert re.match(r"/[A-Z]{6}\+Source", font["/BaseFont"])
            assert "/FontFile2" in font["/FontDescriptor"] and "/ToUnicode" in font


def test_in_mono_no_colour_operator_is_in_the_file(make_content: Make) -> None:
    with pikepdf.open(BytesIO(make_booklet(make_content("A4", mono=True)))) as pdf:
        operators = {str(operator) for page in pdf.pages for _, operator in pikepdf.parse_content_stream(page)}
    assert not operators & {"rg", "RG", "k", "K", "sc", "SC", "scn", "SCN", "cs", "CS"}
    assert operators & {"g"}


@pytest.mark.parametrize(("paper", "size"), [("A4", (210, 297)), ("Letter", (215.9, 279.4)), ("A5", (148, 210))])
def test_the_sheet_is_the_one_asked_for(make_content: Make, paper: str, size: tuple[float, float]) -> None:
    for page in pypdf.PdfReader(BytesIO(make_booklet(make_content(paper)))).pages:
        assert [float(side) * 25.4 / 72 for side in page.mediabox[2:]] == pytest.approx(size, abs=0.01)


def test_a_pattern_with_nothing_but_a_title_is_a_booklet_too(plain_content: BookletContent) -> None:
    cover = replace(plain_content.cover, summary="", author="")
    bare_content = replace(plain_content, document=replace(plain_content.document, sections=()), cover=cover)
    assert len(pypdf.PdfReader(BytesIO(make_booklet(bare_content))).pages) == 1


SCRIPT = """
import hashlib, sys
namespace = {"__name__": "made_by_hand"}
exec(compile(open(sys.argv[1]).read(), "conftest.py", "exec"), namespace)
from motifold.render.booklet import make_booklet
print(hashlib.sha256(make_booklet(namespace["content"]())).hexdigest())
"""


def test_the_bytes_do_not_depend_on_the_hash_seed(request: pytest.FixtureRequest) -> None:
    command = [sys.executable, "-c", SCRIPT, str(request.path.parent / "conftest.py")]
    outputs = {
        subprocess.run(command, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=True).stdout for seed in ("1", "77")
    }
    assert len(outputs) == 1 and len(outputs.pop().strip()) == 64


def test_the_same_content_twice_in_one_process_gives_the_same_bytes(make_content: Make) -> None:
    assert make_booklet(make_content("A5")) == make_booklet(make_content("A5"))
