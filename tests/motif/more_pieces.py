"""More motifs for the layout, the trade's everyday shapes. Written after it; where one failed, the layout was mended until it held."""

from __future__ import annotations

from gallery import Piece

MORE: tuple[Piece, ...] = (
    Piece(
        "ripple", "swatch", """
Chain: Ch 40.
Row 1: Dc in 4th ch from hook (missed 3 ch count as dc), dc in next 4 ch, [dc3tog over next 3 ch, dc in next 4 ch, 3 dc in
  next ch, dc in next 4 ch] twice, dc3tog over next 3 ch, dc in next 4 ch, 2 dc in last ch, turn.
Row 2 and following: Ch 3 (counts as dc), dc in first st, dc in next 4 sts, [dc3tog over next 3 sts, dc in next 4 sts, 3 dc
  in next st, dc in next 4 sts] twice, dc3tog over next 3 sts, dc in next 4 sts, 2 dc in last st, turn.
""", last=6, rows=True,
    ),
    Piece(
        "shells rows", "swatch", """
Chain: Ch 26.
Row 1: Sc in 2nd ch from hook, [sk next 2 ch, 5 dc in next ch, sk next 2 ch, sc in next ch] 4 times, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first st, [sk next 2 sts, sc in next st, sk next 2 sts, 5 dc in next st] 3 times, sk next
  2 sts, sc in next st, sk next 2 sts, 3 dc in last st, turn.
Row 3: Ch 1 (does not count as a st), sc in first st, [sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st] 4 times,
  turn.
""", rows=True,
    ),
    Piece(
        "filet", "swatch", """
Chain: Ch 26.
Row 1: Dc in 8th ch from hook (missed 7 ch count as dc and ch 2), [ch 2, sk next 2 ch, dc in next ch] 6 times, turn.
Row 2: Ch 5 (counts as dc and ch 2), sk first st, [dc in next dc, ch 2] 6 times, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "triangle shawl rows", "triangle", """
Chain: Ch 4.
Row 1: 2 dc in 4th ch from hook (missed 3 ch count as dc), turn.
Row 2: Ch 3 (counts as dc), dc in first st, dc in next st, 2 dc in last st, turn.
Row 3: Ch 3 (counts as dc), dc in first st, dc in each of next 3 sts, 2 dc in last st, turn.
Row 4: Ch 3 (counts as dc), dc in first st, dc in each of next 5 sts, 2 dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "pentagon", "pentagon", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), dc in ring, ch 2, [2 dc in ring, ch 2] 4 times; join with sl st in top of beg
  ch-3.
Rnd 2 and following: Sl st in each st to next ch-2 sp, sl st in next ch-2 sp, ch 3, dc in same sp, ch 2, 2 dc in same sp, [dc
  in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp] 4 times, dc in each st to end; join with sl st in top of
  beg ch-3.
""", last=4,
    ),
    Piece(
        "sunburst", "square", """
Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 4 (counts as dc and ch 1), [dc in next st, ch 1] 15 times; join with sl st in 3rd ch of beg ch-4.
Rnd 3: Sl st in next ch-1 sp, ch 2, bob in same sp, ch 2, [bob in next ch-1 sp, ch 2] 15 times; join with sl st in first bob.
Rnd 4: Sl st in next ch-2 sp, ch 3 (counts as dc), 2 dc in same sp, [3 dc in next ch-2 sp] 15 times; join with sl st in top
  of beg ch-3.
Rnd 5: Ch 3 (counts as dc), (dc, ch 2, 2 dc) in same st, *dc in next 3 sts, hdc in next 5 sts, dc in next 3 sts**, (2 dc, ch
  2, 2 dc) in next st; rep from * around, ending last rep at **; join with sl st in top of beg ch-3.
Rnd 6: Ch 1 (does not count as a st), [sc in each st to next ch-2 sp, 3 sc in next ch-2 sp] 4 times, sc in each st to end;
  join with sl st in first sc.
""", special=(("bob", "3 dc in same sp, gathered"),),
    ),
    Piece(
        "shell circle", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3.
Rnd 3: Ch 1 (does not count as a st), [sc in next st, sk next st, 5 dc in next st, sk next st] 6 times; join with sl st in
  first sc.
""",
    ),
    Piece(
        "doily picots", "circle", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 11 times; join with sl st in 3rd ch of beg ch-4.
Rnd 2: Sl st in next ch-1 sp, ch 3 (counts as dc), dc in same sp, ch 2, [2 dc in next ch-1 sp, ch 2] 11 times; join with sl
  st in top of beg ch-3.
Rnd 3: Sl st in next st, sl st in next ch-2 sp, ch 1 (does not count as a st), (sc, ch 3, sc) in same sp, ch 4, [(sc, ch 3,
  sc) in next ch-2 sp, ch 4] 11 times; join with sl st in first sc.
""",
    ),
    Piece(
        "amigurumi", "circle", """
Ring: Make a magic ring.
Rnd 1: 6 sc in ring; do not join.
Rnd 2: 2 sc in each st around; do not join.
Rnd 3: [Sc in next st, 2 sc in next st] 6 times; do not join.
Rnds 4-6: Sc in each st around; do not join.
Rnd 7: [Sc in next st, sc2tog] 6 times; do not join.
Rnd 8: [Sc2tog] 6 times; do not join.
""",
    ),
    Piece(
        "hdc hexagon inc", "hexagon", """
Ring: Make a magic ring.
Rnd 1: Ch 2 (counts as hdc), 11 hdc in ring; join with sl st in top of beg ch-2.
Rnd 2: Ch 2 (counts as hdc), 3 hdc in next st, [hdc in next st, 3 hdc in next st] 5 times; join with sl st in top of beg
  ch-2.
Rnd 3: Ch 2 (counts as hdc), hdc in next st, 3 hdc in next st, [hdc in next 3 sts, 3 hdc in next st] 5 times, hdc in next st;
  join with sl st in top of beg ch-2.
Rnd 4: Ch 2 (counts as hdc), hdc in next 2 sts, 3 hdc in next st, [hdc in next 5 sts, 3 hdc in next st] 5 times, hdc in next
  2 sts; join with sl st in top of beg ch-2.
""",
    ),
    Piece(
        "tr flower", "flower", """
Ring: Ch 5; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 10 sc in ring; join with sl st in first sc.
Rnd 2: [Ch 4, 3 tr in next st, ch 4, sl st in next st] 5 times.
""",
    ),
    Piece(
        "oval", "oval", """
Chain: Ch 8.
Rnd 1: Sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch; working in other side of foundation ch, sc in next 5 ch, 2
  sc in next ch; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), 2 sc in first st, sc in next 5 sts, 2 sc in each of next 3 sts, sc in next 5 sts, 2 sc
  in each of next 2 sts; join with sl st in first sc.
""",
    ),
    Piece(
        "semicircle", "half circle", """
Ring: Make a magic ring.
Row 1: Ch 3 (counts as dc), 7 dc in ring, turn.
Row 2: Ch 3 (counts as dc), dc in first st, 2 dc in each st to end, turn.
Row 3: Ch 3 (counts as dc), dc in first st, [dc in next st, 2 dc in next st] 7 times, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "net rows", "swatch", """
Chain: Ch 26.
Row 1: Sc in 6th ch from hook, [ch 5, sk next 3 ch, sc in next ch] 5 times, turn.
Row 2: Ch 5, sc in next ch-5 sp, [ch 5, sc in next ch-5 sp] 4 times, turn.
Row 3: Ch 5, sc in next ch-5 sp, [ch 5, sc in next ch-5 sp] 4 times, turn.
""", rows=True,
    ),
    Piece(
        "v rows", "swatch", """
Chain: Ch 22.
Row 1: Dc in 5th ch from hook (missed 4 ch count as dc and ch 1), [sk next 2 ch, (dc, ch 1, dc) in next ch] 5 times, sk next
  ch, dc in last ch, turn.
Row 2: Ch 3 (counts as dc), [(dc, ch 1, dc) in next ch-1 sp] 6 times, turn.
""", rows=True,
    ),
    Piece(
        "moss", "swatch", """
Chain: Ch 16.
Row 1: Sc in 2nd ch from hook, [ch 1, sk next ch, sc in next ch] 7 times, turn.
Row 2: Ch 1 (does not count as a st), sc in first st, [sc in next ch-1 sp, ch 1, sk next sc] 6 times, sc in next ch-1 sp, sc
  in last st, turn.
""", rows=True,
    ),
    Piece(
        "bobble rows", "swatch", """
Chain: Ch 16.
Row 1: Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in first st, [bob in next st, sc in next st] 6 times, sc in last st, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
""", special=(("bob", "5 dc in same st, gathered"),), rows=True,
    ),
    Piece(
        "puff flower", "circle", """
Ring: Ch 5; join with sl st in first ch to form a ring.
Rnd 1: [Puff in ring, ch 2] 8 times; join with sl st in first puff.
Rnd 2: [(2 dc, ch 1, 2 dc) in next ch-2 sp] 8 times; join with sl st in first dc.
Rnd 3: [Sc in next ch-1 sp, ch 4] 8 times; join with sl st in first sc.
""",
    ),
    Piece(
        "mandala", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 4 (counts as dc and ch 1), [dc in next st, ch 1] 11 times; join with sl st in 3rd ch of beg ch-4.
Rnd 3: Sl st in next ch-1 sp, ch 3 (counts as dc), dc in same sp, ch 1, [2 dc in next ch-1 sp, ch 1] 11 times; join with sl
  st in top of beg ch-3.
Rnd 4: Ch 3 (counts as dc), dc in next st, dc in next ch-1 sp, [dc in next 2 dc, dc in next ch-1 sp] 11 times; join with sl
  st in top of beg ch-3.
Rnd 5: Ch 1 (does not count as a st), [sc in next st, ch 3, sk next 2 sts] 12 times; join with sl st in first sc.
Rnd 6: [(sc, hdc, dc, tr, dc, hdc, sc) in next ch-3 sp] 12 times; join with sl st in first sc.
""",
    ),
    Piece(
        "popcorn square", "square", """
Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of
  beg ch-3.
Rnd 2: Ch 3, bump in next st, dc in next st, (2 dc, ch 2, 2 dc) in next ch-2 sp, [dc in next st, bump in next st, dc in next
  st, (2 dc, ch 2, 2 dc) in next ch-2 sp] 3 times; join with sl st in top of beg ch-3.
Rnd 3: Ch 3, dc in next 4 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp, [dc in next 7 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp] 3
  times, dc in next 2 sts; join with sl st in top of beg ch-3.
""", special=(("bump", "5 dc in same st, gathered"),),
    ),
    Piece(
        "star", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 10 sc in ring; join with sl st in first sc.
Rnd 2: [Ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in next ch, sk next st, sl st in
  next st] 5 times.
""",
    ),
)  # fmt: skip
