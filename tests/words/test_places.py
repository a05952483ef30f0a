"""Every way of saying where a stitch goes: what is read is printed so that it is read as the same place again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

import pytest

from motifold.render.pattern.instructions import Instructions, Place, Words
from motifold.render.pattern.model import Terms
from motifold.render.pattern.notation import NotationContext, parse_instructions
from motifold.render.pattern.problem import Span
from motifold.render.words.steps import steps_text
from motifold.render.words.voice import Voice

OWN = {"petal": "petal"}
VOICES: list[tuple[Terms, bool]] = [("US", False), ("US", True), ("UK", False), ("UK", True)]

ONE = ("next", "same", "first", "last", "any", "3rd", "corresponding", "each", "center", "")
MANY = ("next 3", "first 2", "last 2", "each of next 3", "each of last 2", "each of next 3 (4, 5)", "next 3 (4, 5)")
NOUNS = {
    "st": "sts", "dc": "dc", "FPdc": "FPdc", "petal": "petals", "sp": "sps", "ch-2 sp": "ch-2 sps", "ch-3 lp": "ch-3 lps", "ch": "ch",
    "corner": "corners", "corner sp": "corner sps", "corner st": "corner sts", "group": "groups", "row end": "row ends",
    "unused front lp": "unused front lps", "ch along other side of foundation ch": "ch along other side of foundation ch",
}  # fmt: skip
"""Nouns with their plurals."""
TAILS = ("of Rnd 2", "2 rnds below", "at right end of any side", "of previous motif")
EXTENTS = ("around", "across", "to end", "to last st", "to last 2 (3, 4) sts", "to next ch-2 sp", "to beg sp")
ONLY = (
    "in ring", "in tch", "in top of tch", "in same tch", "in top of beg ch-3", "in 3rd ch of beg ch-4", "in beg sp", "in ch-2 sp",
    "in top of 3 missed ch", "in top of missed ch", "in skipped st", "in 4th ch from hook", "in next ch from hook",
    "in center ch of ch-5 lp",
    "in center dc of next petal", "in center of next petal", "in center of next petal of Rnd 2",
    "in ch-2 sp of next petal", "in 2nd dc of next petal",
    "in top of dc just made", "in 3rd ch just made", "in first 2 ch just made", "between next 2 dc", "between next 2 corner sps",
    "between first 2 sts", "between each of next 3 dc", "in sp between next 2 groups", "in sp between last 2 sts",
    "evenly along side", "evenly around", "evenly in row ends", "evenly along corner", "in each dc and each ch-1 sp around",
    "in next 3 dc and each ch-1 sp", "over next 3 sts", "over same st and next st", "in other side of foundation ch", "in row ends",
    "in unused front lps of Rnd 3", "in any unused front lp of Rnd 3", "in each of next 3 unused front lps of Rnd 3",
)  # fmt: skip


def phrases() -> Iterator[str]:
    """Source texts in US terms."""
    for (one, many), which in product(NOUNS.items(), ONE + MANY):
        yield f"sc in {which} {many if which in MANY else one}"
    for noun, which, tail in product(("st", "dc", "ch-2 sp", "row end"), ("next", "same", "each of next 3"), TAILS):
        yield f"sc in {which} {NOUNS[noun] if which in MANY else noun} {tail}"
    for noun, extent in product(NOUNS, EXTENTS):
        yield f"2 sc in each {noun} {extent}"
    manners = ("around", "behind", "in front of")
    for noun, which, manner in product(("st", "dc", "petal", "ch-2 sp"), ("next", "same", "each of next 3"), manners):
        yield f"sc {manner} {which} {NOUNS[noun] if which in MANY else noun}"
    for noun, which, loop in product(("st", "dc", "ch"), ("next", "first", "each", "each of next 3"), ("BLO", "FLO")):
        yield f"sc in {loop} of {which} {NOUNS[noun] if which in MANY else noun}"
    for place in ONLY:
        yield f"{'dc2tog' if place.startswith('over') else 'dc'} {place}"


@dataclass(frozen=True)
class Loose:
    text: str

    def span(self, start: int, end: int) -> Span:
        return Span(1, start + 1, end - start)


def read(text: str, terms: Terms) -> tuple[Instructions, bool]:
    instructions, problems = parse_instructions(Loose(text), NotationContext(terms, ("A", "B"), OWN, 3, "rounds"))
    return instructions, any(problem.severity == "error" for problem in problems)


def bare(node: object) -> object:
    """A tree without what only says where it was written: ids, spans, the wording of remarks, and "each" of a single place."""
    if isinstance(node, tuple):
        return tuple(bare(part) for part in node)
    fields = getattr(node, "__dataclass_fields__", None)
    if fields is None:
        return node
    single = isinstance(node, Place) and node.count.values == (1,) and node.which != "each"
    skipped = {"id", "span"} | ({"each"} if single else set()) | ({"text"} if isinstance(node, Words) else set())
    return (type(node).__name__, *((name, bare(getattr(node, name))) for name in fields if name not in skipped))


@pytest.mark.parametrize(("terms", "plain"), VOICES)
def test_every_place_comes_back_from_its_words(terms: Terms, plain: bool) -> None:
    seen, wrong = 0, []
    for phrase in phrases():
        instructions, unread = read(f"Rnd 4: {phrase}", "US")
        if unread:
            continue
        seen += 1
        steps = instructions.lines[0].steps
        written = steps_text(Voice(terms, plain, None, False, OWN), steps)
        again, unread = read(f"Rnd 4: {written}", terms)
        if unread or bare(again.lines[0].steps) != bare(steps):
            wrong.append((phrase, written))
    assert seen > 450
    assert not wrong


LEAF = (
    "3 dc in last ch; working in other side of foundation ch, htr in next ch, tr in each of next 2 ch, [dc in next ch] twice, miss 2 ch, "
    "3 dc in last ch; join with ss in first dc"
)


def test_the_other_side_of_the_foundation_is_told_once_and_its_chains_are_counted() -> None:
    steps = read(f"Rnd 1: {LEAF}", "UK")[0].lines[0].steps
    printed = LEAF.replace("miss 2", "miss next 2")
    assert steps_text(Voice("UK"), steps).replace("\u00a0", " ") == printed


@pytest.mark.parametrize(("terms", "plain"), VOICES)
@pytest.mark.parametrize("text", [LEAF, "miss next ch; in other side of foundation ch, dc in next ch, tr in each of next 2 ch"])
def test_a_line_along_the_other_side_reads_back(text: str, terms: Terms, plain: bool) -> None:
    steps = read(f"Rnd 1: {text}", "UK")[0].lines[0].steps
    again, unread = read(f"Rnd 1: {steps_text(Voice(terms, plain), steps)}", terms)
    assert not unread
    assert bare(again.lines[0].steps) == bare(steps)
