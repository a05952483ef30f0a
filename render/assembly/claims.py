"""What the pattern claims against what was found."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.assembly.joint import Joint, piece_of
from motifold.render.assembly.reading import SeamPlan, resolve
from motifold.render.assembly.sides import Edge, interval, side_text
from motifold.render.pattern.model import AssemblySource, SidePiece
from motifold.render.pattern.problem import Problem


def unjoined(source: AssemblySource, joint: Joint) -> list[Problem]:
    met = {edge.panel for seam in joint.seams for edge in (seam.edge_a, seam.edge_b)}
    if len(joint.panels) == 1 and not source.join:
        return []
    return [
        Problem(
            "panel-unjoined",
            "error",
            panel.span,
            f"{panel.name} is joined to nothing",
            "put it beside another in the net, or join one of its sides",
        )
        for i, panel in enumerate(joint.panels)
        if i not in met
    ]


def open_differs(source: AssemblySource, joint: Joint, joins_failed: bool) -> list[Problem]:
    """What ``open`` claims against what stays open, told where the wrong join stands, else at ``open``.

    ``joins_failed``: some joins were left out, each told by itself; what stays open for want of them is no second mistake.
    """
    if source.open is None:
        return []
    at = source.open_span or source.span
    problems = []
    claimed: set[Edge] = set()
    for piece in source.open:
        edges = _edges_of(piece, joint)
        if isinstance(edges, str):
            message, _, hint = edges.partition(": ")
            problems.append(Problem("open-unknown", "error", at, f"open: {message}", hint or None))
        else:
            claimed.update(edges)
    found = {joint.edges[e] for rim in joint.surface.rims for e in rim.edges}
    closed = sorted(claimed - found, key=joint.number.__getitem__)
    left = [] if joins_failed else sorted(found - claimed, key=joint.number.__getitem__)
    if not closed and not left:
        return problems
    seams = [joint.seams[joint.seam_of[joint.number[edge]][0]] for edge in closed]
    by_fold = [seam for seam in seams if seam.kind == "fold"]
    said = []
    if closed:
        said.append(f"{_listed(joint, closed)} should stay open but {'is' if len(closed) == 1 else 'are'} joined")
    if left:
        said.append(f"{_listed(joint, left)} {'stays' if len(left) == 1 else 'stay'} open and `open` doesn't say so")
    hint = "mend `join`, or what `open` claims"
    if closed and left and by_fold:
        hint = f"is {_listed(joint, left)} meant here instead of {_listed(joint, closed)}?"
    return [*problems, Problem("open-differs", "error", by_fold[0].span if by_fold else at, "; ".join(said), hint)]


def _edges_of(piece: SidePiece, joint: Joint) -> list[Edge] | str:
    """The stretches that a side is cut into; in words, what is wrong with it."""
    number = {panel.name: i for i, panel in enumerate(joint.panels)}
    right = resolve(piece, joint.panels, number)
    if isinstance(right, str):
        return right
    panel = number[right.panel]
    side = joint.panels[panel].sides.index(right.side)
    low, high = interval(right)
    return [e for e in joint.edges if e.panel == panel and e.side == side and e.low < high and low < e.high]


def _listed(joint: Joint, edges: Sequence[Edge]) -> str:
    return ", ".join(side_text(piece_of(joint, edge)) for edge in edges)


def rolled(source: AssemblySource, joint: Joint) -> list[Problem]:
    """Sides that are an opening all by themselves because a join brings their two ends together.

    So it is in a tube of one panel; where the panel's neighbours do it, a join most likely names the wrong side. What ``open`` claims, or
    what is joined on purpose to its own panel, is not doubted.
    """
    if source.open is not None:
        return []
    problems = []
    for rim in joint.surface.rims:
        if len(rim.edges) != 1:
            continue
        edge = joint.edges[rim.edges[0]]
        own = [seam for seam in joint.seams if edge.panel in (seam.edge_a.panel, seam.edge_b.panel)]
        if any(seam.edge_a.panel == seam.edge_b.panel for seam in own) or edge.low != 0 or edge.high != 1:
            continue
        count = len(joint.panels[edge.panel].sides)
        beside = ((edge.panel, (edge.side + 1) % count), (edge.panel, (edge.side - 1) % count))
        last = next((s for s in reversed(own) if s.kind == "fold" and any((e.panel, e.side) in beside for e in _both(s))), None)
        if last is not None:
            side = side_text(piece_of(joint, edge))
            message = f"{last.name} brings both ends of {side} together: it stays a hole by itself"
            hint = f"is {side} meant in this join? If the hole is meant, say so in `open`"
            problems.append(Problem("side-rolled", "warning", last.span, message, hint))
    return problems


def _both(seam: SeamPlan) -> tuple[Edge, Edge]:
    return seam.edge_a, seam.edge_b
