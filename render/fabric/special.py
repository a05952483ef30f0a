"""Special stitches: those of the trade, and those that the pattern defines."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from motifold.render.fabric.bench import DraftStitch, Hook, Recipe
from motifold.render.fabric.making import add_chains, add_stitch, grouped, kind_of_spec, new_run
from motifold.render.fabric.model import Base, Foot, Gather, Leg
from motifold.render.pattern.instructions import Chain, Definition, Group, Node, Repeat, Step, StitchSpec, Work
from motifold.symbols.stitches import Kind, closing
from motifold.symbols.stitches import kind as kind_of

RunSteps = Callable[[Hook, Sequence[Step]], None]

_GATHERED = ("cl", "bobble", "pc", "puff")


def make(hook: Hook, spec: StitchSpec, base: Base, node: Node, run: RunSteps) -> None:
    """One stitch (or one special stitch) into one place."""
    recipe = recipe_of(hook, spec)
    if recipe.special:
        _make_special(hook, spec, base, node, run)
    else:
        add_stitch(hook, recipe.kind, _legs(recipe, base), node, gather=recipe.gather)


def _legs(recipe: Recipe, base: Base) -> tuple[Leg, ...]:
    into = _entered(base, recipe.foot)
    stems = recipe.stems
    return (Leg(stems[0], into),) if len(stems) == 1 else tuple([Leg(stem, into) for stem in stems])


def _make_special(hook: Hook, spec: StitchSpec, base: Base, node: Node, run: RunSteps) -> None:
    definition = hook.shop.definitions.get(spec.name)
    if definition is not None:
        defined(hook, definition, base, node, run)
        return
    plain = spec.name.removeprefix("beg ")
    if plain == "picot":
        picot(hook, spec, node)
    elif plain in _GATHERED:
        gathered(hook, spec, base, node)
    else:
        fan(hook, spec, base, node)


def recipe_of(hook: Hook, spec: StitchSpec) -> Recipe:
    """What holds for a stitch wherever the line works it; read once."""
    found = hook.recipes.get(id(spec))
    if found is None:
        found = hook.recipes[id(spec)] = _recipe(hook, spec)
    return found


def _recipe(hook: Hook, spec: StitchSpec) -> Recipe:
    if spec.name in hook.shop.definitions or spec.name.removeprefix("beg ") in ("picot", "shell", "V-st", *_GATHERED):
        return Recipe(spec, special=True)
    kind = kind_of_spec(spec)
    stems = _stems_of(kind, spec)
    easy = len(stems) == 1 and spec.name != "sl st" and not (spec.standing or spec.beginning or spec.name.startswith("crossed "))
    return Recipe(spec, False, kind, stems, _closing(stems), _own_foot(spec), easy and spec.together <= 1)


def _closing(stems: Sequence[str]) -> Gather | None:
    """How legs in one place are closed: tall ones make one closed shape, single crochets only lean together."""
    if len(stems) < 2:
        return None
    found = known(stems[0])
    return closing(found, legs=len(stems)) if found is not None else "together"


def _stems_of(kind: str, spec: StitchSpec) -> tuple[str, ...]:
    """The stems of a stitch worked into one place."""
    if spec.together > 1:
        return (spec.name,) * spec.together
    found = known(kind)
    if found is not None and found.family == "foundation":
        return ()
    if found is not None and found.gather == "together":
        return (found.stem,) * found.legs
    return (kind if spec.post is None else spec.name,)


def _own_foot(spec: StitchSpec) -> Foot | None:
    """The foot that a stitch decides itself: round the post for FPdc; None: as the place says."""
    if spec.post == "front" or (spec.post is None and spec.name.startswith("FP")):
        return "front loop" if spec.invisible else "front post"
    if spec.post == "back" or spec.name.startswith("BP"):
        return "front loop" if spec.invisible else "back post"
    return "front loop" if spec.invisible else None


def entered(base: Base, spec: StitchSpec) -> Base:
    """The base with the foot that the stitch itself decides."""
    return _entered(base, _own_foot(spec))


def _entered(base: Base, foot: Foot | None) -> Base:
    return base if foot is None or base.kind != "stitch" else Base(base.kind, base.id, foot, base.other)


def known(kind: str) -> Kind | None:
    """What the trade knows of a stitch; None for a pattern's own."""
    try:
        return kind_of(kind)
    except KeyError:
        return None


def together(hook: Hook, spec: StitchSpec, bases: Sequence[Base], node: Node) -> None:
    """One head over several places: dc3tog over the next 3 sts."""
    kind = kind_of_spec(spec)
    stem = spec.name
    add_stitch(hook, kind, tuple(Leg(stem, entered(base, spec)) for base in bases), node, gather="together")


def picot(hook: Hook, spec: StitchSpec, node: Node) -> None:
    """A ring of chains closed with a slip stitch on the last stitch; chains that wait go on after it."""
    size = spec.size or 3
    on = hook.pending[-1] if hook.pending else hook.last
    with grouped(hook, "picot", None, node) as group:
        chains = add_chains(hook, size, node)
    close_picot(hook, chains, on, node, group.id if group is not None else None)


def close_picot(hook: Hook, chains: list[int], on: int | None, node: Node, group: int | None) -> None:
    """The slip stitch that closes a picot; the ring belongs to the stitch (or chain) that it stands on."""
    run = new_run(hook, "picot", chains, before=on)
    run.group = group
    base = Base("stitch", on if on is not None else chains[0], "loops")
    ident = len(hook.stitches)
    origin = hook.origin_of(node.id, node.span)
    hook.stitches.append(DraftStitch(ident, "sl st", "picot", hook.lap.index, hook.yarn, origin, (Leg("sl st", base),), group=group))
    hook.lap.stitches.append(ident)
    if group is not None:
        hook.groups[group].stitches = [*chains, ident]
        hook.groups[group].base = base


def gathered(hook: Hook, spec: StitchSpec, base: Base, node: Node) -> None:
    """Cluster, bobble, popcorn, puff: several legs in one place, closed into one head."""
    kind = kind_of_spec(spec)
    found = known(kind) or known(spec.name)
    stem = spec.of or (found.stem if found else "dc")
    count = spec.size or (found.legs if found else 3)
    gather: Gather = found.gather if found and found.gather else "cluster"
    add_stitch(hook, kind, tuple(Leg(stem, base) for _ in range(count)), node, gather=gather)


def beginning(hook: Hook, spec: StitchSpec, base: Base, node: Node) -> None:
    """``beg cl``, ``beg shell``: the chain that stands already is its first leg, or its first stitch."""
    kind = kind_of_spec(spec)
    found = known(kind)
    stem = spec.of or (found.stem if found else "dc")
    count = spec.size or (found.legs if found else 3)
    if spec.name in _GATHERED:
        chains = take_back_standing(hook)
        gather: Gather = found.gather if found and found.gather else "cluster"
        made = add_stitch(hook, kind, tuple(Leg(stem, base) for _ in range(max(count - 1, 1))), node, gather=gather, chains=chains)
        hook.lap.standing = made
        return
    with grouped(hook, spec.name, base, node) as group:
        if group is not None and hook.last is not None:
            hook.stitches[hook.last].group = group.id
            group.stitches.append(hook.last)
        if spec.name == "V-st":
            hook.pending.extend(add_chains(hook, spec.size or 1, node))
            count = 2
        for _ in range(count - 1):
            add_stitch(hook, stem, (Leg(stem, base),), node)


def counted_beginning(hook: Hook, spec: StitchSpec, name: str, base: Base, node: Node) -> None:
    """``ch 3, dc2tog in ring (counts as cl)``: chain and stitch together are one cluster."""
    definition = hook.shop.definitions.get(name)
    found = known(name)
    gather: Gather = (definition.gather if definition is not None else found.gather if found is not None else None) or "cluster"
    gather = "cluster" if name.endswith("tog") else gather  # all in one place, as its like are
    chains = take_back_standing(hook)
    legs = _legs(recipe_of(hook, spec), base)
    made = add_stitch(hook, name, legs, node, gather=gather, chains=chains)
    if chains:
        hook.lap.standing = made


def take_back_standing(hook: Hook) -> tuple[int, ...]:
    """A beginning cluster swallows the chain that stands for its first leg."""
    stitch = hook.stitches[hook.lap.standing] if hook.lap.standing is not None else None
    if stitch is None or stitch.id != len(hook.stitches) - 1 or hook.pending:
        return ()
    if stitch.group is not None:
        hook.groups[stitch.group].stitches.remove(stitch.id)
    hook.stitches.pop()
    hook.lap.stitches.pop()
    hook.lap.made.pop()
    hook.last = None
    return stitch.chains


def fan(hook: Hook, spec: StitchSpec, base: Base, node: Node) -> None:
    """Shell and V-stitch where the pattern does not define them: 5 dc in one place; dc, ch 1, dc in one place."""
    stem = spec.of or "dc"
    name = spec.name.removeprefix("beg ")
    with grouped(hook, name, base, node):
        if name == "V-st":
            add_stitch(hook, stem, (Leg(stem, base),), node)
            hook.pending = add_chains(hook, spec.size or 1, node)
            add_stitch(hook, stem, (Leg(stem, base),), node)
        else:
            for _ in range(spec.size or 5):
                add_stitch(hook, stem, (Leg(stem, base),), node)


def crossed(hook: Hook, spec: StitchSpec, first: Base, second: Base, node: Node) -> None:
    """Two stitches that change places: the second place is worked first."""
    stem = spec.name.removeprefix("crossed ")
    with grouped(hook, f"crossed {stem}", first, node):
        add_stitch(hook, stem, (Leg(stem, second),), node, gather="crossed")
        add_stitch(hook, stem, (Leg(stem, first),), node, gather="crossed")


def defined(hook: Hook, definition: Definition, base: Base, node: Node, run: RunSteps) -> None:
    """A stitch that the pattern defines, into one place."""
    if definition.gather is not None:
        legs = tuple(Leg(stem, base) for stem in flat_stems(definition.steps, hook.shop.size)) or (Leg("dc", base),)
        add_stitch(hook, definition.key, legs, node, gather=_as_called(definition.gather, definition, legs))
        return
    begun = len(hook.stitches)
    with grouped(hook, definition.key, base, node):
        outer, outside = hook.here, hook.within
        hook.here, hook.within = base, outside or node
        run(hook, definition.steps)
        hook.here, hook.within = outer, outside
    made = [stitch for stitch in hook.stitches[begun:] if stitch.role == "stitch"]
    if len(made) == 1:  # one head, whatever the words: "dc5tog in same st" of a stitch called bobble
        made[0].gather = _as_called(made[0].gather, definition, made[0].legs)


def _as_called(gather: Gather | None, definition: Definition, legs: Sequence[Leg]) -> Gather | None:
    """How the one stitch of a definition is closed: several tall legs by their construction and the name that the pattern gives them."""
    found = known(legs[0].kind) if len(legs) > 1 and gather in ("cluster", "bobble", "puff") else None
    one_place = len({(leg.base.kind, leg.base.id) for leg in legs}) == 1
    return closing(found, definition.called, len(legs)) if found is not None and one_place else gather


def flat_stems(steps: Sequence[Step], size: int) -> list[str]:
    """The stems of a gathered stitch, chains left out."""
    stems: list[str] = []
    for step in steps:
        if isinstance(step, Work):
            stems.extend([step.stitch.name] * min(step.count.at(size) * max(step.stitch.together, 1), 60))
        elif isinstance(step, Group):
            stems.extend(flat_stems(step.steps, size))
        elif isinstance(step, Repeat) and step.times is not None:
            stems.extend(flat_stems(step.steps, size) * min(step.times.at(size), 60))
        elif isinstance(step, Chain):
            continue
    return [stem for stem in stems if stem != "sl st"][:60]
