"""How the last pass of a repeat ends: at ``**``, omitting its last steps, or with others in their place."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import Amount, Chain, Extent, Group, Place, Skip, Step, Stop, Work
from motifold.render.pattern.notation.elsewhere import at_last_elsewhere
from motifold.render.pattern.notation.last_pass import Body, Ending, alike, stopped
from motifold.render.pattern.notation.omissions import read_omission
from motifold.render.pattern.notation.places import read_np
from motifold.render.pattern.notation.problems import warning
from motifold.render.pattern.notation.reader import Reader


def read_ending(r: Reader, extent: Extent | None, steps: tuple[Step, ...], body: Body) -> Ending:
    """What is said of the last pass: it ends at ``**``, leaves steps out, or others stand in their place.

    "ending with sc in last st": the repeat runs to the last stitch, and that one is worked as said.
    "ending last rep with ch 1, sk next st": where the repeat begins with these, its last pass stops behind them.
    """
    at = r.pos
    plain = Ending(extent, steps)
    r.accept_separator()
    if at_last_elsewhere(r):  # a step of its own, which follows
        r.pos = at
        return plain
    if r.peek().raw == "but" and (r.peek(1).value in ("omit", "ending", "end", "not", "on") or r.peek(1).raw in ("skipping", "last")):
        r.take()
    says_end = r.at("ending", "end", "close") or r.peek().raw in ("end", "stop", "stopping", "last") or r.follows("on", "last")
    if says_end and _ends_at_stop(r, steps):
        return replace(plain, at_stop=True)
    if r.accept("omit") or _leaves_out(r):
        return read_omission(r, plain, body)
    if r.at("ending") or (r.at("end") and r.peek(1).value in ("with", "last")):
        r.take()
        r.accept("last")
        r.accept("rep", "rnd")
        if r.peek().raw == "before":  # "ending last rep before last shell"
            r.take()
            return read_omission(r, plain, body)
        if r.at("at", "in", "on") and r.attempt(lambda: _ends_at_beginning(r)):
            return plain
        if not (r.accept("with", "in") or r.before().raw.endswith("with")):
            r.pos = at
            return plain
        stop = r.pos
        while stop < r.end and not (r.items[stop].kind == "sep" and r.items[stop].value in ".;"):
            stop = r.closers[stop] + 1 if stop in r.closers else stop + 1
        with r.inside(min(stop, r.end)):
            ending = body(r)
        return _ended_with(r, plain, ending)
    r.pos = at
    return plain


def _leaves_out(r: Reader) -> bool:
    """Such as "do not work last ch 1", "skipping last ch 3": takes the words before what is left out."""
    if r.at("not") and r.peek(1).value == "work" and r.peek(2).value == "last":
        r.pos += 2
        return True
    if (
        r.peek().raw in ("skip", "skipping")
        and r.peek(1).value == "last"
        and r.peek(2).value == "ch"
        and r.peek(4).value not in ("sp", "lp")
    ):
        r.take()
        return True
    return False


def _ended_with(r: Reader, plain: Ending, ending: tuple[Step, ...]) -> Ending:
    """The last pass ends in other steps. So far as they are how the pass begins, they are that; the rest comes after the repeat."""
    steps = plain.steps
    same = 0
    while same < min(len(ending), len(steps)) and alike(steps[same], ending[same]):
        same += 1
    if same and not any(_is_last(step) for step in ending) and not any(isinstance(step, Stop) for step in steps):
        if same == len(steps):
            return replace(plain, after=ending[same:])
        passed = steps[same]  # "ending with ch 3": the skip behind it goes with it
        still = (replace(passed, id=r.new_id()),) if isinstance(passed, Skip) and same == len(ending) else ()
        return replace(plain, steps=stopped(r, steps[:same], steps[same:]), after=(*ending[same:], *still))
    if ending and len(steps) > 1 and isinstance(ending[0], Chain) and isinstance(steps[-1], Chain):
        return replace(plain, omit=1, after=ending)  # two chains cannot follow each other: one stands for the other
    return replace(plain, extent=_shortened(plain.extent, list(ending)), omit=_replaced(steps, list(ending)), after=ending)


def _is_last(step: Step) -> bool:
    return isinstance(step, Work | Group | Skip) and step.place is not None and step.place.which in ("last", "beg", "first", "top")


def _ends_at_beginning(r: Reader) -> bool | None:
    """Such as "ending last rep at first corner": where a repeat around ends anyway."""
    r.take()
    return read_np(r).which in ("first", "beg", "last", "same") or None


_UP_TO_STOP = ("ending", "end", "last", "rep", "at", "close", "on", "rnd", "in", "with")


def _ends_at_stop(r: Reader, steps: tuple[Step, ...]) -> bool:
    """Such as "ending last rep at **", "ending third rep at **", "ending at **", "last rep ends at **"."""
    at = r.pos
    while r.at(*_UP_TO_STOP) or r.at_kind("ord") or r.peek().raw in ("stop", "stopping", "time"):
        r.take()
    if r.at_kind("mark"):
        mark = r.take()
        if mark.value == "*" and any(isinstance(step, Stop) for step in steps):
            said = "the last repeat is to end at *, where it begins"
            r.say(warning("star", r.span_of(mark), said, 'did you mean "ending last rep at **"?'))
        while r.at("on", "last", "rep"):
            r.take()
        return True
    r.pos = at
    return False


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
