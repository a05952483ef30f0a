"""Lace and texture as designers write them: doilies with fans and pineapples, wheels with arcs and picots, bobbles, filet,
shawls. Written to find what fails; the layout was mended with them in sight.
"""

from __future__ import annotations

from gallery import Piece

LACE: tuple[Piece, ...] = (
    Piece(
        "pineapple doily 6", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 17 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 5 (counts as dc and ch 2), dc in same st, ch 2, sk next 2 sts, [(dc, ch 2, dc) in next st, ch 2, sk next 2 sts] 5 times;
  join with sl st in 3rd ch of beg ch-5.
Rnd 3: Sl st in next ch-2 sp, ch 3 (counts as dc), 6 dc in same sp, ch 2, sc in next ch-2 sp, ch 2, [7 dc in next ch-2 sp, ch 2, sc
  in next ch-2 sp, ch 2] 5 times; join with sl st in top of beg ch-3.
Rnd 4: Ch 1 (does not count as a st), sc in same st, [ch 3, sc in next dc] 6 times, ch 5, [sc in next dc, [ch 3, sc in next dc] 6
  times, ch 5] 5 times; join with sl st in first sc.
Rnd 5: Sl st in next ch-3 sp, ch 1 (does not count as a st), sc in same sp, [ch 3, sc in next ch-3 sp] 5 times, ch 3, (2 dc, ch 2, 2
  dc) in next ch-5 sp, ch 3, [sc in next ch-3 sp, [ch 3, sc in next ch-3 sp] 5 times, ch 3, (2 dc, ch 2, 2 dc) in next ch-5 sp, ch
  3] 5 times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "pineapple start 8", "circle", """
Ring: Ch 8; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 4 (counts as dc and ch 1), [dc in next st, ch 1] 23 times; join with sl st in 3rd ch of beg ch-4.
Rnd 3: Sl st in next ch-1 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, ch 4, sk next 2 ch-1 sps, [(2 dc, ch 2, 2 dc) in
  next ch-1 sp, ch 4, sk next 2 ch-1 sps] 7 times; join with sl st in top of beg ch-3.
Rnd 4: Sl st in next st, sl st in next ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, ch 2, 8 tr in next ch-4 sp, ch 2,
  [(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 2, 8 tr in next ch-4 sp, ch 2] 7 times; join with sl st in top of beg ch-3.
Rnd 5: Sl st in next st, sl st in next ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, ch 3, sk next ch-2 sp, [sc in next
  tr, ch 3] 8 times, sk next ch-2 sp, [(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 3, sk next ch-2 sp, [sc in next tr, ch 3] 8 times, sk
  next ch-2 sp] 7 times; join with sl st in top of beg ch-3.
""", lace=True,
    ),
    Piece(
        "fan doily 7 in ch-5", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 5, sk next st, [sc in next st, ch 5, sk next st] 7 times; join with sl st in
  first sc.
Rnd 3: Ch 1 (does not count as a st), [sc in next sc, 7 dc in next ch-5 sp] 8 times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "fan doily two tiers", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 3, sk next st, [sc in next st, ch 3, sk next st] 7 times; join with sl st in
  first sc.
Rnd 3: Sl st in next ch-3 sp, ch 3 (counts as dc), 4 dc in same sp, ch 1, [5 dc in next ch-3 sp, ch 1] 7 times; join with sl st in
  top of beg ch-3.
Rnd 4: Ch 1 (does not count as a st), [sc in next 5 sts, ch 5, sk next ch-1 sp] 8 times; join with sl st in first sc.
Rnd 5: Ch 1 (does not count as a st), [sk next 2 sts, sc in next st, ch 1, sk next 2 sts, 9 dc in next ch-5 sp, ch 1] 8 times; join
  with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "lace wheel picots arcs", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: Ch 6 (counts as tr and ch 2), [tr in next st, ch 2] 11 times; join with sl st in 4th ch of beg ch-6.
Rnd 3: Ch 1 (does not count as a st), [3 sc in next ch-2 sp] 12 times; join with sl st in first sc.
Rnd 4: Ch 1 (does not count as a st), sc in same st, ch 7, sk next 2 sts, [sc in next st, ch 7, sk next 2 sts] 11 times; join with
  sl st in first sc.
Rnd 5: Ch 1 (does not count as a st), [4 sc in next ch-7 sp, ch-3 picot, 4 sc in same sp] 12 times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "long arc doily", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 7, sk next st, [sc in next st, ch 7, sk next st] 5 times; join with sl st in
  first sc.
Rnd 3: Sl st in next ch-7 sp, ch 3 (counts as dc), 8 dc in same sp, [9 dc in next ch-7 sp] 5 times; join with sl st in top of beg
  ch-3.
Rnd 4: Ch 1 (does not count as a st), sc in same st, ch 9, sk next 8 sts, [sc in next st, ch 9, sk next 8 sts] 5 times; join with sl
  st in first sc.
Rnd 5: Ch 1 (does not count as a st), [11 sc in next ch-9 sp] 6 times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "spider wheel", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 8 sc in ring; join with sl st in first sc.
Rnd 2: Ch 5 (counts as dc and ch 2), [dc in next st, ch 2] 7 times; join with sl st in 3rd ch of beg ch-5.
Rnd 3: Sl st in next ch-2 sp, ch 3 (counts as dc), 3 dc in same sp, [4 dc in next ch-2 sp] 7 times; join with sl st in top of beg
  ch-3.
Rnd 4: Ch 1 (does not count as a st), sc in same st, ch 3, sk next st, [sc in next st, ch 3, sk next st] 15 times; join with sl st
  in first sc.
Rnd 5: Sl st in next ch-3 sp, ch 1 (does not count as a st), (sc, ch-3 picot, sc) in same sp, ch 2, [(sc, ch-3 picot, sc) in next
  ch-3 sp, ch 2] 15 times; join with sl st in first sc.
""", lace=True,
    ),
    Piece(
        "popcorn wheel", "circle", """
Ring: Ch 5; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 5 (counts as dc and ch 2), [pop in next st, ch 2, dc in next st, ch 2] 7 times, pop in next st, ch 2; join with sl st in
  3rd ch of beg ch-5.
Rnd 3: Ch 1 (does not count as a st), [3 sc in next ch-2 sp] 16 times; join with sl st in first sc.
""", special=(("pop", "5 dc in same st, gathered"),),
    ),
    Piece(
        "shell edging", "swatch", """
Chain: Ch 26.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in first st, [ch 3, sk next 2 sts, sc in next st] 8 times, turn.
Row 3: Ch 1 (does not count as a st), sc in first st, [5 dc in next ch-3 sp, sc in next ch-3 sp] 4 times, sc in last st, turn.
""", rows=True,
    ),
    Piece(
        "shell edging 7 dc picots", "swatch", """
Chain: Ch 26.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in first st, [sk next 2 sts, (3 dc, ch-3 picot, 3 dc) in next st, sk next 2 sts, sc in next
  st] 3 times, sc in each st to end, turn.
""", rows=True,
    ),
    Piece(
        "v-stitch shawl", "triangle", """
Ring: Make a magic ring.
Row 1: Ch 4 (counts as dc and ch 1), (dc, ch 1, dc) in ring, ch 2, (dc, ch 1, dc) in ring, ch 1, dc in ring, turn.
Row 2: Ch 4 (counts as dc and ch 1), dc in next ch-1 sp, ch 1, (dc, ch 1, dc) in next ch-1 sp, (dc, ch 2, dc) in next ch-2 sp, (dc,
  ch 1, dc) in next ch-1 sp, ch 1, dc in next ch-1 sp, ch 1, dc in last st, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "bobble blanket sc", "swatch", """
Chain: Ch 23.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2 (WS): Ch 1 (does not count as a st), sc in next 3 sts, [bob in next st, sc in next 2 sts] 6 times, sc in next st, turn.
Row 3: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 4: Ch 1 (does not count as a st), sc in next 2 sts, [bob in next st, sc in next 2 sts] 6 times, sc in next 2 sts, turn.
Row 5: Ch 1 (does not count as a st), sc in each st to end, turn.
""", special=(("bob", "dc5tog in same st"),), rows=True,
    ),
    Piece(
        "bobble blanket dc", "swatch", """
Chain: Ch 22.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, [bob in next st, dc in next st] 9 times, dc in next st, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
""", special=(("bob", "dc5tog in same st"),), rows=True,
    ),
    Piece(
        "filet diamonds", "swatch", """
Chain: Ch 27.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in next 3 sts, [ch 2, sk next 2 sts, dc in next st] 6 times, dc in next 3 sts, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in next 3 dc, [ch 2, sk ch-2 sp, dc in next dc] 2 times, [2 dc in next ch-2 sp, dc in
  next dc] 2 times, [ch 2, sk ch-2 sp, dc in next dc] 2 times, dc in next 3 dc, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "shells and V-stitches", "swatch", """
Chain: Ch 38.
Row 1 (RS): Sc in 2nd ch from hook, [sk next 3 ch, (3 dc, ch 1, 3 dc) in next ch, sk next 3 ch, sc in next ch] 4 times, sc in each
  ch to end, turn.
Row 2: Ch 3 (counts as dc), dc in first st, [ch 2, sc in next ch-1 sp, ch 2, (dc, ch 1, dc) in next sc] 3 times, ch 2, sc in next
  ch-1 sp, ch 2, dc in next sc, turn, leave remaining sts unworked.
""", rows=True, lace=True,
    ),
    Piece(
        "arches with fans", "swatch", """
Chain: Ch 30.
Row 1 (RS): Sc in 2nd ch from hook, [ch 5, sk next 3 ch, sc in next ch] 7 times, turn.
Row 2: Ch 5 (counts as dc and ch 2), sc in next ch-5 sp, [5 dc in next sc, sc in next ch-5 sp, ch 5, sc in next ch-5 sp] 3 times, ch
  2, dc in last sc, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "pineapple rows", "swatch", """
Chain: Ch 22.
Row 1 (RS): Sc in 2nd ch from hook, [ch 3, sk next 4 ch, 7 dc in next ch, ch 3, sk next 4 ch, sc in next ch] 2 times, turn.
Row 2: Ch 6 (counts as dc and ch 3), [sc in next dc, [ch 3, sc in next dc] 6 times, ch 3, dc in next sc, ch 3] 1 time, sc in next dc,
  [ch 3, sc in next dc] 6 times, ch 3, dc in last sc, turn.
Row 3: Ch 6 (counts as dc and ch 3), sk next ch-3 sp, sc in next ch-3 sp, [ch 3, sc in next ch-3 sp] 5 times, ch 3, sk ch-3 sp, dc in
  next dc, ch 3, sk ch-3 sp, sc in next ch-3 sp, [ch 3, sc in next ch-3 sp] 5 times, ch 3, sk ch-3 sp, dc in last st, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "fan doily", "circle", """
Ring: Ch 8; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 5, sk next 2 sts, [sc in next st, ch 5, sk next 2 sts] 7 times; join with sl
  st in first sc.
Rnd 3: [9 dc in next ch-5 sp, sc in next sc] 8 times; join with sl st in first dc.
""", lace=True,
    ),
)  # fmt: skip
