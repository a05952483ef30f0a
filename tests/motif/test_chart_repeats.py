"""One repeat, drawn by itself: what is drawn, times how often it is worked, is the round."""

from __future__ import annotations

from collections import Counter
from math import tau

import gallery
import more_pieces
import pytest
import unseen_pieces
from chart_pieces import TESTED, fabric_of_text

from motifold.render.fabric.model import Fabric
from motifold.render.motif import lay_out
from motifold.render.motif.chart import ChartLook, prepare
from motifold.render.motif.chart.once import one_repeat

SLOW = [pytest.mark.slow, pytest.mark.sampled]
LATER = [*more_pieces.MORE, *unseen_pieces.UNSEEN]
FEW = [piece for piece in gallery.PIECES if not piece.rows and "12" not in piece.name and "10" not in piece.name]
EVERY = [*FEW, *(pytest.param(piece, marks=SLOW) for piece in LATER if not piece.rows)]


def of_round(fabric: Fabric, index: int) -> Counter[str]:
    """What a round is made of: beginning chains as the stitch that they count for, no joins, chains that count as chains."""
    counted = Counter(s.kind for s in fabric.round_stitches(index) if s.role in ("stitch", "standing", "picot"))
    counted["ch"] += sum(r.chains for r in fabric.runs if r.round == index and r.role in ("space", "picot", "spine") and r.stitches)
    return +counted


def wrong_rounds(fabric: Fabric, look: ChartLook) -> list[str] | None:
    """The rounds whose drawn stitches, times the repeats, are not the round; None where nothing repeats."""
    found = one_repeat(fabric, lay_out(fabric), look)
    if found is None:
        return None
    layout, once = found
    assert once.once is not None
    times, drawn = once.once.times, round((once.once.end - once.once.start) * once.once.times / tau)
    told: dict[int, Counter[str]] = {index: Counter() for index in range(len(fabric.rounds))}
    for symbol in prepare(fabric, layout, once).symbols:
        told[symbol.round_index][symbol.stitch] += 1
    wrong = []
    for index, this in enumerate(fabric.rounds):
        want = {kind: n * drawn for kind, n in of_round(fabric, index).items()}
        if this.kind == "round" and want != {kind: n * times for kind, n in told[index].items()}:
            wrong.append(f"{this.label}: {dict(told[index])} of {want}, {drawn} of {times}")
    return wrong


@pytest.mark.parametrize("piece", EVERY, ids=lambda piece: piece.name)
def test_one_repeat_times_how_often_it_is_worked_is_the_round(piece: gallery.Piece) -> None:
    fabric = gallery.fabric_of(piece)
    if fabric.worked == "rounds":
        assert not wrong_rounds(fabric, ChartLook())


@pytest.mark.parametrize("name", sorted(TESTED))
@pytest.mark.parametrize("left", [False, True])
def test_one_repeat_is_the_round_where_yarns_change_and_rounds_begin_in_spaces(name: str, left: bool) -> None:
    assert wrong_rounds(fabric_of_text(TESTED[name]), ChartLook(left_handed=left)) == []
