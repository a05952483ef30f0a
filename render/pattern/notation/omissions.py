"""What the last pass of a repeat leaves out: whole steps at its end, or a part of the last one ("3 sc in next ch" without "last sc")."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import Amount, Chain, Group, Place, Skip, Step, Words, Work
from motifold.render.pattern.notation.last_pass import Body, Ending, alike, all_alike, same_place, stopped
from motifold.render.pattern.notation.problems import error
from motifold.render.pattern.notation.reader import Reader


def read_omission(r: Reader, plain: Ending, body: Body) -> Ending:
    """The repeat whose last pass leaves steps out: "omitting last ch 1", "last (ch 1, dc)", "last ch 1, sk next st", "last 2 steps"."""
    start = r.pos - 1
    r.accept("last")
    if r.at_kind("num") and r.peek(1).raw in ("steps", "stitches", "sts"):
        count = r.take().number
        r.take()
        _on_last_rep(r)
        return replace(plain, omit=min(count, max(0, len(plain.steps) - 1)))
    first = r.pos
    stops = _ends_of_steps(r)
    for skips in (False, True):
        for stop in stops:
            r.pos = first
            ending = r.attempt(lambda: _without(r, plain, _steps_to(r, stop, body), skips))  # noqa: B023 - called at once
            if ending is not None:
                _on_last_rep(r)
                return ending
    r.pos = first
    _steps_to(r, stops[0], body)  # says what cannot be read
    if not r.unread and not r.broken:
        r.say(error("star", r.span(start), "the repeat does not end in what its last pass is to leave out", _STOP_HINT))
        r.unread = True
    return plain


_MOST_OMITTED = 6
"""How many steps, parted by commas, are looked at for what is left out; more than that nobody names."""


def _ends_of_steps(r: Reader) -> list[int]:
    """Where what is left out may end: at the next comma, or at one of those behind it in the same sentence."""
    stops: list[int] = []
    at = r.pos
    while at < r.end and r.items[at].value not in (";", ".") and len(stops) < _MOST_OMITTED:
        at = _end_of_step(r, at)
        stops.append(at)
        if at < r.end and r.items[at].kind == "mark":
            break
        at += 1
    return stops or [r.pos]


def _end_of_step(r: Reader, at: int) -> int:
    """The next comma, bracket or "on last rep" behind this position, past whole brackets."""
    while at < r.end and r.items[at].kind not in ("sep", "close", "dash", "mark") and not _at_on_last_rep(r, at):
        at = r.closers[at] + 1 if at in r.closers else at + 1
    return at


def _steps_to(r: Reader, stop: int, body: Body) -> tuple[Step, ...]:
    """The steps up to here; those of a bracket that says no more; of "ch-3 sp" its chains."""
    space = r.follows("ch") and stop > r.pos + 1 and r.items[stop - 1].value in ("sp", "lp", "st")
    first, end = (r.pos + 1, stop - 1) if r.at_kind("open") and r.closers.get(r.pos) == stop - 1 else (r.pos, stop - space)
    r.pos = first
    with r.inside(end):
        steps = body(r)
    r.pos = stop
    return steps


def _at_on_last_rep(r: Reader, at: int) -> bool:
    """Such as "on last rep" behind what is left out."""
    after = r.items[at + 1] if at + 1 < r.end else r.items[at]
    return r.items[at].kind == "word" and r.items[at].value in ("on", "in", "at", "from") and after.value in ("last", "rep", "end")


def _on_last_rep(r: Reader) -> None:
    if r.at("on", "in", "at", "from") and r.peek(1).value in ("last", "rep", "end"):
        while r.at("on", "in", "at", "from", "last", "rep", "end", "of"):
            r.take()


def _without(r: Reader, plain: Ending, omitted: tuple[Step, ...], skips: bool) -> Ending | None:
    """The repeat whose last pass leaves these steps out; None where it does not end in them.

    ``skips``: it may go on skipping behind them, and its last pass still does.
    """
    steps = plain.steps
    if skips and omitted and steps and isinstance(steps[-1], Skip) and not isinstance(omitted[-1], Skip):
        inner = _without(r, replace(plain, steps=steps[:-1]), omitted, skips)
        if inner is None:
            return None
        kept = len(inner.steps) - inner.omit
        cut = stopped(r, inner.steps[:kept], inner.steps[kept:]) if inner.omit else inner.steps
        return replace(inner, steps=(*cut, steps[-1]), omit=0, after=(*inner.after, replace(steps[-1], id=r.new_id())))
    left = _left_after(steps, omitted) if omitted else None
    if not left:
        return None
    if left == steps[: len(left)]:
        return replace(plain, omit=len(steps) - len(left))
    rest = _rest_of(r, steps[len(left) - 1], left[-1])
    return replace(plain, steps=(*stopped(r, left, rest), *steps[len(left) :]))


_STOP_HINT = 'mark the place with two stars: "*...**, ...; rep from * around, ending last rep at **"'


def _left_after(steps: tuple[Step, ...], omitted: tuple[Step, ...]) -> tuple[Step, ...] | None:
    """The steps without those at their end, the last of them cut if only a part of it is left out; None if they do not end so."""
    left, wanted = list(steps), list(omitted)
    while wanted:
        while left and isinstance(left[-1], Words):
            left.pop()
        if not left:
            return None
        last, out = left[-1], wanted[-1]
        if isinstance(last, Group) and all_alike(last.steps, tuple(wanted)):
            left.pop()
            break
        if alike(last, out) or _named_alone(last, out):
            left.pop()
        elif len(wanted) == 1 and (cut := _cut(last, out)) is not None:
            left[-1] = cut
        else:
            return None
        wanted.pop()
    return tuple(left)


def _named_alone(step: Step, out: Step) -> bool:
    """Such as "omitting last ch" of a "ch 3": the kind of step says enough."""
    return isinstance(step, Chain) and isinstance(out, Chain) and out.span.length <= _BARE_CHAIN


_BARE_CHAIN = len("chain")


def _cut(step: Step, out: Step) -> Step | None:
    """What is left of a step without a part of it: 2 sc of "3 sc in next ch" without "sc"; (3 dc, ch 1) of a group without its end."""
    if isinstance(step, Work) and isinstance(out, Work) and step.stitch == out.stitch and not step.count.varies and not out.count.varies:
        rest = step.count.values[0] - out.count.values[0]
        one_place = step.place is None or not step.place.each
        return replace(step, count=Amount((rest,))) if rest > 0 and one_place and same_place(step.place, out.place) else None
    if isinstance(step, Group) and step.steps and not isinstance(out, Group):
        inner = step.steps
        if len(inner) > 1 and alike(inner[-1], out):
            return replace(step, steps=inner[:-1])
        cut = _cut(inner[-1], out)
        return None if cut is None else replace(step, steps=(*inner[:-1], cut))
    return None


def _rest_of(r: Reader, step: Step, cut: Step) -> tuple[Step, ...]:
    """What a pass that is not the last goes on with behind the cut, in the same place."""
    if isinstance(step, Work) and isinstance(cut, Work):
        place = None if step.place is None else _same_again(step.place)
        return (replace(step, id=r.new_id(), count=Amount((step.count.values[0] - cut.count.values[0],)), place=place),)
    assert isinstance(step, Group) and isinstance(cut, Group)
    whole = len(cut.steps) == len(step.steps)
    rest = _rest_of(r, step.steps[-1], cut.steps[-1]) if whole else step.steps[-1:]
    place = _same_again(step.place)
    return tuple(replace(more, place=place) if isinstance(more, Work) else more for more in rest)


def _same_again(place: Place) -> Place:
    return replace(place, which="same") if place.target.kind != "ring" else place
