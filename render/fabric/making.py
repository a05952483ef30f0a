"""Stitches, chains and groups as they come off the hook."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from motifold.render.fabric.bench import DraftGroup, DraftRun, DraftStitch, Hook, TooMuch
from motifold.render.fabric.model import Base, Gather, Leg, RunRole, StitchRole
from motifold.render.pattern.instructions import Node, StitchSpec


def kind_of_spec(spec: StitchSpec) -> str:
    """The kind of stitch as the Fabric calls it: "FPdc", "dc3tog", "5-dc cl", "ch-4 picot"."""
    name = spec.name
    if spec.post is not None and not name.startswith(("FP", "BP")):
        name = f"{'FP' if spec.post == 'front' else 'BP'}{name}"
    if spec.together > 1:
        if spec.invisible and name == "sc" and spec.together == 2:
            return "inv dec"
        return f"{name}{spec.together}tog"
    if name == "picot":
        return f"ch-{spec.size} picot" if spec.size else name
    if spec.size and name.removeprefix("beg ") in ("cl", "bobble", "pc", "puff", "shell"):
        prefix = "beg " if name.startswith("beg ") else ""
        return f"{prefix}{spec.size}-{spec.of or 'dc'} {name.removeprefix('beg ')}"
    return name


def add_stitch(
    hook: Hook,
    kind: str,
    legs: tuple[Leg, ...],
    node: Node,
    *,
    role: StitchRole = "stitch",
    gather: Gather | None = None,
    chains: tuple[int, ...] = (),
) -> int:
    """One stitch comes off the hook: waiting chains are hung up before it, and it joins the edge."""
    hook.budget(node.span)
    lap, yarn = hook.lap, hook.yarn
    ident = len(hook.stitches)
    if hook.pending:
        hang(hook, ident)
    stitch = DraftStitch(
        ident,
        kind,
        role,
        lap.index,
        yarn,
        hook.origin_of(node.id, node.span),
        legs,
        gather,
        chains,
        None,
        hook.open_groups[-1] if hook.open_groups else None,
        hook.behind,
    )
    hook.stitches.append(stitch)
    lap.stitches.append(ident)
    if yarn not in lap.yarns:
        lap.yarns.append(yarn)
    lap.made.append((False, ident))
    hook.last = ident
    if hook.open_groups:
        for group in hook.open_groups:
            hook.groups[group].stitches.append(ident)
    hook.beginning = False
    return ident


def add_each(hook: Hook, kind: str, stem: str, bases: Sequence[Base], node: Node) -> None:
    """The same plain stitch into each of several places, as ``add_stitch`` makes them one by one."""
    lap, yarn, behind, stitches = hook.lap, hook.yarn, hook.behind, hook.stitches
    too_many = len(bases) > hook.room()
    if too_many:
        bases = bases[: hook.room()]
    first = len(stitches)
    if hook.pending:
        hang(hook, first)
    origin = hook.origin_of(node.id, node.span)
    group = hook.open_groups[-1] if hook.open_groups else None
    for ident, base in enumerate(bases, first):
        stitches.append(DraftStitch(ident, kind, "stitch", lap.index, yarn, origin, (Leg(stem, base),), None, (), None, group, behind))
    made = range(first, len(stitches))
    lap.stitches.extend(made)
    lap.made.extend([(False, ident) for ident in made])
    for number in hook.open_groups:
        hook.groups[number].stitches.extend(made)
    if yarn not in lap.yarns:
        lap.yarns.append(yarn)
    hook.steps_done += len(bases)
    hook.last = len(stitches) - 1
    hook.beginning = False
    if too_many:
        raise TooMuch(node.span, hook.too_much())


def add_travel(hook: Hook, kind: str, legs: tuple[Leg, ...], node: Node) -> int:
    """A slip stitch that only joins or walks: in the Fabric, but no part of the edge."""
    hook.budget(node.span)
    lap = hook.lap
    ident = len(hook.stitches)
    hook.stitches.append(
        DraftStitch(ident, kind, "travel", lap.index, hook.yarn, hook.origin_of(node.id, node.span), legs, behind=hook.behind)
    )
    lap.stitches.append(ident)
    if hook.yarn not in lap.yarns:
        lap.yarns.append(hook.yarn)
    return ident


def add_chains(hook: Hook, count: int, node: Node) -> list[int]:
    """Chains off the hook, hung up nowhere yet."""
    lap = hook.lap
    origin = hook.origin_of(node.id, node.span)
    made = []
    group = hook.open_groups[-1] if hook.open_groups else None
    for _ in range(count):
        hook.budget(node.span)
        ident = len(hook.stitches)
        hook.stitches.append(DraftStitch(ident, "ch", "chain", lap.index, hook.yarn, origin, (), None, (), None, group))
        lap.stitches.append(ident)
        made.append(ident)
    if hook.yarn not in lap.yarns:
        lap.yarns.append(hook.yarn)
    return made


def new_run(
    hook: Hook,
    role: RunRole,
    stitches: list[int],
    *,
    before: int | None = None,
    after: int | None = None,
    chains: int | None = None,
) -> DraftRun:
    """A run of chains, with what it hangs between."""
    run = DraftRun(len(hook.runs), role, hook.lap.index, len(stitches) if chains is None else chains, stitches, before, after)
    hook.runs.append(run)
    made = [hook.stitches[ident] for ident in stitches]
    if len({stitch.group for stitch in made}) == 1:
        run.group = made[0].group
    for stitch in made:
        stitch.run = run.id
    return run


def hang(hook: Hook, after: int | None) -> DraftRun | None:
    """The waiting chains become a space between the last stitch and the one that comes now."""
    if not hook.pending:
        return None
    stitches, hook.pending = hook.pending, []
    run = new_run(hook, "space", stitches, before=hook.last, after=after)
    hook.lap.made.append((True, run.id))
    return run


@contextmanager
def grouped(hook: Hook, name: str | None, base: Base | None, node: Node) -> Iterator[DraftGroup | None]:
    """All stitches made inside belong together. Stitches of an unnamed group inside another group stay the other's."""
    if name is None and hook.open_groups:
        yield None
        return
    group = open_group(hook, name, base, node)
    try:
        yield group
    finally:
        hook.open_groups.pop()


def open_group(hook: Hook, name: str | None, base: Base | None, node: Node) -> DraftGroup:
    """From here on stitches belong to this group, until it is taken off ``open_groups``."""
    group = DraftGroup(len(hook.groups), name, hook.lap.index, base, hook.origin_of(node.id, node.span))
    hook.groups.append(group)
    hook.open_groups.append(group.id)
    return group
