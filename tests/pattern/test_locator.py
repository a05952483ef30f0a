"""Where everything stands, held against the standard library's reading of the same text."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from motifold.render.pattern.locator import Lines, LocatedText, locate, plain_text
from motifold.render.pattern.problem import Span
from motifold.render.pattern.scan import Path
from motifold.render.pattern.scan_errors import TomlError


def leaves(value: Any, path: Path = ()) -> Iterator[tuple[Path, Any]]:
    """Every key path of a TOML document with its value, tables and lists included."""
    if path:
        yield path, value
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from leaves(inner, (*path, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from leaves(inner, (*path, index))


def what_makes(text: LocatedText, offset: int) -> str:
    """The source characters that make one character of a text, as the standard library reads them."""
    span = text.span(offset, offset + 1)
    line = text.lines.text(span.line)
    shown = line[span.column - 1 : span.column - 1 + span.length]
    if shown == "":
        return "\n"
    if len(shown) > 1:
        return str(tomllib.loads(f'x = "{shown}"')["x"])
    return shown


def agrees(source: str) -> None:
    """The map of a source has the keys and texts that the standard library reads, and every character its place."""
    data = tomllib.loads(source)
    locator = locate(source)
    expected = dict(leaves(data))
    assert set(locator.values) == set(expected)
    for path, value in expected.items():
        if not isinstance(value, str):
            assert path not in locator.texts
            continue
        text = locator.text(path)
        assert text.text == value
        for offset, char in enumerate(value):
            assert what_makes(text, offset) == char, (path, offset)


characters = st.sampled_from([*"ab \t\"'\\\n#=[],½—", "\U0001f9f6", "\x7f", "\x01", "\r"])
words = st.text(characters, max_size=12)
bare = st.text(st.sampled_from("ab1_-"), min_size=1, max_size=3)


def basic(value: str, hard: frozenset[int]) -> str:
    """A basic string; positions in ``hard`` are written as escapes although they need not be."""
    short = {"\n": "\\n", '"': '\\"', "\\": "\\\\", "\r": "\\r", "\t": "\\t"}
    out = []
    for index, char in enumerate(value):
        if char in short and (char != "\t" or index in hard):
            out.append(short[char])
        elif char in "\x01\x7f" or index in hard:
            out.append(f"\\U{ord(char):08x}" if ord(char) > 0xFFFF or index % 2 else f"\\u{ord(char):04X}")
        else:
            out.append(char)
    return '"' + "".join(out) + '"'


@st.composite
def texts(draw: st.DrawFn) -> str:
    """One string value in any of TOML's four kinds, with line-ending backslashes in some."""
    value = draw(words)
    kind = draw(st.sampled_from(["basic", "literal", "basic lines", "literal lines"]))
    hard = frozenset(draw(st.lists(st.integers(0, 12), max_size=4)))
    if kind == "basic":
        return basic(value, hard)
    clean = value.replace("\x01", "").replace("\x7f", "").replace("\r", "")
    if kind == "literal":
        return "'" + clean.replace("'", "").replace("\n", " ") + "'"
    if kind == "literal lines":
        return "'''" + draw(st.sampled_from(["", "\n"])) + clean.replace("'''", "") + draw(st.sampled_from(["", "'", "''"])) + "\n'''"
    inner = basic(value, hard)[1:-1].replace("\\n", draw(st.sampled_from(["\n", "\\n"])))
    joined = inner.replace(" ", draw(st.sampled_from([" ", " \\\n  \t\n x", "\\ \n"])))
    return '"""' + draw(st.sampled_from(["", "\n"])) + joined + draw(st.sampled_from(["", '"', '""'])) + '"""'


@st.composite
def values(draw: st.DrawFn, depth: int = 0) -> str:
    kinds = ["text", "text", "other"] + (["list", "table"] if depth < 3 else [])
    kind = draw(st.sampled_from(kinds))
    if kind == "text":
        return draw(texts())
    if kind == "list":
        items = draw(st.lists(values(depth + 1), max_size=3))
        gap = draw(st.sampled_from(["", " ", "\n  ", " # a, ] comment\n"]))
        return "[" + gap + f"{gap},{gap}".join(items) + (f"{gap}," if items and draw(st.booleans()) else "") + gap + "]"
    if kind == "table":
        inner = draw(st.lists(values(depth + 1), max_size=3))
        return "{ " + ", ".join(f"k{index}{'.x' * (index % 2)} = {item}" for index, item in enumerate(inner)) + " }"
    return draw(
        st.sampled_from(
            [
                "1",
                "-3",
                "1_000",
                "0x1F",
                "0.5",
                "6e-2",
                "true",
                "inf",
                "-nan",
                "1979-05-27",
                "1979-05-27 07:32:00",
                "07:32:00.5",
                "1979-05-27T07:32:00-07:00",
            ]
        )
    )


@st.composite
def documents(draw: st.DrawFn) -> str:
    out: list[str] = []
    for index in range(draw(st.integers(0, 5))):
        head = draw(st.sampled_from(["", "", "[t{}]", "[t{}.in]", "[[many]]", "[[many.more]]", "[ 'q {}' . b ]"]))
        if head:
            out.append(head.format(index))
        for inner in range(draw(st.integers(0, 3))):
            key = draw(st.sampled_from([f"a{index}_{inner}", f"d{index}_{inner}.e", f'"k {index} {inner}\\n" . f', f"'l{index}{inner}'"]))
            out.append(f"{key} = {draw(values())}" + draw(st.sampled_from(["", " # note", "\t"])))
    source = "\n".join(out) + draw(st.sampled_from(["", "\n"]))
    return source.replace("\n", "\r\n") if draw(st.booleans()) else source


@settings(max_examples=300, deadline=None)
@given(documents())
def test_every_character_of_every_text_has_the_place_that_makes_it(source: str) -> None:
    try:
        tomllib.loads(source)
    except tomllib.TOMLDecodeError:  # [[many.more]] before [[many]], or a table declared in two ways
        reject()
    agrees(source)


@settings(max_examples=500, deadline=None)
@given(
    st.lists(st.sampled_from([*"ab1.=[]{}\"'\\\n\r\t ,#-:_", '"""', "'''", "\r\n", "[[", "true", "1979-05-27", "a = "]), max_size=24).map(
        "".join
    )
)
def test_what_the_standard_library_reads_is_read(source: str) -> None:
    try:
        tomllib.loads(source)
    except tomllib.TOMLDecodeError:
        try:
            locate(source)
        except TomlError as error:
            assert 0 <= error.start <= len(source)
            assert error.length >= 0
        return
    agrees(source)


@pytest.mark.parametrize(
    "source",
    [
        'a = """\r\nx\\\r\n   y\\u00bd\r\nz"""',
        "a.b.c = 'x'\n[a.d]\ne = 1",
        "[[p]]\nx = 'a'\n[[p]]\nx = 'b'\n[p.q]\nr = 's'\n[[p.v]]\nw = 1\n[[p.v]]\nw = 'two'",
        'a = """""x"""""',
        "a = ''''x'''''",
        '"" = "empty key"',
        'a = [ [ \'x\' ], { b.c = """\ny""" } , ]',
    ],
)
def test_agrees_with_the_standard_library(source: str) -> None:
    agrees(source)


def test_a_span_over_a_line_end_is_cut_there() -> None:
    text = locate('a = """\nsc in next st,\r\nturn\r\n"""').text(("a",))
    assert text.span(3, 20) == Span(2, 4, 11)
    assert text.span(15, 19) == Span(3, 1, 4)
    assert text.span(14, 15) == Span(2, 15, 0)


def test_the_end_of_a_text_has_a_place() -> None:
    text = locate('title = "Mat"').text(("title",))
    assert text.span(3, 3) == Span(1, 13, 0)
    assert text.span(99, 120) == Span(1, 13, 0)


def test_an_escape_is_as_wide_as_it_is_written() -> None:
    text = locate('ease = "5\\u00bd in"').text(("ease",))
    assert text.text == "5½ in"
    assert text.span(1, 2) == Span(1, 10, 6)
    assert text.span(3, 5) == Span(1, 17, 2)


def test_keys_values_and_what_is_missing() -> None:
    locator = locate('[pattern]\n  title = "A"\n[motif.square]\nrounds = "x"')
    assert locator.key(("pattern", "title")) == Span(2, 3, 5)
    assert locator.value(("pattern", "title")) == Span(2, 11, 3)
    assert locator.value(("motif", "square")) == Span(3, 8, 6)
    assert locator.value(("motif", "square", "shape")) == Span(3, 8, 6)
    assert locator.value(("gauge",)) == Span(1, 1, 0)


def test_a_text_without_a_file_is_its_own_source() -> None:
    text = plain_text("ch 3,\nturn")
    assert text.span(6, 10) == Span(2, 1, 4)
    assert plain_text("").span(0, 3) == Span(1, 1, 0)


def test_lines_know_their_text() -> None:
    lines = Lines.of("one\r\ntwo\n\nlast")
    assert [lines.text(number) for number in range(6)] == ["", "one", "two", "", "last", ""]
