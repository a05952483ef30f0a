"""Moves and marks: skip, turn, do not join, the magic ring, markers, printed words."""

from __future__ import annotations

from motifold.render.pattern.instructions import Join, MagicRing, Marker, Place, Skip, Step, Target, Turn, Words
from motifold.render.pattern.notation.amounts import at_times
from motifold.render.pattern.notation.nouns import at_noun
from motifold.render.pattern.notation.places import at_place, read_np, read_place
from motifold.render.pattern.notation.reader import Reader


def read_skip(r: Reader) -> list[Step]:
    """``sk next st``, ``sk 2 sts``, ``sk ch-1 sp``, ``sk next dc and next ch-1 sp``."""
    start, number = r.pos, r.new_id()
    r.take()
    r.accept("over")
    if r.at_kind("ord") and r.peek().raw == "1st" and r.peek(1).kind in ("sep", "end", "close"):  # "sk 1st": 1 st, run together
        r.take()
        return [Skip(number, r.span(start), Place(r.span(start), "next", Target("st")))]
    if r.at_kind("sep", "end", "close"):
        return [Skip(number, r.span(start), Place(r.span(start), "next", Target("st")))]
    place = read_np(r)
    steps: list[Step] = [Skip(number, r.span(start), place)]
    while r.at("and"):
        more = r.attempt(lambda: _skip_too(r))
        if more is None:
            break
        steps.append(more)
    return steps


def _skip_too(r: Reader) -> Skip | None:
    r.take()
    if not (at_noun(r) or r.at("next", "same") or r.at_kind("num")):
        return None
    start, number = r.pos, r.new_id()
    place = read_np(r)
    return Skip(number, r.span(start), place) if r.at_kind("sep", "end", "close") or r.at("and") else None


def read_turn(r: Reader) -> Turn:
    start, number = r.pos, r.new_id()
    r.take()
    if (r.at("work", "piece", "motif") and r.peek(1).kind in ("sep", "end", "close", "open", "dash")) or (
        r.at("work") and r.peek(1).value in ("and", "ch")
    ):
        r.take()
    return Turn(number, r.span(start))


def read_no_join(r: Reader) -> Join:
    """Such as "do not join": a spiral."""
    start, number = r.pos, r.new_id()
    r.take(), r.take()
    r.accept("rnd", "rnds")
    return Join(number, r.span(start), "none")


def read_magic_ring(r: Reader) -> list[Step]:
    """Such as "magic ring", and "magic ring with 6 sc"."""
    start, number = r.pos, r.new_id()
    r.take()
    r.memory.ring_made = r.memory.ring_fresh = True
    ring = MagicRing(number, r.span(start))
    if r.at("with", "of") and r.peek(1).kind in ("num", "stitch"):
        r.take()
    return [ring]


def read_marker(r: Reader) -> Marker:
    start, number = r.pos, r.new_id()
    slip = r.take().value == "slip marker"
    r.accept("marker")
    if slip and r.peek().raw == "up" and r.peek(1).value in ("to", "in"):
        r.take()
    if slip and r.accept("to"):
        return Marker(number, r.span(start), "slip", read_np(r))
    place = read_place(r).place if at_place(r) else read_np(r) if r.at("beg", "first", "last") or r.at_kind("ord", "stitch") else None
    while slip and r.at_kind("word") and not r.at("and", "then"):  # "move marker up each rnd"
        r.take()
    return Marker(number, r.span(start), "slip" if slip else "place", place)


def read_brace(r: Reader) -> Words:
    start, number = r.pos, r.new_id()
    text = " ".join(r.take().value[1:-1].split())
    if at_times(r):
        raise r.reject(
            "bracket",
            "braces hold words that are printed, and words cannot be repeated",
            "repeats stand in [ ] or ( )",
            lexeme=r.items[start],
        )
    return Words(number, r.span(start), text, brace=True)
