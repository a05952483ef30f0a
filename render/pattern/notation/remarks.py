"""Words that are said to the worker and change where, not what, is worked: "working behind petals", "weave in ends"."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import Step, Words
from motifold.render.pattern.notation.reader import Mode, Reader
from motifold.render.pattern.notation.yarns import at_yarn, read_with

_CHORES = frozenset({
    "weave", "pull", "tighten", "stuff", "stuffing", "sew", "block", "secure", "trim", "darn", "hide", "flip", "rotate",
    "fold", "tie", "draw", "press", "thread", "insert", "embroider", "glue", "pin", "steam", "being", "taking", "careful",
    "use", "push"
})  # fmt: skip
_MANNERS = frozenset({
    "around", "across", "along", "over", "from", "toward", "towards", "up", "down", "as", "each", "through", "with", "now",
    "on", "loosely", "tightly", "to", "clockwise", "counterclockwise", "both"
})  # fmt: skip


def at_remark(r: Reader) -> bool:
    lexeme = r.peek()
    if lexeme.kind != "word":
        return False
    if lexeme.value in ("working", "leave", "not") or lexeme.raw in _CHORES or lexeme.raw in ("note", "be", "keeping", "keep"):
        return True
    if _at_behind(r) or _crosses(r):
        return True
    begins = lexeme.value == "beg" and lexeme.raw in ("starting", "beginning", "begin", "start", "beg")
    return begins and (r.peek(1).value in ("in", "with", "at", "working") or r.peek(1).raw in _CHORES)


def _crosses(r: Reader) -> bool:
    """Such as "crossing in front of last 3 sts", "going behind FPtr just made"."""
    return r.peek().raw in ("going", "crossing", "passing", "moving", "staying", "keeping") and _at_behind(r, 1)


def _at_behind(r: Reader, ahead: int = 0) -> bool:
    """Whether "behind" or "in front of" comes next, or "in front" alone."""
    word = r.peek(ahead)
    return word.value in ("behind", "in front of") or (word.value == "in" and r.peek(ahead + 1).raw == "front")


def read_remark(r: Reader) -> list[Step]:
    start, number = r.pos, r.new_id()
    word = r.peek()
    if word.value == "working":
        return _working(r, start, number)
    if _crosses(r):
        r.take()
    if _at_behind(r):
        return [_behind(r, start, number)]
    if word.value == "leave":
        text = _rest(r)
        return [Words(number, r.span(start), text, leave=any(lexeme.value == "unused" for lexeme in r.items[start : r.pos]))]
    if word.value == "not":
        return [_not(r, start, number)]
    return [Words(number, r.span(start), _rest(r))]


def _rest(r: Reader) -> str:
    """Everything up to the next comma, full stop, bracket or star, as written."""
    first = last = r.take()
    while not r.at_kind("sep", "open", "close", "end", "mark", "dash", "brace"):
        last = r.take()
    return " ".join(r.text.text[first.start : last.end].split())


def _not(r: Reader, start: int, number: int) -> Words:
    """Such as "do not turn", "do not cut yarn", "do not fasten off": nothing is worked."""
    after = r.peek(1)
    if after.kind == "word" and (
        after.value in ("turn", "fasten off", "cut", "break", "work", "pull", "close", "skip", "leave", "change")
        or after.raw in ("twist", "tighten", "turning")
    ):
        said = _rest(r)
        return Words(number, r.span(start), said, brace="after the last" in said)  # of another round than the line's: only printed
    raise r.reject("word", f'"{r.peek().raw} {after.raw}" cannot be read', '"do not turn" and "do not join" can')


def _working(r: Reader, start: int, number: int) -> list[Step]:
    r.take()
    if r.at("with") and at_yarn(r, 1):
        return read_with(r)
    if _at_behind(r):
        return [_behind(r, start, number)]
    mode = r.attempt(lambda: _mode(r))
    if mode is not None:
        r.mode = mode
        return [Words(number, r.span(start), _words_since(r, start))]
    if r.at("over", "around") and (
        r.peek(1).kind in ("stitch", "num") or r.peek(1).value in ("ch", "next", "each", "sp", "same", "prev", "beg", "last")
    ):
        return [_behind(r, start, number)]
    if (
        (r.at("in") and r.peek(1).value in ("rnd", "row"))
        or r.peek().raw in _MANNERS
        or (r.at("in") and r.peek(1).raw in ("spiral", "continuous", "joined", "pattern", "opposite"))
    ):
        _rest(r)
        return [Words(number, r.span(start), _words_since(r, start))]
    raise r.reject(
        "word",
        f'"working {r.peek().raw}" cannot be read',
        '"working in back loops only", "working behind petals" and "working in row ends" can',
    )


def _words_since(r: Reader, start: int) -> str:
    return " ".join(r.text.text[r.items[start].start : r.items[r.pos - 1].end].split())


def _behind(r: Reader, start: int, number: int) -> Words:
    """Such as "working behind petals", "working in front of ch-3 lps": what the following stitches pass behind, before or over.

    What is named begins with "front " where they pass before it.
    """
    word = r.take()
    if word.value == "in":
        r.take()  # "in front"
    front = word.value in ("in", "in front of")
    at = r.pos
    while not r.at_kind("sep", "open", "close", "end", "mark", "dash", "brace") and not _at_work(r):
        r.take()
    named = _words_since(r, at) if r.pos > at else "sts just made"
    return Words(number, r.span(start), _words_since(r, start), behind=f"front {named}" if front else named)


def _at_work(r: Reader) -> bool:
    """Whether what comes next is worked, and no longer what it is worked behind: "FPtr around each of 3 skipped sts", not "dc of Rnd 2"."""
    stitch = 1 if r.at_kind("num") else 0
    if r.peek(stitch).kind != "stitch" or r.peek(stitch + 1).value not in ("in", "around"):
        return False
    return r.peek(stitch + 2).value not in ("rnd", "row", "prev", "last")


def _mode(r: Reader) -> Mode | None:
    """What "working in ..." says of all places that follow; None where it says nothing of that kind."""
    r.accept("in", "through", "on", "along", "across", "into")
    r.accept("both", "all")
    unused = r.accept("unused", "rem") is not None
    if r.accept("both loops"):
        return Mode()
    if r.at("blo", "flo"):
        mode = Mode("back" if r.take().value == "blo" else "front")
    elif unused and r.accept("lp"):
        mode = Mode()
    elif r.accept("other side"):
        if r.accept("of"):
            r.accept("beg")
            r.accept("foundation", "ch")
            r.accept_kind("num")
        return _ended(r, Mode(target="foundation"))
    elif unused is False and r.accept("foundation"):
        return _ended(r, Mode(target="foundation"))
    elif r.accept("row end"):
        return _ended(r, Mode(target="row end"))
    elif r.accept("side"):
        if r.accept("of"):
            r.accept("row")
        return _ended(r, Mode(target="row end"))
    else:
        return None
    if r.at("of", "from", "on") or r.peek().raw == "left":
        while r.at("of", "from", "on", "prev") or r.peek().raw == "left":
            r.take()
        if r.accept("rnd", "row"):
            if r.at_kind("num"):
                return _ended(r, replace(mode, target="unused loop", of_round=r.take().number))
            return _ended(r, mode)
        if r.accept("foundation", "st", "ch"):
            return _ended(r, mode)
        if r.at("each"):
            return None
    if unused:
        mode = replace(mode, target="unused loop")
    return _ended(r, mode)


def _ended(r: Reader, mode: Mode) -> Mode | None:
    r.accept("throughout", "around", "across")
    return mode if r.at_kind("sep", "end", "close") or r.at("and", "then") else None
