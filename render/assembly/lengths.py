"""How long every side is: from the motifs' widths, else from the sides that they are joined to, else by their stitches alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from motifold.render.assembly.model import Assembly
from motifold.render.assembly.reading import PanelPlan, SeamPlan
from motifold.render.assembly.shapes import Point, Shape, first_side_cm, is_rows, shape_of
from motifold.render.assembly.sides import Edge
from motifold.render.assembly.unfold import Hinge, lay_out
from motifold.render.fabric.model import Fabric
from motifold.symbols.record import dataclass

NOMINAL_STITCH_CM = 0.5  # only for proportions, where no width is known
LITTLE = 1.15  # the longer of two sides that lie on each other over the shorter: more makes folds

# What a motif is measured by: the side of the whole motif, or for rows "across" (top and bottom) and "along" (the row ends).
_Key = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Measured:
    """A panel's shape in cm, and which of its sides are truly that long."""

    shape: Shape
    known: tuple[bool, ...]


def shapes_of(
    panels: tuple[PanelPlan, ...],
    seams: tuple[SeamPlan, ...],
    widths_cm: Mapping[str, float | None],
    heights_cm: Mapping[str, float | None],
    measured_on: str | None = None,
) -> tuple[tuple[Measured, ...], bool]:
    """The shape of each panel, and whether every length is true.

    Sides sewn together are equally long, which tells the size of a motif that nobody measured: better than what was worked out for it from
    the motif ``measured_on`` by the heights of its stitches, which knows nothing of its shape (nor how wide its rows are). So does the
    motif that it is eased to a little on all its sides.
    """
    fabrics = {panel.fabric.name: panel.fabric for panel in panels}
    units = {name: shape_of(fabric) for name, fabric in fabrics.items()}
    lengths: dict[_Key, float] = {}
    for name, fabric in fabrics.items():
        width, height = widths_cm.get(name), heights_cm.get(name)
        if width and measured_on in (None, name):
            lengths[name, "across"] = width if is_rows(fabric) else first_side_cm(fabric, width)
        if height and is_rows(fabric):
            lengths[name, "along"] = height
    even = [seam for seam in seams if seam.eased is None]
    _pass_on(lengths, panels, even, units)
    _pass_on(lengths, panels, _eased_all_round(panels, seams), units)
    for name, fabric in fabrics.items():
        width = widths_cm.get(name)
        if width and (name, "across") not in lengths:
            lengths[name, "across"] = width if is_rows(fabric) else first_side_cm(fabric, width)
            _pass_on(lengths, panels, even, units)
    stitch = _stitch_cm(lengths, fabrics, units)
    measured = {name: _measured(fabric, units[name], lengths, stitch) for name, fabric in fabrics.items()}
    return tuple(measured[panel.fabric.name] for panel in panels), all(all(m.known) for m in measured.values())


def widths_as_joined(assembly: Assembly, fabrics: Mapping[str, Fabric]) -> dict[str, float]:
    """How wide each panel's motif is by the sides that it is joined to."""
    found: dict[str, float] = {}
    for panel in assembly.panels:
        side = panel.sides_cm[0] if panel.sides_cm else None  # of one worked in rows the top, which is as long as it is wide
        if side is not None:
            found[panel.motif] = side / first_side_cm(fabrics[panel.motif], 1.0)
    return found


def _measured(fabric: Fabric, unit: Shape, lengths: Mapping[_Key, float], stitch: float) -> Measured:
    across, along = lengths.get((fabric.name, "across")), lengths.get((fabric.name, "along"))
    if not is_rows(fabric):
        size = across if across is not None else max(fabric.sides[0].stitches, 1) * stitch / unit.lengths[0]
        return Measured(unit.scaled(size), (across is not None,) * len(unit.names))
    stitches = dict(zip(unit.names, (max(side.stitches, 1) for side in fabric.sides), strict=True))
    width = across if across is not None else stitches["bottom"] * stitch
    height = along if along is not None else width * stitches["left"] / stitches["bottom"]
    known = {"top": across is not None, "bottom": across is not None, "left": along is not None, "right": along is not None}
    return Measured(unit.scaled(width, height), tuple(known[name] for name in unit.names))


def _key(panel: PanelPlan, side: int) -> _Key:
    along = is_rows(panel.fabric) and panel.sides[side] in ("left", "right")
    return panel.fabric.name, "along" if along else "across"


def _eased_all_round(panels: tuple[PanelPlan, ...], seams: Sequence[SeamPlan]) -> list[SeamPlan]:
    """The seams of two panels that are joined to each other on all their sides, the longer one eased in by ``LITTLE`` at most."""
    found: dict[tuple[int, int], list[SeamPlan]] = {}
    for seam in seams:
        if seam.eased is not None and _whole(seam.edge_a) and _whole(seam.edge_b) and max(seam.eased) <= LITTLE * min(seam.eased):
            found.setdefault((seam.edge_a.panel, seam.edge_b.panel), []).append(seam)
    return [seam for (a, b), ones in found.items() if len(ones) == len(panels[a].sides) == len(panels[b].sides) for seam in ones]


def _pass_on(lengths: dict[_Key, float], panels: tuple[PanelPlan, ...], seams: Sequence[SeamPlan], units: Mapping[str, Shape]) -> None:
    meetings = set()
    for seam in seams:
        ends = []
        for edge in (seam.edge_a, seam.edge_b):
            panel = panels[edge.panel]
            share = float(edge.high - edge.low) * units[panel.fabric.name].lengths[edge.side]
            ends.append((_key(panel, edge.side), share))
        meetings.add((ends[0], ends[1]))
        meetings.add((ends[1], ends[0]))
    ordered = sorted(meetings)
    changed = True
    while changed:
        changed = False
        for (known, part), (unknown, other) in ordered:
            if known in lengths and unknown not in lengths:
                lengths[unknown] = lengths[known] * part / other
                changed = True


def _stitch_cm(lengths: Mapping[_Key, float], fabrics: Mapping[str, Fabric], units: Mapping[str, Shape]) -> float:
    """How wide one stitch is, by the first motif that is measured."""
    for name, fabric in fabrics.items():
        length = lengths.get((name, "across"))
        if length is not None and fabric.sides[0].stitches:
            return length * units[name].lengths[0] / fabric.sides[0].stitches
    return NOMINAL_STITCH_CM


def lay_panels(
    panels: tuple[PanelPlan, ...], seams: tuple[SeamPlan, ...], shapes: tuple[Measured, ...], adds_cm: float
) -> tuple[tuple[Point, ...], ...]:
    """The outline of every panel as it lies before it is folded, right side up."""
    flat: list[Hinge] = []
    folds: list[Hinge] = []
    for seam in seams:
        a, b = seam.edge_a, seam.edge_b
        if not seam.twist and seam.b is not None and _whole(a) and _whole(b) and (seam.kind == "flat" or _as_long(shapes, a, b)):
            (flat if seam.kind == "flat" else folds).append(Hinge(a.panel, a.side, b.panel, b.side))
    return lay_out([m.shape for m in shapes], [panel.cell for panel in panels], flat, folds, adds_cm)


def _as_long(shapes: Sequence[Measured], a: Edge, b: Edge) -> bool:
    """Whether two sides can lie against each other: where the longer one is eased in, they lie apart until they are sewn."""
    one, two = shapes[a.panel].shape.lengths[a.side], shapes[b.panel].shape.lengths[b.side]
    return abs(one - two) < 0.02 * max(one, two)


def _whole(edge: Edge) -> bool:
    return edge.low == 0 and edge.high == 1
