"""What a chain or a joining stitch stands for: ``(counts as dc here and throughout)``, ``(does not count as a st)``."""

from __future__ import annotations

from motifold.render.pattern.instructions import CountsAs
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.notation.stitches import spec_of
from motifold.render.pattern.problem import Problem
from motifold.symbols.stitches import stitch_name

TURNING_CHAIN = {1: "sc", 2: "hdc", **{chains: stitch_name(chains - 2) for chains in range(3, 12)}}
"""The stitch that a beginning chain of this length stands for: 1 sc, 2 hdc, 3 dc, 4 tr and so on (the trade's turning chains)."""

_LEAD = frozenset({"missed", "first", "beg", "ch", "tch", "these", "skip", "which", "always", "it", "this", "here", "now"})


def read_counts_as(r: Reader, chains: int) -> CountsAs | None:
    """What is said in brackets, or after a comma, about the chain or stitch just read; None and nothing taken if nothing is.

    ``chains``: how many the chain has, for "counts as a st". 0: a stitch.
    """
    ahead = 1 if r.at_kind("sep", "dash") else 0
    following = r.peek(ahead)
    if following.kind == "word":
        stated = following.value in ("counts as", "counts", "not") or following.raw == "which"
        return r.attempt(lambda: _plain(r, chains)) if stated else None
    if following.kind != "open":
        return None
    return r.attempt(lambda: _bracketed(r, chains))


def tell_of_missed(r: Reader, start: int, ordinal: int) -> None:
    """Complains of "hdc in 3rd ch from hook (missed 3 ch count as hdc)": only two chains are missed there."""
    said = r.items[start : r.pos]
    at = next((index for index, lexeme in enumerate(said) if lexeme.value == "missed"), len(said))
    number = next((lexeme for lexeme in said[at + 1 : at + 2] if lexeme.kind == "num"), None)
    if number is None or number.number < ordinal:
        return
    message = f"{number.number} missed ch are said to count, but before this ch from the hook there are only {ordinal - 1}"
    hint = f"work into ch {number.number + 1} from the hook, or say that the {ordinal - 1} missed ch count"
    r.say(Problem("count", "error", r.span_of(number), message, hint))


def at_counts_as(r: Reader) -> bool:
    """Whether a bracket that says what something counts as begins here."""
    pos = r.pos
    found = r.attempt(lambda: _bracketed(r, 3)) is not None
    r.pos = pos
    return found


def _bracketed(r: Reader, chains: int) -> CountsAs | None:
    r.accept_kind("sep")
    if not r.at_kind("open") or r.pos not in r.closers:
        return None
    closer = r.closers[r.pos]
    r.take()
    with r.inside(closer):
        found = _statement(r, chains)
        done = not r.at_kind("num", "stitch", "word", "open")
        if found is not None and not done:
            start = r.pos
            r.pos = closer
            if any(lexeme.kind != "word" for lexeme in r.items[start:closer]):
                return None
    r.pos = closer + 1
    return found


def _plain(r: Reader, chains: int) -> CountsAs | None:
    """Such as "ch 3, counts as dc," without brackets."""
    r.accept_kind("sep", "dash")
    if not (r.at("counts as", "counts", "not") or r.peek().raw in ("which",)):
        return None
    return _statement(r, chains)


def _statement(r: Reader, chains: int) -> CountsAs | None:
    _lead(r)
    throughout = r.accept("throughout") is not None
    if r.accept("not"):
        if not r.accept("counts as", "counts", "counted"):
            return None
        r.accept("in")
        if r.accept("st", "in"):
            r.accept("total", "count")
        elif r.at_kind("stitch"):
            r.take()
        r.accept_kind("sep")
        throughout = _throughout(r) or throughout
        return CountsAs(throughout=throughout)
    if not (r.accept("counts as", "counts") or r.accept_kind("equals")):
        return None
    stitches: list[str] = []
    spaces, more = None, 0
    while True:
        kind, number = _item(r, chains)
        if kind is None:
            break
        if kind == "sp":
            spaces = number
        elif kind == "ch":
            more += number
        else:
            stitches.extend([kind] * number)
        r.accept_kind("sep")
        if not r.accept("and") and not r.at_kind("num", "stitch") and not r.at("ch"):
            break
    throughout = _throughout(r) or throughout
    if spaces is not None and (stitches or chains):
        more, spaces = more + spaces, None
    if not stitches and not more and spaces is None:
        return None
    if not stitches and chains and more:
        return CountsAs(space=more, throughout=throughout)
    return CountsAs(tuple(stitches), more, spaces, throughout)


def _lead(r: Reader) -> None:
    """Such as "missed 3 ch", "first 3 chs", "this ch 2", "here": what the statement is about."""
    while not r.at("counts as", "counts", "not", "throughout") and (
        r.at_kind("num", "ord") or r.peek().value in _LEAD or r.peek().raw in _LEAD or r.at("same", "missed", "st", "rem")
    ):
        r.take()


def _throughout(r: Reader) -> bool:
    """Such as "here and throughout", "in all following rnds", "for the rest of pattern"."""
    found = False
    while r.at("throughout", "and", "in", "on", "of", "each", "all", "next", "rem", "rnd", "row", "total") or r.peek().raw in _HERE:
        found = r.take().value in ("throughout", "all", "each", "rem", "rest", "total") or found
    return found


_HERE = frozenset({"here", "now", "for", "pattern", "rest", "onward", "onwards", "from"})


def _item(r: Reader, chains: int) -> tuple[str | None, int]:
    """One thing that it counts as: a stitch, so many chains ("ch"), a space of so many ("sp")."""
    number = 1
    if r.at_kind("ord"):
        r.take()
    r.accept("beg")
    if r.at_kind("num"):
        number = r.take().number
    if r.at_kind("stitch"):
        name = r.take().value
        if not chains and r.at_kind("num") and r.peek(1).value == "tog":  # "ch 2, dc2tog in same sp (counts as dc3tog)"
            name = f"{spec_of(name).name}{r.take().number}tog"
            r.take()
            return name, number
        r.accept("st")
        return spec_of(name).name if name not in r.context.defined else name, number
    if r.accept("st"):
        return TURNING_CHAIN.get(chains, "sc"), number
    if r.accept("corner"):
        r.accept("sp")
        return "ch", 2
    if r.accept("ch"):
        if r.at_kind("num"):
            number = r.take().number
        space = r.accept("sp", "lp") is not None
        r.accept("corner")
        return ("sp" if space else "ch"), number
    return None, 0
