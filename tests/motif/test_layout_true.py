"""What a chart's eye asks beyond the measures: level sides, upright columns, even rounds behind petals, corners that close."""

from __future__ import annotations

from cmath import phase as argument
from functools import cache
from itertools import pairwise
from math import degrees, pi

import gallery
import measures
import pytest
from gallery import Piece

from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out

_JOIN = "join with sl st in top of beg ch-3."

SHELLED = Piece("square with a shell edging", "square", f"""
Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; {_JOIN}
Rnd 2: Ch 3, dc in each st to next ch-2 sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * 2 more times,
  (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to end; {_JOIN}
Rnd 3: Sl st in each st to next ch-2 sp, sl st in next ch-2 sp, ch 1 (does not count as a st), [3 sc in same sp, sc in next 7 sts] once,
  [3 sc in next ch-2 sp, sc in next 7 sts] 3 times; join with sl st in first sc.
Rnd 4: Sl st in next st, ch 3, 6 dc in same st, sk 2 sts, sc in next st, sk 1 st, 5 dc in next st, sk 1 st, sc in next st, sk 2 sts, [7
  dc in next st, sk 2 sts, sc in next st, sk 1 st, 5 dc in next st, sk 1 st, sc in next st, sk 2 sts] 3 times; {_JOIN}
""")  # fmt: skip

SC_BORDER = Piece("square with a round of single crochet", "square", f"""
Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; {_JOIN}
Rnd 2: Ch 3, dc in each st to next ch-2 sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * 2 more times,
  (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to end; {_JOIN}
Rnd 3: Ch 1 (does not count as a st), sc in same st, sc in each st to next ch-2 sp, *3 sc in next ch-2 sp, sc in each st to next ch-2 sp;
  rep from * 2 more times, 3 sc in next ch-2 sp, sc in each st to end; join with sl st in first sc.
""")  # fmt: skip

TRIANGLE = Piece("triangle with wide corners", "triangle", f"""
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 3 dc in ring, ch 2, [4 dc in ring, ch 2] twice; {_JOIN}
Rnd 2: Ch 3, dc in each st to next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * once more,
  (3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to end; {_JOIN}
Rnd 3: Ch 3, dc in each st to next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * once more,
  (3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to end; {_JOIN}
""")  # fmt: skip

OVAL = Piece("oval", "oval", f"""
Chain: Ch 11.
Rnd 1: Sc in 2nd ch from hook, sc in each of next 8 ch, 3 sc in last ch, working in other side of foundation ch, sc in each of next 8 ch,
  2 sc in last ch; join with sl st in first sc.
Rnd 2: Ch 3 (counts as dc here and throughout), dc in same st, dc in each of next 8 sts, 2 dc in each of next 3 sts, dc in each of next
  8 sts, 2 dc in each of next 2 sts; {_JOIN}
Rnd 3: Ch 3, 2 dc in next st, dc in each of next 8 sts, [dc in next st, 2 dc in next st] 3 times, dc in each of next 8 sts, [dc in next st,
  2 dc in next st] 2 times; {_JOIN}
""")  # fmt: skip

FILET = Piece("filet with blocks in spaces", "rectangle", """
Chain: Ch 20.
Row 1: Dc in 8th ch from hook (missed 7 ch count as dc and ch 2), [ch 2, sk 2 ch, dc in next ch] 4 times; turn.
Row 2: Ch 5 (counts as dc and ch 2), dc in next dc, [2 dc in next ch-2 sp, dc in next dc] 3 times, ch 2, dc in last st; turn.
""", rows=True)  # fmt: skip

ROSE = Piece("rose with a round behind its petals", "circle", f"""
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 3, sk next st, [sc in next st, ch 3, sk next st] 5 times; join
  with sl st in first sc.
Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around; join with sl st in first sc.
Rnd 4: Ch 1 (does not count as a st), working behind petals, [sc around next sc of Rnd 2, ch 7] 6 times; join with sl st in first sc.
Rnd 5: Sl st in next ch-7 sp, ch 3 (counts as dc here and throughout), 7 dc in same sp, 8 dc in each of next 5 ch-7 sps; {_JOIN}
""")  # fmt: skip

PIECES = [SHELLED, SC_BORDER, TRIANGLE, OVAL, FILET, ROSE]


@cache
def placed(piece: Piece) -> tuple[Fabric, Layout]:
    fabric = gallery.fabric_of(piece)
    return fabric, lay_out(fabric)


def stems(piece: Piece, number: int) -> list[tuple[complex, complex]]:
    """Foot and head of every stitch of a round."""
    fabric, layout = placed(piece)
    own = {s.id for s in fabric.stitches if s.round == number and s.role in ("stitch", "standing")}
    return [(complex(*p.feet[0]), complex(*p.head)) for p in layout.placed if p.stitch in own]


@pytest.mark.parametrize("piece", PIECES, ids=lambda piece: piece.name)
def test_nothing_overlaps(piece: Piece) -> None:
    assert not measures.contacts(measures.symbols(*placed(piece))).overlaps


def test_a_square_stands_level_though_shells_over_its_corners_do_not_lie_true() -> None:
    _, layout = placed(SHELLED)
    corners = next(shape.corners for shape in reversed(layout.shapes) if len(shape.corners) == 4)
    side = complex(*corners[1]) - complex(*corners[0])
    assert abs(degrees(argument(side)) % 90) < 0.01 or abs(degrees(argument(side)) % 90 - 90) < 0.01


@pytest.mark.parametrize("piece", [SC_BORDER, TRIANGLE], ids=lambda piece: piece.name)
def test_stitches_at_a_corner_are_as_long_as_others(piece: Piece) -> None:
    parts = [part for _, part in measures.lengths(*placed(piece))]
    assert min(parts) >= 0.9
    assert max(parts) <= 1.3


def test_stitches_along_an_oval_stand_upright_and_it_is_alike_on_both_sides() -> None:
    for number in (2, 3):
        found = stems(OVAL, number)
        side = [(foot, head) for foot, head in found if abs(foot.real) < 4.4]
        assert len(side) == 16
        assert all(abs((head - foot).real) < 0.2 * abs(head - foot) for foot, head in side)
        tops, bottoms = max(head.imag for _, head in found), min(head.imag for _, head in found)
        assert abs(tops + bottoms) < 1e-6


def test_a_block_of_filet_is_two_upright_stitches_a_pitch_apart() -> None:
    fabric, _ = placed(FILET)
    found = sorted(stems(FILET, len(fabric.rounds) - 1), key=lambda stem: stem[0].real)
    assert all(abs((head - foot).real) < 0.1 for foot, head in found)
    blocks = [foot.real for foot, _ in found][1:-1]
    assert all(0.85 < b - a < 1.2 for a, b in pairwise(blocks))


def test_stitches_in_loops_behind_petals_go_evenly_round() -> None:
    fabric, _ = placed(ROSE)
    found = stems(ROSE, len(fabric.rounds) - 1)
    angles = sorted(argument(head) for _, head in found)
    gaps = [b - a for a, b in pairwise(angles)]
    assert max(gaps) < 1.3 * 2 * pi / len(found)
    parts = [part for _, part in measures.lengths(*placed(ROSE))]
    assert min(parts) >= 0.9
    assert max(parts) <= 1.3
