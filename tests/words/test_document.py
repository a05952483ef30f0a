"""The document: its sections, what stands in them, and its three forms."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache
from html.parser import HTMLParser
from importlib import resources

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.words import WordsLook, to_html_fragment, to_markdown, to_text, write_document
from motifold.render.words.model import Document, Items, Paragraph, RoundText, Section, Table
from motifold.render.worked import Worked, needs_by_size, work_pattern

BASKET, COASTER = "lighthouse-basket.toml", "tidepool-coaster.toml"


@lru_cache
def worked(name: str) -> Worked:
    reading = read_pattern(name, resources.files("motifold.samples").joinpath(name).read_bytes())
    assert reading.pattern is not None
    return work_pattern(reading.pattern)


def document(name: str, look: WordsLook | None = None, change: dict[str, object] | None = None) -> Document:
    done = worked(name)
    if change:
        done = replace(done, pattern=replace(done.pattern, **change))  # type: ignore[arg-type]
    return write_document(done, needs_by_size(done), look or WordsLook("US"))


def section(found: Document, key: str) -> Section:
    return next(s for s in found.sections if s.key == key)


def rounds(found: Document, key: str = "motif") -> list[RoundText]:
    return [block for block in section(found, key).blocks if isinstance(block, RoundText)]


def test_sections_stand_in_the_order_of_the_trade() -> None:
    assert [s.key for s in document(BASKET).sections] == [
        "about", "sizes", "materials", "gauge", "abbreviations", "notes", "motif", "assembly", "edging", "finishing", "cautions",
    ]  # fmt: skip


def test_what_a_pattern_lacks_is_left_out() -> None:
    less: dict[str, object] = {"gauge": None, "yarns": (), "notes_before": ()}
    keys = {s.key for s in document(COASTER, WordsLook("UK"), less).sections}
    assert "gauge" not in keys
    assert "assembly" not in keys
    assert "special stitches" in keys


def test_the_sizes_table_has_each_size_with_both_units() -> None:
    table = next(block for block in section(document(BASKET), "sizes").blocks if isinstance(block, Table))
    assert [row[0] for row in table.rows] == ["Small", "Medium", "Large"]
    assert [row[2] for row in table.rows] == ["7", "8", "9"]
    assert table.rows[0][4] == "44.8\u00a0cm (17⅝\u00a0in)"


def test_one_size_prints_only_its_own_numbers() -> None:
    found = document(BASKET, WordsLook("US", size="Medium"))
    assert [block.label for block in rounds(found)][3] == "Rnds\u00a03–8"
    assert "132\u00a0sc" in rounds(found, "edging")[0].counts
    assert "(132, 148)" not in to_text(found)
    assert "Small" not in to_text(found)


def test_rounds_that_differ_by_size_say_so_and_are_read_so() -> None:
    line = rounds(document(BASKET))[3]
    assert line.label == "Rnds\u00a03–7\u00a0(8, 9)"
    assert line.reads == ""  # what is printed can be read
    assert (line.first, line.last) == (3, 9)


def test_counts_that_vary_by_round_stand_in_a_table() -> None:
    table = next(block for block in section(document(BASKET), "motif").blocks if isinstance(block, Table))
    assert table.header == ("Rnd", "dc", "ch-1 sps", "ch-2 sps")
    assert table.rows[0] == ("3", "36", "8", "4")
    assert table.rows[-1] == ("9", "108", "32", "4")


def test_what_ends_the_last_round_is_left_out() -> None:
    few = worked(BASKET)
    short = work_pattern(few.pattern, rounds=2, size_name="Small")
    text = to_text(write_document(short, {}, WordsLook("US")))
    last = next(line for line in text.splitlines() if line.startswith("Rnd\u00a02"))
    assert last.endswith("ch\u00a02; join. (24\u00a0dc, 4\u00a0ch-1 sps, 4\u00a0ch-2 sps)")
    assert "Rnd\u00a03" not in text


def test_us_source_gives_uk_words_and_back() -> None:
    uk = to_text(document(BASKET, WordsLook("UK")))
    assert "2\u00a0tr in ring" in uk
    assert not re.search(r"\b(sc|hdc|sk|skip|gauge)\b", uk)
    us = to_text(document(COASTER, WordsLook("US")))
    assert "petal in next st, sk next st" in us
    assert not re.search(r"\b(htr|miss|tension)\b", us)


def test_plain_words_have_no_abbreviations() -> None:
    found = document(BASKET, WordsLook("US", plain=True))
    text = " ".join(block.label + " " + block.text + " " + block.counts for block in rounds(found) + rounds(found, "edging"))
    assert not re.search(r"\b(ch|dc|sc|sl st|sp|sps|st|sts|rnd|rep|beg|RS|WS)\b", text, re.IGNORECASE)
    assert "abbreviations" not in {s.key for s in found.sections}


@pytest.mark.parametrize("look", [WordsLook("US"), WordsLook("UK"), WordsLook("US", plain=True), WordsLook("UK", True, None, True)])
@pytest.mark.parametrize("name", [BASKET, COASTER])
def test_no_editor_would_mark_the_punctuation(name: str, look: WordsLook) -> None:
    text = to_text(document(name, look))
    for fault in (",,", ", ,", " ,", ";;", "..", "( ", " )", "None", "{}", "1\u00a0sts", "  in"):
        assert fault not in "\n".join(line for line in text.splitlines() if line.startswith(("R", "F", "C"))), fault
    assert not re.search(r"(?m)^(Rnd|Row)[^:]*: [a-z]", text)


@pytest.mark.parametrize("name", [BASKET, COASTER])
@pytest.mark.parametrize("terms", ["US", "UK"])
def test_every_abbreviation_that_is_used_is_explained_and_no_other(name: str, terms: str) -> None:
    found = document(name, WordsLook(terms))  # type: ignore[arg-type]
    table = next(block for block in section(found, "abbreviations").blocks if isinstance(block, Table))
    explained = {row[0].replace("(s)", "") for row in table.rows}
    words = " ".join(f"{b.label} {b.text} {b.counts}" for s in found.sections for b in s.blocks if isinstance(b, RoundText))
    told = [s for s in found.sections if s.key in ("special stitches", "assembly")]
    words += " ".join(item for s in told for b in s.blocks if isinstance(b, Items) for item in b.items)
    known = {"ch", "sl st", "ss", "sc", "hdc", "dc", "tr", "htr", "dtr", "st", "sp", "rnd", "rep", "beg", "RS", "WS", "sk", "BLO", "FLO"}
    used = {word for word in known if re.search(rf"(?<![A-Za-z]){word}s?(?![A-Za-z])", words, 0 if word.isupper() else re.IGNORECASE)}
    assert used - {"sl"} == explained & known


def test_amounts_are_given_for_each_size_with_their_margin() -> None:
    blocks = section(document(BASKET), "materials").blocks
    table = next(block for block in blocks if isinstance(block, Table))
    assert table.header == ("Yarn", "Small", "Medium", "Large")
    assert re.fullmatch(r"\d+\u00a0m \(\d+\u00a0yd\), \d+\u00a0g \([\d.]+\u00a0oz\), \d+\u00a0balls?", table.rows[0][1])
    note = blocks[-1]
    assert isinstance(note, Paragraph)
    assert "seams, edgings, ends to weave in and 10\u00a0% to spare" in note.text


def test_the_assembly_names_every_seam_once() -> None:
    done = worked(BASKET)
    items = next(block for block in section(document(BASKET), "assembly").blocks if isinstance(block, Items))
    assert items.numbered
    text = " ".join(items.items)
    assembly = done.sizes[0].assembly
    assert assembly is not None
    for seam in assembly.seams:
        assert seam.b is not None
        assert f"the {seam.a.side} of {seam.a.panel}" in text
        assert f"the {seam.b.side} of {seam.b.panel}" in text


def test_cautions_speak_of_children_only_where_children_are_meant() -> None:
    plain = to_text(document(BASKET))
    assert "Hooks, needles" in plain
    assert "For babies and children" not in plain
    child = to_text(document(BASKET, change={"title": "Baby's Basket"}))
    assert "qualified person" in child
    assert "certified" in child


def test_cords_and_buttons_bring_their_own_cautions() -> None:
    materials = replace(worked(BASKET).pattern.materials, notions=("2 m of cord", "3 buttons"))
    text = to_text(document(BASKET, change={"materials": materials}))
    assert "strangle" in text
    assert "swallowed" in text


def test_left_handed_words_change_directions() -> None:
    text = to_text(document(BASKET, WordsLook("US", left_handed=True)))
    assert "at left end of any side" in text


class _Counter(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.rounds = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open.append(tag)
        self.rounds += ("class", "round") in attrs

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def test_the_html_fragment_is_balanced_and_carries_every_round() -> None:
    found = document(BASKET)
    counter = _Counter()
    counter.feed(to_html_fragment(found))
    assert counter.open == []
    assert counter.rounds == len(rounds(found)) + len(rounds(found, "edging"))


def test_html_escapes_what_a_designer_writes() -> None:
    html = to_html_fragment(document(COASTER, WordsLook("UK"), {"title": "<b>Loop</b> & Co"}))
    assert "<h1>&lt;b&gt;Loop&lt;/b&gt; &amp; Co</h1>" in html


def test_markdown_keeps_the_stars_of_the_trade() -> None:
    text = to_markdown(document(BASKET))
    assert "rep from \\* 2 more times" in text
    assert "| Small |" in text
    assert text.startswith("# Lighthouse Project Basket\n")


def test_the_same_pattern_gives_the_same_words() -> None:
    assert to_text(document(BASKET)) == to_text(document(BASKET))


MATS = """
[pattern]
title = "Stone Mats"
terms = "US"
[yarn.A]
name = "Stone"
length = "170 yd / 3.5 oz"
[gauge]
motif = "mat"
rounds = 4
width = "8 cm"
[motif.mat]
shape = "circle"
rounds = '''
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 8 hdc in ring; join with sl st in first hdc.
Rnd 2: Ch 1 (does not count as a st), 2 hdc in each st around; join with sl st in first hdc.
Rnd 3: Ch 1 (does not count as a st), [hdc in next st, 2 hdc in next st] around; join with sl st in first hdc; turn.
Rnd 4: Ch 1 (does not count as a st), hdc in each st around; join with sl st in first hdc; turn.
Rnd 5: Ch 1 (does not count as a st), hdc in each st around; join with sl st in first hdc; turn.
Finish: Fasten off.
'''
[size]
measure = "diameter"
ease = "-1 cm to 1 cm"
[size.bodies]
Cup = "6 cm"
Pan = "10 cm"
"""


def mats(size_name: str | None = None) -> Document:
    reading = read_pattern("mats.toml", MATS.encode())
    assert reading.pattern is not None
    done = work_pattern(reading.pattern, size_name=size_name)
    assert not [problem for problem in done.problems if problem.severity == "error"]
    return write_document(done, needs_by_size(done), WordsLook("US", size=size_name))


def test_rounds_that_only_some_sizes_work_name_those_sizes() -> None:
    lines = {block.label: block for block in rounds(mats())}
    assert lines["Rnd\u00a04"].text.startswith("Pan only: Ch\u00a01")
    assert lines["Rnd\u00a04"].reads.startswith("Rnd\u00a04: {Pan only:} Ch\u00a01")
    assert lines["Rnd\u00a03"].text.endswith("turn. Cup: do not turn.")
    assert lines["Rnd\u00a05"].text.endswith("join with sl st in first hdc.")


def test_a_size_that_stops_early_has_no_later_rounds() -> None:
    lines = rounds(mats("Cup"))
    assert [block.label for block in lines] == ["Ring", "Rnd\u00a01", "Rnd\u00a02", "Rnd\u00a03", "Finish"]
    assert lines[3].text.endswith("join with sl st in first hdc.")


def test_identical_rounds_are_written_once() -> None:
    text = MATS.replace("first hdc; turn", "first hdc")
    reading = read_pattern("mats.toml", text.encode())
    assert reading.pattern is not None
    done = work_pattern(reading.pattern, size_name="Pan")
    found = write_document(done, {}, WordsLook("US", size="Pan"))
    assert [block.label for block in rounds(found)][4:] == ["Rnds\u00a04–5", "Finish"]


def test_counts_are_those_that_were_worked_where_the_line_states_none() -> None:
    assert [block.counts for block in rounds(mats("Cup"))][1:4] == ["(8\u00a0hdc)", "(16\u00a0hdc)", "(24\u00a0hdc)"]


def test_a_label_in_yards_is_printed_in_yards_first() -> None:
    items = next(block for block in section(mats(), "materials").blocks if isinstance(block, Items))
    assert items.items[0] == "Yarn A: Stone, 170\u00a0yd (155\u00a0m) to 3.5\u00a0oz (99\u00a0g)"


def test_what_no_swatch_weighed_is_marked_as_an_estimate() -> None:
    text = to_text(mats())
    assert "Yarn needed (estimated)" in text
    assert "out by 25\u00a0%" in text
