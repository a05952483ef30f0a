"""A class fills in the counts: the written rounds with lines where numbers stood, and the answers to them."""

from __future__ import annotations

import re
from dataclasses import replace

from motifold.render.words.model import Block, Document, Paragraph, RoundText, Section, Table
from motifold.render.words.voice import NBSP

BLANK = "_" * 7
TITLE, ANSWERS = "count it yourself", "Answers"
_TASK = "Read each round and write down what it ends with. The answers are on a page of their own."
_TASK_ROWS = "Read each row and write down what it ends with. The answers are on a page of their own."
_PIECES = ("motif", "edging")
# A count as ``counts`` writes it: after the opening bracket or a comma, one number or one for each size, held to its noun.
_COUNT = re.compile(rf"((?:^\(|, ))(\d+(?:{NBSP}\(\d+(?:, \d+)*\))?)(?={NBSP})")


def blank_counts(counts: str) -> str:
    """The counts of a line with a line to write on for every number; names keep theirs.

    >>> blank_counts("(36\\xa0(40, 44)\\xa0dc, 4\\xa0ch-2 sps)").replace("\\xa0", " ")
    '(_______ (_______, _______) dc, _______ ch-2 sps)'
    """
    return _COUNT.sub(lambda found: found[1] + re.sub(r"\d+", BLANK, found[2]), counts)


def questions(document: Document) -> Document:
    """What to do, then the rounds of every motif and edging, their counts left blank (in tables: cells without a word).

    What would tell the answers is left out.
    """
    sections = [replace(section, blocks=tuple(_asked(block) for block in _kept(section))) for section in _pieces(document)]
    lines = [block for section in sections for block in section.blocks if isinstance(block, RoundText)]
    rows = [line for line in lines if line.first is not None and line.label.startswith("Row")]
    task = _TASK_ROWS if rows and len(rows) == sum(line.first is not None for line in lines) else _TASK
    return replace(document, title=f"{document.title}: {TITLE}", sections=(Section("notes", "", (Paragraph(task),)), *sections))


def answers(document: Document) -> Document:
    """A table of the counts for each motif and edging, and those tables that the rounds have anyway."""
    return replace(document, title=ANSWERS, sections=tuple(found for section in _pieces(document) if (found := _answered(section)).blocks))


def _pieces(document: Document) -> list[Section]:
    return [section for section in document.sections if section.key in _PIECES]


def _kept(section: Section) -> tuple[Block, ...]:
    return tuple(block for block in section.blocks if isinstance(block, RoundText | Table))


def _asked(block: Block) -> Block:
    if isinstance(block, RoundText):
        return replace(block, counts=blank_counts(block.counts))
    if isinstance(block, Table):
        return replace(block, rows=tuple((row[0], *("" for _ in row[1:])) for row in block.rows))
    return block


def _answered(section: Section) -> Section:
    rows = tuple((block.label, block.counts[1:-1]) for block in section.blocks if isinstance(block, RoundText) and block.counts)
    head = "Row" if rows and all(label.startswith("Row") for label, _ in rows) else "Round"
    table = (Table("", (head, "It ends with"), rows),) if rows else ()
    return replace(section, blocks=(*table, *(block for block in section.blocks if isinstance(block, Table))))
