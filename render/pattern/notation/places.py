"""Places: where stitches go. ``in next ch-2 sp``, ``in center ch of ch-5 lp``, ``around next sc of Rnd 2``, ``between next 2 dc``."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import ONE, Amount, Extent, Manner, Place, Target, Which
from motifold.render.pattern.notation.amounts import read_extent
from motifold.render.pattern.notation.nouns import PLACE_HINT, at_noun, read_noun
from motifold.render.pattern.notation.parts import Parts, read_qualifiers
from motifold.render.pattern.notation.reader import Reader, relocated
from motifold.render.pattern.notation.suggestions import suggestion
from motifold.render.pattern.notation.tails import as_space, read_free_words, read_loop, read_tails
from motifold.symbols.record import dataclass

_MANNERS: dict[str, Manner] = {
    "around": "around",
    "rnd": "around",
    "between": "between",
    "over": "over",
    "behind": "behind",
    "in front of": "in front",
}
_BEGINS_A_NOUN = frozenset({
    "next", "same", "last", "each", "any", "beg", "corresponding", "post", "both", "st", "corner", "center", "missed", "unused"
})  # fmt: skip
_DEEPEST_PLACE = 6
_BASIC = frozenset({"sc", "hdc", "dc", "tr", "dtr", "trtr"})
_SIDES = frozenset({"left", "right", "top", "bottom", "upper", "lower", "long", "short", "opposite", "other"})
"""Which side of a piece, as it lies right side up."""
_PLURAL_IS_EACH = frozenset({"row end", "unused loop", "foundation"})


@dataclass(frozen=True, slots=True)
class Found:
    """A place as read. ``every``: 2 of "every other st". ``said_each``: "each" stood there, so a count goes into each.

    ``bare_loop``: nothing but a loop was named ("sc in BLO").
    """

    place: Place
    every: int = 1
    said_each: bool = False
    bare_loop: bool = False


def at_place(r: Reader) -> bool:
    """Whether a place begins here."""
    if r.at("in", "on", "over", "between", "through", "blo", "flo", "evenly", "behind", "in front of"):
        return not (r.at("in", "on") and r.peek(1).kind == "yarn")
    if (r.at("all", "both") and r.peek(1).value in ("in", "on")) or _in_all(r):
        return True
    if r.at("to"):
        return r.peek(1).value not in ("join", "form", "close", "work", "make") and r.peek(1).kind not in ("sep", "end")
    return r.at("around", "across", "along") or (r.at("rnd") and r.peek().raw == "round")


def at_bare_place(r: Reader) -> bool:
    """Whether a place without its "in" follows a stitch: "sc next 3 sts", "dc each st around"."""
    return r.at("next", "same", "each")


def read_places(r: Reader, walks: bool = False) -> list[Found]:
    """The place that begins here, and more of them joined by "and": "in next st and in each st around".

    ``walks``: a slip stitch "to next ch-2 sp" goes there, other stitches are worked all the way.
    """
    return [read_place(r, walks), *read_more_places(r)]


def read_more_places(r: Reader) -> list[Found]:
    """Further places joined by "and"; none where a step follows the "and"."""
    found: list[Found] = []
    while r.at("and"):
        more = r.attempt(lambda: _another(r))
        if more is None:
            break
        found.append(more)
    return found


def _another(r: Reader) -> Found | None:
    r.take()
    if at_place(r):
        more = read_place(r)
    elif r.at("next", "each", "same", "last", "any") or r.at_kind("ord") or _names_space(r):
        more = _noun_place(r, Parts(r.pos), bound=False, space="current")
    else:
        return None
    return None if r.at("in", "on", "over") else more  # "and dc in next st" is a step, no second place


def _names_space(r: Reader) -> bool:
    """Whether "ch-2 sp", "2-ch sp" or "corner sp" stands here: with its "sp" it is no step."""
    length = (r.at("ch") and r.peek(1).kind == "num") or (r.at_kind("num") and r.peek(1).value == "ch")
    ahead = 2 if length else 1 if r.at("corner", "ch") else 0
    return r.peek(ahead).kind == "word" and r.peek(ahead).value in ("sp", "lp")


def _in_all(r: Reader) -> bool:
    """Such as "in all 6 sts", "in all sts around": "in all" of places, not of times."""
    if not (r.at("total") and r.peek().raw == "in all"):
        return False
    noun = r.peek(2) if r.peek(1).kind == "num" else r.peek(1)
    return noun.kind == "stitch" or (noun.kind == "word" and noun.value in ("st", "sp", "ch", "lp", "corner", "group"))


def read_place(r: Reader, walks: bool = False) -> Found:
    """A preposition and what follows it. ``walks``: "to" names the place itself, as in "join to first sc"."""
    start = r.pos
    if _in_all(r):
        r.take()
        return _noun_place(r, Parts(start, each=True), bound=False, space="current")
    if r.at("all", "both") and r.peek(1).value in ("in", "on"):
        r.take()
    if r.at("evenly"):
        return Found(_kept(r, _evenly(r, start)), said_each=True)
    if r.at("around", "across", "along", "rnd") or (r.at("to") and not (walks and r.peek(1).value != "end")):
        plain = r.attempt(lambda: _all_the_way(r, start))
        if plain is not None:
            return Found(_kept(r, plain), said_each=True)
    parts = Parts(start, manner=_MANNERS.get(r.peek().value, "in"))
    if not r.at("blo", "flo", "next", "same", "each"):
        r.take()
    walks_there = walks and r.before().value == "to"
    return _noun_place(r, parts, bound=False, space="next" if walks_there else "current")


def read_np(r: Reader) -> Place:
    """A place without its preposition, as after "to": the next one where nothing else is said."""
    return _nested(r, "next")


def _read_of(r: Reader) -> Place:
    """What follows "of": the space just come to, where nothing else is said."""
    return _nested(r, "current")


def _nested(r: Reader, space: Which) -> Place:
    if r.places_open >= _DEEPEST_PLACE:
        raise r.reject("depth", f"places lie more than {_DEEPEST_PLACE} deep in each other here")
    r.places_open += 1
    try:
        return _noun_place(r, Parts(r.pos), bound=True, space=space).place
    finally:
        r.places_open -= 1


def _all_the_way(r: Reader, start: int) -> Place | None:
    """Such as "sc around", "dc across", "sc to end", "dc to next corner sp": one in each stitch, so far."""
    following = r.peek(1)
    names_noun = following.value in _BEGINS_A_NOUN or following.kind in ("stitch", "num", "ord")
    if (names_noun and r.at("around", "rnd")) or (r.at("across", "along") and (names_noun or following.value == "row end")):
        return None
    extent = read_extent(r, read_np, read_noun)
    if extent is None:
        return None
    return Place(r.span(start), "each", Target("st"), each=True, extent=extent, loop=read_loop(r))


def _evenly(r: Reader, start: int) -> Place:
    """Such as "evenly along side", "evenly around", "evenly across to next corner"."""
    r.take()
    if r.peek().raw == "spaced":
        r.take()
    extent: Extent | None = None
    if r.at("along", "in", "on", "over") or (r.at("across") and r.peek(1).value in ("side", "row end", "each", "any", "next")):
        r.take()
        r.accept("each", "any", "next", "last", "first")
        if r.accept("rs"):  # "along right side": an edge, not the face of the work
            return Place(r.span(start), "evenly", Target("side"), words="right")
        side = r.take().raw if r.peek().raw in _SIDES else None
        target = read_noun(r) if at_noun(r) else Target("side")
        if side is not None and r.accept("of"):
            while r.at("piece", "motif", "row"):
                r.take()
        return Place(r.span(start), "evenly", target, words=side or read_free_words(r))
    extent = read_extent(r, read_np, read_noun)
    return Place(r.span(start), "evenly", Target("side"), extent=extent, words=read_free_words(r))


def _noun_place(r: Reader, parts: Parts, bound: bool, space: Which) -> Found:
    read_qualifiers(r, parts)
    _noun(r, parts)
    if r.at("sp", "lp") and parts.target.kind == "stitch":  # "V-st sp": the space in it
        parts.of = Place(r.span(parts.start), parts.which or "next", parts.target)
        parts.target, parts.which = Target("sp", loop=r.take().value == "lp"), "current"
    if parts.target.kind in ("sp", "st") and parts.target.chains is None and r.at("between"):
        r.take()
        parts.manner = "between"
        inner = Parts(r.pos)
        read_qualifiers(r, inner)
        _noun(r, inner)
        parts.which, parts.each = parts.which or inner.which, parts.each or inner.each
        parts.count, parts.target = inner.count, inner.target
    elif parts.target.kind in ("sp", "st") and parts.target.chains is None and r.peek().raw == "before":
        r.take()
        parts.manner = "before"
        inner = Parts(r.pos)
        read_qualifiers(r, inner)
        _noun(r, inner)
        parts.which, parts.target = inner.which or "next", inner.target
    if parts.manner in ("between", "before"):
        _between(r, parts)
    bare_loop = parts.loop is not None and parts.which is None and parts.count is None and not parts.each and not parts.unused
    bare_loop = bare_loop and r.before().value in ("blo", "flo", "both loops")
    read_tails(r, parts, read_np, _read_of, bound)
    place = _built(r, parts, space)
    return Found(_kept(r, place), parts.every, parts.each, bare_loop and place.extent is None and place.of_round is None)


def _noun(r: Reader, parts: Parts) -> None:
    if parts.said_place:
        last = r.memory.last_place
        parts.target = replace(last.target, corner=False) if last is not None and last.target.kind in ("sp", "ch", "ring") else Target("st")
    elif at_noun(r) or r.at_kind("num"):
        parts.target = read_noun(r)
    elif parts.corner:
        parts.target = Target("corner")
    elif not parts.said_anything:
        parts.target = read_noun(r)  # says what is wrong
    elif r.at_kind("word", "unworked") and not _may_follow(r):
        raise r.reject("word", f'"{r.written()}" cannot be read as a place', suggestion(r.peek(), r.context) or PLACE_HINT)
    if parts.corner and not parts.target.corner:
        parts.target = replace(parts.target, corner=True)


_MAY_FOLLOW = frozenset({
    "and", "then", "to", "in", "on", "of", "around", "across", "along", "from", "over", "times", "x", "at", "twice", "once", "thrice", "as",
    "below", "with", "turn", "join", "until", "all", "end"
})  # fmt: skip


def _may_follow(r: Reader) -> bool:
    """Words that may come after a place whose noun is left out ("sc in next, 2 sc in next")."""
    return r.peek().value != r.peek().raw or r.peek().value in _MAY_FOLLOW


def _between(r: Reader, parts: Parts) -> None:
    """The gap between two: "between next 2 dc", "between first and second dc"."""
    if r.at("and"):
        r.take()
        inner = Parts(r.pos)
        read_qualifiers(r, inner)
        _noun(r, inner)
        parts.target = inner.target if parts.target.kind == "st" else parts.target
    target = parts.target
    name = target.name or ("group" if target.kind == "group" else "st" if target.kind in ("st", "ch") else target.kind)
    parts.target = Target("between", name=name, corner=target.corner)
    if parts.manner == "before":
        parts.count = ONE
        return
    if parts.each and parts.which is None:
        parts.which = "each"
    parts.count = parts.count or Amount((2,))


def _built(r: Reader, parts: Parts, space: Which) -> Place:
    """The Place of all that was read, with what goes without saying."""
    if parts.missed:
        chains = parts.count.values[0] if parts.count and parts.target.kind == "ch" else parts.target.chains
        parts.target = Target("missed", chains=chains)
        if parts.top or chains:
            parts.which, parts.count = "top", None
        elif parts.which not in ("first", "last", "nth") or parts.count is not None:
            parts.which = "same"
    elif parts.top:
        if parts.target == Target("ch") and parts.which is None and parts.count is not None and not parts.count.varies:  # "top of 3 ch"
            parts.target, parts.count = Target("ch", chains=parts.count.values[0]), None
        _top(r, parts, space)
    elif parts.center:
        parts.which = "center"
    elif parts.which == "beg" and parts.target.kind == "st":
        parts.which = "first"
    if parts.which == "beg" and parts.target.kind == "stitch" and parts.target.name in _BASIC:
        parts.which = "first"
    if parts.of is not None and parts.target.kind == "st" and parts.of.target.kind in ("ch", "sp") and parts.which in ("first", "nth"):
        parts.target = Target("ch")  # "3rd of 3 ch"
    if parts.which != "beg":
        parts.target = as_space(parts.target)
    if _names_unused_loop(parts):
        parts.target = Target("unused loop")
    if parts.which is None:
        parts.which = _default_which(r, parts, space)
    several = parts.count is not None and (len(parts.count.values) > 1 or parts.count.values[0] != 1)
    each = parts.each or parts.which == "each" or (several and parts.manner not in ("between", "over"))
    if parts.every > 1:
        each = True
    if parts.rem and parts.extent is None:
        parts.extent = Extent("end")
    return Place(
        r.span(parts.start), parts.which, parts.target, parts.count or ONE, each, parts.also, parts.extent, parts.ordinal, parts.from_hook,
        parts.of, parts.loop, parts.manner, parts.below, parts.of_round, parts.words, as_where=parts.as_where,
    )  # fmt: skip


def _names_unused_loop(parts: Parts) -> bool:
    if parts.unused and (parts.loop is not None or parts.target.loop):
        return True
    return parts.loop is not None and parts.of_round is not None and parts.target.kind == "st" and parts.manner == "in"


def _top(r: Reader, parts: Parts, space: Which) -> None:
    """Such as "top of first dc" is that dc; "top of beg ch-3", "top of next petal", "center of next shell" lie in another noun."""
    target, which = parts.target, parts.which
    if not parts.center and target.kind in ("st", "stitch") and target.name not in r.context.defined and parts.of is None:
        return
    if target.kind == "ch" or (target.kind == "sp" and not target.loop):
        inner = Place(
            r.span(parts.start),
            which or ("beg" if not parts.center else space),
            replace(target, kind="ch") if which in (None, "beg") else as_space(target),
        )
    else:
        inner = Place(r.span(parts.start), which or _default_which(r, parts, space), target)
    chain_like = inner.target.kind in ("ch", "sp", "tch")
    parts.of, parts.target = inner, Target("ch" if chain_like and inner.target.kind != "tch" else "st")
    parts.which, parts.corner = ("center" if parts.center else "top"), False


def _default_which(r: Reader, parts: Parts, space: Which) -> Which:
    if parts.each or parts.every > 1:
        return "each" if parts.count is None else "next"
    if parts.count is not None:
        return "next"
    kind = parts.target.kind
    if kind in ("sp", "corner"):
        return space
    if kind in ("ring", "tch", "side"):
        return "current"
    if kind in _PLURAL_IS_EACH:
        return "each"
    return "next"


def _kept(r: Reader, place: Place) -> Place:
    """The place under what "working in ..." said, remembered for "same place"."""
    place = relocated(place, r.mode)
    r.memory.last_place = place
    return place
