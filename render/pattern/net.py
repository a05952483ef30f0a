"""The panels of an assembly as the file writes them: the net in words, sides, joins and passes."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import Any

from motifold.render.pattern.locator import LocatedText
from motifold.render.pattern.model import JoinSource, NetCell, SidePiece
from motifold.render.pattern.problem import Problem, Span
from motifold.render.pattern.spelling import nearest

PANEL_NAME = r"[^\W\d_][\w-]*"
MOST_PANELS = 2000
LONGEST_NET = 50_000
MOST_PARTS = 24
_SIDE = re.compile(rf"(?P<panel>{PANEL_NAME})\s*\.\s*(?P<side>[\w-]+)\s*(?:\[\s*(?P<part>\d{{1,3}})\s*/\s*(?P<parts>\d{{1,3}})\s*\])?")
_EASED = re.compile(r"(?:is |are )?eased?(?: in| to fit)?")
_RATIO = re.compile(
    r"(\d{1,3})(?:\s*(?:sts?|stitch(?:es)?|rows?|ends?))?\s*(?:to|:|for|per)\s*(\d{1,3})(?:\s*(?:sts?|stitch(?:es)?|rows?|ends?))?"
)
_SIDE_HINT = 'a side is its panel, a dot and its name or number: "F1.left", "A.3"; half of it "C.top[1/2]"'
_JOIN_HINT = 'for example "F1.left + B1.left", or "T1.left + itself" for a side folded in half'


_MOST_COMPARED = 100
"""Names that a misspelt one is held against: a file may have thousands of joins."""


def read_net(text: LocatedText) -> tuple[tuple[NetCell, ...], list[Problem]]:
    """The panels of a net. Rows may be ragged; a word's place in its row is its column."""
    if len(text.text) > LONGEST_NET:
        return (), [Problem("net", "error", text.span(0, 1), f"a net has at most {MOST_PANELS} panels; this text is far too long for one")]
    cells: list[NetCell] = []
    problems: list[Problem] = []
    rows: list[list[tuple[int, str]]] = []
    first: dict[str, Span] = {}
    offset = 0
    for line in text.text.split("\n"):
        words = [(match.start(), match.group()) for match in re.finditer(r"\S+", line.split("#")[0])]
        if words or rows:
            rows.append(words)
        for column, (start, word) in enumerate(words):
            span = text.span(offset + start, offset + start + len(word))
            if word == ".":
                continue
            if not re.fullmatch(PANEL_NAME, word):
                problems.append(Problem("net", "error", span, f"{_cut(word)} cannot be a panel's name", _name_hint(word)))
            elif word in first:
                message = f"panel {_cut(word)} stands in the net twice: first on line {first[word].line}"
                problems.append(Problem("net", "error", span, message, "each panel needs a name of its own"))
            elif len(cells) >= MOST_PANELS:
                problems.append(Problem("net", "error", span, f"a net has at most {MOST_PANELS} panels"))
                return tuple(cells), problems
            else:
                first[word] = span
                cells.append(NetCell(word, len(rows) - 1, column, span))
        offset += len(line) + 1
    problems += _shifted(rows, cells)
    if not cells and not problems:
        problems.append(
            Problem("net", "error", text.span(0, len(text.text)), "the net has no panels", "write a word for each panel, a row a line")
        )
    return tuple(cells), problems


def _name_hint(word: str) -> str:
    if re.fullmatch(r"[.\-_–—]+", word):
        return "an empty place is one dot, with spaces around it"
    if re.match(r"\d", word):
        return f"a panel's name begins with a letter: P{word}"
    return "a panel's name has letters, digits, - and _, with spaces between names"


def _shifted(rows: list[list[tuple[int, str]]], cells: list[NetCell]) -> list[Problem]:
    """A row that is set in with spaces alone: what the eye sees and what the words say differ."""
    widest = max(rows, key=len, default=[])
    starts = {(cell.row, cell.column): cell for cell in cells}
    problems = []
    for number, row in enumerate(rows):
        if not row or len(row) >= len(widest):
            continue
        start, word = row[0]
        seen = min(range(len(widest)), key=lambda column: (abs(widest[column][0] - start), column))
        if seen > 0 and word != "." and (number, 0) in starts:
            hint = f"put a dot for each empty place before it: {' '.join(['.'] * seen)} {word}"
            message = f"{word} stands under {widest[seen][1]} by its spaces, but in the first column by its words"
            problems.append(Problem("net-shift", "warning", starts[number, 0].span, message, hint))
    return problems


def read_side(text: LocatedText, start: int, end: int, panels: Collection[str]) -> tuple[SidePiece | None, Problem | None]:
    """The side named by ``text[start:end]``; ``panels`` are the names that there are."""
    words = text.text[start:end]
    lead = len(words) - len(words.lstrip())
    start, end = start + lead, start + len(words.rstrip())
    span = text.span(start, max(start, end))
    match = _SIDE.fullmatch(text.text, start, end) if start < end else None
    if match is None:
        shown = f'"{_cut(text.text[start:end])}" is no side' if start < end else "a side is missing here"
        return None, Problem("panel-side", "error", span, shown, _SIDE_HINT)
    panel = match["panel"]
    if panel not in panels:
        near = nearest(panel, list(panels)[:_MOST_COMPARED])
        hint = f"did you mean {near}?" if near else "the panels are " + ", ".join(list(panels)[:12])
        return None, Problem(
            "reference", "error", text.span(match.start("panel"), match.end("panel")), f"there is no panel {_cut(panel)}", hint
        )
    part, parts = int(match["part"] or 1), int(match["parts"] or 1)
    if not 1 <= part <= parts <= MOST_PARTS:
        message = f"{part}/{parts} is no part of a side"
        hint = f"the first half is [1/2], the second [2/2]; a side has at most {MOST_PARTS} parts"
        return None, Problem("panel-side", "error", text.span(match.start("part"), match.end("parts")), message, hint)
    return SidePiece(panel, match["side"], part, parts), None


def join_words(entry: str | Mapping[str, Any]) -> tuple[str | None, str]:
    """The sides of an entry of ``join``, and the key that they stand under where it is a table (None: a text)."""
    if isinstance(entry, str):
        return None, entry
    key = "join" if "join" in entry else "sides"
    return key, str(entry.get(key, ""))


def read_join_table(
    entry: Mapping[str, Any], sides: LocatedText, manner: LocatedText | None, panels: Collection[str]
) -> tuple[JoinSource | None, list[Problem]]:
    """One join as a table: ``{ sides = "A.1 + B.2", ease = true }``, ``{ join = "A.1 + B.2", sides = "3 sts to 2 rows" }``."""
    join, problems = read_join(sides, panels)
    ease, ratio, problem = _manner(manner, 0) if manner is not None else (False, None, None)
    if problem is not None:
        return None, [*problems, problem]
    return (replace(join, ease=join.ease or ease or bool(entry.get("ease")), ratio=join.ratio or ratio) if join else None), problems


def read_join(text: LocatedText, panels: Collection[str]) -> tuple[JoinSource | None, list[Problem]]:
    """One join: ``a + b``, ``a ~ b``, ``a + itself``; after a comma ``eased`` or ``3 sts to 2 rows``."""
    words = text.text
    span = text.span(len(words) - len(words.lstrip()), len(words.rstrip()))
    sides_end = words.find(",") if "," in words else len(words)
    marks = [index for index in range(sides_end) if words[index] in "+~"]
    if len(marks) != 1:
        message = f'"{_cut(words.strip())}" joins nothing' if not marks else "a join has two sides; this has more"
        return None, [Problem("panel-join", "error", span, message, _JOIN_HINT)]
    mark = marks[0]
    a, problem_a = read_side(text, 0, mark, panels)
    alone = words[mark + 1 : sides_end].strip().lower() == "itself"
    b, problem_b = (None, None) if alone else read_side(text, mark + 1, sides_end, panels)
    problems = [problem for problem in (problem_a, problem_b) if problem]
    ease, ratio, problem = _manner(text, sides_end + 1)
    problems += [problem] if problem else []
    if a and a == b:
        problems.append(
            Problem(
                "panel-join",
                "error",
                span,
                f"{a.panel}.{a.side} is joined to itself",
                f'write "{a.panel}.{a.side} + itself" to fold it in half',
            )
        )
    if a is None or problems:
        return None, problems
    return JoinSource(span, a, b, words[mark] == "~", ease, ratio), problems


def _manner(text: LocatedText, start: int) -> tuple[bool, tuple[int, int] | None, Problem | None]:
    """What stands after a join's comma."""
    words = text.text[start:].strip().lower()
    if start > len(text.text):
        return False, None, None
    if _EASED.fullmatch(words):
        return True, None, None
    ratio = _RATIO.fullmatch(words)
    if ratio and int(ratio[1]) and int(ratio[2]):
        return False, (int(ratio[1]), int(ratio[2])), None
    hint = 'after the comma stands "eased", or how stitches meet: "3 sts to 2 rows"'
    return False, None, Problem("panel-join", "error", text.span(start, len(text.text)), f'"{_cut(words)}" is no way to join', hint)


def _cut(words: str, most: int = 40) -> str:
    return words if len(words) <= most else words[: most - 3] + "..."
