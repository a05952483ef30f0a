"""A round shown a second time, pale, where a later layer stands on it: its heads, and its name in the gap inside them."""

from __future__ import annotations

from motifold.render.drawing.display import Group, Operation, Text
from motifold.render.drawing.fonts import cap_height_mm
from motifold.render.drawing.inks import GIVEN, QUIET
from motifold.render.drawing.measure import grey_of
from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.ink import operations
from motifold.render.motif.chart.look import ChartLook, in_sector
from motifold.render.motif.chart.scene import given_marks
from motifold.render.motif.model import Layout, Point

_PT = 7.5
_DEPTH, _BELOW_MM = 0.4, 0.6
"""How deep the pale stitches are in u, and how far below them their round's name stands."""


def shown_again(fabric: Fabric, layout: Layout, look: ChartLook, last_shown: int | None) -> list[Operation]:
    """The pale stitches of every layer that is drawn; ``last_shown``: the index of the last round that is (None: all are)."""
    flip = -1.0 if look.left_handed else 1.0
    out: list[Operation] = []
    names: dict[int, list[Point]] = {}
    for again in layout.again:
        head = (flip * again.head[0], again.head[1])
        if (last_shown is not None and again.round > last_shown) or not in_sector(head, look.sector):
            continue
        stitch = fabric.stitches[again.stitch]
        marks = given_marks(stitch, head, (flip * again.normal[0], again.normal[1]), head)
        out.append(Group(operations(marks, GIVEN, look.pitch_mm), css_class="given"))
        names.setdefault(stitch.round, []).append(head)
    color = grey_of(QUIET) if look.mono else QUIET
    for number, heads in names.items():
        x, y = max(heads, key=lambda head: (round(head[1], 6), -abs(head[0])))
        down = _DEPTH * look.pitch_mm + _BELOW_MM + cap_height_mm("sans", _PT)
        out.append(Text(x * look.pitch_mm, y * look.pitch_mm - down, fabric.rounds[number].label, "sans", _PT, color, "middle"))
    return out
