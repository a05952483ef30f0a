"""What may follow the noun of a place: of what, of which round, how far, through which loop, and free words."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from motifold.render.pattern.instructions import ONE, Loop, Place, Target
from motifold.render.pattern.notation.amounts import read_extent
from motifold.render.pattern.notation.nouns import at_noun, read_noun
from motifold.render.pattern.notation.parts import Parts
from motifold.render.pattern.notation.reader import Reader

NounPlace = Callable[[Reader], Place]
_FREE = frozenset({"at", "where", "made", "behind", "in front of"})


def read_tails(r: Reader, parts: Parts, read_np: NounPlace, read_of: NounPlace, bound: bool) -> None:
    """Takes everything that follows. ``bound``: the place is itself part of another, which keeps what says how far."""
    if parts.target.kind == "ch" and r.accept_sequence("from", "hook"):
        parts.from_hook = True
    while r.at_kind("word", "num", "ord", "odd", "stitch") and (
        _or_another(r)
        or _round_named(r, parts)
        or _rounds_below(r, parts)
        or _elsewhere(r, parts)
        or _of(r, parts, read_of)
        or _loop_named(r, parts)
        or (not bound and (_also(r, parts) or _how_far(r, parts, read_np) or _each_of_them(r, parts)))
    ):
        pass
    if parts.target.kind in ("stitch", "sp") and r.at("between"):
        parts.words = words_to_separator(r)
    if parts.which == "same" and r.peek().raw == "as":
        parts.as_where = _as_where(r, read_np)
    words = None if bound and not r.at("made", "behind", "in front of") else read_free_words(r)
    if words is not None:
        parts.words = f"{parts.words} {words}" if parts.words else words
        if words.endswith("made"):
            parts.which = "made"
        elif words.startswith(("at base of", "at the base of")) and parts.which is None:
            parts.which = "same"


def _as_where(r: Reader, read_np: NounPlace) -> Place | None:
    """Such as "as first hdc", "as beg ch-3" after "same st": which stitch of this round went there. Nothing is taken: the words stay."""
    at = r.pos
    r.take()
    found = r.attempt(lambda: read_np(r))
    r.pos = at
    of_this_round = found is not None and found.of_round is None and not found.below
    return found if found is not None and of_this_round and found.which in ("first", "beg", "nth") else None


def read_free_words(r: Reader) -> str | None:
    """Such as "at right end of any side", "as join", "where you joined": said to the worker, kept as they stand."""
    if not (r.at(*_FREE) or r.peek().raw == "as"):
        return None
    return words_to_separator(r)


def words_to_separator(r: Reader) -> str:
    """The words from here to the next comma, bracket or step, as written."""
    start, end = r.peek().start, r.take().end
    while not r.at_kind("sep", "open", "close", "end", "mark", "dash", "colon"):
        if r.at("then") or (r.at("and") and r.peek(1).kind in ("num", "stitch")):
            break
        end = r.take().end
    return " ".join(r.text.text[start:end].split())


def _or_another(r: Reader) -> bool:
    """Such as "in st or sp indicated", "same st/sp": where the stitch is used decides."""
    if r.accept("indicated"):
        return True
    if not (r.peek().raw in ("or", "/") and r.peek(1).kind == "word" and r.peek(1).value in ("st", "sp", "lp", "ch")):
        return False
    r.take()
    read_noun(r)
    return True


def _round_named(r: Reader, parts: Parts) -> bool:
    """Such as "of Rnd 3", "left from Rnd 3", "on Rnd 2"; "of previous rnd" is where stitches go anyway."""
    at = r.pos
    while r.peek().raw in ("left", "over", "of", "from", "on", "in"):
        r.take()
    if r.pos == at:
        return False
    r.accept("prev", "last")
    if r.at("rnd", "row"):
        r.take()
        if r.at_kind("num"):
            parts.of_round = r.take().number
            return True
        if r.accept("below") is None and r.items[r.pos - 2].value not in ("prev", "last"):
            r.pos = at
            return False
        return True
    r.pos = at
    return False


def _rounds_below(r: Reader, parts: Parts) -> bool:
    """Such as "2 rnds below", "one row below", "below"."""
    at = r.pos
    r.accept("of", "from")
    number = r.take().number if r.at_kind("num") else 1
    r.accept("rnd", "row")
    if r.accept("below") is None:
        r.pos = at
        return False
    parts.below = number
    return True


def _elsewhere(r: Reader, parts: Parts) -> bool:
    """Such as "on other side of foundation ch", "of previous motif"."""
    if r.at("of", "on", "along", "in") and r.peek(1).value == "other side":
        r.take()
        parts.target = read_noun(r)
        return True
    if r.at("of", "on") and (r.peek(1).value == "motif" or r.peek(2).value == "motif" or r.peek(3).value == "motif"):
        start, end = r.peek().start, r.peek().end
        while not r.at_kind("sep", "open", "close", "end", "mark"):
            end = r.take().end
        parts.words = " ".join(r.text.text[start:end].split())
        return True
    return False


def _of(r: Reader, parts: Parts, read_of: NounPlace) -> bool:
    """Such as "of next shell", "of beg ch-4", "of ch-5 lp"; "of foundation ch" says nothing more."""
    if not r.at("of", "on") or parts.of is not None:
        return False
    at = r.pos
    r.take()
    if r.accept("foundation") or r.accept("rnd", "row"):
        return True
    found = r.attempt(lambda: read_of(r))
    if found is None:
        r.pos = at
        return False
    if found.target == Target("ch") and found.which == "next" and found.count.values[0] > 1 and not found.count.varies:
        found = replace(found, which="current", target=Target("sp", chains=found.count.values[0]), count=ONE, each=False)  # "3rd of 3 ch"
    parts.of = found
    return True


def read_loop(r: Reader) -> Loop | None:
    """Such as "BLO" after a place: "in next st in BLO", "through back loop"; None and nothing taken if it is not said."""
    at = r.pos
    r.accept("in", "through", "of")
    if r.at("blo", "flo") and r.peek(1).value != "of":
        return "back" if r.take().value == "blo" else "front"
    r.pos = at
    return None


def _loop_named(r: Reader, parts: Parts) -> bool:
    if parts.loop is None:
        parts.loop = read_loop(r)
        return parts.loop is not None
    return False


def _also(r: Reader, parts: Parts) -> bool:
    """Such as "each dc and each ch-1 sp": the further kinds that "each" covers."""
    if not parts.each or not r.at("and"):
        return False
    more = r.attempt(lambda: _one_more_kind(r, parts.count is not None))
    if more is None:
        return False
    parts.also = (*parts.also, more)
    return True


def _one_more_kind(r: Reader, counted: bool) -> Target | None:
    r.take()
    if r.accept("in", "on") and counted and not r.at("each"):
        return None  # "in each of next 2 sts and in ch-2 sp": that space comes after them
    said_each = r.accept("each") is not None
    if r.at("next", "same", "last") or not at_noun(r) or (r.at_kind("num") and not said_each):
        return None
    if r.at("ch") and r.peek(1).kind == "num" and r.peek(2).value not in ("sp", "lp", "corner") and not said_each:
        return None  # "and ch 1" is a step
    target = read_noun(r)
    return None if r.at("in", "on", "over") or r.at_kind("num") else as_space(target)


def as_space(target: Target) -> Target:
    """Such as "ch-3" as a place is all of that chain: a space."""
    return replace(target, kind="sp") if target.kind == "ch" and target.chains is not None else target


def _how_far(r: Reader, parts: Parts, read_np: NounPlace) -> bool:
    if (parts.which in ("first", "last", "same", "nth", "beg") and not parts.each) or parts.extent is not None:
        return False
    extent = read_extent(r, read_np, read_noun)
    if extent is None:
        return False
    parts.extent = extent
    parts.each = True
    return True


def _each_of_them(r: Reader, parts: Parts) -> bool:
    """Such as "in next 3 sts each"."""
    if parts.count is None or not r.at("each") or r.peek(1).kind not in ("sep", "end", "close"):
        return False
    r.take()
    parts.each = True
    return True
