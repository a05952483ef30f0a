"""What only the whole line tells of its joins: which slip stitch closes the round, which join attaches yarn, which chain is the ring."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from motifold.render.pattern.instructions import (
    Chain,
    CountsAs,
    FastenOff,
    Group,
    Join,
    Label,
    MagicRing,
    Place,
    Repeat,
    RepeatRounds,
    Skip,
    Step,
    UseYarn,
    Work,
)

_WORKING = (Work, Group, Repeat, Chain, RepeatRounds)
_HEIGHTS = {"sc": 1, "hdc": 2, "dc": 3, "tr": 4, "dtr": 5, "trtr": 6}
"""How many chains stand as high as the stitch (the trade's turning chains)."""
_RING_LABELS = ("ring", "chain", "foundation")


def finished_steps(steps: Sequence[Step], label: Label, new_id: Callable[[], int]) -> tuple[Step, ...]:
    """The steps of a line with their joins told apart."""
    last_work = max((k for k, step in enumerate(steps) if isinstance(step, (Work, Group, Repeat))), default=-1)
    done: list[Step] = []
    worked = fastened = False
    for at, step in enumerate(steps):
        if isinstance(step, Work) and _makes_ring(step, label, done):
            step = Join(step.id, step.span, "sl st", step.place, ring=True)
        if isinstance(step, Work) and at == last_work and _closes_round(step, worked, label, done):
            step = Join(step.id, step.span, "sl st", step.place)
        if isinstance(step, Work) and at == last_work and len(done) > 1 and isinstance(done[-1], Skip) and isinstance(done[-2], Chain):
            swapped = [*done[:-2], done[-1], done[-2]]
            if _closes_with_stitch(step, label, swapped, steps[at + 1 :]):
                done = swapped  # "ch 1, sk next dc, hdc in first sc": what is skipped may as well be before the chain
        if isinstance(step, Work) and at == last_work and _closes_with_stitch(step, label, done, steps[at + 1 :]):
            space = _space_of(step, done[-1])
            step = Join(step.id, step.span, "work", steps=(replace(step, counts_as=CountsAs(space=space)),))
        if isinstance(step, Join):
            done.extend(_join(step, done, worked, fastened, label))
            worked = worked or step.attach
        elif isinstance(step, Work) and step.stitch.standing and not worked and not _attached(done):
            done.extend((Join(new_id(), step.span, "standing", attach=True), step))
        elif isinstance(step, Group) and _begins_with_chain(step, done):
            done.extend((step.steps[0], _unbracketed(step)))
        else:
            done.append(step)
        if isinstance(step, FastenOff):
            fastened, worked = True, False
        elif isinstance(step, _WORKING):
            worked = True
    return tuple(done)


def _begins_with_chain(group: Group, done: list[Step]) -> bool:
    """Whether "(ch 3, 2 dc, ch 2, 3 dc) in same sp" begins the round: the same as "ch 3, (2 dc, ch 2, 3 dc) in same sp"."""
    if len(group.steps) < 2 or not isinstance(group.steps[0], Chain) or group.place.each or group.place.which not in ("same", "current"):
        return False
    walked = [step for step in done if isinstance(step, _WORKING)]
    return all(isinstance(step, Work) and step.stitch.name == "sl st" for step in walked) and bool(walked or _attached(done))


def _unbracketed(group: Group) -> Step:
    """The group without its beginning chain; one step needs no brackets."""
    rest = group.steps[1]
    if len(group.steps) == 2 and isinstance(rest, Work) and rest.place is None:
        return replace(rest, place=group.place)
    return replace(group, steps=group.steps[1:])


def _attached(done: list[Step]) -> bool:
    return any(isinstance(step, Join) and step.attach for step in done)


def _makes_ring(work: Work, label: Label, done: list[Step]) -> bool:
    """Such as "Rnd 1: Ch 4, sl st in first ch, ch 3, 11 dc in ring": the ring is made in the first round itself."""
    place = work.place
    at_start = label.kind in _RING_LABELS or (label.kind == "rnd" and label.first in (None, 1))
    in_first_chain = place is not None and place.which == "first" and place.target.kind == "ch" and not place.each
    return work.stitch.name == "sl st" and at_start and in_first_chain and _only_chains(done)


def _closes_round(work: Work, worked: bool, label: Label, done: list[Step]) -> bool:
    """A slip stitch in the first stitch, or in the top of the beginning chain, with nothing worked after it in its line."""
    place = work.place
    if (
        work.stitch.name != "sl st"
        or not worked
        or place is None
        or place.each
        or label.kind == "row"
        or len(work.count.values) > 1
        or work.count.values[0] != 1
    ):
        return False
    if place.from_hook:
        return False
    if place.target.kind == "ch" and place.which == "first" and place.of is None:
        return _only_chains(done)
    if place.which in ("top", "nth"):
        return place.of is not None and (
            place.of.which == "beg" or (place.which == "nth" and place.of.target.kind == "sp" and place.of.which == "current")
        )
    if place.which == "beg":
        return place.target.kind in ("ch", "st")
    return place.which == "first" and place.target.kind in ("st", "stitch", "group") and place.of is None


def _closes_with_stitch(work: Work, label: Label, done: list[Step], after: Sequence[Step]) -> bool:
    """Such as "..., ch 2, dc in first sc": chains and a taller stitch close the round and make its last space."""
    place = work.place
    if (
        label.kind != "rnd"
        or place is None
        or not done
        or not isinstance(done[-1], Chain)
        or len(done) < 2
        or work.stitch.name not in _HEIGHTS
    ):
        return False
    if work.count.values != (1,) or place.each or any(isinstance(step, (Join, Chain)) for step in after):
        return False
    to_beginning = (place.which == "first" and place.target.kind in ("st", "stitch")) or (
        place.which in ("top", "beg") and (place.of or place).which == "beg"
    )
    return to_beginning and (work.counts_as is None or work.counts_as.space is not None)


def _space_of(work: Work, chain: Step) -> int:
    """How long the space is that chains and a closing stitch make: as written, or the stitch as long as its turning chain."""
    if work.counts_as is not None and work.counts_as.space is not None:
        return work.counts_as.space
    assert isinstance(chain, Chain)
    return chain.count.values[0] + _HEIGHTS[work.stitch.name]


def _only_chains(done: list[Step]) -> bool:
    worked = [step for step in done if isinstance(step, _WORKING)]
    return bool(worked) and all(isinstance(step, Chain) for step in worked)


def _join(join: Join, done: list[Step], worked: bool, fastened: bool, label: Label) -> list[Step]:
    """A join as what it is: of a chain into a ring, of new yarn, or of the round's end to its beginning."""
    if join.method == "none":
        return [join]
    if (
        not join.attach
        and label.kind != "row"
        and (label.kind in _RING_LABELS or join.ring or _in_first_chain(join))
        and _only_chains(done)
    ):
        return [replace(join, ring=True)]
    taken = bool(done) and isinstance(done[-1], UseYarn) and done[-1].manner == "with" and join.method != "usual"
    attaches = (
        join.attach
        or join.method == "standing"
        or taken
        or (not worked and label.kind not in (*_RING_LABELS, "finish"))
        or (fastened and not worked)
    )
    if attaches:
        return _attaching(join)
    join = replace(join, place=_of_beginning(join.place))
    inner = join.steps[0] if len(join.steps) == 1 else None
    if (
        isinstance(inner, Work)
        and inner.counts_as is not None
        and inner.counts_as.space is not None
        and done
        and isinstance(done[-1], Chain)
    ):
        return [replace(join, steps=(done.pop(), inner))]
    return [join]


def _in_first_chain(join: Join) -> bool:
    return join.place is not None and join.place.which == "first" and join.place.target.kind == "ch"


def _attaching(join: Join) -> list[Step]:
    """Yarn joined with a stitch: a single crochet is the first stitch itself, anything taller is a standing stitch."""
    inner = join.steps[0] if len(join.steps) == 1 else None
    if join.method == "work" and isinstance(inner, Work):
        if inner.stitch.name == "sc" and inner.stitch.together == 1 and inner.stitch.post is None:
            return [Join(join.id, join.span, "sc", inner.place or join.place, attach=True)]
        standing = replace(inner, stitch=replace(inner.stitch, standing=True), place=inner.place or join.place)
        return [Join(join.id, join.span, "standing", attach=True), standing]
    return [replace(join, attach=True)]


def _of_beginning(place: Place | None) -> Place | None:
    """In a join, "3rd ch of ch-4" means the chain that the round began with."""
    if place is not None and place.which == "nth" and place.of is not None and place.of.which == "current" and place.of.target.kind == "sp":
        return replace(place, of=replace(place.of, which="beg", target=replace(place.of.target, kind="ch")))
    return place


def makes_ring(steps: Sequence[Step]) -> bool:
    """Whether these steps end in a ring, so that a line without a label is the ring's."""
    return any(isinstance(step, MagicRing | Join) for step in steps)
