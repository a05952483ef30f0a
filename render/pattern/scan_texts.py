"""Scans the quoted texts of TOML: where each of their characters comes from."""

from __future__ import annotations

import re
from dataclasses import field

from motifold.render.pattern.scan_errors import TomlError, fail_on_control
from motifold.symbols.record import dataclass

_BASIC = re.compile(r"[^\"\\\n\r\x00-\x08\x0b-\x1f\x7f]+")
_BASIC_LINES = re.compile(r"[^\"\\\r\x00-\x08\x0b-\x1f\x7f]+")
_LITERAL = re.compile(r"[^'\n\r\x00-\x08\x0b-\x1f\x7f]+")
_LITERAL_LINES = re.compile(r"[^'\r\x00-\x08\x0b-\x1f\x7f]+")
_ESCAPE = re.compile(r"\\(?:[btnfr\"\\]|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8})")
_LINE_JOIN = re.compile(r"\\[ \t]*\r?\n(?:[ \t]|\r?\n)*")
_ESCAPED = {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r", '"': '"', "\\": "\\"}
_FIRST_LINE_END = re.compile(r"(?:\r?\n)?")


@dataclass(slots=True)
class TextPlaces:
    """One text value as it is built: its characters, and (text offset, source offset, width) for each stretch of them."""

    chunks: list[str] = field(default_factory=list)
    pieces: list[tuple[int, int, int]] = field(default_factory=list)
    length: int = 0
    start: int = 0
    end: int = 0

    def add(self, chunk: str, at: int, width: int = 1) -> None:
        self.pieces.append((self.length, at, width))
        self.chunks.append(chunk)
        self.length += len(chunk)


def past(pattern: re.Pattern[str], source: str, at: int) -> int:
    match = pattern.match(source, at)
    return match.end() if match else at


def read_text(source: str, at: int, out: TextPlaces, lines_allowed: bool) -> int:
    """A text in quotes of any of the four kinds; the offset after its closing quotes."""
    quote = source[at]
    if lines_allowed and source.startswith(quote * 3, at):
        return _long_text(source, at, out)
    start = at
    at += 1
    plain = _BASIC if quote == '"' else _LITERAL
    while True:
        match = plain.match(source, at)
        if match:
            out.add(match.group(), at)
            at = match.end()
        char = source[at : at + 1]
        if char == quote:
            out.end = at
            return at + 1
        if char == "\\":
            at = _escape(source, at, out)
        elif char in ("", "\n") or source.startswith("\r\n", at):
            hint = f'close it with {quote}; a text of several lines stands between two lines of """'
            raise TomlError("the text that begins here is not closed on its line", start, at - start, hint)
        else:
            fail_on_control(source, at)


def _long_text(source: str, at: int, out: TextPlaces) -> int:
    """Between three quotes on either side; a line end right after the opening is no part of the text."""
    start = at
    quote = source[at]
    at = past(_FIRST_LINE_END, source, at + 3)
    plain = _BASIC_LINES if quote == '"' else _LITERAL_LINES
    while True:
        match = plain.match(source, at)
        if match:
            out.add(match.group(), at)
            at = match.end()
        char = source[at : at + 1]
        if char == quote:
            quotes = 1
            while quotes < 5 and source.startswith(quote, at + quotes):
                quotes += 1
            inside = quotes if quotes < 3 else quotes - 3
            if inside:
                out.add(quote * inside, at)
            if quotes >= 3:
                out.end = at + inside
                return at + quotes
            at += quotes
        elif char == "\\":
            join = _LINE_JOIN.match(source, at)
            at = join.end() if join else _escape(source, at, out)
        elif source.startswith("\r\n", at):
            out.add("\n", at, 2)
            at += 2
        elif char == "":
            line = source.count("\n", 0, start) + 1
            raise TomlError(f"the text that begins on line {line} is never closed", start, 3, f"close it with a line of {quote * 3}")
        else:
            fail_on_control(source, at)


def _escape(source: str, at: int, out: TextPlaces) -> int:
    match = _ESCAPE.match(source, at)
    code = int(match.group()[2:], 16) if match and len(match.group()) > 2 else 0
    if match is None or code > 0x10FFFF or 0xD800 <= code <= 0xDFFF:
        shown = source[at : at + 2].rstrip() or "\\"
        hint = "a backslash itself is written \\\\ ; texts in single quotes (' or ''') have no escapes"
        raise TomlError(f"{shown} means nothing in a text in quotes", at, len(shown), hint)
    word = match.group()
    out.add(_ESCAPED[word[1]] if len(word) == 2 else chr(code), at, len(word))
    return match.end()
