"""Joins: ``join with sl st in top of beg ch-3``, ``join B with sl st in any corner sp``, ``sl st in first sc to join``, ``do not join``."""

from __future__ import annotations

from dataclasses import field, replace
from typing import Literal

from motifold.render.pattern.instructions import Chain, Join, Place, Step, UseYarn, Work
from motifold.render.pattern.notation.amounts import read_amount
from motifold.render.pattern.notation.beginnings import read_counts_as
from motifold.render.pattern.notation.places import at_place, read_place
from motifold.render.pattern.notation.reader import Mode, Reader, relocated
from motifold.render.pattern.notation.stitches import at_stitch, read_stitch
from motifold.render.pattern.notation.yarns import at_yarn, read_yarn
from motifold.symbols.record import dataclass

Method = Literal["sl st", "usual", "invisible", "none", "work", "standing", "sc"]


@dataclass(slots=True)
class _Said:
    """What a join has said so far."""

    method: Method = "usual"
    place: Place | None = None
    steps: list[Step] = field(default_factory=list)
    yarn: Step | None = None
    ring: bool = False


def read_join(r: Reader) -> list[Step]:
    """Such as "join ..." in all its orders; a yarn that it names comes first, a standing stitch after it."""
    start = r.pos
    word = r.take()
    said = _Said(method="invisible" if word.value == "invisible join" else "usual")
    number: int | None = None
    if at_yarn(r) and not r.at("other"):
        said.yarn = _yarn(r, start)
    r.accept("rnd", "work", "piece", "ends")
    number = r.new_id()
    while _clause(r, said):
        pass
    join = Join(number, r.span(start), said.method, said.place, tuple(said.steps), attach=said.yarn is not None, ring=said.ring)
    steps: list[Step] = [said.yarn] if said.yarn is not None else []
    if said.method == "standing":
        return [*steps, replace(join, steps=(), place=None), *said.steps]
    return [*steps, join]


def _join_place(r: Reader) -> Place:
    """Where the join lies. "Working in back loops only" does not speak of the stitch that closes the round."""
    mode, r.mode = r.mode, Mode()
    place = read_place(r, walks=True).place
    r.mode = mode
    return place if place.which in ("first", "top", "nth", "beg") else relocated(place, mode)


def _yarn(r: Reader, start: int) -> Step | None:
    number = r.new_id()
    key = read_yarn(r)
    if key is None and r.before().value != "other yarn":
        return None
    return UseYarn(number, r.span(start), key, "with")


def _clause(r: Reader, said: _Said) -> bool:
    """One more thing said of the join; False where it ends."""
    if r.at("with"):
        if at_yarn(r, 1):
            start = r.pos
            r.take()
            said.yarn = _yarn(r, start)
            return True
        r.take()
        return _method(r, said)
    if r.at("to", "in") and (
        r.peek(1).value in ("form", "make", "ring", "close") or (r.peek(1).value == "work" and r.peek(2).value == "ring")
    ):
        return _into_ring(r, said)
    if r.at("form", "ring") or (r.at("and") and r.peek(1).value == "form"):
        r.accept("and")
        return _into_ring(r, said)
    if r.peek().raw in ("invisibly",):
        r.take()
        said.method = "invisible"
        return True
    if said.place is None and at_place(r):
        said.place = _join_place(r)
        return True
    if said.place is None and not said.steps and r.at_kind("sep") and r.peek(1).value in ("in", "to") and r.peek(2).value not in ("yarn",):
        return False
    if r.peek().raw == "as" and r.peek(1).kind == "word":  # "join as before", "as usual"
        r.take(), r.take()
        return True
    return False


def _into_ring(r: Reader, said: _Said) -> bool:
    """Such as "to form a ring", "in a ring", "forming ring", "to close rnd"."""
    r.accept("to", "in")
    closes = r.accept("close") is not None
    r.accept("form", "work")
    if r.accept("ring"):
        said.ring = True
    else:
        r.accept("rnd")
    return closes or said.ring


def _method(r: Reader, said: _Said) -> bool:
    """What it is joined with: a slip stitch, a stitch, chains and a stitch, an invisible join."""
    if r.accept("invisible join"):
        said.method = "invisible"
        return True
    if r.at("invisible") or r.peek().raw in ("needle",):
        r.take()
        r.accept("join", "st")
        said.method = "invisible"
        return True
    if r.at("ch") or (r.at_kind("num") and r.peek(1).value == "ch"):
        said.method = "work"
        said.steps = _closing_steps(r)
        return True
    r.accept_kind("num")
    if not at_stitch(r):
        raise r.reject("word", f'"{r.written()}" is nothing to join with', '"join with sl st in first sc"')
    start, number = r.pos, r.new_id()
    spec = read_stitch(r)
    if spec.name == "sl st":
        said.method = "sl st"
        return True
    place = _join_place(r) if at_place(r) else None
    counts = read_counts_as(r, 0)
    said.steps = [Work(number, r.span(start), spec, place=place, counts_as=counts)]
    said.method = "standing" if spec.standing else "work"
    return True


def _closing_steps(r: Reader) -> list[Step]:
    """Such as "ch 1, hdc in first sc (counts as ch-3 sp)": chains, then the stitch that closes."""
    start, number = r.pos, r.new_id()
    if r.accept("ch"):
        amount = read_amount(r)
    else:
        amount = read_amount(r)
        r.take()
    steps: list[Step] = [Chain(number, r.span(start), amount)]
    at = r.pos
    r.accept_separator()
    r.accept_kind("num")
    if not at_stitch(r):
        r.pos = at
        return steps
    start, number = r.pos, r.new_id()
    spec = read_stitch(r)
    place = _join_place(r) if at_place(r) else None
    steps.append(Work(number, r.span(start), spec, place=place, counts_as=read_counts_as(r, 0)))
    return steps


def as_join(r: Reader, work: Work) -> Join | None:
    """The join that a slip stitch is when it says so: "sl st in first sc to join", "ss in first ch to form a ring"."""
    at = r.pos
    r.accept_kind("sep") if r.peek(1).value in ("join", "form", "close") and r.peek(2).kind in ("sep", "end", "open", "dash") else None
    said = _Said()
    if (r.at("to") and r.peek(1).value in ("join", "close", "form", "work")) or (r.at("form", "join", "close") and r.pos > at):
        r.accept("to")
        if r.accept("join", "close"):
            r.accept("rnd", "ring")
        elif not _into_ring(r, said):
            r.pos = at
            return None
        if r.at("in") and r.peek(1).value == "ring":
            _into_ring(r, said)
        place = work.place
        if place is None and at_place(r):
            place = _join_place(r)
        return Join(work.id, work.span, "sl st", place, ring=said.ring)
    r.pos = at
    return None
