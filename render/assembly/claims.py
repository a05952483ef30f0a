"""What the pattern claims against what was found."""

from __future__ import annotations

from fractions import Fraction

from motifold.render.assembly.joint import Joint, piece_of
from motifold.render.assembly.reading import resolve
from motifold.render.assembly.sides import Edge, side_text
from motifold.render.pattern.model import AssemblySource
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


def open_differs(source: AssemblySource, joint: Joint) -> list[Problem]:
    if source.open is None:
        return []
    number = {panel.name: i for i, panel in enumerate(joint.panels)}
    problems = []
    claimed: set[Edge] = set()
    for piece in source.open:
        right = resolve(piece, joint.panels, number)
        if isinstance(right, str):
            message, _, hint = right.partition(": ")
            problems.append(Problem("open-unknown", "error", source.span, f"open: {message}", hint or None))
            continue
        panel = number[right.panel]
        side = joint.panels[panel].sides.index(right.side)
        low, high = Fraction(right.part - 1, right.parts), Fraction(right.part, right.parts)
        claimed.update(e for e in joint.edges if e.panel == panel and e.side == side and e.low < high and low < e.high)
    found = {joint.edges[e] for rim in joint.surface.rims for e in rim.edges}
    closed = [side_text(piece_of(joint, edge)) for edge in sorted(claimed - found, key=joint.number.__getitem__)]
    left = [side_text(piece_of(joint, edge)) for edge in sorted(found - claimed, key=joint.number.__getitem__)]
    said = []
    if closed:
        said.append(f"{', '.join(closed)} should stay open but {'is' if len(closed) == 1 else 'are'} joined")
    if left:
        said.append(f"{', '.join(left)} {'stays' if len(left) == 1 else 'stay'} open and `open` doesn't say so")
    if said:
        problems.append(Problem("open-differs", "error", source.span, "; ".join(said), "mend `join`, or what `open` claims"))
    return problems
