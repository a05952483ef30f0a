"""The written pattern as a document: sections of blocks, each with its role.

Plain text, Markdown and the booklet print the same document."""

from __future__ import annotations

from typing import Literal

from motifold.symbols.record import dataclass

SectionKey = Literal[
    "about", "sizes", "materials", "gauge", "abbreviations", "special stitches", "notes", "motif", "assembly",
    "edging", "finishing", "cautions", "changes", "edition",
]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """``kind`` "address": one on the web, and nothing else."""

    text: str
    kind: Literal["body", "note", "caution", "address"] = "body"


@dataclass(frozen=True, slots=True)
class Items:
    """A list; ``numbered`` for steps in order."""

    items: tuple[str, ...]
    numbered: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """``header`` names the columns; the first cell of a row is its row header. ``caption`` says what it shows."""

    caption: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class RoundText:
    """One labelled line: ``label`` "Rnd 2 (WS)", ``text`` the instructions, ``counts`` "(24 dc, 4 ch-2 sps)" or "".

    ``line`` is the id of the instruction line it was made from; ``first`` and ``last`` the rounds it covers, if numbered.
    ``reads``: the whole line as a pattern file takes it, where that differs from what is printed ("Rnd 3 and following", words in braces).
    """

    label: str
    text: str
    counts: str
    line: int
    first: int | None = None
    last: int | None = None
    reads: str = ""


Block = Paragraph | Items | Table | RoundText


@dataclass(frozen=True, slots=True)
class Section:
    """``subject``: the motif or edging that a "motif" / "edging" section is about."""

    key: SectionKey
    title: str
    blocks: tuple[Block, ...]
    subject: str | None = None


@dataclass(frozen=True, slots=True)
class Document:
    title: str
    terms: Literal["US", "UK"]
    language: str
    sections: tuple[Section, ...]
