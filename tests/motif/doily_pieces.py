"""Doilies, mandalas and ruffles: rounds whose symbols crowd each other until they are parted."""

from __future__ import annotations

from gallery import Piece

DOILIES: tuple[Piece, ...] = (
    Piece("fan mandala", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 6 (counts as dc and ch 3), sk next st, [dc in next st, ch 3, sk next st] 7 times; join with sl st in 3rd ch of beg ch-6.
Rnd 3: Ch 1 (does not count as a st), sc in same st, 5 dc in next ch-3 sp, [sc in next dc, 5 dc in next ch-3 sp] 7 times; join with
  sl st in first sc.
Rnd 4: Ch 8 (counts as tr and ch 4), sk next 2 dc, sc in next dc, ch 4, sk next 2 dc, [tr in next sc, ch 4, sk next 2 dc, sc in next
  dc, ch 4, sk next 2 dc] 7 times; join with sl st in 4th ch of beg ch-8.
Rnd 5: Ch 1 (does not count as a st), sc in same st, 7 dc in next sc, [sc in next tr, 7 dc in next sc] 7 times; join with sl st in
  first sc.
Rnd 6: Ch 1 (does not count as a st), sc in same st, ch 4, sk next 3 dc, (sc, ch-3 picot, sc) in next dc, ch 4, sk next 3 dc, [sc in
  next sc, ch 4, sk next 3 dc, (sc, ch-3 picot, sc) in next dc, ch 4, sk next 3 dc] 7 times; join with sl st in first sc.
""", lace=True),
    Piece("picots over fans beside loops", "circle", """
Ring: Ch 8; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 5, sk next st, [sc in next st, ch 5, sk next st] 11 times; join with sl st in
  first sc.
Rnd 3: Ch 1 (does not count as a st), sc in next ch-5 sp, ch 3, (dc, ch 1, dc, ch 1, dc, ch 1, dc, ch 1, dc) in next ch-5 sp, ch 3,
  [sc in next ch-5 sp, ch 3, (dc, ch 1, dc, ch 1, dc, ch 1, dc, ch 1, dc) in next ch-5 sp, ch 3] 5 times; join with sl st in first sc.
Rnd 4: Ch 1 (does not count as a st), sc in same st, ch 4, sk next ch-3 sp, sc in next ch-1 sp, [ch-3 picot, sc in next ch-1 sp] 3
  times, ch 4, sk next ch-3 sp, [sc in next sc, ch 4, sk next ch-3 sp, sc in next ch-1 sp, [ch-3 picot, sc in next ch-1 sp] 3 times,
  ch 4, sk next ch-3 sp] 5 times; join with sl st in first sc.
""", lace=True),
    Piece("crossed stitches between spokes", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 10 sc in ring; join with sl st in first sc.
Rnd 2: Ch 4 (counts as dc and ch 1), ch 3, [dc in next st, ch 4] 9 times; join with sl st in 3rd ch of beg ch-4.
Rnd 3: Ch 1 (does not count as a st), sc in same st, 4 sc in next ch-4 sp, [sc in next dc, 4 sc in next ch-4 sp] 9 times; join with
  sl st in first sc.
Rnd 4: Ch 2 (does not count as a st), [sk next st, dc in next st, working over dc just made, dc in skipped st] 25 times; join with
  sl st in first dc.
""", lace=True),
    Piece("shells in single crochets", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 8 sc in ring; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), [(sc, ch 1, dc, tr, dc, ch 1, sc) in next st] 8 times; join with sl st in first sc.
"""),
    Piece("ruffle in single crochet", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 6 sc in ring; join with sl st in first sc.
Rnds 2-4: Ch 1 (does not count as a st), 2 sc in each st around; join with sl st in first sc.
"""),
)  # fmt: skip

OVER_ROUNDS = Piece("a long post stitch over three rounds", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, [2 dc in next st] 11 times; join with sl st in top of beg ch-3.
Rnd 3: Ch 3 (counts as dc), dc in same st, dc in next st, [2 dc in next st, dc in next st] 11 times; join with sl st in top of beg ch-3.
Rnd 4: Ch 1 (does not count as a st), sc in same st, sc in next st, FPdtr around next dc of Rnd 1, [sc in each of next 3 sts, FPdtr
  around next dc of Rnd 1] 11 times, sc in next st; join with sl st in first sc.
""")

CLOSED_SPIRAL = Piece("a spiral closed by a slip stitch", "circle", """
Ring: Make a magic ring.
Rnd 1: 6 sc in ring; do not join.
Rnd 2: 2 sc in each st around; do not join.
Rnd 3: [Sc in next st, 2 sc in next st] 6 times; do not join.
Rnd 4: [Sc in next 2 sts, 2 sc in next st] 6 times; sl st in next st.
""")
