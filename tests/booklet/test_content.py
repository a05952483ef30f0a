"""The samples as booklets: what is on the pages is what the pattern says."""

from __future__ import annotations

import re
from io import BytesIO
from typing import Any

import pikepdf
import pypdf
import pytest

from motifold.render.booklet import Look
from motifold.render.booklet.boxes import LineOfWords
from motifold.render.booklet.content import DEFAULT_ACCENT, accent_of_yarns
from motifold.render.booklet.inline import spelled, typeset
from motifold.render.pattern import Pattern
from motifold.render.pattern.model import Yarn
from motifold.render.words.model import Items, Paragraph, RoundText, Table

SAMPLES = ("lighthouse-basket", "tidepool-coaster")


def bare(text: str) -> str:
    return re.sub(r"[\W_]+", "", text)


def read_in_order(pdf_bytes: bytes) -> str:
    """The text of the structure tree, element after element: what a screen reader says."""
    spoken: list[str] = []
    reader = pypdf.PdfReader(BytesIO(pdf_bytes))
    by_mark: dict[tuple[int, int], str] = {}
    for index, page in enumerate(reader.pages):
        fonts = {name: font.get_object() for name, font in page["/Resources"]["/Font"].items()}  # type: ignore[index]
        by_mark.update({(index, mcid): text for mcid, text in _marked_text(page, fonts).items()})
    pages = [page.indirect_reference.idnum for page in reader.pages]  # type: ignore[union-attr]

    def walk(element: pypdf.generic.DictionaryObject, page: int) -> None:
        here = pages.index(element.raw_get("/Pg").idnum) if "/Pg" in element else page
        kids = element["/K"] if isinstance(element["/K"], list) else [element["/K"]]
        for kid in kids:
            kid = kid.get_object()
            if isinstance(kid, int):
                spoken.append(by_mark.get((here, kid), ""))
            elif kid.get("/Type") == "/MCR":
                spoken.append(by_mark.get((pages.index(kid.raw_get("/Pg").idnum), kid["/MCID"]), ""))
            elif kid.get("/Type") != "/OBJR":  # a link's annotation: its words are marked content
                walk(kid, here)

    walk(reader.trailer["/Root"]["/StructTreeRoot"], 0)  # type: ignore[index]
    return " ".join(spoken)


def _marked_text(page: pypdf.PageObject, fonts: dict[str, pypdf.generic.DictionaryObject]) -> dict[int, str]:
    """Words by marked-content id, through the fonts' ToUnicode maps."""
    maps = {name: _to_unicode(font) for name, font in fonts.items()}
    found: dict[int, str] = {}
    open_marks: list[int | None] = []
    instead = False  # an ActualText is read instead of what is shown
    current: int | None = None
    font = ""
    for operands, operator in pypdf.generic.ContentStream(page.get_contents(), page.pdf).operations:  # type: ignore[union-attr]
        if operator == b"BDC":
            open_marks.append(operands[1].get("/MCID"))
            current = next((mark for mark in open_marks if mark is not None), None)
            if "/ActualText" in operands[1] and current is not None:
                instead = True
                found[current] = found.get(current, "") + operands[1]["/ActualText"]
        elif operator == b"EMC":
            open_marks.pop()
            instead = False
            current = next((mark for mark in open_marks if mark is not None), None)
        elif operator == b"Tf":
            font = operands[0]
        elif operator == b"TJ" and current is not None and not instead:
            for part in operands[0]:
                if isinstance(part, str | bytes):
                    codes = part.encode("latin-1") if isinstance(part, str) else part
                    if hasattr(part, "original_bytes"):
                        codes = part.original_bytes
                    found[current] = found.get(current, "") + "".join(maps[font].get(code, "") for code in codes)
    return found


def _to_unicode(font: pypdf.generic.DictionaryObject) -> dict[int, str]:
    table: dict[int, str] = {}
    cmap = font["/ToUnicode"].get_object().get_data().decode("latin-1")  # type: ignore[union-attr]
    for block in re.findall(r"beginbfchar(.*?)endbfchar", cmap, re.S):
        for code, text in re.findall(r"<(\w+)>\s*<(\w+)>", block):
            table[int(code, 16)] = bytes.fromhex(text).decode("utf-16-be")
    for block in re.findall(r"beginbfrange(.*?)endbfrange", cmap, re.S):
        for first, last, texts in re.findall(r"<(\w+)>\s*<(\w+)>\s*\[(.*?)\]", block, re.S):
            for code, text in zip(range(int(first, 16), int(last, 16) + 1), re.findall(r"<(\w+)>", texts), strict=False):
                table[code] = bytes.fromhex(text).decode("utf-16-be")
    return table


def test_read_aloud_the_booklet_says_the_written_pattern_in_its_order(sample: str, samples: Any) -> None:
    spoken = bare(read_in_order(samples.made(sample)))
    at = 0
    for section in samples.content(sample).document.sections:
        for block in section.blocks:
            match block:
                case Paragraph():
                    texts = [block.text]
                case Items():
                    texts = list(block.items)
                case RoundText():
                    texts = [f"{block.label} {block.text} {block.counts}"]
                case Table():
                    texts = [*block.header, *(cell for row in block.rows for cell in row)]
            for text in texts:
                found = spoken.find(bare(spelled(typeset(text))), at)
                assert found >= 0, (section.title, text)
                at = found


def test_every_motif_has_its_chart_and_its_key(sample: str, samples: Any) -> None:
    made = samples.content(sample)
    motifs = {section.subject for section in made.document.sections if section.key == "motif"}
    assert {figure.subject for figure in made.figures if figure.role == "chart"} >= motifs
    assert {figure.subject for figure in made.figures if figure.role == "key"} >= motifs


def test_the_assembly_has_its_net_a_drawing_for_each_step_and_the_finished_thing(samples: Any) -> None:
    made = samples.content("lighthouse-basket")
    [assembly] = [section for section in made.document.sections if section.key == "assembly"]
    [steps] = [block for block in assembly.blocks if isinstance(block, Items) and block.numbered]
    assert [figure.role for figure in made.figures if figure.role in ("net", "finished")] == ["net", "finished"]
    assert sorted(figure.step or 0 for figure in made.figures if figure.role == "step") == list(range(1, len(steps.items) + 1))


def test_the_chart_is_the_largest_sizes_and_its_caption_says_where_the_others_end(samples: Any) -> None:
    chart = next(figure for figure in samples.content("lighthouse-basket").figures if figure.role == "chart")
    assert chart.caption == "Square: rounds 1 to 9, size Large. These end earlier: Small after round 7; Medium after round 8."
    small = next(figure for figure in samples.content("lighthouse-basket", Look(size="Small")).figures if figure.role == "chart")
    assert small.caption == "Square: rounds 1 to 7."


def test_the_cover_says_what_a_buyer_looks_for(samples: Any) -> None:
    cover = samples.content("lighthouse-basket").cover
    facts = dict(cover.facts)
    assert facts["Sizes"] == "Small (Medium, Large)"
    assert facts["Yarn"] == "Fog and Signal, weight 3"
    assert facts["Hook"].startswith("4\u00a0mm")
    assert (facts["Level"], facts["Terms"]) == ("Basic", "US")
    assert cover.hero is not None and cover.second is not None
    assert dict(samples.content("tidepool-coaster", Look(terms="US")).cover.facts)["Terms"] == "US"


def test_the_accent_is_the_most_colourful_yarn_or_a_blue_of_our_own() -> None:
    def pattern(*colours: str | None) -> Pattern:
        return Pattern("", "", "", "US", yarns=tuple(Yarn(str(i), "", hex=colour) for i, colour in enumerate(colours)))

    assert accent_of_yarns(pattern("#8c9aa5", "#b3402e", "#efe6c8")) == "#b3402e"
    assert accent_of_yarns(pattern("#8c9aa5", None)) == DEFAULT_ACCENT
    assert accent_of_yarns(pattern()) == DEFAULT_ACCENT


@pytest.mark.parametrize("name", SAMPLES)
@pytest.mark.parametrize("look", [Look("Letter"), Look("A5", mono=True), Look("A4", left_handed=True, plain=True)])
def test_every_sample_prints_on_every_sheet(name: str, look: Look, samples: Any) -> None:
    made = samples.made(name, look)
    assert len(made) < 400_000
    with pikepdf.open(BytesIO(made)) as pdf:
        assert len(pdf.pages) == len(samples.plan(name, look).pages)
        operators = {str(operator) for page in pdf.pages for _, operator in pikepdf.parse_content_stream(page)}
    assert not look.mono or not operators & {"rg", "RG"}


def test_a_chart_keeps_its_symbols_above_three_millimetres(samples: Any) -> None:
    for name in SAMPLES:
        for page in samples.plan(name).pages[1:]:
            for placed in page.placed:
                for mark in placed.box.marks:
                    figure = next((f for f in samples.content(name).figures if getattr(mark, "drawing", None) is f.drawing), None)
                    if figure is not None:
                        assert figure.smallest <= mark.scale + 1e-9  # type: ignore[union-attr]


def test_what_each_size_measures_is_one_table(samples: Any) -> None:
    [sizes] = [section for section in samples.content("lighthouse-basket").document.sections if section.key == "sizes"]
    [table] = [block for block in sizes.blocks if isinstance(block, Table) and block.caption == "Finished, in each size"]
    assert [row[0] for row in table.rows] == ["Small", "Medium", "Large"]
    assert table.header == ("Size", "Without its rim", "With it")
    assert not any(isinstance(block, Paragraph) and block.text.startswith("Finished") for block in sizes.blocks)


@pytest.mark.parametrize("name", ["deckhand-mitts", "signal-bunting", "spindrift-doily"])
def test_abbreviations_are_not_torn(name: str, samples: Any) -> None:
    pages = [
        page.number
        for page in samples.plan(name).pages
        for placed in page.placed
        for mark in placed.box.marks
        if isinstance(mark, LineOfWords) and any(tag.key.startswith("abbreviations/") and tag.name == "TR" for tag in mark.tags)
    ]
    assert len(pages) > 6 and len(set(pages)) == 1


def test_across_the_page_a_list_of_abbreviations_is_folded_and_read_row_by_row(samples: Any) -> None:
    page = samples.plan("deckhand-mitts").pages[2]
    rows = [
        (placed.x + mark.x, mark.tags[-2].key)
        for placed in page.placed
        for mark in placed.box.marks
        if isinstance(mark, LineOfWords) and mark.tags and mark.tags[-1].scope == "Row" and mark.tags[-1].key.startswith("abbreviations")
    ]
    assert len({round(x) for x, _ in rows}) == 3
    assert [int(key.rsplit("/", 1)[1]) for _, key in rows] == list(range(len(rows)))
