"""How a round begins: attached yarn, walking slip stitches, beginning chains that count or don't, missed foundation chains."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.blocks import slips_on
from motifold.render.fabric.making import add_chains, add_stitch, add_travel, new_run
from motifold.render.fabric.model import Base, Leg
from motifold.render.fabric.places import RING, base_of, current_base, take
from motifold.render.fabric.resolve import cursor_for, names_beginning_chain, resolve, too_few_chains
from motifold.render.fabric.special import known, make
from motifold.render.fabric.wording import height_in_chains, key_of, stitch_word
from motifold.render.pattern.instructions import Chain, CountsAs, Group, Join, Place, Repeat, Step, Work

NOTHING = CountsAs()


def attach(hook: Hook, step: Join) -> None:
    """Joins a yarn: the round begins in the place that is named."""
    lap = hook.lap
    lap.attached = True
    cursor = lap.cursor
    base: Base = RING
    worked = next((inner for inner in step.steps if isinstance(inner, Work)), None)
    place = step.place if step.place is not None else worked.place if worked is not None else None
    if place is not None and cursor.size:
        base = _begin_in(hook, place)
    lap.last_base = base
    if worked is not None:
        for _ in range(worked.count.at(hook.shop.size)):
            make(hook, worked.stitch, base, worked, _no_steps)
        cursor.begin_at(cursor.pos, fresh=False, taken=True)
        cursor.start_worked = True
        return
    if step.method == "sc":
        add_stitch(hook, "sc", (Leg("sc", base),), step)
        cursor.begin_at(cursor.pos, fresh=False, taken=True)
        cursor.start_worked = True
    elif step.method != "standing":
        add_travel(hook, "sl st", (Leg("sl st", base),), step)
    hook.beginning = True


def _no_steps(hook: Hook, steps: Sequence[Step]) -> None:
    """A stitch that joins is a plain one: it has no steps of its own."""


def _begin_in(hook: Hook, place: Place) -> Base:
    """Walks to the place where the round shall begin."""
    cursor = cursor_for(hook, place)
    if cursor is not hook.lap.cursor:
        hook.lap.began = cursor
    outer, hook.walking = hook.walking, True
    try:
        if place.which == "any" and place.words is not None and ("right" in place.words or "left" in place.words):
            first = ("right" in place.words) == (hook.lap.direction > 0)
            for index in range(cursor.size):
                atom = cursor.atom(index)
                if atom.corner and atom.starts_side == first:
                    cursor.begin_at(index, fresh=True, taken=True)
                    break
        base = resolve(hook, place, place.span)
    finally:
        hook.walking = outer
    cursor.begin_at(cursor.pos, fresh=False, taken=False)
    cursor.reached_by_walk = True
    return base


def stand_in(hook: Hook, place: Place) -> None:
    """A standing stitch needs no joining: the round begins where it is worked."""
    hook.lap.attached = True
    if hook.lap.cursor.size:
        _begin_in(hook, place)


def start_base(hook: Hook) -> Base:
    """What a beginning chain stands in."""
    lap = hook.lap
    reached = lap.began if lap.began is not None else lap.cursor  # the yarn may have been joined to an earlier round
    if lap.last_base is not None and reached.reached_by_walk:
        return lap.last_base
    return current_base(hook, lap.cursor, None)


def begin_with_chain(hook: Hook, step: Chain, count: int) -> bool:
    """A beginning chain; False if these chains are no beginning but the first space of a lace."""
    counts = counted_as(hook, step, count)
    if counts is None:
        return False
    lap = hook.lap
    cursor = lap.cursor
    base = start_base(hook)
    chains = add_chains(hook, count, step)
    if lap.began is not None:
        lap.began.begin_at(lap.began.pos, fresh=not counts.stitches, taken=True)
    if counts.stitches and counts.chains < count:
        tall = count - counts.chains
        stand_up(hook, counts.stitches[0], chains[:tall], base, step)
        hook.pending = chains[tall:]
        cursor.begin_at(cursor.pos, fresh=False, taken=True)
    else:
        if count in hook.entered and lap.linear and not slips_on(hook.rest, step):
            open_space(hook, chains)
        else:
            lap.beginning = new_run(hook, "beginning", chains).id
        cursor.begin_at(cursor.pos, fresh=True, taken=True)
    if cursor.size:
        cursor.reached_by_walk = True
    lap.last_base = base
    return True


def stand_up(hook: Hook, kind: str, chains: Sequence[int], base: Base, step: Chain | Work | Group) -> None:
    """Chains that count as a stitch: they are drawn, it is worked into."""
    lap = hook.lap
    lap.beginning = new_run(hook, "standing", list(chains)).id
    lap.standing = add_stitch(hook, kind, (Leg(kind, base),), step, role="standing", chains=tuple(chains))
    height = height_in_chains(kind)
    if height and abs(len(chains) - height) > 1:
        word = stitch_word(kind, hook.shop.terms)
        hook.complain(
            "turning-chain",
            step.span,
            f"ch {len(chains)} is unusual for a {word}: it is as tall as {height} ch",
            f"ch {height} (counts as {word}), or say what the other chains are: (counts as {word} and ch {abs(len(chains) - height)})",
            severity="warning",
            key=key_of(step.span),
        )


def counted_as(hook: Hook, step: Chain, count: int) -> CountsAs | None:
    """What the beginning chain counts as: as written, as said "throughout", as the file says, else by the habit of the trade.

    None: it is no beginning chain at all, but chains of the round.
    """
    written = step.counts_as
    if written is not None:
        if written.throughout:
            hook.throughout[count] = written
        if written.space is not None or (not written.stitches and written.chains):
            return None
        return written
    if count in hook.throughout:
        return hook.throughout[count]
    if hook.entered and hook.lap.linear and (count in hook.entered or slips_on(hook.rest, step)):
        return NOTHING
    if hook.shop.counts_as is False:
        return NOTHING
    usual = NOTHING if _joins_first_cluster(hook) else _by_habit(hook, count)
    # what one round bears out holds for the others; a single chain counts only where someone says so
    joined = next((step for step in hook.rest if isinstance(step, Join) and not step.attach and step.place is not None), None)
    said = joined is not None and joined.place is not None and names_beginning_chain(joined.place)
    hook.lap.by_habit = count > 1 and count not in hook.borne_out and not (said and usual is not None and bool(usual.stitches))
    hook.lap.habit_of = count
    if not hook.flip or not hook.lap.by_habit:
        return usual
    other = _against_habit(hook, usual)
    hook.throughout[count] = other
    return other


def _joins_first_cluster(hook: Hook) -> bool:
    """Whether a round that states its counts is joined to its first cluster (popcorn, puff): what stands before that counts as nothing."""
    said = any(isinstance(step, Work) and step.counts_as is not None for step in hook.rest)
    if said or hook.lap.line is None or not hook.lap.line.counts:
        return False
    joined = next((step for step in hook.rest if isinstance(step, Join) and not step.attach and step.place is not None), None)
    place = joined.place if joined is not None else None
    while place is not None and place.of is not None:
        place = place.of
    if place is None or place.which not in ("first", "next") or place.target.kind != "stitch" or place.target.name is None:
        return False
    definition = hook.shop.definitions.get(place.target.name)
    if definition is None:
        return place.target.name in ("cl", "pc", "bobble", "puff")
    only = definition.steps[0] if len(definition.steps) == 1 else None
    return definition.gather is not None or (isinstance(only, Work) and only.stitch.together > 1)


def _against_habit(hook: Hook, usual: CountsAs | None) -> CountsAs:
    """The other way to read a beginning chain of which nothing is said."""
    if usual is None or usual.stitches:
        return NOTHING
    main = next((name for name in _stems(hook, hook.rest) if height_in_chains(name) >= 1), None)
    return CountsAs((main,)) if main is not None else NOTHING


def _by_habit(hook: Hook, count: int) -> CountsAs | None:
    """Ch 1 does not count; taller chains count as the stitch of their height that the line works, and as chains beyond it."""
    heights: dict[str, int] = {}
    for name in _stems(hook, hook.rest):
        heights.setdefault(name, height_in_chains(name))
    tall = {name: height for name, height in heights.items() if height >= 1}
    if count == 1:
        main = next(iter(tall), None)
        return CountsAs((main,)) if hook.shop.counts_as and main is not None and tall[main] == 1 else NOTHING
    exact = [name for name, height in tall.items() if height == count]
    if exact:
        return CountsAs((exact[0],))
    lower = [name for name, height in tall.items() if 2 <= height < count]
    if lower:
        best = max(lower, key=lambda name: tall[name])
        return CountsAs((best,), chains=count - tall[best])
    taller = [name for name, height in tall.items() if height == count + 1]
    if taller:
        return CountsAs((taller[0],))
    if count >= 3 and not any(height > 1 for height in tall.values()):
        return None
    return NOTHING


def _stems(hook: Hook, steps: Sequence[Step], depth: int = 0) -> Iterator[str]:
    """The plain stitches that some steps work, in reading order; special stitches by what they are made of."""
    for step in steps:
        if isinstance(step, Work):
            definition = hook.shop.definitions.get(step.stitch.name)
            found = known(step.stitch.name)
            if definition is not None and depth < 5:
                yield from _stems(hook, definition.steps, depth + 1)
            else:
                yield step.stitch.of or (found.stem if found is not None else step.stitch.name)
        elif isinstance(step, Group | Repeat):
            yield from _stems(hook, step.steps, depth)


def begin_in_foundation(hook: Hook, step: Work | Group, place: Place) -> Base:
    """``dc in 4th ch from hook``: the missed chains count as a stitch, or as a stitch and a space over as many chains, or don't."""
    lap = hook.lap
    cursor = lap.cursor
    ordinal = place.ordinal or 1
    if ordinal > cursor.size:
        too_few_chains(hook, place, cursor.size)
    missed = min(ordinal, cursor.size) - 1
    foundation = hook.laps[cursor.round]
    said = said_of_missed(step)
    counts = said if said is not None else _missed_by_habit(hook, step, missed)
    chains = [ident for space, ident in foundation.made if not space][-missed:] if missed > 0 else []
    cursor.begin_at(missed, fresh=True, taken=True)
    if missed > 0 and counts.stitches:
        _stand_beside_foundation(hook, step, counts, chains)
    elif missed in hook.entered:
        _move_chains(hook, foundation.index, chains)
        open_space(hook, chains)
    elif missed > 0:
        _move_chains(hook, foundation.index, chains)
        lap.beginning = new_run(hook, "beginning", chains).id
    take(hook, cursor, missed)
    lap.last_base = base_of(hook, cursor, missed, place)
    return lap.last_base


def said_of_missed(step: Work | Group) -> CountsAs | None:
    """As what the missed chains count: said behind the stitch, or behind the group, "(2 dc, ch 1, 3 dc) in 4th ch from hook (...)"."""
    last = step.steps[-1] if isinstance(step, Group) and step.steps else step
    return last.counts_as if isinstance(last, Work) else None


def _stand_beside_foundation(hook: Hook, step: Work | Group, counts: CountsAs, chains: Sequence[int]) -> None:
    """The missed chains stand up: some stay in the foundation, some are the stitch, some the space after it."""
    cursor = hook.lap.cursor
    missed = len(chains)
    kind = counts.stitches[0]
    more = max(missed - height_in_chains(kind), 0)
    top = counts.chains or (more // 2 if more // 2 in chains_in(hook.rest, hook.shop.size) else 0)
    below = min(max(more - top, 0), missed - top - 1)
    _move_chains(hook, cursor.round, chains[below:])
    stand_up(hook, kind, chains[below : missed - top], Base("gap", cursor.atom(missed - below).id, "gap"), step)
    hook.pending = list(chains[missed - top :]) if top else []


def _missed_by_habit(hook: Hook, step: Work | Group, missed: int) -> CountsAs:
    stem = next(iter(_stems(hook, (step,))), "sc")
    height = height_in_chains(stem)
    if hook.shop.counts_as is False:
        return NOTHING
    if height < 2 or (missed in hook.entered and not hook.flip):
        return NOTHING  # nobody counts chains as a single crochet unless they say so
    hook.lap.by_habit = missed > 1
    counts = height >= 2 and missed >= height
    return CountsAs((stem,)) if counts != hook.flip else NOTHING


def chains_in(steps: Sequence[Step], size: int) -> Iterator[int]:
    """The lengths of all runs of chains that some steps make."""
    for step in steps:
        if isinstance(step, Chain):
            yield step.count.at(size)
        elif isinstance(step, Group | Repeat):
            yield from chains_in(step.steps, size)


def open_space(hook: Hook, chains: Sequence[int]) -> None:
    """Missed chains that stand at the side of a block, as the space that the next row enters."""
    run = new_run(hook, "space", list(chains), after=len(hook.stitches))
    hook.lap.made.append((True, run.id))
    hook.lap.beginning = run.id


def miss_own_chain(hook: Hook, step: Work, chains: Sequence[int], base: Base) -> None:
    """The chains at the end of a row's new chain that its first stitch misses: a stitch if anything says so, a space, or neither."""
    said = step.counts_as if step.counts_as is not None else _said_of_chain(hook, step)
    counts = said if said is not None else _missed_by_habit(hook, step, len(chains))
    if counts.stitches and not counts.chains:
        stand_up(hook, counts.stitches[0], chains, base, step)
    elif len(chains) in hook.entered:
        open_space(hook, chains)
    else:
        hook.lap.beginning = new_run(hook, "beginning", list(chains)).id


def _said_of_chain(hook: Hook, step: Work) -> CountsAs | None:
    """What is said of the chain before a step: "ch 6 (does not count as a st), dc in 4th ch from hook"."""
    at = next((index for index, other in enumerate(hook.rest) if other is step), 0)
    before = hook.rest[at - 1] if at else None
    return before.counts_as if isinstance(before, Chain) else None


def _move_chains(hook: Hook, foundation: int, chains: Sequence[int]) -> None:
    """Chains of the foundation that turn out to begin this row belong to this row."""
    gone = set(chains)
    old = hook.laps[foundation]
    old.stitches = [ident for ident in old.stitches if ident not in gone]
    old.made = [(space, ident) for space, ident in old.made if space or ident not in gone]
    old.atoms = [atom for atom in old.atoms if atom.space or atom.id not in gone]
    old.met = len(old.atoms)
    for ident in chains:
        run = hook.stitches[ident].run
        if run is not None:
            hook.runs[run].stitches = [other for other in hook.runs[run].stitches if other not in gone]
            hook.runs[run].chains = len(hook.runs[run].stitches)
        hook.stitches[ident].round = hook.lap.index
        hook.lap.stitches.append(ident)


__all__ = ["attach", "begin_in_foundation", "begin_with_chain", "miss_own_chain", "stand_in", "stand_up", "start_base"]
