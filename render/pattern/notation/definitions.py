"""Special stitches: ``means = "(dc, hdc, 3 tr, hdc, dc) in same st"``, ``means = "4 dc in same st, gathered"``."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Literal

from motifold.render.pattern.instructions import Definition, Group, Place, Repeat, Step, Work
from motifold.render.pattern.notation.brackets import match_brackets
from motifold.render.pattern.notation.context import NotationContext
from motifold.render.pattern.notation.lexicon import Lexeme, read_words
from motifold.render.pattern.notation.parser import check_terms, in_order
from motifold.render.pattern.notation.problems import error
from motifold.render.pattern.notation.reader import Located, Memory, Reader
from motifold.render.pattern.notation.steps import read_steps
from motifold.render.pattern.problem import Problem
from motifold.symbols.terms import Terms, canonical

Gather = Literal["popcorn", "cluster", "bobble", "puff"]

_GATHERED = frozenset({"gathered", "gather"})
_TOGETHER = frozenset({"tog", "close", "joined"})
_INTO: dict[str, Gather] = {"pc": "popcorn", "cl": "cluster", "bobble": "bobble", "puff": "puff"}
_FORM = 'write the stitches that it is made of: means = "5 dc in same st", "(dc, ch 1, dc) in same st" or "4 dc in same st, gathered"'
_OWN_NAMES_ALLOWED = frozenset({"shell", "cl", "pc", "bobble", "puff", "picot", "V-st"})


def parse_definition(key: str, text: Located, context: NotationContext) -> tuple[Definition | None, tuple[Problem, ...]]:
    """Reads what a special stitch means; None, with one problem that says the form, where its words are no stitches."""
    memory = Memory(context.first_id)
    built_in = canonical(key, context.terms)
    if (
        built_in is not None
        and built_in not in _OWN_NAMES_ALLOWED
        and built_in.removeprefix("beg ") not in _OWN_NAMES_ALLOWED
        and "-" not in built_in
    ):
        message = f'"{key}" is a stitch of the trade already and cannot mean another'
        memory.problems.append(error("definition", text.span(0, len(text.text)), message, "give the special stitch a name of its own"))
        return None, tuple(memory.problems)
    others = {name: printed for name, printed in context.defined.items() if name != key}
    items = read_words(text.text, replace(context, defined=others))
    check_terms(items, text, context, memory)
    called = _called((key, context.defined.get(key, key)), context.terms)
    items, gather, called = _gathering(items, called)
    body, closers, lone = match_brackets(items, text)
    memory.problems.extend(lone)
    r = Reader(body, text, context, memory, closers, end=len(body), broken=bool(lone), in_definition=True)
    said = len(memory.problems)
    steps = read_steps(r)
    if len(memory.problems) > said or not steps:
        first = memory.problems[said] if len(memory.problems) > said else None
        del memory.problems[said:]
        span = first.span if first is not None and first.span is not None else text.span(0, len(text.text))
        why = f": {first.message}" if first is not None else ""
        meant = first.hint if first is not None and first.hint is not None and first.hint.startswith("did you mean") else _FORM
        memory.problems.append(error("definition", span, f'what "{key}" means cannot be read{why}', meant))
        return None, in_order(memory.problems)
    inner, spread = _unwrapped(steps)
    return Definition(key, inner, gather, spread, called), in_order(memory.problems)


def _called(names: tuple[str, ...], terms: Terms) -> Gather | None:
    """The kind of gathering that a stitch's name speaks of: "bob", "mini bobble", "petal cluster"."""
    words = [word for name in names for word in re.split(r"[\s\-]+", name)]
    return next((_INTO[found] for word in words if (found := canonical(word, terms)) in _INTO), None)


def _gathering(items: list[Lexeme], called: Gather | None) -> tuple[list[Lexeme], Gather | None, Gather | None]:
    """Takes ", gathered", ", gathered into a bobble", ", worked together" off the end.

    Gives the rest, how it is gathered ("gathered" alone is a popcorn: stitches that are finished and then drawn shut), and how the words
    or, where they do not say, the name call it.
    """
    for at, lexeme in enumerate(items):
        if lexeme.raw in _GATHERED or (
            lexeme.value in _TOGETHER and at + 1 >= len(items) - 1 and items[at - 1].kind in ("sep", "word") and items[at - 1].kind != "num"
        ):
            rest = items[at + 1 :]
            into = next((_INTO[other.value] for other in rest if other.value in _INTO), None)
            gather: Gather = into or ("popcorn" if lexeme.raw in _GATHERED else "cluster")
            kept = items[:at]
            while kept and (kept[-1].kind == "sep" or kept[-1].raw in ("worked", "closed", "and", "all", "then", "work")):
                kept.pop()
            return kept, gather, into or called
    return items, None, called


def _unwrapped(steps: tuple[Step, ...]) -> tuple[tuple[Step, ...], bool]:
    """The steps without the place that all of them share, and whether they cover several stitches instead."""
    if len(steps) == 1 and isinstance(steps[0], Group):
        return steps[0].steps, False
    places = [place for step in steps if isinstance(step, (Work, Group)) and (place := step.place) is not None]
    if any(isinstance(step, Repeat) for step in steps):
        return steps, True
    own = [place for place in places if not place.from_hook and not _within_chain(place)]
    spread = any(place.which == "next" or place.each or place.count.values[0] > 1 for place in own[1:]) or (
        bool(own) and own[0].which == "next" and len(own) > 1
    )
    if spread:
        return steps, True
    return tuple(_placeless(step) for step in steps), False


def _within_chain(place: Place) -> bool:
    """Whether a place lies in a chain of the special stitch itself: "sl st in first ch", "in 3rd ch from hook"."""
    return place.target.kind == "ch" or place.which == "made" or place.of is not None


def _placeless(step: Step) -> Step:
    if isinstance(step, Work) and step.place is not None and not step.place.from_hook and not _within_chain(step.place):
        return replace(step, place=None)
    return step
