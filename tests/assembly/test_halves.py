"""Halves of motifs worked in rows: sides that meet whole motifs' sides, the cut their last."""

from __future__ import annotations

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.worked import WorkedSize, work_pattern

FILE = '''
[pattern]
title = "Cell Blanket"
terms = "US"

[gauge]
motif = "hexagon"
rounds = 3
width = "9 cm"

[motif.hexagon]
shape = "hexagon"
last_round = 3
rounds = """
Ring: Make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join with sl st in top of beg ch-3.
Rnd 2 and following: Ch 3, *dc in each dc to next ch-2 sp, (dc, ch 2, dc) in next ch-2 sp; rep from * 5 more times, dc in each dc to end; join with sl st in top of beg ch-3.
"""

[motif.half]
shape = "half hexagon"
rows = """
Ring: Make a magic ring.
Row 1 (RS): Ch 3 (counts as dc here and throughout), dc in ring, ch 2, 2 dc in ring, ch 2, 2 dc in ring; turn.
Row 2: Ch 3, dc in same st, *dc in each dc to next ch-2 sp, (dc, ch 2, dc) in next ch-2 sp; rep from * once more, dc in each dc to last st, 2 dc in last st; turn.
Row 3: Rep Row 2.
"""

[assembly]
motif = "hexagon"
join = ["A.2 + B.5", "H.2 + A.1", "H.1 + B.6"]
panels = { H = "half" }
'''  # noqa: E501


def worked(text: str) -> tuple[WorkedSize, list[tuple[str, str]]]:
    reading = read_pattern("half.toml", text.encode())
    assert reading.pattern is not None
    made = work_pattern(reading.pattern, reading_problems=reading.problems)
    return made.sizes[0], [(problem.code, problem.message) for problem in made.problems]


def test_half_a_hexagon_fills_the_edge_between_two_hexagons() -> None:
    """Its whole side has a stitch for each of the hexagon's; beside the cut it has no corner chain to bring."""
    size, problems = worked(FILE)
    assert problems == []
    sides = size.fabrics["half"].sides
    assert [(side.name, side.stitches) for side in sides] == [("1", 7), ("2", 8), ("3", 7), ("4", 6)]
    assert [side.stitches for side in size.fabrics["hexagon"].sides] == [8] * 6
    assembly = size.assembly
    assert assembly is not None and assembly.pieces == 1 and len(assembly.seams) == 3
    assert [(corner.degrees, corner.on_opening) for corner in assembly.corners if not corner.on_opening] == [(360.0, False)]
    half = next(panel for panel in assembly.panels if panel.name == "H")
    # The cut of a half hexagon is twice its side, and its side is the hexagon's: 9 cm times tan 30.
    assert half.sides_cm == pytest.approx((9 / 3**0.5, 9 / 3**0.5, 9 / 3**0.5, 18 / 3**0.5))


def test_half_a_circle_has_a_rim_and_a_cut() -> None:
    size, _ = worked(
        FILE.split("[assembly]")[0].replace('"half hexagon"', '"half circle"').split("Row 1 (RS)")[0]
        + 'Row 1 (RS): Ch 3 (counts as dc), 7 dc in ring; turn.\n"""\n'
    )
    assert [(side.name, side.stitches) for side in size.fabrics["half"].sides] == [("1", 8), ("2", 2)]


def test_a_half_whose_corners_do_not_show_is_a_plain_piece_in_rows() -> None:
    size, _ = worked(FILE.replace("(dc, ch 2, dc) in next ch-2 sp; rep from * once more", "3 dc in next ch-2 sp; rep from * once more"))
    assert [side.name for side in size.fabrics["half"].sides] == ["bottom", "right", "top", "left"]
