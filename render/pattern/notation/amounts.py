"""Numbers: one for all sizes or one for each, how often, how far."""

from __future__ import annotations

from collections.abc import Callable

from motifold.render.pattern.instructions import ONE, Amount, Extent, Place, Target
from motifold.render.pattern.notation.problems import error
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.notation.tokens import LARGEST

_TIMES_WORDS = {"once": 1, "twice": 2, "thrice": 3}


def read_number(r: Reader) -> int:
    """One number; one beyond all measure is a problem and counts as 1, so that nothing later grows with it."""
    lexeme = r.take()
    if lexeme.number > LARGEST:
        r.say(error("number", r.span_of(lexeme), f"{lexeme.raw} is too large a number: at most {LARGEST} can be worked"))
        r.unread = True  # what the line makes is not known
        return 1
    return lexeme.number


def read_amount(r: Reader) -> Amount:
    """``5``, or one number a size: ``5 (6, 7)``. A list of the wrong length is a problem, and the first number is used."""
    start = r.pos
    first = read_number(r)
    if not at_size_list(r):
        return Amount((first,))
    closer = r.closers[r.pos]
    r.take()
    values = [first]
    while r.pos < closer:
        if r.at_kind("num"):
            values.append(read_number(r))
        else:
            r.take()
    r.take()
    return sized(r, tuple(values), start)


def sized(r: Reader, values: tuple[int, ...], start: int) -> Amount:
    """The numbers as an Amount, if there is one for each size of the file."""
    sizes = r.context.sizes
    if len(values) == sizes:
        return Amount(values)
    expected = f"{sizes} numbers were expected, one for each size" if sizes > 1 else "one number was expected, since the file has no sizes"
    r.say(error("sizes", r.span(start), f"{expected}, and here are {len(values)}", _sizes_hint(sizes, values)))
    r.unread = True  # what the line makes in which size is not known
    return Amount(values[:1])


def _sizes_hint(sizes: int, values: tuple[int, ...]) -> str:
    if sizes == 1:
        return "sizes are listed in [size.bodies]; a count at the end of a line stands in brackets of its own"
    if len(values) > sizes:
        return f"{len(values) - sizes} too many"
    return f"write one more for each that is missing: {values[0]} ({', '.join([*map(str, values[1:]), '...'])})"


def at_size_list(r: Reader) -> bool:
    """Whether a bracket with nothing but numbers comes next; a single one at the end of a line with other sizes is a count."""
    if not r.at_kind("open") or r.pos not in r.closers or r.closers[r.pos] >= r.end:
        return False
    closer = r.closers[r.pos]
    inside = r.items[r.pos + 1 : closer]
    numbers = sum(lexeme.kind == "num" for lexeme in inside)
    if numbers == 0 or any(lexeme.kind not in ("num", "sep", "dash") and lexeme.raw != "/" for lexeme in inside):
        return False
    if numbers + 1 == r.context.sizes:
        return True
    chains = r.context.sizes > 1 and r.pos > 1 and r.items[r.pos - 2].value == "ch"  # nobody counts a chain's own chains
    return numbers > 1 or chains or not _ends_statement(r, closer + 1)


def _ends_statement(r: Reader, at: int) -> bool:
    return at >= r.end or r.items[at].kind in ("sep", "dash", "open") or r.items[at].first


def at_times(r: Reader) -> bool:
    """Whether a count of times comes next: "3 times", "x 3", "twice", "a total of 6 times", "3 (4, 5) times"."""
    if not _may_be_times(r):
        return False
    at = r.pos
    found = r.attempt(lambda: _times(r, commit=False)) is not None
    r.pos = at
    return found


def read_times(r: Reader) -> tuple[Amount, bool] | None:
    """How often, and whether it says "more" (then the first pass is not among them); None and nothing taken if it says neither."""
    if not _may_be_times(r):
        return None
    return r.attempt(lambda: _times(r, commit=True))


def _may_be_times(r: Reader) -> bool:
    lexeme = r.peek()
    return lexeme.kind == "num" or (lexeme.kind == "word" and (lexeme.raw in _TIMES_WORDS or lexeme.value in ("x", "total", "all", "for")))


def _times(r: Reader, commit: bool) -> tuple[Amount, bool] | None:
    r.accept_sequence("for", "total") or r.accept("total", "all", "for")
    lexeme = r.peek()
    if lexeme.kind == "word" and lexeme.raw in _TIMES_WORDS:
        r.take()
        amount = Amount((_TIMES_WORDS[lexeme.raw],))
        return amount, r.accept("more") is not None
    if r.accept("x"):
        if not r.at_kind("num"):
            return None
        amount = read_amount(r)
        r.accept("times")
        return amount, False
    if lexeme.kind != "num":
        return None
    amount = read_amount(r) if commit else _amount_quietly(r)
    more = r.accept("more") is not None
    if not r.accept("times", "x"):
        return (amount, True) if more else None
    more = r.accept("more") is not None or more
    r.accept("total")
    return amount, more


def _amount_quietly(r: Reader) -> Amount:
    r.take()
    if at_size_list(r):
        r.pos = r.closers[r.pos] + 1
    return ONE


_BEGINS_AN_EXTENT = ("around", "rnd", "across", "along", "all", "to", "until")
PlaceReader = Callable[[Reader], Place]


def read_extent(r: Reader, read_noun: PlaceReader, read_target: Callable[[Reader], Target]) -> Extent | None:
    """How far: "around", "across", "to end of rnd", "to last 2 sts", "to next ch-2 sp"; None and nothing taken if nothing is said."""
    found: Extent | None = None
    while r.at(*_BEGINS_AN_EXTENT):
        more = r.attempt(lambda: _extent(r, read_noun, read_target))
        if more is None:
            return found
        found = more
    return found


def _extent(r: Reader, read_noun: PlaceReader, read_target: Callable[[Reader], Target]) -> Extent | None:
    if r.accept("around") or (r.at("rnd") and r.peek().raw == "round" and r.peek(1).kind != "num" and r.take()):
        _of_what(r)
        return Extent("around")
    if r.accept("across"):
        _of_what(r)
        return Extent("across")
    if r.follows("along", "side") or r.follows("along", "row"):
        r.take(), r.take()
        return Extent("across")
    if r.follows("all", "around"):
        r.take()
        return _extent(r, read_noun, read_target)
    if not r.at("to", "until") and not (r.at("along") and r.peek(1).value == "to"):
        return None
    r.accept("along")
    to = r.take()
    if r.accept("end"):
        _of_what(r)
        return Extent("end")
    if r.at("other") and r.peek(1).value == "end":
        r.take(), r.take()
        return Extent("end")
    if to.value == "until" and r.at_kind("num"):
        return _until_remaining(r, read_target)
    if r.at("last"):
        return _to_last(r, read_noun, read_target)
    if r.at("form", "join", "close", "work"):
        return None
    if r.follows("beg") and r.peek(1).value in ("of",):
        r.pos += 2
        r.accept("rnd", "row")
        return Extent("around")
    start = r.pos
    before = r.attempt(lambda: _so_many_before(r, read_noun, read_target))
    if before is not None:
        return before
    place = read_noun(r)
    return Extent("to", place=place) if r.pos > start else None


def _so_many_before(r: Reader, read_noun: PlaceReader, read_target: Callable[[Reader], Target]) -> Extent | None:
    """Such as "to 2 sts before marker", "to within 1 st of center st"."""
    within = r.accept("in") is not None
    if not r.at_kind("num"):
        return None
    amount, target = read_amount(r), read_target(r)
    if not (r.accept("of") if within else r.peek().raw == "before" and r.take()):
        return None
    return Extent("to", place=read_noun(r), count=amount, target=target)


def _of_what(r: Reader) -> None:
    """Such as "of rnd", "of the row", "entire rnd", "ring": says nothing more."""
    r.accept("of")
    while r.at("entire", "whole", "outside", "outer", "rnd", "row", "ring", "opening", "piece", "motif", "prev", "in") or r.follows(
        "all", "sides"
    ):
        if r.at("rnd", "row") and r.peek(1).kind == "num":
            return
        if r.at("in") or (r.at("prev") and r.peek(1).value not in ("rnd", "row")):
            return
        r.take()


def _until_remaining(r: Reader, read_target: Callable[[Reader], Target]) -> Extent | None:
    """Such as "until 2 sts remain"."""
    amount = read_amount(r)
    target = read_target(r)
    if not (r.at("rem") or r.peek().raw in ("remain", "remains", "left")):
        return None
    r.take()
    return Extent("last", count=amount, target=target)


def _to_last(r: Reader, read_noun: PlaceReader, read_target: Callable[[Reader], Target]) -> Extent | None:
    """Such as "to last 2 sts": so many are left; "to last corner sp" names one."""
    start = r.pos
    r.take()
    amount = read_amount(r) if r.at_kind("num") else ONE
    target = read_target(r)
    if target.kind in ("st", "stitch", "ch"):
        return Extent("last", count=amount, target=target)
    r.pos = start
    return Extent("to", place=read_noun(r))
