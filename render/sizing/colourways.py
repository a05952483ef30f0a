"""Colourways over the panels: which panel has which, and how many of each are made."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from motifold.render.assembly.model import Assembly
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import Colourway, MotifSource, Pattern
from motifold.render.sizing.reading import yarns_named
from motifold.symbols.record import dataclass

MOST_WEIGHED = 1000
"""Of more panels than this each is taken as the net lists it: to look for the hardest one first would take minutes."""


@dataclass(frozen=True, slots=True)
class Batch:
    """So many of one motif in one colourway (None: as the text says)."""

    way: Colourway | None
    made: int


@dataclass(frozen=True, slots=True)
class Placing:
    """The colourway of each panel that has one, by the panel's name; ``alike``: seams where two of the same colourway touch."""

    ways: Mapping[str, str]
    given: bool
    alike: tuple[tuple[str, str], ...] = ()


def place_colourways(pattern: Pattern, assembly: Assembly | None) -> Placing:
    """As the plan says; without one, spread so that no two alike share a seam where that can be, nor a corner where that can be too.

    Each colourway is used about as often as any other.
    """
    choices = {motif.name: tuple(way.name for way in motif.colourways) for motif in pattern.motifs if motif.colourways}
    if assembly is None or not choices:
        return Placing({}, False)
    plan = pattern.assembly.colourways if pattern.assembly is not None else {}
    panels = [panel for panel in assembly.panels if panel.motif in choices]
    if plan:
        first = {panel.name: panel.name.removesuffix(f" {panel.copy}") if panel.copy > 1 else panel.name for panel in panels}
        return Placing({name: plan[own] for name, own in first.items() if own in plan}, True)
    touching = _touching(assembly)
    nearby = _nearby(assembly)
    ways = _spread([(panel.name, choices[panel.motif]) for panel in panels], touching, nearby)
    alike = tuple((a, b) for a in ways for b in touching.get(a, ()) if a < b and ways.get(b) == ways[a])
    return Placing(ways, False, alike)


def _touching(assembly: Assembly) -> Mapping[str, tuple[str, ...]]:
    found: dict[str, dict[str, None]] = {}
    for seam in assembly.seams:
        if seam.b is not None and seam.a.panel != seam.b.panel:
            found.setdefault(seam.a.panel, {})[seam.b.panel] = None
            found.setdefault(seam.b.panel, {})[seam.a.panel] = None
    return {name: tuple(others) for name, others in found.items()}


def _nearby(assembly: Assembly) -> Mapping[str, tuple[str, ...]]:
    """Panels that meet at a corner."""
    found: dict[str, dict[str, None]] = {}
    for corner in assembly.corners:
        names = tuple(dict.fromkeys(name for name, _ in corner.at))
        for name in names:
            found.setdefault(name, {}).update(dict.fromkeys(other for other in names if other != name))
    return {name: tuple(others) for name, others in found.items()}


def _spread(
    panels: Sequence[tuple[str, tuple[str, ...]]], touching: Mapping[str, tuple[str, ...]], nearby: Mapping[str, tuple[str, ...]]
) -> Mapping[str, str]:
    """Panel by panel, those with the fewest colourways left to them first; what clashes at the end is changed round a few times."""
    choices = dict(panels)
    order = {name: index for index, (name, _) in enumerate(panels)}
    ways: dict[str, str] = {}
    used: Counter[str] = Counter()
    waiting = set(order)
    taken: dict[str, set[str]] = {name: set() for name in order}
    careful = len(order) <= MOST_WEIGHED
    for next_in_order in order:
        name = min(waiting, key=lambda n: (len(set(choices[n]) - taken[n]), order[n])) if careful else next_in_order
        waiting.remove(name)
        ways[name] = _best(name, choices[name], ways, used, touching, nearby)
        used[ways[name]] += 1
        for other in touching.get(name, ()):
            if other in taken:
                taken[other].add(ways[name])
    for _ in range(4):
        clashing = [n for n in ways if any(ways.get(o) == ways[n] for o in touching.get(n, ()))]
        for name in clashing:
            used[ways[name]] -= 1
            ways[name] = _best(name, choices[name], ways, used, touching, nearby)
            used[ways[name]] += 1
        if not clashing:
            break
    return {name: ways[name] for name in order}


def _best(
    name: str, choices: tuple[str, ...], ways: Mapping[str, str], used: Mapping[str, int],
    touching: Mapping[str, tuple[str, ...]], nearby: Mapping[str, tuple[str, ...]],
) -> str:  # fmt: skip
    def cost(way: str) -> tuple[int, int, int, int]:
        side = sum(ways.get(other) == way for other in touching.get(name, ()))
        corner = sum(ways.get(other) == way for other in nearby.get(name, ()))
        return side, corner, used.get(way, 0), choices.index(way)

    return min(choices, key=cost)


def batches(motif: MotifSource, made: int, assembly: Assembly | None, placing: Placing) -> tuple[Batch, ...]:
    """How many of a motif are made in each colourway; without an assembly one in each."""
    if not motif.colourways:
        return (Batch(None, made),)
    if assembly is None:
        return tuple(Batch(way, made) for way in motif.colourways)
    counted = Counter(placing.ways.get(panel.name) for panel in assembly.panels if panel.motif == motif.name)
    found = [Batch(way, counted[way.name]) for way in motif.colourways if counted[way.name]]
    plain = sum(number for name, number in counted.items() if name not in {way.name for way in motif.colourways})
    if not counted:
        return (Batch(None, made),)
    return tuple(found + ([Batch(None, plain)] if plain else []))


def yarns_of_text(pattern: Pattern) -> tuple[str, ...]:
    """The yarns that the text itself works with: those that only stand in for them in a colourway are none of them.

    So "the other yarn" is clear in a text of two yarns, however many colourways there are.
    """
    ways = [way for motif in pattern.motifs for way in motif.colourways]
    if not ways:
        return tuple(yarn.key for yarn in pattern.yarns)
    named = {key for way in ways for key in way.yarns} | set(yarns_named(pattern))
    instead = {yarn for way in ways for yarn in way.yarns.values()}
    return tuple(yarn.key for yarn in pattern.yarns if yarn.key in named or yarn.key not in instead)


def in_colourway(amounts: Mapping[str, float], way: Colourway | None) -> Mapping[str, float]:
    """Amounts by yarn with the yarns of the text exchanged for those of a colourway."""
    if way is None:
        return amounts
    found: dict[str, float] = {}
    for yarn, amount in amounts.items():
        worked = way.yarns.get(yarn, yarn)
        found[worked] = found.get(worked, 0.0) + amount
    return found


@dataclass(frozen=True, slots=True)
class Made:
    """A colourway as it is told: how many are made, in which yarns (those of the text to those worked), and of which panels."""

    name: str
    made: int
    yarns: Mapping[str, str]
    panels: tuple[str, ...]


def batches_of(pattern: Pattern, fabrics: Mapping[str, Fabric], assembly: Assembly | None) -> Mapping[str, tuple[Made, ...]]:
    """For each motif that has colourways, what is made of each; what has none in the plan is "as written"."""
    placing = place_colourways(pattern, assembly)
    found: dict[str, tuple[Made, ...]] = {}
    for motif in pattern.motifs:
        fabric = fabrics.get(motif.name)
        if not motif.colourways or fabric is None:
            continue
        panels = [panel for panel in assembly.panels if panel.motif == motif.name] if assembly is not None else []
        worked = tuple(dict.fromkeys(stitch.yarn for stitch in fabric.stitches if stitch.yarn))
        made = []
        for batch in batches(motif, len(panels) or 1, assembly, placing):
            name = batch.way.name if batch.way is not None else "as written"
            ways = batch.way.yarns if batch.way is not None else {}
            own = tuple(p.name for p in panels if placing.ways.get(p.name) == (batch.way.name if batch.way else None))
            made.append(Made(name, batch.made, {yarn: ways.get(yarn, yarn) for yarn in worked}, own))
        found[motif.name] = tuple(made)
    return found
