"""Works a line step by step: stitches, chains, groups, skips, repeats, yarns."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from motifold.render.fabric.absent import warn_skipped_over
from motifold.render.fabric.begin import attach, begin_in_foundation, begin_with_chain
from motifold.render.fabric.bench import Hook, TooMuch
from motifold.render.fabric.blocks import goes_back
from motifold.render.fabric.ends import close, close_ring
from motifold.render.fabric.making import add_chains, grouped
from motifold.render.fabric.marks import mark
from motifold.render.fabric.model import Base
from motifold.render.fabric.places import on_foundation_chain, spots_of_each, use_start
from motifold.render.fabric.repeats import run_repeat
from motifold.render.fabric.resolve import cursor_for, resolve
from motifold.render.fabric.wording import key_of
from motifold.render.fabric.working import work
from motifold.render.fabric.yarns import use_yarn
from motifold.render.pattern.instructions import (
    Amount,
    Chain,
    FastenOff,
    Group,
    Join,
    Marker,
    Place,
    Repeat,
    Skip,
    Step,
    Turn,
    UseYarn,
    Words,
    Work,
)

DEEPEST = 60
"""Repeats nested deeper than this are a slip of the pen."""


def run_steps(hook: Hook, steps: Sequence[Step]) -> None:
    """Works steps one after another."""
    for index, step in enumerate(steps):
        if hook.beginning and isinstance(step, Chain) and goes_back(step, steps[index + 1 :]):
            hook.beginning = False  # a chain that is worked back along stands for nothing
        run_step(hook, step)


def run_step(hook: Hook, step: Step) -> None:
    """Works one step."""
    if isinstance(step, Work):
        work(hook, step, run_steps)
    elif isinstance(step, Chain):
        chain(hook, step)
    elif isinstance(step, Group):
        group(hook, step)
    elif isinstance(step, Skip):
        skip(hook, step)
    elif isinstance(step, Repeat):
        repeat(hook, step)
    elif isinstance(step, Join):
        join(hook, step)
    elif isinstance(step, UseYarn):
        use_yarn(hook, step)
    elif isinstance(step, FastenOff):
        hook.lap.fastened = True
    elif isinstance(step, Words):
        words(hook, step)
    elif isinstance(step, Marker):
        mark(hook, step)
    elif isinstance(step, Turn) and hook.depth and hook.lap.made:
        hook.complain(
            "not-worked",
            step.span,
            "a turn inside a repeat that goes along the round is not worked: each pass would be rows of its own",
            "write the rows of each part as lines of their own",
            key=key_of(hook.lap.line.span) if hook.lap.line is not None else 0,
        )


def repeat(hook: Hook, step: Repeat) -> None:
    """A repeat, within the depth that anyone would write."""
    hook.depth += 1
    if hook.depth > DEEPEST:
        raise TooMuch(step.span, f"repeats more than {DEEPEST} deep")
    outer = hook.beginning
    hook.beginning = False
    try:
        run_repeat(hook, step, run_step)
    finally:
        hook.depth -= 1
    hook.beginning = outer and not hook.lap.stitches
    if _takes_all_at_once(step, hook.shop.size):
        one = step.steps[0]
        hook.complain(
            "repeat",
            one.place.span if isinstance(one, Work) and one.place is not None else step.span,
            "this takes every place the first time: nothing is left for the times after it",
            "say what goes into each of them, as 2 sc in each st, or repeat a single one, as [sc in next st] 5 times",
            key=key_of(step.span),
        )


def _takes_all_at_once(step: Repeat, size: int) -> bool:
    """Such as "sc in each st 5 times"."""
    one = step.steps[0] if len(step.steps) == 1 else None
    if not isinstance(one, Work) or one.place is None or step.times is None or step.times.at(size) < 2:
        return False
    extent = one.place.extent
    return one.place.which == "each" and one.place.count.at(size) == 1 and (extent is None or extent.kind in ("around", "across", "end"))


def words(hook: Hook, step: Words) -> None:
    """Free words that change how the work goes on."""
    if step.leave:
        hook.lap.leave = True
    if step.behind is not None:
        hook.crossing = _STITCHES.search(step.behind) is not None and _ROUNDS.search(step.behind) is None
        behind = not step.behind.startswith("front ") and not (hook.crossing and _OVER.search(step.text))
        if hook.crossing and hook.lap.last_step is not None and _comes_back(hook.lap.last_step):
            _cross(hook, hook.lap.last_step, behind)
        else:
            hook.behind = behind
    text = step.text.lower()
    if not step.brace and ("other side" in text or "opposite side" in text):
        from motifold.render.fabric.below import turn_to_underside

        turn_to_underside(hook)


_STITCHES = re.compile(r"\b(made|worked|last|previous|prev|these|those|them|sts?|stitch(es)?|(FP|BP)\w+)\b", re.IGNORECASE)
_OVER = re.compile(r"\b(over|around)\b")
_ROUNDS = re.compile(r"\b(rnds?|rounds?|rows?|petals?|lps?|loops?|sps?|spaces?|ch)\b", re.IGNORECASE)


def _comes_back(step: Work | Group) -> bool:
    """Whether a step was worked into stitches skipped before."""
    return step.place.target.kind == "missed" if step.place is not None else False


def _cross(hook: Hook, step: Work | Group, behind: bool) -> None:
    """Said after them, "FPtr around each of 3 skipped sts, working behind last 3 FPtr": the stitches are made already."""
    for ident in reversed(hook.lap.stitches):
        if hook.stitches[ident].origin.instruction != step.id:
            break
        hook.stitches[ident].behind = behind


def join(hook: Hook, step: Join) -> None:
    """Joins yarn at a beginning, or closes the round."""
    if step.ring:
        close_ring(hook, step)
    elif step.attach:
        attach(hook, step)
    else:
        close(hook, step, run_steps)


def chain(hook: Hook, step: Chain) -> None:
    """Chains: the beginning of a round, or chains that hang up at the next stitch."""
    count = step.count.at(hook.shop.size)
    first = hook.beginning and hook.lap.kind not in ("ring", "foundation") and hook.depth == 0 and hook.here is None
    if first and begin_with_chain(hook, step, count):
        hook.beginning = False
        return
    hook.beginning = False
    hook.lap.spine.clear()
    hook.pending.extend(add_chains(hook, count, step))


def group(hook: Hook, step: Group) -> None:
    """Several steps into one place, or into each of several."""
    place = step.place
    hook.budget(step.span)
    if hook.within is None:
        hook.lap.last_step = step
    if hook.here is not None and place.which in ("same", "current"):
        _group_into(hook, step, hook.here)
    elif hook.beginning and place.from_hook and not hook.pending and on_foundation_chain(hook.lap.cursor):
        base = begin_in_foundation(hook, step, place)
        inner = step.steps[-1] if step.steps else None
        if isinstance(inner, Work) and inner.counts_as is not None:  # it speaks of the missed chains
            step = replace(step, steps=(*step.steps[:-1], replace(inner, counts_as=None)))
        _group_into(hook, step, base)
    elif place.each or place.which == "each":
        for base in spots_of_each(hook, cursor_for(hook, place), place, step.span):
            hook.lap.last_base = base
            _group_into(hook, step, base)
    else:
        _group_into(hook, step, resolve(hook, place, step.span))


def _group_into(hook: Hook, step: Group, base: Base) -> None:
    outer, hook.here = hook.here, base
    hook.beginning = False
    with grouped(hook, None, base, step):
        run_steps(hook, step.steps)
    hook.here = outer


def skip(hook: Hook, step: Skip) -> None:
    """Passes places. ``sk first st`` where the beginning chain stands names that same stitch, ``sk first 3 sts`` it and two more."""
    place = step.place
    cursor = cursor_for(hook, place)
    if not cursor.size or _already_covered(hook, place):
        return
    if place.which == "first" and cursor.pos == cursor.start and not cursor.fresh:
        more = place.count.at(hook.shop.size) - 1 if place.each else 0
        use_start(cursor)
        if not more:
            return
        place = replace(place, which="next", count=Amount((more,)))
    hook.lap.skipped.clear()
    if hook.crossing:
        hook.behind = hook.crossing = False  # what crosses those skipped before is made
    if place.each or place.which == "each":
        for base in spots_of_each(hook, cursor, place, step.span):
            hook.budget(step.span)
            hook.lap.skipped.append(base)
    else:
        kept, first = hook.lap.last_base, cursor.following
        hook.lap.skipped.append(resolve(hook, place, step.span))
        hook.lap.last_base = kept
        if place.which == "next" and place.target.kind == "sp" and place.of is None:
            warn_skipped_over(hook, cursor, first, place)
    if place.which == "next" and place.target.kind in ("st", "stitch"):
        hook.lap.uncovered = (len(hook.lap.skipped), cursor.pos)


def _already_covered(hook: Hook, place: Place) -> bool:
    """Such as "sk st behind FPdc": what a stitch worked further down covers is passed with it.

    "Dc in st 2 rnds below, sk next st" means the same: the stitch that the spike covers is skipped, not one more.
    """
    lap, last = hook.lap, hook.lap.last_step
    plain = place.which == "next" and place.target.kind in ("st", "stitch") and place.words is None
    if plain and lap.covered == place.count.at(hook.shop.size):
        lap.covered = 0
        return True
    if place.words is None or not place.words.startswith(("behind", "in back of")) or not isinstance(last, Work) or last.place is None:
        return False
    return last.place.below > 0


__all__ = ["run_step", "run_steps"]
