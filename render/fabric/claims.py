"""Which kinds of place a line names: they must not be left over, and they carry a repeat further."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from motifold.render.pattern.instructions import Chain, Group, Join, Place, Repeat, Skip, Step, StitchSpec, Target, Work

_PLAIN = Target("st")


def worked_targets(steps: Sequence[Step]) -> tuple[Target, ...]:
    """What the places in these steps go on to: each of them moves the hook along the round below."""
    return tuple(dict.fromkeys(_targets(steps)))


def _targets(steps: Sequence[Step], skips: bool = True, below: int | None = None) -> Iterator[Target]:
    own = False  # a chain just made is being worked back along: its chains are none of the round below
    for index, step in enumerate(steps):
        if isinstance(step, Work):
            after_chain = index > 0 and isinstance(steps[index - 1], Chain)
            own = step.place is not None and ((step.place.from_hook and after_chain) or (own and step.place.target.kind == "ch"))
            if own:
                continue
            if step.place is None:
                if _moves(step.stitch):
                    yield _PLAIN
            else:
                yield from _of_place(step.place, below)
        elif isinstance(step, Group) or (isinstance(step, Skip) and (skips or step.place.target.kind != "sp")):
            yield from _of_place(step.place, below)
        elif isinstance(step, Repeat):
            yield from _targets(step.steps, skips, below)


def _moves(spec: StitchSpec) -> bool:
    return not spec.name.endswith("picot") and spec.name not in ("fsc", "fhdc", "fdc", "ftr", "ch")


_ELSEWHERE = ("unused loop", "row end", "side", "foundation", "ring", "missed")


def _of_place(place: Place, below: int | None = None) -> Iterator[Target]:
    if place.which == "evenly" and place.target.kind == "side" and place.extent is not None:
        yield from (_PLAIN, Target("row end"))  # all the way, whatever there is
    if place.of_round not in (None, below) or place.from_hook or place.target.kind in _ELSEWHERE:
        return
    if place.of is not None:
        if place.of.which not in ("beg", "same", "made"):
            yield from _of_place(place.of)
        return
    if place.which in ("next", "each", "current", "last", "nth", "center"):
        if place.below:
            yield _PLAIN
        else:
            yield place.target
            yield from place.also
    for further in place.then:
        yield from _of_place(further)


def driving_place(steps: Sequence[Step]) -> Place | None:
    """The first place on an earlier round, a side or unused loops: what takes a repeat further where nothing on the last round does."""
    for step in steps:
        if isinstance(step, Work | Group | Skip) and step.place is not None and step.place.which in ("next", "each", "nth"):
            return step.place
        if isinstance(step, Repeat):
            found = driving_place(step.steps)
            if found is not None:
                return found
    return None


def claimed_of_earlier(steps: Sequence[Step]) -> tuple[Place, ...]:
    """The places on earlier rounds, or in unused loops, that the line goes on to."""
    found: list[Place] = []
    for step in steps:
        if isinstance(step, Work | Group) and step.place is not None:
            place = step.place
            if (place.of_round is not None or place.target.kind == "unused loop") and place.which in ("next", "each"):
                found.append(place)
        elif isinstance(step, Repeat):
            found.extend(claimed_of_earlier(step.steps))
    return tuple(found)


def claimed_targets(steps: Sequence[Step], below: int | None = None) -> tuple[Target, ...]:
    """The kinds of place of which none may be left over: what the line works into, and the stitches that it skips.

    ``below``: the number of the round below, by which the line may call it.
    """
    return tuple(dict.fromkeys(target for target in _targets(steps, skips=False, below=below) if target.kind not in ("tch", "between")))


def names_turning_chain(steps: Sequence[Step]) -> bool:
    """Whether the line works into the turning or beginning chain below in so many words (a join does not count)."""
    for step in steps:
        if isinstance(step, Work | Group) and step.place is not None and is_turning_chain(step.place):
            return True
        if isinstance(step, Skip) and is_turning_chain(step.place):
            return True
        if isinstance(step, Repeat) and names_turning_chain(step.steps):
            return True
        if isinstance(step, Join):
            continue
    return False


def counts_turning_chain(steps: Sequence[Step], size: int) -> bool:
    """Whether "to last 2 sts" counts the turning chain as one of them: not where two others are worked before the line comes to it."""
    for index, step in enumerate(steps):
        wanted = _back_from_end(step, size)
        if wanted is None:
            continue
        between = 0
        for later in steps[index + 1 :]:
            place = later.place if isinstance(later, Work | Group | Skip) else None
            if place is not None and is_turning_chain(place):
                return between < wanted
            if place is not None and place.which in ("next", "last") and place.target.kind in ("st", "stitch"):
                between += place.count.at(size)
            elif isinstance(later, Work) and place is None:
                between += later.count.at(size)
    return True


def named_and_not_worked(steps: Sequence[Step], size: int) -> Target | None:
    """What a line works up to and then forgets: the "last st" of "[3 dc in next ch-1 sp, ch 1] to last st; turn"."""
    ends = [index for index, step in enumerate(steps) if _back_from_end(step, size)]
    if not ends or any(isinstance(later, Work | Group | Skip | Repeat) for later in steps[ends[-1] + 1 :]):
        return None
    step = steps[ends[-1]]
    place = step.place if isinstance(step, Work | Group) else None
    extent = step.extent if isinstance(step, Repeat) else place.extent if place is not None else None
    if extent is None:
        return None
    return extent.place.target if extent.place is not None else extent.target or Target("st")


def _back_from_end(step: Step, size: int) -> int | None:
    """How many stitches a repeat or an "each" leaves at the end: 2 of "to last 2 sts"."""
    place = step.place if isinstance(step, Work | Group) else None
    extent = step.extent if isinstance(step, Repeat) else place.extent if place is not None else None
    if extent is None:
        return None
    if extent.kind == "last":
        return extent.count.at(size) if extent.count is not None else 1
    return 1 if extent.place is not None and extent.place.which == "last" else None


def is_turning_chain(place: Place) -> bool:
    """Whether a place is the turning or beginning chain of the row below: "tch", "top of beg ch-3", "3rd ch of beg ch-4"."""
    if place.below:
        return False
    if place.target.kind == "tch" or (place.target.kind == "missed" and place.which == "top"):
        return True
    return (place.which == "beg" and place.target.kind == "ch") or (place.of is not None and is_turning_chain(place.of))


def passed_by_chains(steps: Sequence[Step], size: int) -> set[int]:
    """How many stitches each repeat of a line skips that makes chains too."""
    found: set[int] = set()
    for step in steps:
        if not isinstance(step, Repeat):
            continue
        found |= passed_by_chains(step.steps, size)
        if any(isinstance(inner, Chain) for inner in step.steps):
            skips = [inner.place for inner in step.steps if isinstance(inner, Skip)]
            found.update(place.count.at(size) for place in skips if place.target.kind in ("st", "stitch"))
    return found
