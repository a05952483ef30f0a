"""Ten motifs that the layout had not met. Eight were measured before anything was mended; the texts of the half moon and the oval rug
did not prove at first, so that those two were measured after. Balls and star points were mended with the capsule and the star in sight.
"""

from __future__ import annotations

from gallery import Piece

UNSEEN: tuple[Piece, ...] = (
    Piece(
        "eight-point star", "circle", """
Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 3, sk next st, [sc in next st, ch 3, sk next st] 7 times; join with sl st
  in first sc.
Rnd 3: [(sc, hdc, dc, tr, ch 2, tr, dc, hdc, sc) in next ch-3 sp] 8 times; join with sl st in first sc.
Rnd 4: Sl st in next hdc, sl st in next dc, sl st in next tr, sl st in next ch-2 sp, ch 1 (does not count as a st), sc in same
  sp, ch 7, [sc in next ch-2 sp, ch 7] 7 times; join with sl st in first sc.
""",
    ),
    Piece(
        "pineapple", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, ch 2, 2 dc in same st, ch 3, sk next 3 sts, [(2 dc, ch 2, 2 dc) in next st, ch 3, sk
  next 3 sts] 5 times; join with sl st in top of beg ch-3.
Rnd 3: Sl st in next st, sl st in next ch-2 sp, ch 4 (counts as tr), 7 tr in same sp, ch 3, [8 tr in next ch-2 sp, ch 3] 5 times;
  join with sl st in top of beg ch-4.
Rnd 4: Ch 1 (does not count as a st), sc in same st, [ch 3, sc in next st] 7 times, ch 3, *sc in next st, [ch 3, sc in next st] 7
  times, ch 3; rep from * 4 more times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "sunflower", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 8 sc in ring; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), 2 sc in each st around; join with sl st in first sc.
Rnd 3: Ch 3 (counts as dc), dc in same st, ch 1, [2 dc in next st, ch 1] 15 times; join with sl st in top of beg ch-3.
Rnd 4: Sl st in next st, sl st in next ch-1 sp, ch 3, bud in same sp, ch 3, [bud in next ch-1 sp, ch 3] 15 times; join with sl st in
  first bud.
Rnd 5: [(sc, hdc, dc, ch-3 picot, dc, hdc, sc) in next ch-3 sp] 16 times; join with sl st in first sc.
""", special=(("bud", "dc4tog in same sp"),),
    ),
    Piece(
        "snowflake", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 3, [2 dc in ring, ch 3] 5 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next st, sl st in next ch-3 sp, ch 1 (does not count as a st), (sc, hdc, dc, ch 2, dc, hdc, sc) in same sp, [(sc,
  hdc, dc, ch 2, dc, hdc, sc) in next ch-3 sp] 5 times; join with sl st in first sc.
Rnd 3: Ch 1 (does not count as a st), sc in same st, ch 4, (sc, ch 9, sc) in next ch-2 sp, ch 4, sk next 3 sts, [sc in next sc,
  ch 4, (sc, ch 9, sc) in next ch-2 sp, ch 4, sk next 3 sts] 5 times; join with sl st in first sc.
Rnd 4: [3 sc in next ch-4 sp, (4 sc, ch-3 picot, 3 sc, ch-5 picot, 3 sc, ch-3 picot, 4 sc) in next ch-9 sp, 3 sc in next ch-4 sp] 6
  times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "granny hexagon", "hexagon", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 1, [2 dc in ring, ch 1] 5 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next st, sl st in next ch-1 sp, ch 3 (counts as dc), dc in same sp, ch 2, 2 dc in same sp, [(2 dc, ch 2, 2 dc) in
  next ch-1 sp] 5 times; join with sl st in top of beg ch-3.
Rnd 3: Sl st in next st, sl st in next ch-2 sp, ch 3 (counts as dc), 2 dc in same sp, ch 2, 3 dc in same sp, 3 dc between next two
  groups, [(3 dc, ch 2, 3 dc) in next ch-2 sp, 3 dc between next two groups] 5 times; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "half moon", "half circle", """
Ring: Make a magic ring.
Row 1 (RS): Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 5 times, dc in ring, turn.
Row 2: Ch 3 (counts as dc), [3 dc in next ch-1 sp] 6 times, dc in last st, turn.
Row 3: Ch 4 (counts as dc and ch 1), [sk next st, dc in next st, ch 1] 9 times, dc in last st, turn.
Row 4: Ch 1 (does not count as a st), sc in first st, [sk next ch-1 sp, 5 dc in next st, sk next ch-1 sp, sc in next st] 5 times.
""", rows=True,
    ),
    Piece(
        "capsule", "circle", """
Ring: Make a magic ring.
Rnd 1: 8 sc in ring; do not join.
Rnd 2: [2 sc in next st] 8 times; do not join.
Rnd 3: [Sc in next st, 2 sc in next st] 8 times; do not join.
Rnds 4-9: Sc in each st around; do not join.
Rnd 10: [Sc in next 4 sts, sc2tog] 4 times; do not join.
Rnd 11: [Sc in next 3 sts, sc2tog] 4 times; do not join.
Rnd 12: [Sc in next 2 sts, sc2tog] 4 times; do not join.
Rnd 13: [Sc2tog] 6 times; do not join.
""",
    ),
    Piece(
        "oval rug", "oval", """
Chain: Ch 15.
Rnd 1: 2 dc in 4th ch from hook (missed 3 ch count as dc), dc in next 10 ch, 6 dc in last ch; working in other side of foundation ch,
  dc in next 10 ch, 3 dc in last ch; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each of next 2 sts, dc in next 10 sts, 2 dc in each of next 6 sts, dc in next 10
  sts, 2 dc in each of next 3 sts; join with sl st in top of beg ch-3.
Rnd 3: Ch 1 (does not count as a st), sc in same st, [ch 3, sk next st, sc in next st] 21 times, ch 3, sk next st; join with sl st in
  first sc.
""",
    ),
    Piece(
        "shawl with spine", "triangle", """
Ring: Make a magic ring.
Row 1: Ch 4 (counts as dc and ch 1), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring, turn.
Row 2: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch
  1, dc in last st, turn.
Row 3: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, [ch
  1, 3 dc in next ch-1 sp] twice, ch 1, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "hdc spiral", "circle", """
Ring: Make a magic ring.
Rnd 1: 8 hdc in ring; do not join.
Rnd 2: 2 hdc in each st around; do not join.
Rnd 3: [Hdc in next st, 2 hdc in next st] 8 times; do not join.
Rnd 4: [2 hdc in next st, hdc in next 2 sts] 8 times; do not join.
Rnd 5: Hdc in next st, [hdc in next 3 sts, 2 hdc in next st] 7 times, hdc in next 2 sts, 2 hdc in next st; do not join.
""",
    ),
)  # fmt: skip
