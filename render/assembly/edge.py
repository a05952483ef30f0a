"""What an edging meets along an opening: every stitch and space of the open sides, in the order that a worker comes to them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace

from motifold.render.assembly.model import Assembly, Opening, Panel
from motifold.render.assembly.shapes import side_index
from motifold.render.assembly.sides import interval, items_between, side_text
from motifold.render.fabric.model import EdgeItem, Fabric, GivenItem, Side
from motifold.render.pattern.model import SidePiece
from motifold.render.pattern.problem import Problem, Span
from motifold.render.pattern.spelling import nearest

STRAIGHT_ON = 179.0  # degrees: where panels meet with less than this between their open sides, the edge turns a corner


def opening_edge(assembly: Assembly, fabrics: Mapping[str, Fabric], side: SidePiece) -> tuple[GivenItem, ...]:
    """The opening that ``side`` lies on, from that side on, as a right-handed worker meets it, right side facing: right to left.

    Each panel brings its own corner place at either end of its side; where two sides of one panel follow each other its corner is met once.
    After a twist a side is met backwards, its wrong side facing. Empty where ``side`` is on no opening.
    """
    panels = {panel.name: panel for panel in assembly.panels}
    found = _find(assembly, panels, side)
    if found is None:
        return ()
    opening, start = found
    count = len(opening.sides)
    order = [(start + i) % count for i in range(count)]
    turns = _turns_outward(assembly, panels, opening)
    given: list[GivenItem] = []
    for at, i in enumerate(order):
        piece, backwards = opening.sides[i], opening.reversed[i] if opening.reversed else False
        after = order[(at + 1) % count]
        shared = _turns_corner(panels[piece.panel], piece, opening.sides[after], backwards)
        met = _along(fabrics, panels[piece.panel], piece, backwards, shared)
        for place, ahead in ((0, i), (-1, after)) if turns and met else ():
            # the corner that this panel shares with itself is met with the next side
            if met[place].corner and not turns[ahead] and not (place and shared):
                met[place] = replace(met[place], passing=True)
        given += met
    return tuple(given)


def _turns_outward(assembly: Assembly, panels: Mapping[str, Panel], opening: Opening) -> tuple[bool, ...]:
    """For each side of an opening whether the opening turns outward where it is come to; () where it does so nowhere, as on a bag's rim."""
    degrees = {at: corner.degrees for corner in assembly.corners for at in corner.at}
    found = []
    for i, piece in enumerate(opening.sides):
        backwards = bool(opening.reversed) and opening.reversed[i]
        sides = panels[piece.panel].sides
        at_corner = piece.part == (piece.parts if backwards else 1)
        corner = (sides.index(piece.side) + int(backwards)) % len(sides)
        found.append(at_corner and degrees.get((piece.panel, corner), 180.0) < STRAIGHT_ON)
    return tuple(found) if any(found) else ()


def sides_met(fabric: Fabric, given: Sequence[GivenItem]) -> tuple[str, ...]:
    """The sides along which an edging is worked: those of which half the places or more are met; () where that is all of them."""
    side_of: dict[tuple[bool, int], str] = {}
    stitch = run = 0
    for item in given:
        if item.kind == "space":
            side_of[True, run] = item.side
            side_of.update({(False, stitch + chain): item.side for chain in range(item.chains)})
            stitch, run = stitch + item.chains, run + 1
        else:
            side_of[False, stitch] = item.side
            stitch += 1
    met: dict[str, set[tuple[bool, int]]] = {}
    for made in fabric.stitches:
        for leg in made.legs if made.role != "given" else ():
            key = (leg.base.kind == "space", leg.base.id)
            if key in side_of:
                met.setdefault(side_of[key], set()).add(key)
    places = Counter(item.side for item in given if not item.corner)
    found = tuple(side for side, count in places.items() if 2 * len(met.get(side, ())) >= count)
    return found if len(found) < len(places) else ()


def no_opening(assembly: Assembly, side: SidePiece, span: Span) -> Problem | None:
    """The problem that an edging's side is not there, or lies on no opening; None where it lies on one."""
    panels = {panel.name: panel for panel in assembly.panels}
    panel = panels.get(side.panel)
    if panel is None or _find(assembly, panels, side) is not None:
        return None
    if side_index(panel.sides, side.side) is None:
        near = nearest(side.side, panel.sides)
        message = f"{panel.name} has no side {side.side}"
        return Problem("open-unknown", "error", span, message, f"{near}?" if near else f"its sides are {', '.join(panel.sides)}")
    shown = side_text(side)
    seam = next((seam for seam in assembly.seams if side in (seam.a, seam.b)), None)
    other = None if seam is None or seam.b is None else seam.b if seam.a == side else seam.a
    joined = f", it is joined to {side_text(other)}" if other is not None else ""
    sides = [side_text(piece) for opening in assembly.openings for piece in opening.sides[:1]]
    hint = f"for example {', or '.join(sides[:2])}" if sides else "nothing is left open"
    return Problem("open-unknown", "error", span, f"{shown} lies on no opening{joined}", hint)


def _find(assembly: Assembly, panels: Mapping[str, Panel], side: SidePiece) -> tuple[Opening, int] | None:
    panel = panels.get(side.panel)
    index = side_index(panel.sides, side.side) if panel is not None else None
    if panel is None or index is None:
        return None
    low, high = interval(side)
    for opening in assembly.openings:
        for i, piece in enumerate(opening.sides):
            first, last = interval(piece)
            if piece.panel == side.panel and piece.side == panel.sides[index] and first < high and low < last:
                return opening, i
    return None


def _turns_corner(panel: Panel, piece: SidePiece, after: SidePiece, backwards: bool) -> bool:
    """Whether the next side is the same panel's, round its own corner, so that this corner is met once."""
    if after.panel != piece.panel:
        return False
    count = len(panel.sides)
    step = -1 if backwards else 1
    at, then = panel.sides.index(piece.side), panel.sides.index(after.side)
    ends = piece.part == (1 if backwards else piece.parts)
    starts = after.part == (after.parts if backwards else 1)
    return ends and starts and (at + step) % count == then


def _along(fabrics: Mapping[str, Fabric], panel: Panel, piece: SidePiece, backwards: bool, shared: bool) -> list[GivenItem]:
    fabric = fabrics[panel.motif]
    side = fabric.sides[panel.sides.index(piece.side)]
    items = items_between(fabric, side, *interval(piece))
    ends = (0, len(items) - 1) if fabric.worked == "rows" and side.name in ("top", "bottom") and piece.parts == 1 else ()
    whole: list[tuple[EdgeItem, bool]] = [(item, number in ends) for number, item in enumerate(items)]
    if piece.part == 1 and side.start is not None:
        whole.insert(0, (side.start, True))
    if piece.part == piece.parts and side.end is not None:
        whole.append((side.end, True))
    if backwards:
        whole.reverse()
    if shared and whole and whole[-1][1] and fabric.worked != "rows":
        whole.pop()
    return [_given(fabric, side, item, corner, i == 0, piece) for i, (item, corner) in enumerate(whole)]


def _given(fabric: Fabric, side: Side, item: EdgeItem, corner: bool, first: bool, piece: SidePiece) -> GivenItem:
    name, chains = "", 0
    if item.kind == "space":
        chains = fabric.runs[item.id].chains
    elif item.kind == "group":
        name = fabric.groups[item.id].name or "group"
    else:
        name = "row end" if fabric.runs_along_row_ends(side) else fabric.stitches[item.id].kind
    return GivenItem(
        "space" if item.kind == "space" else "stitch",
        name,
        chains,
        corner,
        first,
        side_text(piece),
        fabric.name,
        item,
        *fabric.named_group(item),
    )
