# ruff: noqa: E501 (texts keep their lines)
"""How rounds begin and end: without a ring, in an earlier round, with a cluster, with an even end."""

import pytest
from good import RING
from make import fabric_of, made

FRONT = """Rnd 1: 6 sc in magic ring; do not join. (6 sc)
Rnd 2: 2 sc in each st around. (12 sc)
Rnd 3: Sc in BLO of each st around. Fasten off. (12 sc)
Rnd 4: With A, join with sl st in any unused front lp of Rnd 2, ch 1, 2 dc in each of unused front lps of Rnd 2; join with sl st in first dc. (24 dc)
"""


def test_a_circle_that_begins_in_a_chain_has_no_ring() -> None:
    fabric = fabric_of(
        "Rnd 1: Ch 4, 11 dc in 4th ch from hook; join with sl st in top of beg ch-4. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3. (24 dc)\n"
    )
    assert len({leg.base.id for s in fabric.round_stitches(1) if s.role == "stitch" for leg in s.legs}) == 1


def test_the_loop_that_yarn_is_joined_in_is_the_first_of_each() -> None:
    fabric = fabric_of(FRONT)
    assert (
        len(
            {
                leg.base.id
                for s in fabric.round_stitches(fabric.rounds[-1].stitches and len(fabric.rounds) - 1)
                if s.kind == "dc"
                for leg in s.legs
            }
        )
        == 12
    )


@pytest.mark.parametrize(
    "end", ["Sl st in next st, fasten off.", "Sl st in next 2 sts; fasten off.", "Join with sl st in next st; fasten off."]
)
def test_an_even_end_of_a_spiral_is_no_round(end: str) -> None:
    fabric = fabric_of(f"Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\nFinish: {end}\n")
    assert fabric.sides[0].stitches == 12
    assert fabric.rounds[-1].fastened


def test_a_chain_written_by_itself_is_no_part_of_the_beginning_chain() -> None:
    fabric_of(
        """Ring: Magic ring.
Rnd 1: Ch 3 (counts as dc), ch 1, [dc in ring, ch 1] 7 times; join with sl st in top of beg ch-3. (8 dc, 8 ch-1 sps)
"""
    )


def test_chain_and_stitch_that_count_as_a_cluster_are_one() -> None:
    fabric = fabric_of(
        "Ring: Magic ring.\nRnd 1: Ch 3, dc2tog in ring (counts as cl), ch 3, [cl in ring, ch 3] 5 times; join with sl st in top of first cl. (6 cl, 6 ch-3 sps)\n",
        stitches={"cl": "dc3tog in same st"},
    )
    first = next(s for s in fabric.round_stitches(1) if s.kind == "cl")
    assert len(first.chains) == 3 and len(first.legs) == 2


def test_a_line_that_could_not_be_read_whole_brings_no_other_complaint() -> None:
    worked = made(
        "Ring: Magic ring.\nRnd 1: 12 sc in ring; join with sl st in first sc. (12 sc)\nRnd 2: Ch 1, [pettal in next sc, sc in next sc] 6 times; join with sl st in first sc. (6 petals, 6 sc)\nRnd 3: Ch 1, sc in each st around; join with sl st in first sc. (12 sc)\n"
    )
    assert [p.code for p in worked.read] == ["word"]
    assert worked.problems == ()


def test_chains_before_the_cluster_that_a_round_is_joined_to_count_as_nothing() -> None:
    fabric = fabric_of(
        "Ring: Magic ring.\nRnd 1: Ch 2, [cl in ring, ch 2] 6 times; join with sl st in first cl. (6 cls, 6 ch-2 sps)\n",
        stitches={"cl": "dc3tog in same st"},
    )
    assert dict(fabric.rounds[-1].counts) == {"cl": 6, "ch-2 sp": 6}


BEHIND = """Ring: Magic ring.
Rnd 1: Ch 1 (does not count as a st), [sc in ring, ch 3] 8 times; join with sl st in first sc. (8 sc, 8 ch-3 sps)
Rnd 2: Ch 1 (does not count as a st), (sc, 3 dc, sc) in each ch-3 sp around; join with sl st in first sc; fasten off.
Rnd 3: With A, working behind petals, join with sl st around any sc of Rnd 1, ch 1 (does not count as a st), sc around same sc, ch 3, [sc around next sc of Rnd 1, ch 3] {times} times; join with sl st in first sc.
"""


def test_an_earlier_round_that_yarn_is_joined_in_is_not_gone_round_twice() -> None:
    fabric_of(BEHIND.format(times=7))
    worked = made(BEHIND.format(times=8))
    assert worked.codes == ["beyond"]
    assert worked.problems[0].message == "Rnd 3 wants 1 sc more than Rnd 1 has"


@pytest.mark.parametrize("same", ["same sc", "same sc of Rnd 1", "first sc of Rnd 1"])
def test_a_chain_after_yarn_joined_in_an_earlier_round_stands_there(same: str) -> None:
    fabric = fabric_of(BEHIND.format(times=7).replace("around same sc,", f"around {same},"))
    first = [stitch for stitch in fabric.stitches if stitch.kind == "sc" and stitch.round == 1]
    into = [leg.base.id for stitch in fabric.stitches if stitch.kind == "sc" and stitch.round == 3 for leg in stitch.legs]
    assert sorted(into) == sorted(stitch.id for stitch in first)


LACE = """Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), dc in ring, ch 2, 2 dc in ring, ch 3, [(2 dc, ch 2, 2 dc) in ring, ch 3] 3 times; join with sl st in top of beg ch-3. (16 dc, 4 ch-2 sps, 4 ch-3 sps)
Rnd 2: Sl st in next dc, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 1, 5 dc in next ch-3 sp, ch 1, [(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1, 5 dc in next ch-3 sp, ch 1] 3 times; join with sl st in top of beg ch-3. (36 dc, 8 ch-1 sps, 4 ch-2 sps)
Rnd 3: Sl st in next dc, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 1, sk next 2 sts, dc in each of next 5 sts, ch 1, [{walk}(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1, sk next 2 sts, dc in each of next 5 sts, ch 1] 3 times; join with sl st in top of beg ch-3.
"""


def test_what_slip_stitches_walk_over_need_not_be_worked_where_its_like_is_passed() -> None:
    assert dict(fabric_of(LACE.format(walk="")).rounds[-1].counts) == {"dc": 36, "ch-1 sp": 8, "ch-2 sp": 4}


def test_what_slip_stitches_walk_over_is_left_over_where_its_like_is_skipped_in_so_many_words() -> None:
    assert made(LACE.format(walk="sk next 2 sts, ")).codes == ["left-over"]


def test_a_solid_square_works_at_its_end_what_it_walked_over() -> None:
    square = """Ring: Magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in each of next 2 dc, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, [dc in each of next 3 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp] 3 times{end}; join with sl st in top of beg ch-3.
"""
    assert fabric_of(square.format(end=", dc in each st to end")).rounds[-1].counts["dc"] == 28
    assert made(square.format(end="")).codes == ["left-over"]


ROUND_OF_12 = """Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
"""


@pytest.mark.parametrize("same", ["same st as beg ch-5", "same st as join", "same st as joining sl st"])
def test_the_last_stitch_may_stand_where_the_round_began(same: str) -> None:
    last = f"Rnd 2: Ch 5 (counts as dc and ch 2), [dc in next dc, ch 2] 11 times, dc in {same}, ch 2; join with sl st in 3rd ch of beg ch-5."
    fabric = fabric_of(ROUND_OF_12 + last + " (13 dc, 13 ch-2 sps)\n")
    made_in_2 = [stitch for stitch in fabric.stitches if stitch.round == 2 and stitch.kind == "dc"]
    assert made_in_2[-1].legs[0].base.id == made_in_2[0].legs[0].base.id


def test_a_gap_before_the_next_stitch_leaves_that_stitch_to_be_worked() -> None:
    text = "Rnd 2: Ch 3 (counts as dc), dc in sp before next dc, [dc in next dc, dc in sp before next dc] 11 times; join. (24 dc)\n"
    fabric = fabric_of(ROUND_OF_12 + text)
    kinds = [stitch.legs[0].base.kind for stitch in fabric.stitches if stitch.round == 2 and stitch.kind == "dc"]
    assert kinds == ["stitch", "gap"] * 12


GRANNY = RING + """Rnd 1: Ch 3 (counts as dc here and throughout), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next dc, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 1, [(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1] {} times; join with sl st in top of beg ch-3.
"""


def test_the_space_that_a_round_began_in_with_a_whole_corner_takes_no_second_one() -> None:
    assert not made(GRANNY.format(5), shape="hexagon").codes
    worked = made(GRANNY.format(6), shape="hexagon")
    assert worked.codes == ["beyond"]
    assert worked.problems[0].hint == "it comes out with the repeat worked 5 times instead of 6 times"


def test_a_repeat_that_begins_with_a_corner_too_many_ends_before_it() -> None:
    square = RING + "Rnd 1: Ch 1, [3 sc in ring, ch 2] 4 times; join with sl st in first sc.\n"
    second = "Rnd 2: Ch 1, sc in same st, sc in next 2 sc, *(sc, ch 2, sc) in next ch-2 sp, sc in next 3 sc; rep from * 3 more times; join.\n"
    [problem] = made(square + second, shape="square").problems
    assert (problem.code, problem.hint) == ("beyond", 'it comes out with "sc in next 3 sc" left out of the last repeat')


READ = {
    "all round, and corners": "Ch 1, sc in each st around, 3 sc in each corner; join. (24 sc)",
    "a starred increase": "Ch 1, *2 sc, inc* 4 times; join. (16 sc)",
    "a standing stitch": "Standing dc in first sc, dc in next 2 sc, [2 dc in next ch-2 sp, dc in next 3 sc] 3 times, 2 dc in last ch-2 sp; join with sl st in standing dc. (20 dc)",
}


@pytest.mark.parametrize("name", sorted(READ))
def test_these_ways_to_write_it_are_read(name: str) -> None:
    square = RING + "Rnd 1: Ch 1, [3 sc in ring, ch 2] 4 times; join with sl st in first sc.\nRnd 2: "
    worked = made(square + READ[name] + "\n", shape="square")
    assert not [problem for problem in (*worked.read, *worked.problems) if problem.severity == "error"]


def test_yarn_joined_with_a_post_stitch_begins_with_that_stitch() -> None:
    base = "Ring: Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3; fasten off. (12 dc)\n"
    fabric = fabric_of(base + "Rnd 2: With B, join with BPsc around any st, BPsc around each of next 11 sts; join with sl st in first st.\n")
    assert fabric.rounds[-1].counts == {"BPsc": 12}
