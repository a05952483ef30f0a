"""What is printed for a class and for testers: everything that is told, nothing of colour, and a structure that can be read aloud."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cache
from io import BytesIO
from pathlib import Path

import pikepdf
import pypdf
import pytest

import motifold.samples
from motifold.render.booklet import Look
from motifold.render.handouts import make_class_sheet, make_handout, make_tester_sheet
from motifold.render.pattern import read_pattern
from motifold.render.words.classroom import blank_counts
from motifold.render.worked import Worked, work_pattern

Make = Callable[[Worked, Look], bytes]
MAKERS: dict[str, Make] = {"handout": make_handout, "class": make_class_sheet, "tester": make_tester_sheet}
SHEETS = [
    ("handout", "spindrift-doily", Look(mono=True)),
    ("handout", "deckhand-mitts", Look(mono=True, terms="UK", paper="Letter")),
    ("class", "deckhand-mitts", Look(mono=True, terms="UK", paper="Letter")),
    ("class", "lighthouse-basket", Look(mono=True)),
    ("tester", "lighthouse-basket", Look(mono=True)),
    ("tester", "deckhand-mitts", Look(mono=True, terms="UK", paper="A5")),
]
EVERY = pytest.mark.parametrize(("kind", "name", "look"), SHEETS, ids=[f"{kind}-{name}" for kind, name, _ in SHEETS])


@cache
def worked(name: str) -> Worked:
    path = Path(motifold.samples.__path__[0]) / f"{name}.toml"
    pattern = read_pattern(str(path), path.read_bytes()).pattern
    assert pattern is not None
    return work_pattern(pattern)


@cache
def sheet(kind: str, name: str, look: Look) -> bytes:
    return MAKERS[kind](worked(name), look)


def pages(data: bytes) -> list[str]:
    return [page.extract_text().replace("\u00a0", " ") for page in pypdf.PdfReader(BytesIO(data)).pages]


def elements(pdf: pikepdf.Pdf) -> Iterator[pikepdf.Dictionary]:
    waiting = [pdf.Root.StructTreeRoot]
    while waiting:
        element = waiting.pop(0)
        if element.get("/Type") == "/StructElem":
            yield element
        kids = element.get("/K")
        waiting += [kid for kid in (kids if isinstance(kids, pikepdf.Array) else [kids]) if isinstance(kid, pikepdf.Dictionary)]


@EVERY
def test_a_sheet_passes_the_checks_for_screen_readers(kind: str, name: str, look: Look, tmp_path: Path) -> None:
    from pdfua import validate

    path = tmp_path / "sheet.pdf"
    path.write_bytes(sheet(kind, name, look))
    assert [finding.message for finding in validate(str(path)).findings if finding.rule_id != "UA-28-004"] == []  # the claim, not made


@EVERY
def test_a_sheet_in_black_holds_no_colour(kind: str, name: str, look: Look) -> None:
    with pikepdf.open(BytesIO(sheet(kind, name, look))) as pdf:
        used = {str(operator) for page in pdf.pages for _, operator in pikepdf.parse_content_stream(page)}
    assert not used & {"rg", "RG", "k", "K", "sc", "SC", "scn", "SCN"}


@EVERY
def test_no_letter_is_smaller_than_seven_points(kind: str, name: str, look: Look) -> None:
    sizes: list[float] = []

    def seen(text: str, cm: list[float], tm: list[float], font: object, size: float) -> None:
        if text.strip():
            sizes.append(size * abs(cm[0] * tm[0] + cm[1] * tm[2]) if cm[0] else size)

    for page in pypdf.PdfReader(BytesIO(sheet(kind, name, look))).pages:
        page.extract_text(visitor_text=seen)
    assert min(sizes) >= 6.99


@EVERY
def test_every_page_has_its_number(kind: str, name: str, look: Look) -> None:
    for number, text in enumerate(pages(sheet(kind, name, look)), 1):
        assert re.search(rf"(^|\n){number}\s*$", text) or str(number) in text.split("\n")


def test_every_round_has_its_words_and_its_chart_once() -> None:
    with pikepdf.open(BytesIO(sheet("handout", "spindrift-doily", SHEETS[0][2]))) as pdf:
        figures = [str(element.Alt) for element in elements(pdf) if element.S == "/Figure"]
        headings = [element for element in elements(pdf) if element.S == "/H3"]
    text = " ".join(pages(sheet("handout", "spindrift-doily", SHEETS[0][2])))
    assert len(figures) == len(headings) == 6 and all("Stitch chart of doily" in alt for alt in figures)
    assert all(f"Rnd {number}" in text for number in range(1, 7)) and text.count("Notes") == 6


def test_steps_of_the_assembly_stand_with_their_drawings() -> None:
    text = " ".join(pages(sheet("handout", "deckhand-mitts", SHEETS[1][2])))
    assert all(f"Step {number}" in text for number in range(1, 5)) and "htr" in text and "hdc" not in text


def test_counts_are_left_blank_and_answered_on_another_page() -> None:
    asked, *_, answered = pages(sheet("class", "lighthouse-basket", SHEETS[3][2]))
    assert "12 dc" not in asked and "116" not in asked and re.search(r"\(_+ dc, _+ ch-2 sps\)", asked)
    assert "Answers" in answered and "12 dc, 4 ch-2 sps" in answered and "116 (132, 148) sc" in answered


@pytest.mark.parametrize(
    ("counts", "blank"),
    [
        ("(36\u00a0dc, 8\u00a0ch-1 sps)", "(# dc, # ch-1 sps)"),
        ("(9\u00a0(10, 11)\u00a05-dc cl, 3\u00a0sc2tog)", "(# (#, #) 5-dc cl, # sc2tog)"),
        ("", ""),
    ],
)
def test_only_numbers_of_counts_are_left_blank(counts: str, blank: str) -> None:
    assert re.sub("_+", "#", blank_counts(counts)).replace("\u00a0", " ") == blank


def test_a_tester_finds_what_the_pattern_says_of_every_size() -> None:
    text = " ".join(pages(sheet("tester", "lighthouse-basket", SHEETS[4][2])))
    told = ("Size Small", "Size Medium", "Size Large", "Square after Rnd 2", "44.8 cm", "51.2 cm", "57.6 cm", "Yarn B (Signal)", "Hours")
    assert [said for said in told if said not in text] == []
    assert "Problems found" in text and "Name" in text and "Date" in text
    assert "Tension" in " ".join(pages(sheet("tester", "deckhand-mitts", SHEETS[5][2])))


def test_cells_of_a_form_name_their_row_and_column() -> None:
    with pikepdf.open(BytesIO(sheet("tester", "lighthouse-basket", SHEETS[4][2]))) as pdf:
        scopes = [str(element.A.Scope) for element in elements(pdf) if element.S == "/TH"]
        cells = sum(element.S == "/TD" for element in elements(pdf))
    assert scopes.count("/Row") * 2 == cells and scopes.count("/Column") == 3 * 5


def test_one_size_prints_its_own_numbers_alone() -> None:
    small = make_tester_sheet(worked("lighthouse-basket"), Look(mono=True, size="Small"))
    text = " ".join(pages(small))
    assert "Size Small" in text and "Large" not in text and "57.6" not in text


def test_the_same_pattern_gives_the_same_bytes() -> None:
    look = SHEETS[4][2]
    assert make_tester_sheet(worked("lighthouse-basket"), look) == sheet("tester", "lighthouse-basket", look)


def test_a_long_run_of_rows_alike_shares_a_cell() -> None:
    text = " ".join(pages(make_handout(worked("watch-headband"), Look(mono=True))))
    assert "Rows 5–56" in text and "Row 4" in text and "Row 17" not in text
