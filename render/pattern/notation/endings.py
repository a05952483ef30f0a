"""How the last pass of a repeat ends: at ``**``, omitting its last steps, or with others in their place."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from motifold.render.pattern.instructions import Amount, Extent, Group, Place, Skip, Step, Work
from motifold.render.pattern.notation.places import read_np
from motifold.render.pattern.notation.reader import Reader

Body = Callable[[Reader], tuple[Step, ...]]


def read_ending(r: Reader, extent: Extent | None, steps: tuple[Step, ...], body: Body) -> tuple[Extent | None, int, list[Step]]:
    """What is said of the last pass: ends at ``**`` (omit -1), leaves steps out, or is followed by others.

    "ending with sc in last st": the repeat runs to the last stitch, and that one is worked as said.
    """
    at = r.pos
    r.accept_separator()
    if (r.at("ending", "end", "close") or r.peek().raw in ("end", "stop", "stopping", "last")) and _ends_at_stop(r):
        return extent, -1, []
    if r.accept("omit"):
        return extent, _omitted(r, steps), []
    if r.at("ending") or (r.at("end") and r.peek(1).value in ("with", "last")):
        r.take()
        r.accept("last")
        r.accept("rep", "rnd")
        if r.at("at", "in", "on") and r.attempt(lambda: _ends_at_beginning(r)):
            return extent, 0, []
        if not (r.accept("with", "in") or r.before().raw.endswith("with")):
            r.pos = at
            return extent, 0, []
        stop = r.pos
        while stop < r.end and not (r.items[stop].kind == "sep" and r.items[stop].value in ".;"):
            stop = r.closers[stop] + 1 if stop in r.closers else stop + 1
        with r.inside(min(stop, r.end)):
            ending = list(body(r))
        return _shortened(extent, ending), _replaced(steps, ending), ending
    r.pos = at
    return extent, 0, []


def _ends_at_beginning(r: Reader) -> bool | None:
    """Such as "ending last rep at first corner": where a repeat around ends anyway."""
    r.take()
    return read_np(r).which in ("first", "beg", "last", "same") or None


def _ends_at_stop(r: Reader) -> bool:
    """Such as "ending last rep at **", "ending at **", "last rep ends at **"."""
    at = r.pos
    while r.at("ending", "end", "last", "rep", "at", "close", "on", "rnd", "in", "with") or r.peek().raw in ("stop", "stopping", "time"):
        r.take()
    if r.at_kind("mark"):
        r.take()
        while r.at("on", "last", "rep"):
            r.take()
        return True
    r.pos = at
    return False


def _omitted(r: Reader, steps: tuple[Step, ...]) -> int:
    """How many steps the last pass leaves out: "omitting last ch 1", "omitting last 2 steps", "omitting last (ch 1, dc)"."""
    r.accept("last")
    count = 1
    if r.at_kind("num") and r.peek(1).raw in ("steps", "stitches", "sts"):
        count = r.take().number
        r.take()
    else:
        while not r.at_kind("sep", "end", "close", "dash") and not (r.at("on", "in", "at") and r.peek(1).value in ("last",)):
            if r.at("and"):
                count += 1
            if r.at_kind("open") and r.pos in r.closers:
                inner = r.items[r.pos : r.closers[r.pos]]
                count += sum(lexeme.kind == "sep" for lexeme in inner)
                r.pos = r.closers[r.pos]
            r.take()
    while r.at("on", "in", "at", "last", "rep"):
        r.take()
    return min(count, max(0, len(steps) - 1))


def _shortened(extent: Extent | None, ending: list[Step]) -> Extent | None:
    """How far a repeat runs whose end is worked otherwise: to the stitches, or to the place, that the ending names."""
    placed = [step for step in ending if isinstance(step, Work | Group | Skip) and step.place is not None]
    if extent is None or extent.kind in ("to", "last") or not placed:
        return extent
    places: list[Place] = [step.place for step in placed if step.place is not None]
    first = places[0]
    if any(place.which == "last" for place in places):
        passed = [step.place for step in placed if isinstance(step, Skip) and step.place.which == "next"]
        count = sum(place.count.values[0] for place in places if place.which == "last") + sum(place.count.values[0] for place in passed)
        return Extent("last", count=Amount((count,)), target=replace(first.target, corner=False))
    return Extent("to", place=first) if first.which == "beg" or first.target.corner else extent


def _replaced(steps: tuple[Step, ...], ending: list[Step]) -> int:
    """How many steps at the end of the last pass the ending stands for.

    "*sk 2, sc in next st, sk 2, 5 dc in next st; rep from * across, ending with 3 dc in last st": the 3 dc stand for the last 5.
    An ending of another kind comes after whole passes.
    """
    last = max((at for at, step in enumerate(steps) if isinstance(step, Work | Group)), default=0)
    closing = next((step for step in reversed(ending) if isinstance(step, Work | Group)), None)
    if last == 0 or closing is None or closing.place is None or closing.place.which != "last":
        return 0
    stitch = _stitch_of(closing)
    return len(steps) - last if stitch is not None and stitch == _stitch_of(steps[last]) else 0


def _stitch_of(step: Step) -> str | None:
    """The stitch that a step is made of: "dc" of 5 dc, of a 7-dc shell, of (dc, ch 1, dc)."""
    if isinstance(step, Group):
        return _stitch_of(step.steps[0]) if step.steps else None
    if not isinstance(step, Work):
        return None
    spec = step.stitch
    if spec.increase > 1 or spec.together > 1:
        return None
    return spec.of or _MADE_OF.get(spec.name, spec.name)


_MADE_OF = {"shell": "dc", "V-st": "dc"}
