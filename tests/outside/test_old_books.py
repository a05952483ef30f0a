# ruff: noqa: E501 (texts keep their lines)
"""Patterns in the public domain, in today's words, against the counts that their books state or imply.

Source of all three: Th. de Dillmont, Encyclopedia of Needlework, English edition, n.d., figures 441 to 443; text read from Project
Gutenberg no. 20776. Her "plain" is a single crochet, her "single" a slip stitch.
"""

import pytest
from make import made, read

from motifold.render.words.formats import line_text
from motifold.render.words.model import RoundText
from motifold.render.words.rounds import Piece, piece_blocks
from motifold.render.words.voice import Voice

# Fig. 441: "Begin with 4 chain stitches, and work 1 single on the 1st chain, to make a round. Work, 1 chain and 2 plain on the next chain,
# 3 plain on each of the next 3 chain, 1 plain on the stitch on which the two first plain are worked. Slip the next stitch [the 1st plain
# of the row]. Then make 1 chain and 2 plain on the slipped stitch. After which, you make 3 plain on the second of the 3 plain that form
# the corner, and 1 plain on all the other stitches of the last row. The beginning and end of each row, are worked as described above."
SQUARE = """Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 2 sc in first ch, 3 sc in each of next 3 ch, sc in first ch; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, 2 sc in same st, sc in next 2 sts, [3 sc in next st, sc in next 2 sts] 3 times, sc in first st; join. (20 sc)
Rnd 3: Ch 1, 2 sc in same st, sc in next 4 sts, [3 sc in next st, sc in next 4 sts] 3 times, sc in first st; join. (28 sc)
Rnd 4: Ch 1, 2 sc in same st, sc in next 6 sts, [3 sc in next st, sc in next 6 sts] 3 times, sc in first st; join. (36 sc)
"""
# Fig. 442: "Make a foundation chain of 6 stitches, join the round; 12 plain on the 6 chain; finish the row == turn the work == * 1 plain,
# 3 plain on the second plain of the last row; repeat 5 times from *. Finish the row with 1 single == turn the work == 2 plain, 3 plain on
# the second of the first 3 plain; 3 plain and so on."
HEXAGON = """Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc; turn. (12 sc)
Rnd 2: Ch 1, [sc in next st, 3 sc in next st] 6 times; join with sl st in first sc; turn. (24 sc)
Rnd 3: Ch 1, sc in next 2 sts, [3 sc in next st, sc in next 3 sts] 5 times, 3 sc in next st, sc in next st; join with sl st in first sc. (36 sc)
"""
# Fig. 443: "Begin with 3 chain, join the ring = 2 plain on each of the 3 chain; then for the foundation, 1 plain with the dark thread, and 1
# with the light on each of the 6 plain. In each subsequent row, make one dark stitch more, increasing regularly, that is, making 2 stitches
# on the last light stitch that comes before the dark ones." The book states the first two counts, the rest are inferred.
DISC = """Ring: With A, ch 3; join with sl st in first ch to form a ring.
Rnd 1: 2 sc in each ch around; do not join. (6 sc)
Rnd 2: [With A, sc in next st; with B, sc in same st] 6 times. (12 sc)
Rnd 3: [With A, sc in next st, with A, sc in next st; with B, sc in same st] 6 times. (18 sc)
Rnd 4: [With A, sc in next 2 sts, sc in next st; with B, sc in same st] 6 times. (24 sc)
"""


def test_dillmonts_square_grows_by_eight() -> None:
    square = made(SQUARE, "square")
    assert square.codes == []
    assert [square.counts(r)["sc"] for r in (1, 2, 3, 4)] == [8 * r + 4 for r in (1, 2, 3, 4)]
    assert len({side.stitches for side in square.fabric.sides}) == 1


def test_dillmonts_hexagon_grows_by_twelve_and_is_warned_to_ruffle() -> None:
    hexagon = made(HEXAGON, "hexagon")
    assert hexagon.codes == ["flat"]  # twelve more a round is far more than a flat hexagon of single crochet takes (about seven)
    assert [hexagon.counts(r)["sc"] for r in (1, 2, 3)] == [12, 24, 36]
    assert [r.side for r in hexagon.fabric.rounds[1:]] == ["RS", "WS", "RS"]
    assert {side.counts["sc"] for side in hexagon.fabric.sides} == {5}


def test_dillmonts_disc_grows_by_six_in_two_colours() -> None:
    disc = made(DISC)
    assert disc.codes == []
    assert [disc.counts(r)["sc"] for r in (1, 2, 3, 4)] == [6, 12, 18, 24]
    light = [sum(1 for i in disc.round(r).stitches if disc.fabric.stitches[i].yarn == "B") for r in (2, 3, 4)]
    assert light == [6, 6, 6]


def test_a_childs_hood_of_1918() -> None:
    # Handbook of Wool Knitting and Crochet, Needlecraft, Augusta, Maine 1918, Project Gutenberg no. 26113: "Chain 4 stitches with white wool,
    # join. 1. Chain 3 for a treble, 19 trebles in ring, join." There "treble" is the US double crochet.
    hood = made("Ring: Ch 4; join to form a ring.\nRnd 1: Ch 3 (counts as dc), 19 dc in ring; join. (20 dc)\n")
    assert hood.codes == []
    assert hood.counts(1) == {"dc": 20}


HOOD = "Ring: Ch 4; join with sl st in first ch to form a ring.\nRnd 1: Ch 3 (counts as dc), 19 dc in ring; join. (20 dc)\n"


@pytest.mark.parametrize(
    ("text", "shape", "said"),
    [
        (SQUARE, "square", "Rnd 2: Ch 1, 2 dc in same st, dc in each of next 2 sts, [3 dc in next st, dc in each of next 2 sts] 3 times, dc in first st; join. (20 dc)"),
        (HEXAGON, "hexagon", "Rnd 2: Ch 1, [dc in next st, 3 dc in next st] 6 times; join with ss in first dc; turn. (24 dc)"),
        (DISC, "circle", "Rnd 2: [With A, dc in next st, with B, dc in same st] 6 times. (12 dc)"),
        (HOOD, "circle", "Rnd 1: Ch 3 (counts as tr), 19 tr in ring; join. (20 tr)"),
    ],
    ids=["square", "hexagon", "disc", "hood"],
)
def test_old_rounds_are_written_in_uk_terms_and_worked_again(text: str, shape: str, said: str) -> None:
    """Her plain stitch is the UK double crochet, as in every English book of her time; the hood's treble is the UK treble again."""
    first = made(text, shape)
    instructions, _, problems = read(text)
    assert not problems
    for plain in (False, True):
        voice = Voice("UK", plain, 0, source="US")
        blocks = piece_blocks(voice, Piece(instructions, (first.fabric,), ("One size",)))
        lines = [line_text(block) for block in blocks if isinstance(block, RoundText)]
        assert plain or said in [line.replace("\u00a0", " ") for line in lines]
        again = made("\n".join(lines), shape, terms="UK")
        assert [code for code in again.codes if code != "flat"] == []
        assert [dict(r.counts) for r in again.fabric.rounds] == [dict(r.counts) for r in first.fabric.rounds]
