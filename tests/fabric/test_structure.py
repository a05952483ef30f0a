"""What every stitch is worked into, and how."""

from __future__ import annotations

import time

import pytest
from good import GOOD
from make import Made, fabric_of, made, motif_edge

from motifold.render.fabric.model import Fabric, Stitch


def worked(name: str) -> Made:
    good = GOOD[name]
    return made(good.text, good.shape, good.terms, good.stitches, rows=good.rows, row_height_cm=good.row_height_cm)


def stitches(fabric: Fabric, round_index: int, kind: str | None = None) -> list[Stitch]:
    return [s for s in fabric.round_stitches(round_index) if s.role in ("stitch", "standing") and kind in (None, s.kind)]


def test_references_are_places_in_the_tuples_in_every_good_pattern() -> None:
    for name in GOOD:
        fabric = worked(name).fabric
        assert [s.id for s in fabric.stitches] == list(range(len(fabric.stitches)))
        assert [r.id for r in fabric.runs] == list(range(len(fabric.runs)))
        assert [g.id for g in fabric.groups] == list(range(len(fabric.groups)))
        for number, one in enumerate(fabric.rounds):
            assert [fabric.stitches[i].index for i in one.stitches] == list(range(1, len(one.stitches) + 1))
            assert all(fabric.stitches[i].round == number for i in one.stitches)
        for run in fabric.runs:
            assert all(fabric.stitches[i].run == run.id for i in run.stitches)
        for group in fabric.groups:
            assert all(0 <= i < len(fabric.stitches) for i in group.stitches)


def test_a_counted_beginning_chain_is_a_stitch_with_its_chains() -> None:
    fabric = worked("double crochet rows").fabric
    standing = next(s for s in fabric.round_stitches(2) if s.role == "standing")
    assert standing.kind == "dc" and len(standing.chains) == 3
    assert all(fabric.stitches[c].role == "chain" for c in standing.chains)
    assert fabric.runs[fabric.stitches[standing.chains[0]].run or 0].role == "standing"


def test_missed_chains_belong_to_the_row_that_they_begin() -> None:
    fabric = worked("double crochet rows").fabric
    assert len(fabric.rounds[0].stitches) == 17
    first = next(s for s in fabric.round_stitches(1) if s.role == "standing")
    assert [fabric.stitches[c].round for c in first.chains] == [1, 1, 1]


def test_a_mesh_row_begins_with_a_stitch_and_a_space() -> None:
    fabric = worked("filet").fabric
    kinds = [
        (item.kind, fabric.runs[item.id].chains if item.kind == "space" else fabric.stitches[item.id].kind)
        for item in fabric.rounds[1].edge
    ]
    assert kinds[:3] == [("stitch", "dc"), ("space", 2), ("stitch", "dc")]


def test_after_join_and_turn_the_first_thing_met_is_what_was_made_last() -> None:
    fabric = worked("turned square, whichever side").fabric
    first = stitches(fabric, 2)[0]
    base = first.legs[0].base
    assert base.kind == "space"
    assert fabric.rounds[1].edge[-1].id == base.id


def test_post_stitches_hook_round_the_post() -> None:
    fabric = worked("front and back post rib").fabric
    assert {s.legs[0].base.foot for s in stitches(fabric, 2, "FPdc")} == {"front post"}
    assert {s.legs[0].base.foot for s in stitches(fabric, 2, "BPdc")} == {"back post"}
    assert {s.legs[0].kind for s in stitches(fabric, 2, "FPdc")} == {"dc"}


def test_loops_left_by_back_loop_stitches_are_worked_later() -> None:
    fabric = worked("unused loops").fabric
    assert {s.legs[0].base.foot for s in stitches(fabric, 2)} == {"back loop"}
    later = stitches(fabric, 3)
    assert {s.legs[0].base.foot for s in later} == {"front loop"}
    assert {fabric.stitches[s.legs[0].base.id].round for s in later} == {1}


def test_loops_behind_petals_hang_on_the_round_below_them() -> None:
    fabric = worked("layered flower").fabric
    behind = stitches(fabric, 3, "sc")
    assert all(s.behind for s in behind)
    assert [fabric.stitches[s.legs[0].base.id].round for s in behind] == [1] * 6
    assert len({s.legs[0].base.id for s in behind}) == 6


def test_a_spike_stitch_goes_into_the_row_below() -> None:
    fabric = worked("spike stitches").fabric
    rounds = [fabric.stitches[s.legs[0].base.id].round for s in stitches(fabric, 3)]
    assert rounds == [2, 1] * 4


def test_a_picot_is_no_space_and_sits_on_its_stitch() -> None:
    fabric = worked("picot edge").fabric
    picots = [g for g in fabric.groups if g.name == "picot" and g.round == 2]
    assert len(picots) == 12
    runs = [r for r in fabric.runs if r.role == "picot" and r.round == 2]
    assert all(r.chains == 3 and fabric.stitches[r.before or 0].kind == "sc" for r in runs)
    assert fabric.rounds[2].counts == {"sc": 12, "picot": 12}


def test_stitches_worked_together_have_a_leg_in_each() -> None:
    fabric = worked("decreases to the end").fabric
    assert all(len({leg.base.id for leg in s.legs}) == 2 and s.gather == "together" for s in stitches(fabric, 2))
    assert len(stitches(fabric, 4)[0].legs) == 3


def test_clusters_are_one_stitch_with_legs_in_one_place() -> None:
    fabric = worked("clusters, beginning ones too").fabric
    plain = stitches(fabric, 1, "cl")[1]
    assert plain.gather == "cluster" and len(plain.legs) == 3 and len({leg.base.kind for leg in plain.legs}) == 1
    first = stitches(fabric, 1, "cl")[0]
    assert len(first.chains) == 3 and len(first.legs) == 2


def test_a_round_closed_by_a_stitch_ends_in_a_space_that_the_next_begins_in() -> None:
    fabric = worked("a lace that closes with a stitch").fabric
    last = fabric.rounds[2].edge[-1]
    run = fabric.runs[last.id]
    assert run.chains == 3
    assert [fabric.stitches[i].kind for i in run.stitches] == ["ch", "hdc"]
    assert stitches(fabric, 3)[0].legs[0].base == stitches(fabric, 3)[0].legs[0].base.__class__("space", run.id, "space")


def test_a_chain_worked_back_along_is_a_spine() -> None:
    fabric = worked("leaves along a chain").fabric
    spines = [r for r in fabric.runs if r.role == "spine"]
    assert len(spines) == 4 and all(r.chains == 5 for r in spines)
    leaf = [s for s in stitches(fabric, 2) if s.legs[0].base.kind == "stitch" and fabric.stitches[s.legs[0].base.id].kind == "ch"]
    assert len(leaf) == 16
    assert [fabric.stitches[spines[0].stitches[3 - k]].id for k in range(4)] == [s.legs[0].base.id for s in leaf[:4]]


def test_stitches_between_stitches_stand_in_gaps() -> None:
    fabric = worked("stitches between stitches").fabric
    bases = [s.legs[0].base for s in stitches(fabric, 2)]
    assert {base.kind for base in bases} == {"gap"}
    assert len({base.id for base in bases}) == 12


def test_the_oval_meets_each_chain_from_both_sides() -> None:
    fabric = worked("oval").fabric
    met = [s.legs[0].base.id for s in stitches(fabric, 1)]
    chains = fabric.rounds[0].stitches
    assert met[:9] == list(reversed(chains[1:10]))
    assert met[9:12] == [chains[0]] * 3
    assert met[12:20] == list(chains[1:9]) and met[20:] == [chains[9]] * 2


def test_every_stitch_says_which_instruction_and_which_pass_made_it() -> None:
    fabric = worked("star repeats").fabric
    passes = [s.origin.passes for s in stitches(fabric, 3, "sc") if len(s.origin.passes) == 1]
    assert sorted({p[0] for p in passes}) == list(range(6))
    assert all(s.origin.instruction > 0 and s.origin.span.line > 0 for s in fabric.stitches)


def test_stitches_of_a_defined_stitch_come_from_the_step_that_uses_it() -> None:
    fabric = worked("shells into shells").fabric
    shell = next(g for g in fabric.groups if g.name == "shell")
    assert {fabric.stitches[i].origin.instruction for i in shell.stitches} == {shell.origin.instruction}


def test_a_square_has_its_corners_in_its_corner_groups() -> None:
    fabric = worked("two colours joined anew").fabric
    for number in (1, 2, 3):
        corners = [r for r in fabric.runs if r.round == number and r.corner]
        assert [r.chains for r in corners] == [2] * 4
    assert [side.counts for side in fabric.sides] == [{"sc": 11}] * 4


def test_corner_stitches_where_there_are_no_corner_spaces() -> None:
    text = """Ring: Magic ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, [sc in next 2 sts, 3 sc in next st] 4 times; join. (20 sc)
Rnd 3: Ch 1, sc in next 3 sts, [3 sc in next st, sc in next 4 sts] 3 times, 3 sc in next st, sc in next st; join. (28 sc)
"""
    fabric = fabric_of(text, "square")
    assert [side.counts for side in fabric.sides] == [{"sc": 6}] * 4
    assert all(side.start is not None and side.start.kind == "stitch" for side in fabric.sides)
    assert [fabric.sides[k].end == fabric.sides[(k + 1) % 4].start for k in range(4)] == [True] * 4


def test_a_circle_has_one_side_and_rows_have_four() -> None:
    assert [side.name for side in worked("hat crown").fabric.sides] == ["rim"]
    rows = worked("back loop rib").fabric
    assert [(side.name, side.stitches) for side in rows.sides] == [("bottom", 8), ("right", 16), ("top", 8), ("left", 16)]


def test_a_lone_motif_offers_its_edge_corner_by_corner() -> None:
    square = worked("two colours joined anew").fabric
    edge = motif_edge(square)
    assert sum(1 for item in edge if item.corner) == 4 and len(edge) == 4 * 12
    assert [item.side for item in edge if item.starts_side] == [f"motif.{name}" for name in ("top", "left", "bottom", "right")]
    rows = motif_edge(worked("back loop rib").fabric)
    assert [sum(1 for i in rows if i.side == f"motif.{n}") for n in ("bottom", "right", "top", "left")] == [8, 16, 8, 16]
    assert {i.name for i in rows if i.side == "motif.left"} == {"row end"}


def test_the_same_text_gives_the_same_fabric() -> None:
    for name in ("layered flower", "star repeats", "filet"):
        assert worked(name).fabric == worked(name).fabric


@pytest.mark.parametrize("text", ["Rnd 1: Ch 1, sc in same st 2 rnds below.", "Row 1: Join, sc in same st 2 rows below; turn."])
def test_nothing_lies_below_the_first_round(text: str) -> None:
    assert made(text, "circle" if text.startswith("Rnd") else "rectangle").codes == ["stand"]


GROUP_LOST = "Chain: Ch 14.\nRow 1: in 4th ch from hook (missed 3 ch count as tr), tr in each ch to end; turn."


@pytest.mark.parametrize(("text", "codes"), [("", []), ("Fasten off.", []), (GROUP_LOST, ["word"])])
def test_a_text_without_its_stitches_is_no_fault_of_ours(text: str, codes: list[str]) -> None:
    """Found by the fuzz: nothing to work at all, and a group that lost its stitches."""
    assert made(text, "rectangle", "UK", rows=True).codes == codes


def test_a_repeat_up_to_what_the_row_does_not_have_ends_soon() -> None:
    """Found by the fuzz: a number in "to last ch-1 sp" made a repeat that looked for its places to the end of the row each time."""
    text = """Ring: Make a magic ring.
Row 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 5 times, dc in ring; turn. (7 dc, 6 ch-1 sps)
Rows 2-9: Ch 3 (counts as dc), 2 dc in next ch-1 sp, [dc in next dc, 2 dc in next ch-1 sp] to last ch-400 sp, dc in tch; turn.
"""
    began = time.process_time()
    assert made(text, "rectangle", rows=True).codes
    assert time.process_time() - began < 2.0
