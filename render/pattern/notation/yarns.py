"""Yarn: ``with A``, ``change to B``, ``changing to B in last yo``, ``drop A, pick up B``, ``fasten off A``."""

from __future__ import annotations

from typing import Literal

from motifold.render.pattern.instructions import FastenOff, Join, LeaveYarn, Step, UseYarn, Words
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.spelling import nearest


def read_yarn(r: Reader) -> str | None:
    """The yarn named here: its key, or None for "the other yarn". What names no yarn of the file is a problem."""
    if r.accept("other yarn"):
        return None
    if r.at("yarn"):
        r.take()
        if not r.at_kind("yarn"):
            if r.at("and") or r.at_kind("sep", "end", "close") or not r.at_kind("word", "num", "stitch"):
                return None
            if not r.peek().raw[:1].isalpha() or len(r.peek().raw) > 2:
                return None
    if r.at_kind("yarn"):
        return r.take().value
    if r.accept("other"):
        r.accept("yarn")
        return None
    wrong = r.peek()
    written = r.text.text[wrong.start : wrong.end]
    known = ", ".join(r.context.yarns) or "none"
    guess = nearest(written, r.context.yarns)
    hint = f"did you mean {guess}?" if guess and guess != written else f"the yarns of the file are: {known}"
    raise r.reject("yarn", f'the file has no yarn "{written}"' if written else "the name of a yarn is missing here", hint)


def at_yarn(r: Reader, ahead: int = 0) -> bool:
    return r.peek(ahead).kind == "yarn" or (r.peek(ahead).kind == "word" and r.peek(ahead).value in ("yarn", "other yarn"))


def read_with(r: Reader) -> list[Step]:
    """Such as "with A": at "with", or at "working with", "in A"."""
    start, number = r.pos, r.new_id()
    r.take()
    if r.at("rs", "ws"):
        r.facing = "RS" if r.take().value == "rs" else "WS"
        if r.peek().raw == "facing":
            r.take()
        return []
    key = read_yarn(r)
    step = UseYarn(number, r.span(start), key)
    _hook_words(r)
    if r.at("and") and r.peek(1).value in ("rs", "ws"):
        r.take()
        r.facing = "RS" if r.take().value == "rs" else "WS"
        if r.peek().raw == "facing":
            r.take()
    return [step] if key is not None or r.before().value == "other yarn" else []


def _hook_words(r: Reader) -> None:
    """Such as "with A and 4 mm hook": the hook stands in the materials."""
    if r.at("and") and r.peek(1).kind == "measure" and r.peek(2).value == "hook":
        r.pos += 3


def read_change(r: Reader) -> list[Step]:
    """Such as "change to B", "changing to the other yarn in last yo", "change color" where there are two."""
    start, number = r.pos, r.new_id()
    r.take()
    key: str | None = None
    if r.at("yarn") and (r.peek(1).raw == "as" or r.peek(1).value in ("each", "when", "where", "other")):
        return _said_of_all_rows(r, start, number)
    named = r.at_kind("yarn") or r.at("to", "other yarn")
    if r.accept("yarn"):
        r.accept("to")
        named = at_yarn(r)
    else:
        r.accept("to")
    if named:
        key = read_yarn(r)
    elif len(r.context.yarns) != 2:
        raise r.reject("yarn", "which yarn to change to is not said", f"the yarns of the file are: {', '.join(r.context.yarns) or 'none'}")
    return [UseYarn(number, r.span(start), key, "change", _last_yarn_over(r))]


def _said_of_all_rows(r: Reader, start: int, number: int) -> list[Step]:
    """Such as "changing color every row": the other yarn in each of the rows repeated; "changing colors as desired" is only said."""
    r.take()
    if r.accept("each") and r.accept("row", "rnd"):
        return [UseYarn(number, r.span(start), None, "each")]
    while not r.at_kind("sep", "open", "close", "end", "mark", "dash", "brace"):
        r.take()
    words = " ".join(r.text.text[r.items[start].start : r.before().end].split())
    return [Words(number, r.span(start), words)]


def _last_yarn_over(r: Reader) -> bool:
    """Such as "in last yo of last dc", "on the last yrh", "in last st": the change is made while the stitch before is finished."""
    at = r.pos
    r.accept_kind("sep")
    if r.accept("in", "on", "at", "with"):
        r.accept("last")
        if r.at("yo") or r.at("st") or r.peek().raw in ("step", "pull", "stage", "loops"):
            r.take()
            while r.at("of", "last", "st", "yo", "prev", "through") or (r.at_kind("stitch") and r.before().value in ("last", "of", "prev")):
                r.take()
            return True
    r.pos = at
    return False


def read_leave(r: Reader, manner: Literal["drop", "carry"]) -> list[Step]:
    """Such as "drop A", "carry A along"."""
    start, number = r.pos, r.new_id()
    r.take()
    key = read_yarn(r)
    while r.at("along", "behind", "across") or r.peek().raw in ("loosely", "up", "inside", "unused"):
        r.take()
    return [LeaveYarn(number, r.span(start), manner, key)]


def read_pick_up(r: Reader) -> list[Step]:
    start, number = r.pos, r.new_id()
    r.take()
    key = read_yarn(r)
    return [UseYarn(number, r.span(start), key, "pick up")]


def read_fasten_off(r: Reader) -> list[Step]:
    """Such as "fasten off", "fasten off A", "break A and B", "fasten off both yarns"."""
    start, number = r.pos, r.new_id()
    r.take()
    keys: list[str] = []
    every = False
    if r.accept("both", "all", "each"):
        every = True
        r.accept("yarn")
    elif r.at_kind("num") and r.peek(1).value == "yarn":
        every = True
        r.take(), r.take()
    else:
        while at_yarn(r) or (r.at("and") and r.peek(1).kind == "yarn"):
            r.accept("and")
            key = read_yarn(r)
            if key is not None:
                keys.append(key)
    if r.at("and") and r.peek(1).value in ("fasten off", "cut") and not at_yarn(r, 2):
        r.take(), r.take()
    off = FastenOff(number, r.span(start), tuple(keys), every)
    if r.at("with") and r.peek(1).value == "invisible join":
        joined = r.pos + 1
        r.pos += 2
        return [Join(r.new_id(), r.span(joined), "invisible"), off]
    return [off]
