# ruff: noqa: E501 (texts keep their lines)
"""Edgings on a lone motif: sides, corners, petals that it may name."""

import pytest
from make import Made, edging, fabric_of, motif_edge, read

from motifold.render.fabric import Workshop, work_motif
from motifold.render.pattern.model import MotifSource

SQUARE = """Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
"""
FLOWER = """Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), [sc in ring, ch 3] 6 times; join with sl st in first sc. (6 sc, 6 ch-3 sps)
Rnd 2: [Petal in next ch-3 sp] 6 times; join with sl st in first sc. (6 petals)
"""
PETAL = {"petal": "(sc, hdc, dc, hdc, sc) in same sp"}
LACE = """Join with sl st in center dc of any petal, ch 1 (does not count as a st), sc in same st, *ch 5, sc in center dc of next petal; rep from * 4 more times, ch 5; join with sl st in first sc. (6 sc, 6 ch-5 sps)"""


def on_square(text: str) -> Made:
    return edging(text, motif_edge(fabric_of(SQUARE, "square")))


def test_from_corner_to_corner_a_whole_side_is_passed() -> None:
    worked = on_square(
        """Rnd 1: Join with sl st in any corner sp, ch 1, sc in same sp, sc in each dc to next corner sp, sc in next 2 corner sps, sc in each dc to next corner sp, sc in next corner sp, sc in each dc to end; join with sl st in first sc."""
    )
    assert worked.codes == ["left-over"]
    assert worked.problems[0].message == "Rnd 1: 3 dc of the edge are never worked into"


def test_every_side_worked_is_silent() -> None:
    worked = on_square(
        """Rnd 1: Join with sl st in any corner sp, ch 1, sc in same sp, *sc in each dc to next corner sp**, 2 sc in next corner sp; rep from * around, ending last rep at **, sc in same sp; join with sl st in first sc."""
    )
    assert worked.codes == []


def test_to_end_before_the_join_is_the_end_of_the_round() -> None:
    worked = on_square(
        """Rnd 1: Join with sl st in any corner sp, ch 1, 3 sc in same sp, sc in each st and each sp to end; join with sl st in first sc. (18 sc)"""
    )
    assert worked.codes == []
    along = on_square("""Row 1: Join with sl st in any corner sp, ch 1, sc in same sp, sc in each st to end; leave remaining sts unworked. (4 sc)""")
    assert along.codes == []


def test_a_lone_motif_may_be_joined_in_its_petals() -> None:
    flower = fabric_of(FLOWER, stitches=PETAL)
    worked = edging("Rnd 1: " + LACE, motif_edge(flower), stitches=PETAL)
    assert worked.codes == []
    centers = {leg.base.id for stitch in worked.fabric.round_stitches(1) if stitch.kind == "sc" for leg in stitch.legs}
    assert len(centers) == 6 and all(worked.fabric.stitches[ident].kind == "dc" for ident in centers)


def test_the_petal_that_a_round_begins_in_is_not_left_over() -> None:
    fabric_of(FLOWER + "Rnd 3: " + LACE, stitches=PETAL)


def test_a_petal_that_is_left_is_told() -> None:
    worked = edging("Rnd 1: " + LACE.replace("4 more", "3 more").split(" (6")[0], motif_edge(fabric_of(FLOWER, stitches=PETAL)), stitches=PETAL)
    assert worked.codes == ["left-over"]
    assert "1 petal of the edge" in worked.problems[0].message


def test_a_cord_is_worked_back_along_its_own_chain_only() -> None:
    worked = on_square(
        """Rnd 1: Join with sl st in any corner sp, ch 1, sc in same sp, ch 10, sl st in 2nd ch from hook, sl st in each ch to end, sc in each dc to next corner sp; leave remaining sts unworked."""
    )
    assert not worked.codes
    assert worked.fabric.rounds[-1].counts == {"sc": 4, "sl st": 9}


HALF = """Ring: Ch 5; join with sl st in first ch to form a ring.
Row 1: Ch 4 (counts as dc and ch 1), (3 dc, ch 2, 3 dc, ch 1, dc) in ring; turn.
Row 2: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1, dc in 3rd ch of beg ch-4.
"""


def test_the_cut_of_half_a_motif_is_made_of_row_ends() -> None:
    instructions, definitions, _ = read(HALF, rows=True)
    shop = Workshop(definitions, ("A",), None, 0, None, "US", None)
    half, problems = work_motif(MotifSource("half", "half square", 4, "rows", instructions), shop)
    assert not problems
    cut = [item for item in motif_edge(half) if item.side == "half.3"]
    worked = edging("Rnd 1: Join with sl st in first row end, ch 1, 2 sc in same row end, 2 sc in each row end around; join with sl st in first sc.", cut)
    assert not worked.codes
    assert worked.fabric.rounds[-1].counts == {"sc": 8}


EVENLY = {
    "Join with sl st in any st, ch 1, sc evenly around; join.": {"sc": 20},
    "Join with sl st in any corner sp, ch 1, sc evenly around, working 3 sc in each corner; join.": {"sc": 24},
    "Join with sl st in any corner sp, ch 1, 3 sc in same sp, sc evenly around, working 3 sc in each corner; join with sl st in first sc.": {"sc": 24},
    "Join with sl st in any st, ch 1, 40 sc evenly around; join. (40 sc)": {"sc": 40},
}


@pytest.mark.parametrize("text", sorted(EVENLY))
def test_evenly_around_goes_all_round(text: str) -> None:
    worked = on_square(f"Rnd 1: {text}\n")
    assert not [problem for problem in (*worked.read, *worked.problems) if problem.severity == "error"]
    assert worked.fabric.rounds[-1].counts == EVENLY[text]
