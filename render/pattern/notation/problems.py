"""The problems of reading: what is wrong in the trade's words, and the nearest thing that can be read."""

from __future__ import annotations

from collections.abc import Iterable

from motifold.render.pattern.problem import Problem, Span


class Rejected(Exception):
    """What stands here cannot be read: carries the problem to the nearest place where reading can go on. Never leaves the room."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


def error(code: str, span: Span, message: str, hint: str | None = None) -> Problem:
    return Problem(code, "error", span, message, hint)


def warning(code: str, span: Span, message: str, hint: str | None = None) -> Problem:
    return Problem(code, "warning", span, message, hint)


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that looks most like this one, or None where none comes near."""
    from difflib import get_close_matches

    found = get_close_matches(word, sorted(set(known)), n=1, cutoff=0.72)
    return found[0] if found else None
