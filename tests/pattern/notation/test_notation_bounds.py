"""Whatever is typed: no exception, bounded time, places inside the text."""

from __future__ import annotations

import time
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from notation_shorthand import define, read

ROUND = (
    "Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next ch-2 sp, "
    "(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp, "
    "3 dc in beg sp, ch 2; join; turn. (24 dc, 4 ch-1 sps)"
)
WORDS = [
    "dc", "sc", "tr", "2", "3", "12", "999999999999", "ch", "ch-2", "sp", "sps", "st", "sts", "next", "same", "each", "first",
    "last", "beg", "corner", "center", "top", "of", "in", "to", "from", "hook", "around", "across", "end", "ring", "(", ")", "[",
    "]", "*", "**", "†", ",", ";", ".", ":", "--", "=", "-", "rep", "from", "times", "twice", "more", "x", "total", "join",
    "with", "sl", "turn", "change", "A", "B", "C", "fasten", "off", "inc", "dec", "2tog", "cl", "picot", "shell", "counts", "as",
    "does", "not", "count", "work", "working", "back", "loop", "only", "blo", "unused", "front", "lps", "Rnd", "Row", "4", "and",
    "following", "(RS)", "{", "}", "{words}", "#", "\n", "skip", "missed", "between", "group", "evenly", "side", "every",
    "other", "omitting", "ending", "until", "measures", "cm", "20", "1st", "4th", "all", "then", "petal", "magic", "5", "(6,7)",
    "tch", "over", "post", "below", "made",
]  # fmt: skip


def pieces() -> st.SearchStrategy[str]:
    return st.lists(st.sampled_from(WORDS), max_size=40).map(" ".join)


@settings(max_examples=300, deadline=None)
@given(text=pieces(), uk=st.booleans(), sizes=st.integers(1, 3), rows=st.booleans())
def test_any_words_in_any_order_are_read_without_an_exception(text: str, uk: bool, sizes: int, rows: bool) -> None:
    lines, problems = read(text, "UK" if uk else "US", sizes=sizes, rows=rows, defined=("petal",))
    source = text.split("\n")
    for problem in problems:
        assert problem.span is not None
        assert 1 <= problem.span.line <= len(source)
        assert problem.span.column + problem.span.length <= len(source[problem.span.line - 1]) + 2
    assert (lines, problems) == read(text, "UK" if uk else "US", sizes=sizes, rows=rows, defined=("petal",))


@settings(max_examples=200, deadline=None)
@given(text=st.text(max_size=60))
def test_any_signs_are_read_without_an_exception(text: str) -> None:
    read(text)
    define("knob", text)


@settings(max_examples=100, deadline=None)
@given(text=pieces())
def test_any_definition_is_read_without_an_exception(text: str) -> None:
    define("knob", text)


def long_texts() -> Iterator[tuple[str, str]]:
    yield "200 rounds", "\n".join(f"Rnd {number}: {ROUND}" for number in range(1, 201))
    many = 4000
    for piece in (
        "* dc, ",
        "(",
        "(dc) ",
        ") ] ",
        "frogs leap, ",
        "*dc, ** ",
        "and ",
        "3 ",
        "of next ",
        "-- 3 dc ",
        "dc\n",
        "{",
        "work ",
        "rep from * ",
    ):
        yield repr(piece), "Rnd 1: dc in next " + piece * many
    yield "deep", "Rnd 1: " + "[" * many + "dc" + "] twice" * many
    yield "deep stars", "Rnd 1: " + "[*" * many + "dc" + "; rep from * twice] twice" * many
    yield "omissions", "Rnd 1: *sc, ch 1; rep from * around, omitting last " + "ch 2, " * many
    yield "omissions in omissions", "Rnd 1: " + "*sc; rep from * around, omitting " * many
    yield "shared lines", "Rnds 2, " + ", ".join(map(str, range(4, 1500, 2))) + ": " + "sc, " * many
    yield "digits", "Rnd 1: dc " + "9" * 100_000
    yield "letters", "Rnd 1: " + "d" * 100_000


@pytest.mark.parametrize("text", [text for _, text in long_texts()], ids=[name for name, _ in long_texts()])
def test_long_texts_take_time_in_proportion(text: str) -> None:
    began = time.process_time()
    read(text)
    assert time.process_time() - began < 3.0


def test_brackets_deeper_than_anyone_can_follow_are_one_problem() -> None:
    lines, problems = read("Rnd 1: " + "[" * 80 + "dc" + "] twice" * 80)
    assert [problem.code for problem in problems] == ["depth"]
    assert len(lines) == 1
