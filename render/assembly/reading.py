"""What the pattern says of panels and joins, checked: names, sides, parts, and that nothing is joined twice."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import Literal

from motifold.render.assembly.shapes import is_half, is_rows, is_square, side_index, side_names
from motifold.render.assembly.sides import Edge, interval, side_text, stitch_range
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import AssemblySource, JoinSource, NetCell, SidePiece
from motifold.render.pattern.problem import Problem, Span
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class PanelPlan:
    """One panel before it is laid: its motif's Fabric, its cell in the net."""

    name: str
    fabric: Fabric
    sides: tuple[str, ...]
    cell: tuple[int, int] | None
    span: Span


@dataclass(frozen=True, slots=True)
class SeamPlan:
    """One seam before the surface is built; a fold on itself has its two halves as edges and ``b`` None."""

    a: SidePiece
    b: SidePiece | None
    edge_a: Edge
    edge_b: Edge
    twist: bool
    kind: Literal["flat", "fold"]
    stitches: int
    eased: tuple[int, int] | None
    span: Span

    @property
    def name(self) -> str:
        return f"{side_text(self.a)} {'~' if self.twist else '+'} {'itself' if self.b is None else side_text(self.b)}"


def read_panels(source: AssemblySource, fabrics: Mapping[str, Fabric]) -> tuple[tuple[PanelPlan, ...], tuple[Problem, ...]]:
    """The panels in the order of the net (row by row), then as joins name them."""
    problems: list[Problem] = []
    where: dict[str, tuple[tuple[int, int] | None, Span]] = {}
    for cell in sorted(source.net, key=lambda c: (c.row, c.column)):
        if cell.panel in where:
            message = f"{cell.panel} stands twice in the net"
            problems.append(Problem("panel-twice", "error", cell.span, message, "give each panel a name of its own"))
        else:
            where[cell.panel] = ((cell.row, cell.column), cell.span)
    joined = {piece.panel: join.span for join in reversed(source.join) for piece in (join.b, join.a) if piece is not None}
    for name in source.panels:
        if name not in where and name not in joined:
            message = f"{name} is left over: neither the net nor a join has it"
            hint = _suggestion(name, [*where, *joined]) or "put it into the net, or join it"
            problems.append(Problem("panel-left-over", "error", source.span, message, hint))
    for join in source.join:
        for piece in (join.a, join.b):
            if piece is not None and piece.panel not in where and (not source.net or piece.panel in source.panels):
                where[piece.panel] = (None, join.span)
    plans = []
    for name, (place, span) in where.items():
        motif = source.panels.get(name, source.motif)
        fabric = fabrics.get(motif) if motif is not None else None
        if fabric is None or not fabric.sides:
            problems.append(_no_motif(name, motif, fabric, fabrics, span))
        else:
            plans.append(PanelPlan(name, fabric, side_names(fabric), place, span))
    return tuple(plans), tuple(problems)


def _no_motif(name: str, motif: str | None, fabric: Fabric | None, fabrics: Mapping[str, Fabric], span: Span) -> Problem:
    if motif is None:
        message = f"panel {name} has no motif"
        return Problem(
            "panel-motif", "error", span, message, "say `motif = ...` for all panels, or name this one's under [assembly.panels]"
        )
    if fabric is None:
        return Problem("panel-motif", "error", span, f"panel {name}: there is no motif {motif}", _suggestion(motif, fabrics))
    return Problem(
        "panel-motif", "warning", span, f"panel {name}: motif {motif} has no sides that could be joined", "see the problems of its rounds"
    )


def _suggestion(word: str, names: Iterable[str]) -> str | None:
    near = get_close_matches(word, list(names), n=1, cutoff=0.6)
    return f"{near[0]}?" if near else None


def read_seams(source: AssemblySource, panels: tuple[PanelPlan, ...]) -> tuple[tuple[SeamPlan, ...], tuple[Problem, ...]]:
    """Net neighbours first (row by row: to the right, then below), then the joins as written. What can't be joined is left out."""
    number = {panel.name: i for i, panel in enumerate(panels)}
    problems: list[Problem] = []
    seams: list[SeamPlan] = []
    for join in net_joins(source.net, panels, number, problems):
        plan = _seam(join, panels, number, problems, "flat")
        if plan is not None:
            seams.append(plan)
    for join in source.join:
        plan = _seam(join, panels, number, problems, "fold")
        if plan is not None:
            seams.append(plan)
    return _once(seams, panels, problems), tuple(problems)


def net_joins(
    net: tuple[NetCell, ...], panels: tuple[PanelPlan, ...], number: Mapping[str, int], problems: list[Problem]
) -> list[JoinSource]:
    """Neighbours in the net, as joins."""
    at = {panel.cell: panel for panel in panels if panel.cell is not None}
    spans = {cell.panel: cell.span for cell in net}
    joins = []
    told: set[str] = set()
    for panel in panels:
        if panel.cell is None:
            continue
        row, column = panel.cell
        for other, side, facing in ((at.get((row, column + 1)), "right", "left"), (at.get((row + 1, column)), "bottom", "top")):
            if other is None:
                continue
            odd = next((p for p in (panel, other) if not is_square(p.fabric)), None)
            if odd is None:
                joins.append(JoinSource(spans[other.name], SidePiece(panel.name, side), SidePiece(other.name, facing)))
            elif odd.name not in told:
                told.add(odd.name)
                message = f"{odd.name} has {len(odd.sides)} sides: a net's neighbours are squares"
                problems.append(
                    Problem(
                        "net-shape", "error", spans[odd.name], message, "leave an empty place (.) round it and say in `join` what meets"
                    )
                )
    return joins


def resolve(piece: SidePiece, panels: tuple[PanelPlan, ...], number: Mapping[str, int]) -> SidePiece | str:
    """The piece with its side's proper name, or what is wrong with it."""
    at = number.get(piece.panel)
    if at is None:
        near = _suggestion(piece.panel, number)
        return f"there is no panel {piece.panel}" + (f": {near}" if near else "")
    sides = panels[at].sides
    index = side_index(sides, piece.side)
    if index is None:
        near = _suggestion(piece.side, sides)
        return f"{piece.panel} has no side {piece.side}: " + (near or f"its sides are {', '.join(sides)}")
    if not 1 <= piece.part <= piece.parts:
        return f"{side_text(piece)}: there is no part {piece.part} of {piece.parts}"
    return replace(piece, side=sides[index])


def _seam(
    join: JoinSource, panels: tuple[PanelPlan, ...], number: Mapping[str, int], problems: list[Problem], kind: Literal["flat", "fold"]
) -> SeamPlan | None:
    found: list[SidePiece] = []
    for piece in (join.a, join.b):
        if piece is None:
            continue
        right = resolve(piece, panels, number)
        if isinstance(right, str):
            message, _, hint = right.partition(": ")
            code = "unknown-side" if piece.panel in number else "unknown-panel"
            problems.append(Problem(code, "error", join.span, message, hint or None))
        else:
            found.append(right)
    if len(found) < (1 if join.b is None else 2):
        return None
    a, b = found[0], found[1] if join.b is not None else None
    if a == b:
        hint = f'to fold it on itself write "{side_text(a)} + itself"'
        problems.append(Problem("joined-twice", "error", join.span, f"{side_text(a)} is joined to itself as if it were two sides", hint))
        return None
    edge_a, edge_b = _edges(a, b, panels, number)
    stitches, eased = _stitches(join, a, b, panels, number, problems)
    return SeamPlan(a, b, edge_a, edge_b, join.twist, kind, stitches, eased, join.span)


def _edges(a: SidePiece, b: SidePiece | None, panels: tuple[PanelPlan, ...], number: Mapping[str, int]) -> tuple[Edge, Edge]:
    panel, (low, high) = number[a.panel], interval(a)
    side = panels[panel].sides.index(a.side)
    if b is None:
        middle = (low + high) / 2
        return Edge(panel, side, low, middle), Edge(panel, side, middle, high)
    other = number[b.panel]
    return Edge(panel, side, low, high), Edge(other, panels[other].sides.index(b.side), *interval(b))


def _stitches(
    join: JoinSource, a: SidePiece, b: SidePiece | None, panels: tuple[PanelPlan, ...], number: Mapping[str, int], problems: list[Problem]
) -> tuple[int, tuple[int, int] | None]:
    """Stitches of the seam, and both counts where the longer side is eased in. A side folded on itself pairs from its ends."""
    least_a, most_a = _range(a, panels, number)
    if b is None:
        return most_a // 2, None
    least_b, most_b = _range(b, panels, number)
    if max(least_a, least_b) <= min(most_a, most_b):
        return min(most_a, most_b), None
    if join.ease:
        return min(most_a, most_b), (most_a, most_b)
    if abs(most_a - most_b) == 1 and any(_ends_on_cut(piece, panels, number) for piece in (a, b)):
        return min(most_a, most_b), None  # at the cut a half has no corner chain for that of the whole motif
    if join.ratio is not None and _in_ratio(most_a, most_b, join.ratio):
        return min(most_a, most_b), (most_a, most_b)
    rows = any(is_rows(panels[number[p.panel]].fabric) and p.side in ("left", "right") for p in (a, b))
    message = f"{side_text(a)} has {_sts(most_a)} but {side_text(b)} has {_sts(most_b)}: they don't meet one to one"
    hint = (
        "row ends seldom do; say how they meet, or ease the longer one in"
        if rows
        else "work the same rounds in both, or ease the longer one in"
    )
    problems.append(Problem("sides-differ", "error", join.span, message, hint))
    return min(most_a, most_b), None


def _ends_on_cut(piece: SidePiece, panels: tuple[PanelPlan, ...], number: Mapping[str, int]) -> bool:
    panel = panels[number[piece.panel]]
    side = panel.fabric.sides[panel.sides.index(piece.side)]
    return is_half(panel.fabric) and (side.start is None) != (side.end is None)


def _in_ratio(a: int, b: int, ratio: tuple[int, int]) -> bool:
    """Whether the counts meet as the ratio says, to the nearest stitch, either way round."""
    first, second = ratio
    return abs(a * second - b * first) < max(ratio) or abs(a * first - b * second) < max(ratio)


def _range(piece: SidePiece, panels: tuple[PanelPlan, ...], number: Mapping[str, int]) -> tuple[int, int]:
    panel = panels[number[piece.panel]]
    return stitch_range(panel.fabric.sides[panel.sides.index(piece.side)], *interval(piece))


def _sts(count: int) -> str:
    return "1 stitch" if count == 1 else f"{count} stitches"


def _free_side(edge: Edge, seams: Sequence[SeamPlan], panels: tuple[PanelPlan, ...]) -> str:
    """The hint for a side with two seams: which sides of its panel have none."""
    used = {(e.panel, e.side) for seam in seams for e in (seam.edge_a, seam.edge_b)}
    panel = panels[edge.panel]
    free = [f"{panel.name}.{side}" for i, side in enumerate(panel.sides) if (edge.panel, i) not in used]
    return "each side has one seam" + (f"; {' and '.join(free)} {'has' if len(free) == 1 else 'have'} none" if 0 < len(free) < 3 else "")


def _once(seams: list[SeamPlan], panels: tuple[PanelPlan, ...], problems: list[Problem]) -> tuple[SeamPlan, ...]:
    """Leave out what takes a stretch of a side that another seam has already."""
    taken: dict[tuple[int, int], list[tuple[Edge, SeamPlan]]] = {}
    kept = []
    for seam in seams:
        edges = (seam.edge_a, seam.edge_b)
        clash = next(
            (
                (edge, other)
                for edge in edges
                for before, other in taken.get((edge.panel, edge.side), ())
                if edge.low < before.high and before.low < edge.high
            ),
            None,
        )
        own = seam.edge_a.panel == seam.edge_b.panel and seam.edge_a.side == seam.edge_b.side
        if own and seam.edge_a.low < seam.edge_b.high and seam.edge_b.low < seam.edge_a.high:
            clash = (seam.edge_a, seam)
        if clash is not None:
            edge, other = clash
            name = f"{panels[edge.panel].name}.{panels[edge.panel].sides[edge.side]}"
            first = f"the net joins {other.name}" if other.kind == "flat" else f"{other.name} stands before"
            message = f"{name} is joined twice: {seam.name}, and {first}"
            problems.append(Problem("joined-twice", "error", seam.span, message, _free_side(edge, seams, panels)))
            continue
        for edge in edges:
            taken.setdefault((edge.panel, edge.side), []).append((edge, seam))
        kept.append(seam)
    return tuple(kept)
