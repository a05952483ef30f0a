"""A pattern file's bytes -> a checked Pattern, and every problem of the file at once."""

from __future__ import annotations

import tomllib
from typing import Any

from motifold.render.pattern.build import build_pattern
from motifold.render.pattern.check import check_keys
from motifold.render.pattern.echoes import without_echoes
from motifold.render.pattern.locator import Lines, Locator, locate
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.problem import Problem, Severity, Span
from motifold.render.pattern.scan_errors import TomlError
from motifold.render.pattern.values import MOST_PROBLEMS, Reader
from motifold.symbols.record import dataclass

MOST_BYTES = 2_000_000
"""A pattern of forty pages is a hundredth of this."""
NEWEST_FORMAT = 1


@dataclass(frozen=True, slots=True)
class Reading:
    """What was read. ``pattern`` is None where too little is known to go on (no terms, no motif, no TOML)."""

    pattern: Pattern | None
    problems: tuple[Problem, ...]


def read_pattern(path: str, data: bytes) -> Reading:
    """Reads one pattern file. ``path`` names it and is not opened; a symbol that is a file is read beside it, and nothing else.

    Never raises for what the file holds.
    """
    source, problem = decode(data)
    if source is None or problem:
        return Reading(None, (problem,) if problem else ())
    try:
        locator = locate(source)
    except TomlError as error:
        return Reading(None, (_syntax_problem(source, error),))
    content, problem = _content(source, locator)
    if problem:
        return Reading(None, (problem,))
    newer = _newer_format(content, locator)
    if newer:
        return Reading(None, (newer,))
    clean, found, locator = check_keys(content, locator)
    reader = Reader(locator, found)
    pattern = build_pattern(path, source, clean, reader)
    return Reading(pattern, in_order(without_echoes(reader.problems, reader.locator.lines.text)))


def decode(data: bytes) -> tuple[str | None, Problem | None]:
    """The text of a file, or why it is none. A byte order mark is no part of the text."""
    if len(data) > MOST_BYTES:
        hint = "is this a pattern file?"
        return None, Problem("file", "error", None, f"the file has {len(data):,} bytes; a pattern file has at most {MOST_BYTES:,}", hint)
    if not data.strip():
        return None, Problem("file", "error", None, "the file is empty", "`motifold new` writes one to start from")
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return None, Problem("file", "error", None, "the file is saved as UTF-16", "save it as UTF-8")
    nul = data.find(b"\0")
    try:
        source = data.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError as error:
        if 0 <= nul < error.start:
            return None, _nul_problem(data, nul)
        hint = "save the file as UTF-8: the letter here was written in another encoding"
        return None, Problem("file", "error", _place(data, error.start), f"the byte {data[error.start]:#04x} here is not UTF-8", hint)
    return (None, _nul_problem(data, nul)) if nul >= 0 else (source, None)


def _nul_problem(data: bytes, at: int) -> Problem:
    return Problem("file", "error", _place(data, at), "the file holds a zero byte: it is no text file", "is this a pattern file?")


def _place(data: bytes, at: int) -> Span:
    before = data[:at].decode("utf-8", errors="replace").removeprefix("\ufeff")
    return Span(before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1, 1)


def _syntax_problem(source: str, error: TomlError) -> Problem:
    return Problem("toml", "error", Lines.of(source).span(error.start, error.start + error.length), error.message, error.hint)


def _content(source: str, locator: Locator) -> tuple[dict[str, Any], Problem | None]:
    """What the standard library reads; what it alone refuses is in its own words, which name the place."""
    try:
        return tomllib.loads(source), None
    except (tomllib.TOMLDecodeError, ValueError, RecursionError) as error:
        words = str(error)
        span = Span(1, 1, 0)
        if "(at line " in words:
            words, _, place = words.partition(" (at line ")
            line, _, column = place.rstrip(")").partition(", column ")
            span = Span(int(line), int(column), 0) if line.isdecimal() and column.isdecimal() else span
        elif "(at end" in words:
            words = words.partition(" (at end")[0]
            last = len(locator.lines.starts)
            span = Span(last, len(locator.lines.text(last)) + 1, 0)
        hint = "each table and each key is given once, and a key is either a value or a table"
        return {}, Problem("toml", "error", span, f"the file cannot be read from here: {words[:1].lower()}{words[1:]}", hint)


def _newer_format(content: dict[str, Any], locator: Locator) -> Problem | None:
    head = content.get("pattern")
    version = head.get("format") if isinstance(head, dict) else None
    if not isinstance(version, int) or isinstance(version, bool) or version <= NEWEST_FORMAT:
        return None
    message = f"this file has a newer format than this motifold reads, which is format {NEWEST_FORMAT}"
    return Problem("format", "error", locator.value(("pattern", "format")), message, "a newer motifold will read it")


def in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    """In the order of the file, errors first at one place, each once; past the first few hundred only their number is told."""
    unique = list(dict.fromkeys(problems))
    unique.sort(key=lambda p: ((p.span.line, p.span.column) if p.span else (0, 0), p.severity, p.code, p.message))
    if len(unique) <= MOST_PROBLEMS:
        return tuple(unique)
    more = len(unique) - MOST_PROBLEMS
    severity: Severity = "error" if any(problem.severity == "error" for problem in unique[MOST_PROBLEMS:]) else "warning"
    return (*unique[:MOST_PROBLEMS], Problem("more", severity, None, f"and at least {more} more problems like these"))
