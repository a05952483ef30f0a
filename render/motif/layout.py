"""The engine's door: Fabric in, Layout out."""

from __future__ import annotations

from cmath import exp

from motifold.render.fabric.model import Fabric
from motifold.render.motif.extents import OVAL
from motifold.render.motif.ground import Ground, point
from motifold.render.motif.hub import about, hub_of
from motifold.render.motif.level import level
from motifold.render.motif.model import Again, Layout, Link, Placed, Point, RoundShape
from motifold.render.motif.radial import lay_rounds
from motifold.render.motif.rows import grows_at_its_ends, lay_rows


def lay_out(fabric: Fabric) -> Layout:
    """Place every stitch of a Fabric, in u. Never fails: what no rule covers stands as near its base as it can."""
    hub = hub_of(fabric)
    if hub is not None:
        ground = lay_rounds(about(fabric, hub))
        turn = level(ground)
        # The chain in the middle lies level, however the chart is turned.
        back = exp(-1j * turn)
        ground.tips[hub] = (-OVAL / 2 * back, OVAL / 2 * back)
        return _layout(ground, turn)
    in_rows = fabric.worked == "rows" and (any(r.kind == "foundation" for r in fabric.rounds) or grows_at_its_ends(fabric))
    ground = lay_rows(fabric) if in_rows else lay_rounds(fabric)
    turn = 0.0 if in_rows else level(ground)
    return _layout(ground, turn)


def _layout(ground: Ground, turn: float) -> Layout:
    spin = exp(1j * turn)
    placed: list[Placed] = []
    for stitch in ground.fabric.stitches:
        number = stitch.id
        normal = point(ground.normals.get(number, 1j) * spin)
        if number in ground.tips:
            first, last = ground.tips[number]
            placed.append(Placed(number, (point(first * spin),), point(last * spin), normal))
        elif number in ground.heads:
            feet = tuple(point(foot * spin) for foot in ground.feet[number])
            bend = tuple(point(p * spin) for p in ground.bends.get(number, ()))
            placed.append(Placed(number, feet, point(ground.heads[number] * spin), normal, bend, ground.bars.get(number)))
    links = tuple(Link(run, tuple(point(p * spin) for p in points)) for run, lines in ground.links.items() for points in lines)
    shapes = tuple(_turned(shape, spin, ground.order.get(shape.round, 1)) for shape in ground.shapes)
    again = tuple(Again(number, later, point(head * spin), point(way * spin)) for number, later, head, way in ground.again)
    return Layout(ground.fabric.worked, tuple(placed), links, shapes, turn, again)


def _turned(shape: RoundShape, spin: complex, order: int) -> RoundShape:
    def turn(p: Point) -> Point:
        return point(complex(*p) * spin)

    return RoundShape(
        shape.round, tuple(map(turn, shape.outline)), tuple(map(turn, shape.corners)), turn(shape.start), turn(shape.start_normal), order,
    )  # fmt: skip
