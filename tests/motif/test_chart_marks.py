"""Marks of rounds: none is left out, each stands at what it marks, and a number is read as that of the round beside it."""

from __future__ import annotations

from math import atan2, dist, hypot

import gallery
import more_pieces
import pytest
import unseen_pieces
from chart_pieces import TESTED, fabric_of_text

from motifold.render.fabric.model import Fabric
from motifold.render.motif import lay_out
from motifold.render.motif.chart import ChartLook, Prepared, prepare
from motifold.render.motif.chart.items import Item
from motifold.render.motif.chart.nearest import nearest_of
from motifold.render.motif.chart.places import NEAR
from motifold.render.motif.chart.starts import yarn_changes

SLOW = [pytest.mark.slow, pytest.mark.sampled]
LATER = [piece for piece in [*gallery.PIECES, *more_pieces.MORE, *unseen_pieces.UNSEEN] if not piece.rows]
EVERY = [
    *(pytest.param(lambda name=name: fabric_of_text(TESTED[name]), id=name) for name in sorted(TESTED)),
    *(
        pytest.param(lambda piece=piece: gallery.fabric_of(piece), id=piece.name, marks=SLOW if i % 4 else [])
        for i, piece in enumerate(LATER)
    ),
]
LOOKS = [ChartLook(), ChartLook(left_handed=True)]


def marked(chart: Prepared, kind: str) -> dict[int, Item]:
    return {item.round_index: item for item in chart.items if item.kind == kind}


def work_of(chart: Prepared, index: int) -> list[tuple[float, float]]:
    """Where a round's ink begins and ends, in the order of work; of a finish that only cuts the yarn, of the round before it."""
    index = max(s.round_index for s in chart.symbols if s.marks and s.round_index <= index)
    made = sorted((s for s in chart.symbols if s.round_index == index and s.marks), key=lambda s: int(s.id[1:]))
    return [p for s in (made[0], made[-1]) for p in (s.foot, s.head)]


def at_its_place(item: Item, points: list[tuple[float, float]]) -> bool:
    """Whether a mark, or the end of its line, is no further from one of these points than a mark may be."""
    at = item.leader[1] if item.leader is not None else item.center
    return min(dist(at, p) for p in points) <= NEAR + 1e-6


@pytest.mark.parametrize("make", EVERY)
@pytest.mark.parametrize("look", LOOKS, ids=["right", "left"])
def test_every_mark_of_the_fabric_is_on_the_chart_beside_what_it_marks(make: object, look: ChartLook) -> None:
    fabric: Fabric = make()  # type: ignore[operator]
    if fabric.worked != "rounds":
        return
    chart = prepare(fabric, lay_out(fabric), look)
    for index, this in enumerate(fabric.rounds):
        if this.attached:
            assert at_its_place(marked(chart, "attach")[index], work_of(chart, index)[:2]), this.label
        if this.fastened:
            assert at_its_place(marked(chart, "fasten off")[index], work_of(chart, index)[2:]), this.label
    changes = sorted(yarn_changes(fabric))
    assert set(changes[1:]) <= set(marked(chart, "yarn")), "the yarn that work begins with is no change"


@pytest.mark.parametrize("make", EVERY)
def test_rounds_are_numbered_each_beside_its_own_and_the_first_says_which_way(make: object) -> None:
    fabric: Fabric = make()  # type: ignore[operator]
    if fabric.worked != "rounds":
        return
    chart = prepare(fabric, lay_out(fabric), ChartLook())
    numbers, arrows = marked(chart, "number"), marked(chart, "arrow")
    wanted = [index for index, this in enumerate(fabric.rounds) if this.number is not None]
    if len(wanted) <= 12:
        assert sorted(numbers) == wanted
    turning = any(this.turned or this.direction < 0 for this in fabric.rounds)
    assert set(numbers) <= set(arrows) if turning else min(numbers) in arrows
    import numpy as np

    near = nearest_of(chart.symbols)
    for index, item in numbers.items():
        at = item.leader[1] if item.leader is not None else item.center
        assert item.leader is not None or near.own(np.asarray([at]), index)[0], f"{item.words} is read as that of another round"
    for index, item in arrows.items():
        way = fabric.rounds[index].direction
        (tail, tip) = item.marks[0].points[:2]
        turned = tail[0] * tip[1] - tail[1] * tip[0]
        assert hypot(*item.center) < 1.5 or turned * way > 0, (item.center, atan2(tip[1] - tail[1], tip[0] - tail[0]))
