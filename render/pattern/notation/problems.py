"""The problems of reading: what is wrong in the trade's words, and the nearest thing that can be read."""

from __future__ import annotations

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
