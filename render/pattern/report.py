"""Tells problems: code, place, the line itself with its words underlined, what is wrong, and what would mend it."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable

from motifold.render.pattern.locator import Lines
from motifold.render.pattern.problem import Problem, Span

WIDEST = 110
"""Columns of the source line that are shown; a longer line is clipped around its place."""
TAB = 4
_MORE = "..."
_NEAR = 250


def report_problems(problems: Iterable[Problem], file: str, source: str) -> str:
    """All problems as text, a blank line between two; "" where there are none.

    error[count]: my-square.toml:41:96: Rnd 3 says 36 dc, but working it makes 33
       41 | Rnd 3: ... ; join. (36 dc, 8 ch-1 sps)
          |                     ^^^^^
       hint: ...
    """
    lines = Lines.of(source.removeprefix("\ufeff"))
    return "\n\n".join(report_problem(problem, file, lines) for problem in problems)


def report_problem(problem: Problem, file: str, lines: Lines) -> str:
    """One problem as text of two to five lines, without a line end."""
    place = f"{file}:{problem.span.line}:{problem.span.column}" if problem.span else file
    out = [f"{problem.severity}[{problem.code}]: {_plain(place)}: {_plain(problem.message)}"]
    if problem.span and lines.text(problem.span.line).strip():
        shown, marks = _underlined(lines.text(problem.span.line), problem.span)
        margin = " " * 5
        out += [f"{problem.span.line:>5} | {shown}", f"{margin} | {marks}"]
    if problem.hint:
        out.append(f"   hint: {_plain(problem.hint)}")
    return "\n".join(out)


def problem_json(problem: Problem, file: str) -> dict[str, str | int | None]:
    """One problem as ``check --json`` prints it; line and column are None where it has no one place."""
    return {
        "code": problem.code,
        "severity": problem.severity,
        "file": file,
        "line": problem.span.line if problem.span else None,
        "column": problem.span.column if problem.span else None,
        "message": problem.message,
        "hint": problem.hint,
    }


def _underlined(line: str, span: Span) -> tuple[str, str]:
    """A line as it is shown, and the marks below it."""
    start = min(span.column - 1, len(line))
    if start > _NEAR:  # what is far away costs time and is not shown
        line, start = line[start - _NEAR :], _NEAR
    line = line[: start + 2 * _NEAR]
    length = max(1, min(span.length, len(line) - start))
    first, last = _clip(line, start, length)
    before = _MORE if first > 0 else ""
    shown = before
    lead = at = len(before)
    marks = 0
    for index in range(first, last):
        cell = _cell(line[index], at)
        columns = _columns(cell)
        shown += cell
        at += columns
        if index < start:
            lead += columns
        elif index < start + length:
            marks += columns
    return shown + (_MORE if last < len(line) else ""), " " * lead + "^" * max(1, marks)


def _clip(line: str, start: int, length: int) -> tuple[int, int]:
    """Which characters of a long line are shown: its beginning if the place lies there, else the place with some words before it."""
    if _width(line) <= WIDEST:
        return 0, len(line)
    first = 0
    if _width(line[: start + min(length, WIDEST // 2)]) > WIDEST - 10:
        first = max(0, start - WIDEST // 3)
        space = line.find(" ", first, start)
        first = space + 1 if 0 <= space < start else first
    last = first
    room = WIDEST - (len(_MORE) if first else 0) - len(_MORE)
    used = 0
    while last < len(line) and used + _columns(_cell(line[last], used)) <= room:
        used += _columns(_cell(line[last], used))
        last += 1
    return first, last


def _cell(char: str, at: int) -> str:
    """A character as it can be shown at a column: tabs as spaces, what cannot be seen as a question mark."""
    if char == "\t":
        return " " * (TAB - at % TAB)
    return char if char.isprintable() or unicodedata.combining(char) else "?"


def _columns(text: str) -> int:
    """How many columns of a terminal a text takes: wide East Asian characters and emoji take two, combining marks none."""
    return sum(0 if unicodedata.combining(c) or c in "\u200d\ufe0f" else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text)


def _width(text: str) -> int:
    at = 0
    for char in text:
        at += _columns(_cell(char, at))
    return at


def _plain(text: str) -> str:
    """On one line, without control characters: a file name or a word of the file may hold any."""
    return "".join(char if char.isprintable() else "?" for char in " ".join(text.split()))
