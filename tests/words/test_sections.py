"""The sections of a motif: its heading, its lines in one piece, and what stands after them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from importlib import resources

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.pattern.model import Pattern, Terms
from motifold.render.pattern.notation import NotationContext, parse_instructions
from motifold.render.pattern.problem import Span
from motifold.render.words import WordsLook, to_text, write_document
from motifold.render.words.model import RoundText, Section, Table
from motifold.render.words.printed import motif_words
from motifold.render.worked import Worked, needs_by_size, work_pattern

SAMPLES = sorted(item.name for item in resources.files("motifold.samples").iterdir() if item.name.endswith(".toml"))

HEAD = """
[pattern]
title = "Pieces"
terms = "US"
[yarn.A]
name = "Oat"
"""

HALVES = HEAD + """
[motif.half]
rows = '''
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Row 1 (RS): Ch 4 (counts as dc and ch 1), (3 dc, ch 2, 3 dc) in ring, ch 1, dc in ring; turn. (8 dc, 2 ch-1 sps, 1 ch-2 sp)
Rows 2-5: Ch 4 (counts as dc and ch 1), [3 dc in next ch-1 sp, ch 1] to next ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, [3 dc in next ch-1 sp, ch 1] across, dc in 3rd ch of beg ch-4; turn.
Finish: Fasten off, leaving a long tail. Weave it through the last sts and pull tight. Block hard.
'''
"""  # noqa: E501

DISC = HEAD + """
[motif.KEY]
shape = "circle"
rounds = '''
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3; fasten off. (12 dc)
Rnd 2: With A, standing dc in any st, dc in same st, 2 dc in each st around; invisible join. (24 dc)
Finish: Fasten off.
'''
"""


@dataclass(frozen=True)
class Loose:
    text: str

    def span(self, start: int, end: int) -> Span:
        return Span(1, start + 1, end - start)


def work(text: str, name: str = "pieces.toml") -> Worked:
    reading = read_pattern(name, text.encode())
    assert reading.pattern is not None
    done = work_pattern(reading.pattern)
    assert not [problem for problem in done.problems if problem.severity == "error"]
    return done


def printed_section(text: str, title: str) -> str:
    """What stands in the plain text between a heading and the next one."""
    found = re.search(rf"(?ms)^{re.escape(title)}\n-+\n(.*?)(?=^[^\n]+\n---+\n|\Z)", text)
    assert found is not None
    return found.group(1)


def reread(pattern: Pattern, worked: str, terms: Terms, sizes: int, text: str) -> list[str]:
    defined = {stitch.key: stitch.name for stitch in pattern.stitches}
    context = NotationContext(terms, tuple(yarn.key for yarn in pattern.yarns), defined, sizes, worked)  # type: ignore[arg-type]
    instructions, problems = parse_instructions(Loose(text), context)
    assert not problems, (text, [problem.message for problem in problems])
    return [line.label.kind for line in instructions.lines]


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("sample", SAMPLES)
def test_a_motifs_section_can_be_pasted_whole(sample: str, terms: Terms) -> None:
    done = work(resources.files("motifold.samples").joinpath(sample).read_text("utf-8"), sample)
    document = write_document(done, needs_by_size(done), WordsLook(terms))
    for section in document.sections:
        if section.key in ("motif", "edging"):
            sources = {motif.name: motif.worked for motif in done.pattern.motifs}
            text = printed_section(to_text(document), section.title)
            kinds = reread(done.pattern, sources.get(section.subject or "", "rounds"), terms, len(done.sizes), text)
            assert len(kinds) == sum(isinstance(block, RoundText) for block in section.blocks)


def test_counts_of_several_rows_stand_after_the_last_line() -> None:
    done = work(HALVES)
    document = write_document(done, {}, WordsLook("US"))
    section = next(s for s in document.sections if s.key == "motif")
    lines = [isinstance(block, RoundText) for block in section.blocks]
    assert lines == sorted(lines, reverse=True)
    assert [block.caption for block in section.blocks if isinstance(block, Table)] == ["Counts of Rows\u00a02–5"]
    text = printed_section(to_text(document), section.title)
    assert "# 5    32  10        1" in text
    assert reread(done.pattern, "rows", "US", 1, text) == ["ring", "row", "row", "finish"]


def last_line(section: Section) -> str:
    return [block for block in section.blocks if isinstance(block, RoundText)][-1].text


def test_a_sentence_ends_where_the_designer_ended_it() -> None:
    document = write_document(work(HALVES), {}, WordsLook("US"))
    finish = last_line(next(s for s in document.sections if s.key == "motif"))
    assert finish == "Fasten off, leaving a long tail. Weave it through the last sts and pull tight. Block hard."


def test_a_standing_stitch_is_not_joined() -> None:
    text = to_text(write_document(work(DISC.replace("KEY", "disc")), {}, WordsLook("UK")))
    assert "With A, standing tr in any st, tr in same st" in text
    assert "join with standing" not in text


@pytest.mark.parametrize(
    ("key", "number", "said"),
    [("square", None, "the square"), ("square", 5, "5 squares"), ("star_hexagon", 1, "1 star hexagon"), ("cis", 13, "13 of motif cis"),
     ("mixed", None, "motif mixed"), ("leaf", 2, "2 leaves"), ("sq", 5, "5 of motif sq")],
)  # fmt: skip
def test_a_key_that_is_no_noun_gets_no_plural(key: str, number: int | None, said: str) -> None:
    assert motif_words(key, number).replace("\u00a0", " ") == said
