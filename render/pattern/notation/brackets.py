"""Matches the brackets of a line; what has no partner is a problem at the bracket, and is then left out."""

from __future__ import annotations

from motifold.render.pattern.notation.lexicon import Lexeme
from motifold.render.pattern.notation.problems import error
from motifold.render.pattern.notation.reader import Located
from motifold.render.pattern.problem import Problem

_PARTNER = {"(": ")", "[": "]"}
FARTHEST = 150
"""How many words on a missing partner is looked for."""


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
                twice = at > 0 and items[at - 1].value == lexeme.value and items[at - 1].kind == "close"
                problem(at, f"{lexeme.value} closes nothing: its opening bracket is missing", "take one of the two out" if twice else None)
            else:
                for unclosed in stack[opener + 1 :]:
                    lone.add(unclosed)
                    problem(unclosed, f"{items[unclosed].value} is never closed", _where_it_may_close(items, unclosed, at, text))
                pairs.append((stack[opener], at))
                del stack[opener:]
    for unclosed in stack:
        lone.add(unclosed)
        problem(unclosed, f"{items[unclosed].value} is never closed in this line", _where_it_may_close(items, unclosed, len(items), text))
    if not lone:
        return items, dict(pairs), problems
    new_at, kept = [0] * len(items), list[Lexeme]()
    for at, lexeme in enumerate(items):
        new_at[at] = len(kept)
        if at not in lone:
            kept.append(lexeme)
    return kept, {new_at[a]: new_at[b] for a, b in pairs}, problems


def _where_it_may_close(items: list[Lexeme], opener: int, stop: int, text: Located) -> str | None:
    """Where the missing partner may belong: before the first "4 times", "twice" or "in next ch-2 sp" that closes nothing yet."""
    depth = steps = 0
    for at in range(opener + 1, min(stop, opener + FARTHEST)):
        lexeme, before, after = items[at], items[at - 1], items[at + 1] if at + 1 < stop else None
        depth += (lexeme.kind == "open") - (lexeme.kind == "close")
        if depth or lexeme.kind == "mark":
            if depth < 0 or lexeme.kind == "mark":
                return None
            continue
        steps += lexeme.value == ","
        number = lexeme.kind == "num" and after is not None and after.value == "times"
        times = (number or lexeme.raw in ("twice", "thrice")) and before.kind != "close"
        place = lexeme.value == "in" and lexeme.kind == "word" and steps > 1 and items[opener].value == "("
        if times or place:
            end = items[at + 1 if number else at].end if not place else _end_of_place(items, at, stop)
            words = " ".join(text.text[lexeme.start : end].split())
            return f'is {_PARTNER[items[opener].value]} missing before "{words}"?'
    return None


def _end_of_place(items: list[Lexeme], at: int, stop: int) -> int:
    while at + 1 < stop and items[at + 1].kind not in ("sep", "mark", "open", "close", "end"):
        at += 1
    return items[at].end
