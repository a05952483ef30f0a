"""The whole pattern worked for each of its sizes: the one thing that every output is made from."""

from __future__ import annotations

import gc
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import field, replace
from typing import TYPE_CHECKING

from motifold.render.assembly.model import Assembly, Rim
from motifold.render.consequences import (
    OF_A_LOST_SIZE,
    OF_A_MOTIF,
    OF_A_WRONG_MOTIF,
    OF_AN_UNEVEN_GAUGE,
    OF_AN_UNKNOWN_STITCH,
    OF_LOST_PANELS,
    OF_LOST_SIDES,
    names_one_of,
    sides_lost,
    sides_told_once,
    spare_words_known,
    tables_unread,
    told_of_panels,
    unexplained,
    without,
)
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.doubts import editor_doubts
from motifold.render.pattern.instructions import Amount, Definition
from motifold.render.pattern.model import EdgingSource, Gauge, MotifSource, Pattern
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.model import SizeChoice, SizeTable, YarnNeed
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    from motifold.render.fabric import Workshop
    from motifold.render.sizing.choices import ColourOrder
    from motifold.render.sizing.yarn import Scale


@dataclass(slots=True)
class _Made:
    """Motifs worked already, so that sizes share them, and how many stitches everything took so far."""

    motifs: dict[tuple[object, ...], tuple[Fabric, tuple[Problem, ...]]]
    stitches: int = 0

    def note(self, fabric: Fabric, problems: Iterable[Problem]) -> None:
        """What has mistakes was worked twice, to look for what would mend them."""
        self.stitches += len(fabric.stitches) * (2 if any(problem.severity == "error" for problem in problems) else 1)


MOST_AFTER_ERRORS = 20_000
"""Stitches after which a pattern with an error is worked for no further size: a slip often makes every round grow."""


@dataclass(frozen=True, slots=True)
class WorkedSize:
    """One size: its Fabrics by motif name, its assembly, its edgings by name. What could not be worked is left out.

    ``rims``: where on the finished thing its edgings lie, those whose depth the gauge tells. ``heights_cm``: of the motifs worked in rows.
    """

    choice: SizeChoice
    fabrics: Mapping[str, Fabric]
    assembly: Assembly | None
    edgings: Mapping[str, Fabric]
    widths_cm: Mapping[str, float | None]
    rims: tuple[Rim, ...] = ()
    heights_cm: Mapping[str, float | None] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Worked:
    """``sizes`` in the file's order; a pattern without sizes has the one size "One size"."""

    pattern: Pattern
    sizes: tuple[WorkedSize, ...]
    table: SizeTable | None
    problems: tuple[Problem, ...]


def work_pattern(
    pattern: Pattern,
    rounds: int | None = None,
    size_name: str | None = None,
    reading_problems: tuple[Problem, ...] = (),
) -> Worked:
    """Size the pattern, then work every motif, the assembly and the edgings of every size.

    ``rounds`` overrides how many rounds are worked, ``size_name`` keeps one size (it must be one of the file's).
    Problems come back in the order of the file; the same problem in several sizes is told once.
    """
    with _nothing_collected():
        return _work_sizes(pattern, rounds, size_name, reading_problems)


@contextmanager
def _nothing_collected() -> Iterator[None]:
    """Hundreds of thousands of small records are made here and kept: looking through them for what may go is half the time, for nothing."""
    on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if on:
            gc.enable()


def _work_sizes(pattern: Pattern, rounds: int | None, size_name: str | None, reading_problems: tuple[Problem, ...]) -> Worked:
    from motifold.render.sizing import choose_sizes, gauge_doubts, size_table

    table, table_problems = size_table(pattern)
    choices, choice_problems = choose_sizes(pattern, table, rounds, size_name)
    unread = tables_unread(pattern, (*reading_problems, *table_problems, *choice_problems))
    if any(problem.code == "sizes" for problem in reading_problems):
        unread |= {"size"}  # which number is whose is not known
    found: list[tuple[str, Problem]] = []
    made = _Made({})
    sizes: list[WorkedSize] = []
    too_many: tuple[Problem, ...] = ()
    wrong = any(problem.severity == "error" for problem in reading_problems)
    for choice in choices:
        if wrong and made.stitches > MOST_AFTER_ERRORS:
            break  # what is wrong is told; the other sizes would only take time
        size, problems = _work_size(pattern, choice, made, unread)
        if sizes and not wrong and any(problem.code == "limit" for problem in problems):
            too_many = (_not_worked(pattern, [one.name for one in choices[len(sizes) :]]),)
            break
        wrong = wrong or any(problem.severity == "error" for problem in problems)
        sizes.append(size)
        found.extend((choice.name, problem) for problem in problems)
    sized = [*table_problems, *choice_problems]
    if tables_unread(pattern, reading_problems) & {"gauge", "size"}:
        sized = without(sized, OF_A_LOST_SIZE)
    if any(problem.code in OF_A_MOTIF and problem.severity == "error" for _, problem in found):
        sized = without(sized, OF_A_WRONG_MOTIF)
    once = _once(sides_told_once(pattern, found), len(sizes))
    uneven = gauge_doubts(pattern)
    if uneven:
        sized = without(sized, OF_AN_UNEVEN_GAUGE)
        uneven = () if any(problem.code == "gauge" for problem in reading_problems) else uneven
    doubts = (*spare_words_known(unread, (*reading_problems, *once), editor_doubts(pattern)), *uneven)
    problems = (*reading_problems, *doubts, *sized, *once, *too_many)
    return Worked(pattern, tuple(sizes), table, _in_file_order(problems))


def _not_worked(pattern: Pattern, names: Sequence[str]) -> Problem:
    """The sizes that would make more stitches, with those before them, than one pattern may have."""
    from motifold.render.fabric import MOST_STITCHES

    which = f"size {names[0]} is" if len(names) == 1 else f"sizes {', '.join(names)} are"
    message = f"{which} not worked: with the sizes before, the pattern makes more than {MOST_STITCHES:,} stitches"
    return Problem("limit", "error", pattern.place("size", "bodies", names[0]), message, f'work it alone: --size "{names[0]}"')


def needs_by_size(worked: Worked) -> dict[str, tuple[YarnNeed, ...]]:
    """What each size takes of each yarn; a size is empty where nothing was measured to work it out from."""
    from motifold.render.sizing import pattern_of_size, scale_of_size, yarn_needs

    scales: dict[Gauge | None, Scale | None] = {}
    found = {}
    for size in worked.sizes:
        own = pattern_of_size(worked.pattern, size.choice.name)
        if own.gauge not in scales:
            scales[own.gauge] = scale_of_size(worked.pattern, own)
        scale = scales[own.gauge]
        found[size.choice.name] = yarn_needs(own, size.fabrics, size.assembly, size.edgings, scale=scale) if scale is not None else ()
    return found


def size_orders(worked: Worked, size: WorkedSize, needs: Sequence[YarnNeed]) -> tuple[ColourOrder, ...]:
    """The motifs of a size that two yarns take turns in, and what each beginning takes."""
    from motifold.render.sizing import pattern_of_size, scale_of_size
    from motifold.render.sizing.choices import colour_orders
    from motifold.render.sizing.yarn import motif_copies

    own = pattern_of_size(worked.pattern, size.choice.name)
    scale = scale_of_size(worked.pattern, own)
    return colour_orders(own, size.fabrics, motif_copies(size.fabrics, size.assembly), scale, needs) if scale is not None else ()


def _work_size(
    common: Pattern,
    choice: SizeChoice,
    made: _Made,
    unread: frozenset[str],
) -> tuple[WorkedSize, tuple[Problem, ...]]:
    """``unread``: tables of the file in which something could not be read, so that what follows from them is not told."""
    from motifold.render.assembly import assemble, no_opening
    from motifold.render.assembly.lengths import widths_as_joined
    from motifold.render.fabric import unmet_joins
    from motifold.render.sizing import motif_height_cm, motif_width_cm, pattern_of_size, piece_doubts

    pattern = pattern_of_size(common, choice.name)
    problems: list[Problem] = []
    fabrics: dict[str, Fabric] = {}
    widths: dict[str, float | None] = {}
    heights: dict[str, float | None] = {}
    for motif in pattern.motifs:
        fabric, motif_problems = _work_motif(pattern, motif, choice, made)
        doubtful = names_one_of(motif.instructions, unexplained(pattern))
        problems.extend(without(motif_problems, OF_A_MOTIF | OF_AN_UNKNOWN_STITCH if doubtful else frozenset()))
        fabrics[motif.name] = fabric
        widths[motif.name] = motif_width_cm(pattern, fabric)
        heights[motif.name] = motif_height_cm(pattern, fabric)
    lost = _sizes_lost(pattern)
    if lost:
        problems = without(problems, OF_A_MOTIF)
    unmeasured = bool(unread & {"gauge", "size"})
    if unmeasured:
        problems = without(problems, OF_A_LOST_SIZE)
    unworked = any(line.broken for motif in pattern.motifs for line in motif.instructions.lines)
    unworked = unworked or bool(unexplained(pattern))
    broken = unworked or lost or any(problem.severity == "error" for problem in problems)
    follow = OF_A_MOTIF | (OF_LOST_SIDES if sides_lost(pattern, fabrics) else frozenset()) if broken else frozenset()
    if not broken:
        problems.extend(unmet_joins(pattern.motifs, fabrics))
    assembly = None
    if pattern.assembly is not None:
        assembly, assembly_problems = assemble(pattern.assembly, fabrics, widths, heights, pattern.gauge.motif if pattern.gauge else None)
        widths |= widths_as_joined(assembly, fabrics) if assembly is not None else {}
        assembly_problems = tuple(told_of_panels(assembly_problems))
        problems.extend(without(assembly_problems, follow | OF_LOST_PANELS if "assembly" in unread else follow))
        wrong = any(problem.severity == "error" or problem.code == "side-rolled" for problem in assembly_problems)
        broken = broken or unmeasured or "assembly" in unread or wrong
    edgings: dict[str, Fabric] = {}
    for edging in pattern.edgings:
        worked = _work_edging(pattern, edging, choice, fabrics, assembly, made)
        if worked is not None:
            edgings[edging.name] = worked[0]
            problems.extend(without(worked[1], OF_A_MOTIF if broken else frozenset()))
        elif not broken and assembly is not None and edging.opening is not None:
            nowhere = no_opening(assembly, edging.opening, pattern.place("edging", edging.name, "opening"))
            problems.extend([nowhere] if nowhere is not None else [])
    if not broken and not any(problem.severity == "error" for problem in problems):
        problems.extend(piece_doubts(pattern, fabrics, widths, assembly, edgings))
    rims = _rims(pattern, fabrics, assembly, edgings)
    return WorkedSize(choice, fabrics, assembly, edgings, widths, rims, heights), _given_up_once(problems)


def _given_up_once(problems: Sequence[Problem]) -> tuple[Problem, ...]:
    """Where one piece makes more stitches than a pattern may have, nothing is left for the others: that is told of the first."""
    first = next((problem for problem in problems if problem.code == "limit"), None)
    return tuple(problem for problem in problems if problem.code != "limit" or problem is first)


def _rims(
    pattern: Pattern, fabrics: Mapping[str, Fabric], assembly: Assembly | None, edgings: Mapping[str, Fabric]
) -> tuple[Rim, ...]:
    if assembly is None or not edgings:
        return ()
    from motifold.render.assembly import opening_edge
    from motifold.render.assembly.edge import sides_met
    from motifold.render.assembly.rims import rims_of
    from motifold.render.sizing import row_height_cm
    from motifold.render.sizing.depth import edging_depth_cm

    worked = [edging for edging in pattern.edgings if edging.name in edgings]
    depths = [(one.name, one.opening, edging_depth_cm(pattern, one, edgings[one.name])) for one in worked]
    rims = rims_of(assembly, depths, [one.name for one in worked if row_height_cm(one.gauge) is None])
    openings = {edging.name: edging.opening for edging in worked}
    found = []
    for rim in rims:
        opening, fabric = openings[rim.name], edgings[rim.name]
        sides = sides_met(fabric, opening_edge(assembly, fabrics, opening)) if opening is not None else ()
        found.append(replace(rim, spread=_spread(fabric), sides=sides))
    return tuple(found)


def _spread(fabric: Fabric) -> float:
    met = [one.met for one in fabric.rounds if one.kind in ("round", "row") and one.number is not None and one.met]
    return met[-1] / met[0] if met else 1.0


def _work_motif(pattern: Pattern, motif: MotifSource, choice: SizeChoice, made: _Made) -> tuple[Fabric, tuple[Problem, ...]]:
    """One motif for one size; sizes whose text and rounds are the same share one Fabric."""
    from motifold.render.fabric import work_motif
    from motifold.render.sizing import row_height_cm

    rounds = choice.rounds.get(motif.name)
    key = (motif.name, rounds, choice.index if _varies(motif.instructions) else None, row_height_cm(pattern.gauge))
    if key not in made.motifs:
        made.motifs[key] = work_motif(motif, _workshop(pattern, rounds, choice.index, motif.counts_as, made))
        made.note(*made.motifs[key])
    return made.motifs[key]


def _work_edging(
    pattern: Pattern, edging: EdgingSource, choice: SizeChoice, fabrics: Mapping[str, Fabric], assembly: Assembly | None, made: _Made
) -> tuple[Fabric, tuple[Problem, ...]] | None:
    from motifold.render.assembly import opening_edge
    from motifold.render.fabric import motif_edge, work_edging
    from motifold.render.sizing import own_of

    if edging.opening is not None and assembly is not None:
        given = opening_edge(assembly, fabrics, edging.opening)
    else:
        name = edging.motif or (pattern.motifs[0].name if len(pattern.motifs) == 1 else None)
        given = motif_edge(fabrics[name]) if name is not None and name in fabrics else ()
    if not given:
        return None
    own = own_of(pattern, choice.name)
    rounds = own.edgings.get(edging.name) if own is not None else None
    worked = work_edging(edging, given, _workshop(pattern, rounds, choice.index, None, made))
    made.note(*worked)
    return worked


def _workshop(pattern: Pattern, rounds: int | None, index: int, counts_as: bool | None, made: _Made) -> Workshop:
    from motifold.render.fabric import MOST_STITCHES, Workshop
    from motifold.render.sizing import row_height_cm, yarns_of_text

    definitions: dict[str, Definition] = {s.key: s.definition for s in pattern.stitches if s.definition is not None}
    return Workshop(
        definitions=definitions,
        yarns=yarns_of_text(pattern),
        rounds=rounds,
        size=index,
        row_height_cm=row_height_cm(pattern.gauge),
        terms=pattern.terms,
        counts_as=counts_as,
        stitches=max(MOST_STITCHES - made.stitches, 0),
    )


def _sizes_lost(pattern: Pattern) -> bool:
    """Whether a size could not be read, so that it is not known which of the numbers for several sizes is whose."""
    texts = (*(motif.instructions for motif in pattern.motifs), *(edging.instructions for edging in pattern.edgings))
    return pattern.size is not None and _widest(texts) > max(len(pattern.size.bodies), 1)


def _widest(node: object) -> int:
    """The most numbers that stand anywhere in the tree for one amount."""
    if isinstance(node, Amount):
        return len(node.values)
    if isinstance(node, tuple):
        return max((_widest(part) for part in node), default=1)
    slots = getattr(node, "__dataclass_fields__", None) or ()
    return max((_widest(getattr(node, name)) for name in slots), default=1)


def _varies(node: object) -> bool:
    """Whether any number in the tree has one value for each size."""
    if isinstance(node, Amount):
        return node.varies
    if isinstance(node, tuple):
        return any(_varies(part) for part in node)
    slots = getattr(node, "__dataclass_fields__", None)
    return bool(slots) and any(_varies(getattr(node, name)) for name in slots or ())


def _once(found: Iterable[tuple[str, Problem]], sizes: int) -> tuple[Problem, ...]:
    """The same code at the same place is one problem; where only some sizes have it, its message names them."""
    first: dict[tuple[object, ...], Problem] = {}
    where: dict[tuple[object, ...], list[str]] = {}
    for name, problem in found:
        key = (problem.code, problem.span)
        first.setdefault(key, problem)
        names = where.setdefault(key, [])
        if name not in names:
            names.append(name)
    return tuple(
        problem if len(where[key]) == sizes else replace(problem, message=f"{problem.message} (size {', '.join(where[key])})")
        for key, problem in first.items()
    )


def _in_file_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    unique = dict.fromkeys(problems)
    return tuple(sorted(unique, key=lambda p: (p.span.line, p.span.column) if p.span else (0, 0)))
