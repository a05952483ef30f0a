"""Matches the brackets of a line; what has no partner is a problem at the bracket, and is then left out."""

from __future__ import annotations

from motifold.render.pattern.notation.lexicon import Lexeme
from motifold.render.pattern.notation.problems import error
from motifold.render.pattern.notation.reader import Located
from motifold.render.pattern.problem import Problem

_PARTNER = {"(": ")", "[": "]"}


def match_brackets(items: list[Lexeme], text: Located) -> tuple[list[Lexeme], dict[int, int], list[Problem]]:
    """The lexemes without lone brackets, the closing position of each opening one, and a problem for each that does not match."""
    problems: list[Problem] = []
    stack: list[int] = []
    lone: set[int] = set()
    pairs: list[tuple[int, int]] = []

    def problem(at: int, message: str, hint: str | None = None) -> None:
        problems.append(error("bracket", text.span(items[at].start, items[at].end), message, hint))

    for at, lexeme in enumerate(items):
        if lexeme.kind == "open":
            stack.append(at)
        elif lexeme.kind == "close":
            opener = next(
                (k for k in range(len(stack) - 1, max(-1, len(stack) - 4), -1) if _PARTNER[items[stack[k]].value] == lexeme.value), None
            )
            if opener is None and stack:
                wrong = stack.pop()
                pairs.append((wrong, at))
                problem(at, f"{lexeme.value} closes here what {items[wrong].value} opened", f"write {_PARTNER[items[wrong].value]} here")
            elif opener is None:
                lone.add(at)
                problem(at, f"{lexeme.value} closes nothing: its opening bracket is missing")
            else:
                for unclosed in stack[opener + 1 :]:
                    lone.add(unclosed)
                    problem(unclosed, f"{items[unclosed].value} is never closed")
                pairs.append((stack[opener], at))
                del stack[opener:]
    for unclosed in stack:
        lone.add(unclosed)
        problem(unclosed, f"{items[unclosed].value} is never closed in this line")
    if not lone:
        return items, dict(pairs), problems
    new_at, kept = [0] * len(items), list[Lexeme]()
    for at, lexeme in enumerate(items):
        new_at[at] = len(kept)
        if at not in lone:
            kept.append(lexeme)
    return kept, {new_at[a]: new_at[b] for a, b in pairs}, problems
