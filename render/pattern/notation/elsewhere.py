"""The last stitch of what came before goes somewhere else: "dc in each st across, working last dc in top of tch"."""

from __future__ import annotations

from dataclasses import replace
from itertools import takewhile

from motifold.render.pattern.instructions import ONE, Amount, Extent, Place, Repeat, Step, Work
from motifold.render.pattern.notation.places import at_place, read_place
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.notation.stitches import at_stitch, read_stitch


def at_last_elsewhere(r: Reader) -> bool:
    """Such as "working last dc in tch", "with last st in top of beg ch-3", "ending last dc in 3rd ch of tch"."""
    return (
        r.at("working", "with", "ending", "work")
        and r.peek(1).value == "last"
        and (r.peek(2).kind == "stitch" or r.peek(2).value in ("st", "rep"))
        and r.peek(3).kind == "word"
        and r.peek(3).value in ("in", "on", "around", "over")
    )


def last_elsewhere(r: Reader, before: list[Step]) -> list[Step]:
    """The work before is one stitch shorter, and that one goes into the place named here."""
    start, number = r.pos, r.new_id()
    r.take(), r.take()
    if r.at("st", "rep"):
        r.take()
        named = None
    else:
        named = read_stitch(r) if at_stitch(r) else None
    place = read_place(r).place if at_place(r) else None
    last = _last_work(before[-1]) if before else None
    if place is None or last is None or (named is not None and named != last.stitch):
        raise r.reject("word", "no stitch stands before this that could be worked there", '"dc in each st to tch, dc in top of tch"')
    there = replace(last, id=number, span=r.span(start), count=ONE, place=place)
    repeat = before[-1]
    if isinstance(repeat, Repeat) and repeat.extent is not None:  # one more pass, which ends there
        begins = takewhile(lambda step: step is not last, repeat.steps)
        return [*(replace(step, id=r.new_id()) for step in begins), there]
    before[-1] = _shorter(repeat, place)
    return [there]


def _last_work(step: Step) -> Work | None:
    if isinstance(step, Repeat):
        return next((inner for inner in reversed(step.steps) if isinstance(inner, Work)), None) if len(step.steps) > 1 else None
    return step if isinstance(step, Work) else None


def _shorter(step: Step, place: Place) -> Step:
    """The step without its last stitch: a repeat's last pass leaves it out, "each st across" ends before the place."""
    if isinstance(step, Repeat):
        behind = next(k for k, inner in enumerate(reversed(step.steps)) if isinstance(inner, Work))
        return replace(step, omit=behind + 1)
    assert isinstance(step, Work)
    where = step.place
    if where is not None and where.extent is not None:
        return replace(step, place=replace(where, extent=Extent("to", place=place)))
    if where is not None and where.each and min(where.count.values) > 1:
        fewer = Amount(tuple(value - 1 for value in where.count.values))
        return replace(step, place=replace(where, count=fewer, each=fewer != ONE))
    fewer = Amount(tuple(max(value - 1, 1) for value in step.count.values))
    return replace(step, count=fewer)
