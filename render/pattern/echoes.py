"""What only echoes another mistake: after a bracket that does not close, what follows in its line cannot be read as it is meant."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence

from motifold.render.pattern.problem import Problem

_AFTER_BRACKET = re.compile(r"[\])]\s*(?:\d+\s*)?$")
_OUT_OF_PLACE = ("at this place", "stands alone", "nothing to work in it", "a stitch is missing")


def without_echoes(problems: Iterable[Problem], line_text: Callable[[int], str]) -> list[Problem]:
    """The problems without those that follow from another one. ``line_text``: the text of a line of the file, from 1.

    In one line: after a bracket or a star that finds no partner no other of these is told, nor a known word that only seems out of place;
    where a misspelt word stands behind a bracket, it is the word that is told and not what the bracket lacks. A panel that does not exist
    is told where it is named first; words of the other terms are told at the first of them in the file.
    """
    kept: list[Problem] = []
    named: set[str] = set()
    by_line: dict[int, list[Problem]] = {}
    problems = list(problems)
    foreign = min((one for one in problems if one.code == "terms"), key=lambda one: (one.severity, problems.index(one)), default=None)
    for problem in problems:
        if problem.span is not None and problem.code in ("bracket", "star", "word", "ambiguous"):
            by_line.setdefault(problem.span.line, []).append(problem)
        if problem.code == "reference" and problem.message in named:
            continue
        if problem.code == "terms" and problem is not foreign:
            continue
        if problem.code == "reference":
            named.add(problem.message)
        kept.append(problem)
    gone = {id(problem) for number, found in by_line.items() if len(found) > 1 for problem in _echoes(found, line_text(number))}
    return [problem for problem in kept if id(problem) not in gone]


def _echoes(found: Sequence[Problem], text: str) -> list[Problem]:
    unknown = [one for one in found if one.code == "word" and not any(words in one.message for words in _OUT_OF_PLACE)]
    if any(one.span is not None and _AFTER_BRACKET.search(text[: one.span.column - 1]) for one in unknown):
        return [one for one in found if one.code == "bracket" and "neither" in one.message]
    marks = [one for one in found if one.code in ("bracket", "star")]
    if not marks:
        return []
    lonely = sorted((one for one in marks if "neither" not in one.message), key=lambda one: one.span.column if one.span else 0)
    told = lonely[:1] if lonely else marks
    return [one for one in found if one not in told and one not in unknown]
