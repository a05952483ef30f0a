"""Counts that a line states: ``(36 dc, 8 ch-1 sps, 4 ch-2 sps)``, ``[36 sts]``, ``-- 36 sts``, ``(18)``."""

from __future__ import annotations

from motifold.render.pattern.instructions import Amount, CountClaim, Target
from motifold.render.pattern.notation.amounts import read_amount, sized
from motifold.render.pattern.notation.nouns import at_noun, read_noun
from motifold.render.pattern.notation.problems import Rejected
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.notation.suggestions import suggestion
from motifold.render.pattern.notation.tails import as_space

_FORM = 'counts are written like "(36 dc, 4 ch-2 sps)"'
_AFTER = frozenset({"made", "total", "all", "in", "rem", "worked"})


def read_count_list(r: Reader) -> list[CountClaim]:
    """Counts up to the end of what may be read now; rejects what is none."""
    claims: list[CountClaim] = []
    each_side = _per_side(r)
    r.accept("total")
    r.accept_kind("colon", "equals", "dash")
    while True:
        claims.append(_count(r, each_side))
        r.accept_separator() or r.accept_kind("dash", "colon", "equals")
        if r.peek().raw in ("including", "incl", "counting", "not", "each", "beg"):
            while not r.at_kind("end"):
                r.take()
        if r.at_kind("end"):
            return claims
        if not r.at_kind("num", "open"):
            raise r.reject("word", f'"{r.written()}" cannot be read as a count', suggestion(r.peek(), r.context) or _FORM)


def _count(r: Reader, each_side: bool) -> CountClaim:
    start = r.pos
    if not r.at_kind("num"):
        raise r.reject("word", f'"{r.written()}" cannot be read as a count' if r.peek().raw else "a count is missing here", _FORM)
    amount = _sizes_in_a_row(r) or read_amount(r)
    if at_noun(r) or r.at_kind("num"):
        target = as_space(read_noun(r))
    elif r.at_kind("sep", "end", "dash", "colon", "equals") or r.at("and", *_AFTER):
        target = Target("st")
    else:
        target = read_noun(r)  # says what is wrong
    while r.at(*_AFTER) or r.peek().raw == "worked":
        r.take()
    if r.peek().raw in ("including", "incl", "counting") or r.at("counts", "not"):
        while not r.at_kind("sep", "end", "close"):
            r.take()
    return CountClaim(r.span(start), amount, target, _per_side(r) or each_side)


def _sizes_in_a_row(r: Reader) -> Amount | None:
    """Such as "18, 24, 30 sts" where there are three sizes: numbers without a noun of their own."""
    sizes = r.context.sizes
    if sizes < 2 or any(r.peek(2 * k).kind != "num" for k in range(sizes)) or any(r.peek(2 * k + 1).value != "," for k in range(sizes - 1)):
        return None
    start = r.pos
    values = tuple(r.peek(2 * k).number for k in range(sizes))
    r.pos += 2 * sizes - 1
    return sized(r, values, start)


def _per_side(r: Reader) -> bool:
    """Such as "on each side", "per side", "along each edge"."""
    at = r.pos
    r.accept("on", "along", "in", "across") or (r.peek().raw in ("per", "for") and r.take())
    said = r.accept("each") is not None or r.before().raw == "per"
    if said and r.accept("side"):
        r.accept_kind("colon")
        return True
    r.pos = at
    return False


def try_bracket(r: Reader, last: bool) -> list[CountClaim] | None:
    """The counts in the bracket that comes next, or None with nothing taken where it holds steps.

    ``last``: nothing but the end of the line follows. Then a bracket that begins with a number and names no work is meant as
    counts, and what cannot be read in it is a problem of its own.
    """
    closer = r.closers[r.pos]
    at = r.pos
    r.take()
    try:
        with r.inside(closer):
            claims = read_count_list(r)
    except Rejected as rejected:
        meant = last and _meant_as_counts(r, at, closer)
        r.pos = at
        if not meant:
            return None
        r.say(rejected.problem)
        claims = []
    r.pos = closer + 1
    return claims


def _meant_as_counts(r: Reader, at: int, closer: int) -> bool:
    inside = r.items[at + 1 : closer]
    if not inside or inside[0].kind != "num":
        return False
    works = any(
        (
            lexeme.value == "ch"
            and lexeme.kind == "word"
            and k + 1 < len(inside)
            and inside[k + 1].kind == "num"
            and (k == 0 or inside[k - 1].kind == "sep")
        )
        or (lexeme.kind == "word" and lexeme.value in ("in", "next", "inc", "dec", "skip", "x", "times", "turn"))
        for k, lexeme in enumerate(inside)
    )
    return not works


def try_sentence(r: Reader, to_end: bool = False) -> bool:
    """Takes the counts that make up a sentence of their own: "36 sts."; with ``to_end``, only as the last one of the line."""

    def read() -> bool | None:
        stop = r.pos
        while stop < r.end and r.items[stop].value != ".":
            stop += 1
        if to_end and any(lexeme.kind != "sep" for lexeme in r.items[stop : r.end]):
            return None
        with r.inside(stop):
            claims = read_count_list(r)
        r.claims.extend(claims)
        return True

    return r.attempt(read) is True


def try_dash(r: Reader) -> list[CountClaim] | None:
    """The counts after a dash or an equals sign, up to the end of the sentence; None and nothing taken where there are none."""

    def read() -> list[CountClaim] | None:
        r.take()
        if not r.at_kind("num") and not r.at("total"):
            return None
        stop = r.pos
        while stop < r.end and not (r.items[stop].kind == "sep" and r.items[stop].value == "."):
            stop += 1
        with r.inside(stop):
            return read_count_list(r)

    return r.attempt(read)
