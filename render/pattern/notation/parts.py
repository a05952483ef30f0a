"""What has been read of a place so far: the words before its noun."""

from __future__ import annotations

from motifold.render.pattern.instructions import Amount, Extent, Loop, Manner, Place, Target, Which
from motifold.render.pattern.notation.amounts import read_amount
from motifold.render.pattern.notation.reader import Reader
from motifold.symbols.record import dataclass

_WHICH: dict[str, Which] = {
    "next": "next",
    "same": "same",
    "last": "last",
    "any": "any",
    "corresponding": "corresponding",
    "beg": "beg",
    "prev": "same",
}
_SKIPPED_OF = frozenset({"each", "blo", "flo", "both loops", "post", "all", "both"})


ANY_STITCH = Target("st")


@dataclass(slots=True)
class Parts:
    """``start``: position of the first word. ``every``: 2 of "every other st". ``said_place``: "same place", no noun of its own.

    ``top`` and ``center``: "top of beg ch-3", "center of next shell" (a noun of another noun).
    """

    start: int
    manner: Manner = "in"
    which: Which | None = None
    count: Amount | None = None
    each: bool = False
    every: int = 1
    ordinal: int | None = None
    corner: bool = False
    unused: bool = False
    missed: bool = False
    rem: bool = False
    top: bool = False
    center: bool = False
    loop: Loop | None = None
    said_place: bool = False
    target: Target = ANY_STITCH
    of: Place | None = None
    of_round: int | None = None
    below: int = 0
    from_hook: bool = False
    words: str | None = None
    as_where: Place | None = None
    also: tuple[Target, ...] = ()
    extent: Extent | None = None

    @property
    def said_anything(self) -> bool:
        return (
            self.which is not None or self.count is not None or self.loop is not None or self.ordinal is not None or self.each
            or self.words is not None or self.center or self.top or self.missed or self.unused or self.said_place or self.every > 1
        )  # fmt: skip


def read_qualifiers(r: Reader, parts: Parts) -> None:
    """Takes the words that say which one and how many, up to the noun."""
    while _qualifier(r, parts):
        pass


def _qualifier(r: Reader, parts: Parts) -> bool:
    lexeme = r.peek()
    if lexeme.kind == "num":
        return _count(r, parts)
    if lexeme.kind == "ord":
        return _ordinal(r, parts)
    if lexeme.kind != "word":
        return False
    value = lexeme.value
    if value in _WHICH:
        if parts.which is not None and parts.which != "each":
            return value == "next" and r.take() is not None
        parts.which = _WHICH[value]
    elif value == "standing" and r.peek(1).kind in ("stitch", "word") and parts.which in (None, "beg"):
        parts.which = "first"  # the stitch that the round began with
    elif value == "each":
        parts.each = True
    elif value == "both":
        parts.count, parts.each = Amount((2,)), True
    elif value == "rem":
        parts.each = parts.rem = True
    elif value == "other":
        parts.every = 2
    elif value in ("unused", "missed"):
        parts.unused, parts.missed = value == "unused" or parts.unused, value == "missed" or parts.missed
    elif value in ("top", "center"):
        return _of_a_noun(r, parts)
    elif value == "base" and r.peek(1).value == "of":
        return _base(r, parts)
    elif value == "corner" and r.peek(1).value != "corner":
        parts.corner = True
    elif value in ("blo", "flo"):
        parts.loop = "back" if value == "blo" else "front"
    elif value == "post":
        parts.manner = "around"
    elif value == "bump":
        parts.words = "back bump"
        if r.peek(1).value == "of":
            r.take()
    elif value in ("both loops", "all", "indicated") or (value in ("of", "in", "on") and _says_nothing(r)):
        pass
    elif value in ("place", "spot", "position"):
        parts.said_place = True
    else:
        return False
    r.take()
    return True


def _says_nothing(r: Reader) -> bool:
    """The "of" of "each of", "BLO of"; not that of "front lps of Rnd 3"."""
    return r.before().value in _SKIPPED_OF and not (
        r.peek(1).value in ("rnd", "row") or (r.peek(1).value == "prev" and r.peek(2).value in ("rnd", "row"))
    )


def _of_a_noun(r: Reader, parts: Parts) -> bool:
    """Such as "top of", "center of", "center ch": the noun that follows says of what, or is itself the one in the middle."""
    word = r.take().value
    if word == "top":
        parts.top = True
        if r.at("ch", "st") and r.peek(1).value == "of":
            r.take()
        r.accept("of")
        return True
    parts.center = True
    if r.at("of"):
        r.take()
        parts.top = True  # read like "top of": the middle of what follows
    return True


def _base(r: Reader, parts: Parts) -> bool:
    """Such as "base of ch-3", "base of beg ch": the stitch that the chain stands in, which is the same stitch."""
    r.take(), r.take()
    parts.which, parts.said_place = "same", True
    r.accept("beg", "tch")
    if r.accept("ch"):
        r.accept_kind("num")
    return True


def _count(r: Reader, parts: Parts) -> bool:
    """Such as "next 3 sts"; a number that belongs to the noun ("2-ch sp", "3-dc group") stays where it is."""
    after, then = r.peek(1), r.peek(2)
    known = parts.count is not None
    if after.kind == "word" and after.value == "ch":
        names_space = then.kind == "word" and then.value in ("sp", "lp", "corner")
        if names_space and (known or after.tight or then.raw in ("sp", "lp", "space", "loop", "corner", "arch")):
            return False
        if after.tight and then.kind != "num":
            return False
    if (
        after.kind == "stitch"
        and then.kind in ("stitch", "word")
        and (then.value == "group" or then.kind == "stitch")
        and (known or after.tight or not then.raw.endswith("s"))
    ):
        return False
    if (after.kind == "word" and after.value in ("rnd", "row")) or known:
        return False
    parts.count = read_amount(r)
    return True


def _ordinal(r: Reader, parts: Parts) -> bool:
    lexeme = r.peek()
    if parts.each and r.before().value == "each":
        parts.every = lexeme.number
    elif lexeme.number == 1:
        parts.which = "first"
    else:
        parts.which, parts.ordinal = "nth", lexeme.number
    r.take()
    return True
