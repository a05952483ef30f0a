"""Everyday motifs in rounds: wheels, flowers squared off, ovals and rectangles on a foundation chain, ruffles.

Written to find what fails; the layout was mended with them in sight.
"""

from __future__ import annotations

from gallery import Piece

IN_ROUNDS: tuple[Piece, ...] = (
    Piece(
        "lace wheel 2 per loop", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 5, [sc in next st, ch 5] 11 times; join with sl st in first sc.
Rnd 3: Sl st in next ch-5 sp, ch 1 (does not count as a st), (sc, ch 5, sc) in same sp, ch 3, [(sc, ch 5, sc) in next ch-5 sp, ch 3]
  11 times; join with sl st in first sc.
Rnd 4: Sl st in next ch-5 sp, ch 3 (counts as dc), 2 dc in same sp, ch 3, 3 dc in same sp, [(3 dc, ch 3, 3 dc) in next ch-5 sp] 11
  times; join with sl st in top of beg ch-3.
""", lace=True,
    ),
    Piece(
        "lace wheel ch5-12", "circle", """
Ring: Ch 8; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 5, sk next 2 sts, [sc in next st, ch 5, sk next 2 sts] 7 times; join with sl
  st in first sc.
Rnd 3: Sl st in next ch-5 sp, ch 1 (does not count as a st), sc in same sp, ch 7, [sc in next ch-5 sp, ch 7] 7 times; join with sl
  st in first sc.
Rnd 4: Sl st in next ch-7 sp, ch 1 (does not count as a st), sc in same sp, ch 9, [sc in next ch-7 sp, ch 9] 7 times; join with sl
  st in first sc.
Rnd 5: Sl st in next ch-9 sp, ch 1 (does not count as a st), sc in same sp, ch 12, [sc in next ch-9 sp, ch 12] 7 times; join with sl
  st in first sc.
Rnd 6: Ch 1 (does not count as a st), [(sc, hdc, 5 dc, ch-3 picot, 5 dc, hdc, sc) in next ch-12 sp] 8 times; join with sl st in
  first sc.
""", lace=True,
    ),
    Piece(
        "snowflake picots", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next st, sl st in next ch-2 sp, ch 3 (counts as dc), dc in same sp, ch 3, 2 dc in same sp, [(2 dc, ch 3, 2 dc) in
  next ch-2 sp] 5 times; join with sl st in top of beg ch-3.
Rnd 3: Sl st in next st, sl st in next ch-3 sp, ch 1 (does not count as a st), (sc, ch 3, sc, ch 5, sc, ch 3, sc) in same sp, ch 3,
  [(sc, ch 3, sc, ch 5, sc, ch 3, sc) in next ch-3 sp, ch 3] 5 times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "tr wheel spaced", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 6 (counts as tr and ch 2), [tr in ring, ch 2] 11 times; join with sl st in 4th ch of beg ch-6.
Rnd 2: Sl st in next ch-2 sp, ch 4 (counts as tr), 2 tr in same sp, ch 2, [3 tr in next ch-2 sp, ch 2] 11 times; join with sl st in
  top of beg ch-4.
Rnd 3: Sl st in next 2 sts, sl st in next ch-2 sp, ch 1 (does not count as a st), (sc, ch 3, sc) in same sp, ch 5, [(sc, ch 3, sc)
  in next ch-2 sp, ch 5] 11 times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "6-petal rose squared by 12", "square", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), [sc in ring, ch 3] 6 times; join with sl st in first sc.
Rnd 2: [(sc, hdc, 3 dc, hdc, sc) in next ch-3 sp] 6 times; join with sl st in first sc.
Rnd 3: Ch 1 (does not count as a st), BPsc around first sc of Rnd 1, ch 5, [BPsc around next sc of Rnd 1, ch 5] 5 times; join with
  sl st in first BPsc.
Rnd 4: Sl st in next ch-5 sp, ch 3 (counts as dc), 5 dc in same sp, [6 dc in next ch-5 sp] 5 times; join with sl st in top of beg
  ch-3.
Rnd 5: Ch 4 (counts as tr), (tr, ch 2, 2 tr) in same st, dc in next 2 sts, hdc in next 4 sts, dc in next 2 sts, [(2 tr, ch 2, 2 tr)
  in next st, dc in next 2 sts, hdc in next 4 sts, dc in next 2 sts] 3 times; join with sl st in top of beg ch-4.
Rnd 6: Ch 1 (does not count as a st), sc in same st, sc in next st, [3 sc in next ch-2 sp, sc in next 12 sts] 3 times, 3 sc in next
  ch-2 sp, sc in next 10 sts; join with sl st in first sc.
""",
    ),
    Piece(
        "cluster wheel", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: Ch 4 (counts as dc and ch 1), [dc in next st, ch 1] 11 times; join with sl st in 3rd ch of beg ch-4.
Rnd 3: Sl st in next ch-1 sp, ch 3, bud in same sp, ch 3, [bud in next ch-1 sp, ch 3] 11 times; join with sl st in first bud.
Rnd 4: [4 dc in next ch-3 sp] 12 times; join with sl st in first dc.
Rnd 5: [Sc in next st, ch 4, sk next 2 sts, sc in next st] 12 times; join with sl st in first sc.
""", special=(("bud", "dc3tog in same sp"),),
    ),
    Piece(
        "mandala popcorns", "circle", """
Ring: Ch 5; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), [pop in next st, ch 2, sk next st] 8 times; join with sl st in first pop.
Rnd 3: Sl st in next ch-2 sp, ch 3 (counts as dc), 3 dc in same sp, [4 dc in next ch-2 sp] 7 times; join with sl st in top of beg
  ch-3.
Rnd 4: Ch 4 (counts as dc and ch 1), [dc in next st, ch 1] 31 times; join with sl st in 3rd ch of beg ch-4.
Rnd 5: Ch 1 (does not count as a st), [2 sc in next ch-1 sp] 32 times; join with sl st in first sc.
Rnd 6: Ch 1 (does not count as a st), [sc in next st, ch 3, sk next st] 32 times; join with sl st in first sc.
""", special=(("pop", "5 dc in same st, gathered"),),
    ),
    Piece(
        "mandala V and shells", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 8 sc in ring; join with sl st in first sc.
Rnd 2: Ch 4 (counts as dc and ch 1), dc in same st, [(dc, ch 1, dc) in next st] 7 times; join with sl st in 3rd ch of beg ch-4.
Rnd 3: Sl st in next ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, ch 1, [3 dc in next ch-1 sp, ch 1] 7 times; join with sl st in
  top of beg ch-3.
Rnd 4: Sl st in next 2 sts, sl st in next ch-1 sp, ch 1 (does not count as a st), sc in same sp, ch 5, [sc in next ch-1 sp, ch 5] 7
  times; join with sl st in first sc.
Rnd 5: Sl st in next ch-5 sp, ch 3 (counts as dc), 6 dc in same sp, ch 1, [7 dc in next ch-5 sp, ch 1] 7 times; join with sl st in
  top of beg ch-3.
Rnd 6: Sl st in next 6 sts, sl st in next ch-1 sp, ch 1 (does not count as a st), sc in same sp, sk next 3 dc, (2 dc, ch 2, 2 dc) in
  next dc, sk next 3 dc, [sc in next ch-1 sp, sk next 3 dc, (2 dc, ch 2, 2 dc) in next dc, sk next 3 dc] 7 times; join with sl st in
  first sc.
""",
    ),
    Piece(
        "sunburst granny", "square", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 4 (counts as dc and ch 1), [dc in next st, ch 1] 15 times; join with sl st in 3rd ch of beg ch-4.
Rnd 3: Sl st in next ch-1 sp, ch 3 (counts as dc), dc in same sp, ch 1, [2 dc in next ch-1 sp, ch 1] 15 times; join with sl st in
  top of beg ch-3.
Rnd 4: Sl st in next st, sl st in next ch-1 sp, ch 4 (counts as tr), 2 tr in same sp, ch 2, 3 tr in same sp, 3 dc in next ch-1 sp, 3
  hdc in next ch-1 sp, 3 dc in next ch-1 sp, [(3 tr, ch 2, 3 tr) in next ch-1 sp, 3 dc in next ch-1 sp, 3 hdc in next ch-1 sp, 3 dc
  in next ch-1 sp] 3 times; join with sl st in top of beg ch-4.
Rnd 5: Ch 3 (counts as dc), dc in next 2 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp, [dc in next 15 sts, (2 dc, ch 2, 2 dc) in next
  ch-2 sp] 3 times, dc in next 12 sts; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "circle in square puff", "square", """
Ring: Ch 5; join with sl st in first ch to form a ring.
Rnd 1: [Puff in ring, ch 2] 8 times; join with sl st in first puff.
Rnd 2: Sl st in next ch-2 sp, ch 3 (counts as dc), 2 dc in same sp, ch 1, [3 dc in next ch-2 sp, ch 1] 7 times; join with sl st in
  top of beg ch-3.
Rnd 3: Sl st in next 2 sts, sl st in next ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, ch 2, 3 dc in same sp, ch 1, 3 dc in next
  ch-1 sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-1 sp, ch 1, 3 dc in next ch-1 sp, ch 1] 3 times; join with sl st in top of beg ch-3.
Rnd 4: Sl st in next 2 sts, sl st in next ch-2 sp, ch 3 (counts as dc), 2 dc in same sp, ch 2, 3 dc in same sp, [ch 1, 3 dc in next
  ch-1 sp] twice, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, [ch 1, 3 dc in next ch-1 sp] twice, ch 1; rep from * 2 more times; join
  with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "african flower hexagon", "hexagon", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 1, [2 dc in ring, ch 1] 5 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next st, sl st in next ch-1 sp, ch 3 (counts as dc), dc in same sp, ch 1, 2 dc in same sp, [(2 dc, ch 1, 2 dc) in
  next ch-1 sp] 5 times; join with sl st in top of beg ch-3.
Rnd 3: Sl st in next st, sl st in next ch-1 sp, ch 3 (counts as dc), 6 dc in same sp, [7 dc in next ch-1 sp] 5 times; join with sl
  st in top of beg ch-3.
Rnd 4: Ch 1 (does not count as a st), sc in each of next 7 sts, [sc in each of next 7 sts] 5 times; join with sl st in first sc.
Rnd 5: Ch 3 (counts as dc), dc in next 2 sts, (dc, ch 1, dc) in next st, [dc in next 6 sts, (dc, ch 1, dc) in next st] 5 times, dc
  in next 3 sts; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "wheel squared over three rounds", "square", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 11 times; join with sl st in 3rd ch of beg ch-4.
Rnd 2: Sl st in next ch-1 sp, ch 3 (counts as dc), dc in same sp, ch 1, [2 dc in next ch-1 sp, ch 1] 11 times; join with sl st in top of
  beg ch-3.
Rnd 3: Sl st in next st, sl st in next ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, ch 1, [3 dc in next ch-1 sp, ch 1] 11 times; join
  with sl st in top of beg ch-3.
Rnd 4: Sl st in next 2 sts, sl st in next ch-1 sp, ch 1 (does not count as a st), sc in same sp, [ch 3, sc in next ch-1 sp] 2 times, ch
  5, [sc in next ch-1 sp, [ch 3, sc in next ch-1 sp] 2 times, ch 5] 3 times; join with sl st in first sc.
Rnd 5: Sl st in next ch-3 sp, ch 3 (counts as dc), 2 dc in same sp, 3 dc in next ch-3 sp, (5 dc, ch 2, 5 dc) in next ch-5 sp, [3 dc in
  next ch-3 sp, 3 dc in next ch-3 sp, (5 dc, ch 2, 5 dc) in next ch-5 sp] 3 times; join with sl st in top of beg ch-3.
Rnd 6: Ch 1 (does not count as a st), sc in same st, *sc in each st to next ch-2 sp, 3 sc in next ch-2 sp; rep from * 3 more times, sc
  in each st to end; join with sl st in first sc.
""",
    ),
    Piece(
        "trefoils of picots", "hexagon", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next st, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch-3 picot, ch-5 picot, ch-3 picot, 3 dc) in same sp, [(3
  dc, ch-3 picot, ch-5 picot, ch-3 picot, 3 dc) in next ch-2 sp] 5 times; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "doily slight corners", "square", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), 2 dc in same st, dc in next 3 sts, [3 dc in next st, dc in next 3 sts] 3 times; join with sl st in top
  of beg ch-3.
Rnd 3: Ch 3 (counts as dc), 3 dc in next st, dc in next 5 sts, [3 dc in next st, dc in next 5 sts] 2 times, 3 dc in next st, dc in
  next 4 sts; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "rect dc frame", "rectangle", """
Chain: Ch 14.
Rnd 1: 2 dc in 4th ch from hook (missed 3 ch count as dc), ch 2, 3 dc in same ch, dc in next 9 ch, (3 dc, ch 2, 3 dc, ch 2, 3 dc) in
  last ch; working in other side of foundation ch, dc in next 9 ch, 3 dc in last ch, ch 2; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in next 2 sts, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * 2 more
  times, (2 dc, ch 2, 2 dc) in next ch-2 sp; join with sl st in top of beg ch-3.
Rnd 3: Ch 3 (counts as dc), dc in each st to next ch-2 sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep
  from * 2 more times, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "oval dc 3r", "oval", """
Chain: Ch 13.
Rnd 1: 2 dc in 4th ch from hook (missed 3 ch count as dc), dc in next 8 ch, 6 dc in last ch; working in other side of foundation ch,
  dc in next 8 ch, 3 dc in last ch; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each of next 2 sts, dc in next 8 sts, 2 dc in each of next 6 sts, dc in next 8
  sts, 2 dc in each of next 3 sts; join with sl st in top of beg ch-3.
Rnd 3: Ch 3 (counts as dc), 2 dc in next st, [dc in next st, 2 dc in next st] 2 times, dc in next 8 sts, [dc in next st, 2 dc in
  next st] 6 times, dc in next 8 sts, [dc in next st, 2 dc in next st] 3 times; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "oval sc 5r", "oval", """
Chain: Ch 9.
Rnd 1: Sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch; working in other side of foundation ch, sc in next 6 ch, 2 sc in
  next ch; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), 2 sc in first st, sc in next 6 sts, 2 sc in each of next 3 sts, sc in next 6 sts, 2 sc in each
  of next 2 sts; join with sl st in first sc.
Rnd 3: Ch 1 (does not count as a st), sc in first st, 2 sc in next st, sc in next 6 sts, [sc in next st, 2 sc in next st] 3 times,
  sc in next 6 sts, [sc in next st, 2 sc in next st] 2 times; join with sl st in first sc.
Rnd 4: Ch 1 (does not count as a st), 2 sc in first st, sc in next 2 sts, sc in next 6 sts, [2 sc in next st, sc in next 2 sts] 3
  times, sc in next 6 sts, [2 sc in next st, sc in next 2 sts] 2 times; join with sl st in first sc.
Rnd 5: Ch 1 (does not count as a st), sc in each st around; join with sl st in first sc.
""",
    ),
    Piece(
        "layered flower 3", "flower", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), [sc in ring, ch 3] 6 times; join with sl st in first sc.
Rnd 2: [(sc, hdc, 3 dc, hdc, sc) in next ch-3 sp] 6 times; join with sl st in first sc.
Rnd 3: Ch 1 (does not count as a st), BPsc around first sc of Rnd 1, ch 5, [BPsc around next sc of Rnd 1, ch 5] 5 times; join with
  sl st in first BPsc.
Rnd 4: [(sc, hdc, 5 dc, hdc, sc) in next ch-5 sp] 6 times; join with sl st in first sc.
Rnd 5: Ch 1 (does not count as a st), BPsc around first BPsc of Rnd 3, ch 7, [BPsc around next BPsc of Rnd 3, ch 7] 5 times; join
  with sl st in first BPsc.
Rnd 6: [(sc, hdc, dc, 5 tr, dc, hdc, sc) in next ch-7 sp] 6 times; join with sl st in first sc.
""",
    ),
    Piece(
        "ruffled doily", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3.
Rnd 3: Ch 3 (counts as dc), 2 dc in next st, [dc in next st, 2 dc in next st] 11 times; join with sl st in top of beg ch-3.
Rnd 4: Ch 3 (counts as dc), 2 dc in same st, 3 dc in each st around; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "petal flower 12 picot", "flower", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), 2 sc in each st around; join with sl st in first sc.
Rnd 3: Ch 1 (does not count as a st), sc in same st, ch 3, sk next st, [sc in next st, ch 3, sk next st] 11 times; join with sl st
  in first sc.
Rnd 4: [(sc, hdc, dc, ch-3 picot, dc, hdc, sc) in next ch-3 sp] 12 times; join with sl st in first sc.
""",
    ),
    Piece(
        "star solid", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 14 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 3, sk next 2 sts, [sc in next st, ch 3, sk next 2 sts] 4 times; join with sl
  st in first sc.
Rnd 3: [(sc, hdc, dc, tr, ch-3 picot, tr, dc, hdc, sc) in next ch-3 sp] 5 times; join with sl st in first sc.
""",
    ),
    Piece(
        "V-stitch circle", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 7 times; join with sl st in 3rd ch of beg ch-4.
Rnd 2: Sl st in next ch-1 sp, ch 4 (counts as dc and ch 1), dc in same sp, [(dc, ch 1, dc) in next ch-1 sp] 7 times; join with sl st
  in 3rd ch of beg ch-4.
Rnd 3: Sl st in next ch-1 sp, ch 4 (counts as dc and ch 1), dc in same sp, ch 1, [(dc, ch 1, dc) in next ch-1 sp, ch 1] 7 times;
  join with sl st in 3rd ch of beg ch-4.
Rnd 4: Sl st in next ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, 2 dc in next ch-1 sp, [3 dc in next ch-1 sp, 2 dc in next ch-1
  sp] 7 times; join with sl st in top of beg ch-3.
""",
    ),
)  # fmt: skip
