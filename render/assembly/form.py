"""What an assembly is when it is finished, found from its panels: flat, a tube, a disc, folded in two layers, or standing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from math import hypot

from motifold.render.assembly.brim import with_rims
from motifold.render.assembly.drum import Drum, drum_of
from motifold.render.assembly.flatlay import Flatlay, lay
from motifold.render.assembly.folded_paint import rim_points, turned_to_front
from motifold.render.assembly.foldflat import Folded, fold_flat, in_front
from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.rims import Edge, band, depth_at, estimated_in, is_bag, worn_over
from motifold.render.assembly.sides import side_text
from motifold.render.assembly.solid import MOST_PANELS, Solid, stand_up
from motifold.render.assembly.standing import as_box, edge_length
from motifold.render.drawing.display import Point
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Plan:
    """It lies flat as its panels were laid; cm."""

    wide: float
    high: float


@dataclass(frozen=True, slots=True)
class Disc:
    """Two circles joined round their edges; cm."""

    across: float


@dataclass(frozen=True, slots=True)
class Measure:
    """One length of the finished thing, as what lies or stands is measured.

    ``name``: "width", "height", "depth", "round" (a tube's girth), "flat width", "flat height", "across", "opening" (each one's girth).
    ``estimate``: it holds an edging whose depth nobody measured.
    """

    name: str
    cm: float
    estimate: bool = False


@dataclass(frozen=True, slots=True)
class Tube:
    """A ring of panels without points: length round, and depth, in cm (nominal where nothing is measured)."""

    around: float
    deep: float
    twisted: bool
    one_sided: bool


@lru_cache(maxsize=8)  # words, numbers and drawings ask for the same one, and to fold it is a search
def finished_form(assembly: Assembly) -> Plan | Tube | Disc | Folded | Solid | None:
    """The form of one copy; None where it does not follow from the panels (see ``finished_note``).

    Flat if it lies flat; then a tube or two discs; then what stands as its panels are; else two layers, folded.
    """
    if lies_flat(assembly):
        points = [p for panel in assembly.panels if panel.copy == 1 for p in panel.outline_cm]
        return Plan(max(x for x, _ in points) - min(x for x, _ in points), max(y for _, y in points) - min(y for _, y in points))
    tube = tube_of(assembly)
    if tube is not None:
        return tube
    disc = _disc_of(assembly)
    if disc is not None:
        return disc
    solid = stand_up(assembly, upside_down=worn_over(assembly))
    if solid is not None and not solid.flat:
        # What is no box and lies flat in two layers as its panels are is soft: a mitt, a cushion with a slit.
        folded = None if as_box(solid) or not assembly.openings else fold_flat(assembly, most_folds=0)
        if folded is None:
            return solid
    else:
        folded = fold_flat(assembly)
    if folded is not None and is_bag(assembly) and len(assembly.openings) == assembly.copies:
        split = abs(in_front(folded.panels, folded.rim)) < 1e-3 * rim_length(assembly, 0)
        folded = folded if split else fold_flat(assembly, mouth=True) or folded
    # With three openings or more it is worn: they hang down.
    worn = worn_over(assembly) or len(assembly.openings) >= 3 * assembly.copies
    return turned_to_front(folded, worn, tube_openings(assembly)[-1] if assembly.openings else 0) if folded is not None else None


def edged_form(assembly: Assembly, rims: Sequence[Rim]) -> Plan | Tube | Disc | Drum | Folded | Solid | None:
    """The form with the edgings ``rims``: straight rounds on a circle make it a drum."""
    return drum_of(assembly, rims) or finished_form(assembly)


def finished_note(assembly: Assembly) -> str | None:
    """Why there is no drawing of the finished thing, in one sentence; None where there is one."""
    if finished_form(assembly) is not None:
        return None
    if assembly.pieces != assembly.copies:
        number = assembly.pieces // max(assembly.copies, 1)
        return f"There is no drawing of the finished thing: its panels are joined into {number} separate pieces."
    if not assembly.orientable:
        return "There is no drawing of the finished thing: after its twist it has one side only, and its panels have to bend."
    count = sum(panel.copy == 1 for panel in assembly.panels)
    if count > MOST_PANELS:
        return f"There is no drawing of the finished thing: it has {count} panels, and more than {MOST_PANELS} are not drawn in space."
    return "There is no drawing of the finished thing: it does not stand as its panels are, nor lie in two layers with one fold a panel."


def finished_measures(assembly: Assembly, rims: Sequence[Rim] = ()) -> tuple[Measure, ...]:
    """What the finished thing measures, with the edgings ``rims`` (an opening's girth: where they are worked on).

    Of what has no drawing only the openings, nothing where nothing was measured.
    """
    if not assembly.scaled:
        return ()
    if not estimated_in(rims):
        return _measured(assembly, rims)
    bare = {(one.name, one.cm) for one in _measured(assembly, ())}
    drum = drum_of(assembly, rims)
    bare |= {("across", round(drum.across, 6))} if drum is not None else set()
    return tuple(replace(one, estimate=(one.name, one.cm) not in bare) for one in _measured(assembly, rims))


def _measured(assembly: Assembly, rims: Sequence[Rim]) -> tuple[Measure, ...]:
    found: list[tuple[str, float]] = []
    match edged_form(assembly, rims):
        case Plan():
            flat = lay(assembly, 100.0, 100.0)
            points = [*(p for outline in flat.outlines for p in outline), *plan_reach(assembly, flat, rims)]
            wide, high = (max(p[k] for p in points) - min(p[k] for p in points) for k in (0, 1))
            return Measure("width", round(wide / flat.mm_per_cm, 6)), Measure("height", round(high / flat.mm_per_cm, 6))
        case Tube() as tube:
            deep = tube.deep + tube_ends(assembly, rims)
            return Measure("round", tube.around), Measure("flat width", tube.around / 2), Measure("depth", deep)
        case Disc(across):
            return (Measure("across", across),)
        case Drum(across, deep):
            return Measure("across", round(across, 6)), Measure("depth", round(deep, 6))
        case Folded() as folded:
            points = [*folded.points, *rim_points(folded, rims)]
            found.append(("flat width", max(x for x, _ in points) - min(x for x, _ in points)))
            found.append(("flat height", max(y for _, y in points) - min(y for _, y in points)))
        case Solid() as solid:
            # An edging round an opening that lies in two planes makes no box: then it is measured without.
            box = as_box(with_rims(solid, rims)) or as_box(solid)
            found += list(zip(("width", "depth", "height"), box, strict=True)) if box else [("across", across_corners(solid))]
        case None:
            pass
    openings = assembly.openings[: len(assembly.openings) // assembly.copies]
    found += [("opening", opening.girth_cm) for opening in openings if opening.girth_cm is not None]
    return tuple(Measure(name, round(cm, 6)) for name, cm in found)


@dataclass(frozen=True, slots=True)
class PlanBand:
    """An edging along the open edges of what lies flat: a strip for each edge, its first two corners on that edge."""

    rim: Rim
    quads: tuple[tuple[Point, Point, Point, Point], ...]


def plan_bands(assembly: Assembly, flat: Flatlay, rims: Sequence[Rim], opening: int) -> tuple[list[PlanBand], list[Edge]]:
    """The edgings of an opening where it is laid, one beyond the other, and the edges that are left open outside them all."""
    edges = [(Edge(a, b), side_text(piece)) for piece in assembly.openings[opening].sides for a, b in pairwise(flat.piece(piece))]
    bands = []
    for rim in (rim for rim in rims if rim.opening == opening):
        along = [i for i, (_, side) in enumerate(edges) if not rim.sides or side in rim.sides]
        quads = band([edges[i][0] for i in along], (-1 if rim.turned else 1) * rim.depth_cm * flat.mm_per_cm)
        bands.append(PlanBand(rim, tuple(quads)))
        if not rim.turned:
            for i, quad in zip(along, quads, strict=True):
                edges[i] = (Edge(quad[3], quad[2]), edges[i][1])
    return bands, [edge for edge, _ in edges]


def plan_reach(assembly: Assembly, flat: Flatlay, rims: Sequence[Rim]) -> list[Point]:
    """How far the edgings of the outer edge reach, in mm where it is laid; empty where there are none."""
    if not rims:
        return []
    bands, _ = plan_bands(assembly, flat, rims, outer_opening(assembly))
    return [point for one in bands if not one.rim.turned for quad in one.quads for point in quad[2:]]


def outer_opening(assembly: Assembly) -> int:
    """Of what lies flat: the opening that runs round the outside (the others are holes); it reaches farthest to the left."""
    panels = {panel.name: panel for panel in assembly.panels}

    def left(number: int) -> float:
        return min(x for piece in assembly.openings[number].sides for x, _ in panels[piece.panel].outline_cm)

    return min(range(len(assembly.openings) // assembly.copies), key=lambda number: (round(left(number), 6), -rim_length(assembly, number)))


def tube_ends(assembly: Assembly, rims: Sequence[Rim]) -> float:
    """What edgings add to the depth of a tube: those at either end, or of a band with one edge, on both sides of it."""
    openings = len(assembly.openings) // assembly.copies
    return sum(depth_at(rims, opening) for opening in range(openings)) * (2 if openings == 1 else 1)


def tube_openings(assembly: Assembly) -> tuple[int, int]:
    """Which opening of a tube is drawn above and which below, as the net has them; the same one twice where there is but one."""
    count = len(assembly.openings) // assembly.copies
    panels = {panel.name: panel for panel in assembly.panels}

    def height(number: int) -> float:
        ys = []
        for piece in assembly.openings[number].sides:
            outline = panels[piece.panel].outline_cm
            at = panels[piece.panel].sides.index(piece.side)
            ys.append(outline[at % len(outline)][1] + outline[(at + 1) % len(outline)][1])
        return round(sum(ys) / len(ys), 6)

    order = sorted(range(count), key=lambda number: (-height(number), number))
    return order[0], order[-1]


def across_corners(solid: Solid) -> float:
    """The greatest distance between two corners, in cm."""
    return max(edge_length(solid, (i, j)) for i in range(len(solid.points)) for j in range(i))


def lies_flat(assembly: Assembly) -> bool:
    """One piece, every inner corner 360 degrees, and every seam closed as the panels lie."""
    if assembly.pieces != assembly.copies or any(not c.on_opening and abs(c.degrees - 360) > 1e-6 for c in assembly.corners):
        return False
    return all(lay(assembly, 100.0, 100.0).touching)


def _disc_of(assembly: Assembly) -> Disc | None:
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    if len(panels) != 2 or any(len(panel.sides) != 1 for panel in panels) or len(assembly.seams) != assembly.copies:
        return None
    seam = assembly.seams[0]
    if assembly.openings or seam.b is None or seam.a.panel == seam.b.panel:
        return None
    wide = [max(x for x, _ in panel.outline_cm) - min(x for x, _ in panel.outline_cm) for panel in panels]
    return Disc(wide[0]) if abs(wide[0] - wide[1]) < 0.01 * wide[0] else None


def tube_of(assembly: Assembly) -> Tube | None:
    """The plain or twisted tube that one copy is, if it is one: every inner corner flat, every rim straight, one ring."""
    if assembly.pieces != assembly.copies or assembly.euler != 0 or not assembly.openings:
        return None
    if any(abs(corner.degrees - (180 if corner.on_opening else 360)) > 1e-6 for corner in assembly.corners):
        return None
    openings = len(assembly.openings) // assembly.copies
    rims = sum(rim_length(assembly, i) for i in range(openings))
    area = sum(_area(panel.outline_cm) for panel in assembly.panels if panel.copy == 1)
    one_sided = not assembly.orientable
    if not rims or openings != (1 if one_sided else 2):
        return None
    return Tube(rims / 2, 2 * area / rims, any(seam.twist for seam in assembly.seams), one_sided)


def rim_length(assembly: Assembly, opening: int) -> float:
    """Length of an opening by the outlines, in cm (nominal where nothing is measured)."""
    panels = {panel.name: panel for panel in assembly.panels}
    total = assembly.adds_cm * assembly.openings[opening].seams
    for piece in assembly.openings[opening].sides:
        panel = panels[piece.panel]
        at = panel.sides.index(piece.side)
        if len(panel.sides) != len(panel.outline_cm):
            return 0.0
        a, b = panel.outline_cm[at], panel.outline_cm[(at + 1) % len(panel.sides)]
        total += hypot(b[0] - a[0], b[1] - a[1]) / piece.parts
    return total


def _area(outline: Sequence[Point]) -> float:
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(outline, [*outline[1:], outline[0]], strict=True))) / 2
