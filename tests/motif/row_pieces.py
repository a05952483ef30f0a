"""Work in rows and what grows from it, met for the first time when the layout of rows was mended: flat, shaped, bent, posts, branches, half
motifs. Measured before and after.
"""

from __future__ import annotations

from gallery import Piece

ROWS: tuple[Piece, ...] = (
    Piece(
        "sc swatch", "swatch", """
Chain: Ch 21.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2 and following: Ch 1 (does not count as a st), sc in each st to end, turn.
""", last=10, rows=True,
    ),
    Piece(
        "mixed stripes", "swatch", """
Chain: Ch 18.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
Row 3: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 4: Ch 2 (counts as hdc), sk first st, hdc in each st to end, turn.
Row 5: Ch 4 (counts as tr), sk first st, tr in each st to end, turn.
Row 6: Ch 1 (does not count as a st), sc in BLO of each st to end, turn.
""", rows=True,
    ),
    Piece(
        "post rib", "swatch", """
Chain: Ch 19.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, [FPdc around next dc, BPdc around next dc] 7 times, FPdc around next dc, dc in last
  st, turn.
Row 3: Ch 3 (counts as dc), sk first st, [BPdc around next st, FPdc around next st] 7 times, BPdc around next st, dc in last
  st, turn.
Row 4: Ch 3 (counts as dc), sk first st, [FPdc around next st, BPdc around next st] 7 times, FPdc around next st, dc in last
  st, turn.
""", rows=True,
    ),
    Piece(
        "crossed dc", "swatch", """
Chain: Ch 20.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, [sk next st, dc in next st, dc in missed st] 8 times, dc in next 2 sts, turn.
Row 3: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 4: Ch 3 (counts as dc), sk first st, [sk next st, dc in next st, dc in missed st] 8 times, dc in next 2 sts, turn.
""", rows=True,
    ),
    Piece(
        "cable", "swatch", """
Chain: Ch 18.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in next st, [sk next 2 sts, FPtr around each of next 2 sts, FPtr around each of
  2 missed sts, dc in next 2 sts] 2 times, dc in last 2 sts, turn.
Row 4: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
""", rows=True,
    ),
    Piece(
        "spikes", "swatch", """
Chain: Ch 17.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 3: Ch 1 (does not count as a st), [sc in next 3 sts, sc in st 2 rows below] 4 times, turn.
Row 4: Ch 1 (does not count as a st), sc in each st to end, turn.
""", rows=True,
    ),
    Piece(
        "bobbles in single crochet", "swatch", """
Chain: Ch 19.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in next 2 sts, [bob in next st, sc in next 3 sts] 3 times, bob in next st, sc in
  next 2 sts, turn.
Row 3: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 4: Ch 1 (does not count as a st), sc in next 4 sts, [bob in next st, sc in next 3 sts] 3 times, sc in next st, turn.
""", special=(("bob", "dc5tog in same st"),), rows=True,
    ),
    Piece(
        "popcorn rows", "swatch", """
Chain: Ch 17.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in next st, [pop in next st, dc in next 3 sts] 3 times, dc in next st, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
""", special=(("pop", "5 dc in same st, gathered"),), rows=True,
    ),
    Piece(
        "shell stitch", "swatch", """
Chain: Ch 32.
Row 1 (RS): Sc in 2nd ch from hook, [sk next 2 ch, 5 dc in next ch, sk next 2 ch, sc in next ch] 5 times, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first st, [sk next 2 dc, sc in next dc, sk next 2 dc, 5 dc in next sc] 4 times, sk next
  2 dc, sc in next dc, sk next 2 dc, 3 dc in last sc, turn.
Row 3: Ch 1 (does not count as a st), sc in first st, [sk next 2 dc, 5 dc in next sc, sk next 2 dc, sc in next dc] 5 times,
  turn.
Row 4: Ch 3 (counts as dc), 2 dc in first st, [sk next 2 dc, sc in next dc, sk next 2 dc, 5 dc in next sc] 4 times, sk next
  2 dc, sc in next dc, sk next 2 dc, 3 dc in last sc, turn.
""", rows=True,
    ),
    Piece(
        "v-stitch", "swatch", """
Chain: Ch 23.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), [sk next 2 ch, (dc, ch 1, dc) in next ch] 5 times, sk next 2
  ch, dc in next ch, dc in last ch, turn.
Row 2 and following: Ch 3 (counts as dc), sk first st, dc in next st, [(dc, ch 1, dc) in next ch-1 sp] 5 times, sk next st,
  dc in next 2 sts, turn.
""", last=5, rows=True,
    ),
    Piece(
        "fans with chains", "swatch", """
Chain: Ch 32.
Row 1 (RS): Sc in 2nd ch from hook, [ch 3, sk next 4 ch, (dc, ch 1, dc, ch 1, dc, ch 1, dc) in next ch, ch 3, sk next 4 ch,
  sc in next ch] 3 times, turn.
Row 2: Ch 1 (does not count as a st), sc in first st, [ch 3, sk ch-3 sp, sc in next ch-1 sp, ch 3, sc in next ch-1 sp, ch 3,
  sc in next ch-1 sp, ch 3, sc in next sc] 3 times, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "filet 8 x 6", "swatch", """
Chain: Ch 28.
Row 1 (RS): Dc in 7th ch from hook (missed 6 ch count as dc and ch 2), [ch 2, sk next 2 ch, dc in next ch] 7 times, turn.
Row 2: Ch 5 (counts as dc and ch 2), sk first st, sk next ch-2 sp, dc in next dc, 2 dc in next ch-2 sp, dc in next dc, 2 dc
  in next ch-2 sp, dc in next dc, [ch 2, sk ch-2 sp, dc in next dc] 2 times, 2 dc in next ch-2 sp, dc in next dc, ch 2, sk
  ch-2 sp, dc in next dc, ch 2, sk ch-2 sp, dc in last dc, turn.
Row 3: Ch 5 (counts as dc and ch 2), sk first st, sk next ch-2 sp, dc in next dc, ch 2, sk ch-2 sp, dc in next 4 dc, [ch 2,
  sk ch-2 sp, dc in next dc] 2 times, dc in next 6 dc, ch 2, sk ch-2 sp, dc in last dc, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "arch net rows", "swatch", """
Chain: Ch 26.
Row 1 (RS): Sc in 6th ch from hook, [ch 5, sk next 3 ch, sc in next ch] 5 times, turn.
Row 2: Ch 5, sc in next ch-5 sp, [ch 5, sc in next ch-5 sp] 4 times, turn.
Row 3: Ch 5, sc in next ch-5 sp, [ch 5, sc in next ch-5 sp] 4 times, turn.
Row 4: Ch 5, sc in next ch-5 sp, [ch 5, sc in next ch-5 sp] 4 times, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "ripple sc", "swatch", """
Chain: Ch 35.
Row 1: 2 sc in 2nd ch from hook, [sc in next 4 ch, sk next 2 ch, sc in next 4 ch, 3 sc in next ch] 2 times, sc in next 4 ch,
  sk next 2 ch, sc in next 4 ch, 2 sc in last ch, turn.
Row 2 and following: Ch 1 (does not count as a st), 2 sc in first st, [sc in next 4 sts, sk next 2 sts, sc in next 4 sts, 3
  sc in next st] 2 times, sc in next 4 sts, sk next 2 sts, sc in next 4 sts, 2 sc in last st, turn.
""", last=5, rows=True,
    ),
    Piece(
        "feather and fan", "swatch", """
Chain: Ch 40.
Row 1: Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, [[dc2tog over next 2 sts] 3 times, [2 dc in next st] 6 times, [dc2tog over next 2
  sts] 3 times] 2 times, dc in last st, turn.
Row 3: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 4: Ch 3 (counts as dc), sk first st, [[dc2tog over next 2 sts] 3 times, [2 dc in next st] 6 times, [dc2tog over next 2
  sts] 3 times] 2 times, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "wave stitch", "swatch", """
Chain: Ch 29.
Row 1 (RS): Sc in 2nd ch from hook, [hdc in next ch, dc in next ch, tr in next 3 ch, dc in next ch, hdc in next ch, sc in
  next 2 ch] 3 times, turn.
Row 2: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 3: Ch 4 (counts as tr), sk first st, [dc in next st, hdc in next st, sc in next 3 sts, hdc in next st, dc in next st, tr
  in next 2 sts] 3 times, turn.
Row 4: Ch 1 (does not count as a st), sc in each st to end, turn.
""", rows=True,
    ),
    Piece(
        "bunting decreasing", "triangle", """
Chain: Ch 16.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Rows 2-7: Ch 1 (does not count as a st), sc2tog over next 2 sts, sc in each st to last 2 sts, sc2tog over next 2 sts, turn.
Row 8: Ch 1 (does not count as a st), sc3tog over next 3 sts, turn.
""", rows=True,
    ),
    Piece(
        "triangle from a point sc", "triangle", """
Chain: Ch 2.
Row 1 (RS): Sc in 2nd ch from hook, turn.
Row 2: Ch 1 (does not count as a st), 3 sc in next st, turn.
Rows 3-9: Ch 1 (does not count as a st), 2 sc in first st, sc in each st to last st, 2 sc in last st, turn.
""", rows=True,
    ),
    Piece(
        "trapezoid dc dec", "swatch", """
Chain: Ch 24.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Rows 2-5: Ch 3 (counts as dc), sk first st, dc2tog over next 2 sts, dc in each st to last 3 sts, dc2tog over next 2 sts, dc
  in last st, turn.
""", rows=True,
    ),
    Piece(
        "trapezoid dc inc", "swatch", """
Chain: Ch 10.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Rows 2-6: Ch 3 (counts as dc), dc in first st, dc in each st to last st, 2 dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "diamond", "swatch", """
Chain: Ch 2.
Row 1 (RS): 3 sc in 2nd ch from hook, turn.
Rows 2-6: Ch 1 (does not count as a st), 2 sc in first st, sc in each st to last st, 2 sc in last st, turn.
Rows 7-11: Ch 1 (does not count as a st), sc2tog over next 2 sts, sc in each st to last 2 sts, sc2tog over next 2 sts, turn.
""", rows=True,
    ),
    Piece(
        "one sided increase", "triangle", """
Chain: Ch 6.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), dc in first st, dc in each st to end, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in each st to last st, 2 dc in last st, turn.
Row 4: Ch 3 (counts as dc), dc in first st, dc in each st to end, turn.
Row 5: Ch 3 (counts as dc), sk first st, dc in each st to last st, 2 dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "yoke", "swatch", """
Chain: Ch 27.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in next 3 ch, (dc, ch 2, dc) in next ch, dc in next 4 ch,
  (dc, ch 2, dc) in next ch, dc in next 4 ch, (dc, ch 2, dc) in next ch, dc in next 4 ch, (dc, ch 2, dc) in next ch, dc in
  next 4 ch, turn.
Row 2: Ch 3 (counts as dc), sk first st, [dc in each st to next ch-2 sp, (dc, ch 2, dc) in next ch-2 sp] 4 times, dc in each
  st to end, turn.
Row 3: Ch 3 (counts as dc), sk first st, [dc in each st to next ch-2 sp, (dc, ch 2, dc) in next ch-2 sp] 4 times, dc in each
  st to end, turn.
""", rows=True,
    ),
    Piece(
        "mitred square sc", "swatch", """
Chain: Ch 20.
Row 1 (RS): Sc in 2nd ch from hook, sc in next 7 ch, sc3tog over next 3 ch, sc in next 8 ch, turn.
Row 2: Ch 1 (does not count as a st), sc in next 7 sts, sc3tog over next 3 sts, sc in next 7 sts, turn.
Row 3: Ch 1 (does not count as a st), sc in next 6 sts, sc3tog over next 3 sts, sc in next 6 sts, turn.
Row 4: Ch 1 (does not count as a st), sc in next 5 sts, sc3tog over next 3 sts, sc in next 5 sts, turn.
Row 5: Ch 1 (does not count as a st), sc in next 4 sts, sc3tog over next 3 sts, sc in next 4 sts, turn.
Row 6: Ch 1 (does not count as a st), sc in next 3 sts, sc3tog over next 3 sts, sc in next 3 sts, turn.
""", rows=True,
    ),
    Piece(
        "mitred square dc", "swatch", """
Chain: Ch 25.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in next 8 ch, dc3tog over next 3 ch, dc in next 10 ch,
  turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in next 8 sts, dc3tog over next 3 sts, dc in next 9 sts, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in next 7 sts, dc3tog over next 3 sts, dc in next 8 sts, turn.
Row 4: Ch 3 (counts as dc), sk first st, dc in next 6 sts, dc3tog over next 3 sts, dc in next 7 sts, turn.
""", rows=True,
    ),
    Piece(
        "stepped block", "swatch", """
Chain: Ch 20.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in next 11 sts, turn, leave remaining sts unworked.
Row 3: Ch 3 (counts as dc), sk first st, dc in next 5 sts, turn, leave remaining sts unworked.
""", rows=True,
    ),
    Piece(
        "granny rows", "swatch", """
Chain: Ch 21.
Row 1 (RS): 2 dc in 4th ch from hook (missed 3 ch count as dc), [ch 1, sk next 2 ch, 3 dc in next ch] 5 times, sk next ch,
  dc in next ch, turn.
Row 2: Ch 4 (counts as dc and ch 1), [3 dc in next ch-1 sp, ch 1] 5 times, sk next 2 sts, dc in last st, turn.
Row 3: Ch 3 (counts as dc), 2 dc in next ch-1 sp, [ch 1, 3 dc in next ch-1 sp] 5 times, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "shells between posts", "swatch", """
Chain: Ch 30.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), [sk next 2 ch, (2 dc, ch 2, 2 dc) in next ch, sk next 2 ch, dc
  in next ch] 4 times, dc in next 2 ch, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in next st, [FPdc around next dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, sk next 2
  dc] 4 times, FPdc around next dc, dc in last st, turn.
Row 3: Ch 3 (counts as dc), sk first st, [BPdc around next st, (2 dc, ch 2, 2 dc) in next ch-2 sp, sk next 2 dc] 4 times,
  BPdc around next st, dc in next 2 sts, turn.
""", rows=True,
    ),
    Piece(
        "raised stitches over a row", "swatch", """
Chain: Ch 17.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 3: Ch 1 (does not count as a st), sc in next 2 sts, [FPtr around st 2 rows below, sc in next 3 sts] 3 times, sc in next
  st, turn.
Row 4: Ch 1 (does not count as a st), sc in each st to end, turn.
""", rows=True,
    ),
    Piece(
        "bunting dc", "triangle", """
Ring: Make a magic ring.
Row 1: Ch 3 (counts as dc), 2 dc in ring, turn.
Rows 2-6: Ch 3 (counts as dc), dc in first st, dc in each st to last st, 2 dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "bandana", "triangle", """
Chain: Ch 4.
Row 1: 4 dc in 4th ch from hook (missed 3 ch count as dc), turn.
Row 2 and following: Ch 3 (counts as dc), 2 dc in first st, dc in each st to last st, 3 dc in last st, turn.
""", last=6, rows=True,
    ),
    Piece(
        "granny shawl", "triangle", """
Ring: Make a magic ring.
Row 1: Ch 4 (counts as dc and ch 1), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring, turn.
Row 2: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1
  sp, ch 1, dc in last st, turn.
Row 3 and following: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, [3 dc in next ch-1 sp, ch 1] to next ch-2 sp,
  (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, [3 dc in next ch-1 sp, ch 1] to last st, dc in last st, turn.
""", last=5, rows=True,
    ),
    Piece(
        "solid shawl", "triangle", """
Ring: Make a magic ring.
Row 1: Ch 3 (counts as dc), 3 dc in ring, ch 2, 4 dc in ring, turn.
Row 2 and following: Ch 3 (counts as dc), dc in first st, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp,
  dc in each st to last st, 2 dc in last st, turn.
""", last=5, rows=True,
    ),
    Piece(
        "half circle 6", "half circle", """
Ring: Make a magic ring.
Row 1: Ch 3 (counts as dc), 6 dc in ring, turn.
Row 2: Ch 3 (counts as dc), dc in first st, 2 dc in each st to end, turn.
Row 3: Ch 3 (counts as dc), sk first st, [2 dc in next st, dc in next st] 6 times, dc in next st, turn.
Row 4: Ch 3 (counts as dc), sk first st, [2 dc in next st, dc in next 2 sts] 6 times, dc in next st, turn.
Row 5: Ch 3 (counts as dc), sk first st, [2 dc in next st, dc in next 3 sts] 6 times, dc in next st, turn.
""", rows=True,
    ),
    Piece(
        "fringe of stems", "swatch", """
Chain: Ch 16.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in next 3 sts, [ch 6, sc in 2nd ch from hook, sc in next 4 ch, sc in next 4 sts] 3
  times, turn.
""", rows=True,
    ),
    Piece(
        "leaf row", "swatch", """
Chain: Ch 21.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in next 4 sts, [ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc
  in next ch, hdc in next ch, sc in next 4 sts] 4 times, turn.
""", rows=True,
    ),
    Piece(
        "leafy ring", "flower", """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: [Sc in next st, ch 5, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, sc in next ch, sc in next st] 6
  times; join with sl st in first sc.
""",
    ),
    Piece(
        "spiky star", "star", """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: [Ch 5, sc in 2nd ch from hook, hdc in next ch, dc in next ch, tr in next ch, sk next st, sl st in next st] 6 times.
""",
    ),
    Piece(
        "fern", "flower", """
Ring: Ch 5; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 8 sc in ring; join with sl st in first sc.
Rnd 2: [Sl st in next st, ch 8, sc in 2nd ch from hook, hdc in next 2 ch, dc in next 3 ch, hdc in next ch] 8 times; join
  with sl st in first sl st.
""",
    ),
    Piece(
        "post rib hat", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), FPdc around same st, [dc in next st, FPdc around same st] 11 times; join with sl st in top of
  beg ch-3.
Rnd 3: Ch 1 (does not count as a st), [FPdc around next st, BPdc around next st] 12 times; join with sl st in first FPdc.
Rnd 4: Ch 1 (does not count as a st), [FPdc around next st, BPdc around next st] 12 times; join with sl st in first FPdc.
""",
    ),
    Piece(
        "hat dc closing", "circle", """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3.
Rnd 3: Ch 3 (counts as dc), dc in each st around; join with sl st in top of beg ch-3.
Rnd 4: Ch 3 (counts as dc), dc in next st, dc2tog over next 2 sts, [dc in next 2 sts, dc2tog over next 2 sts] 5 times; join
  with sl st in top of beg ch-3.
Rnd 5: Ch 3 (counts as dc), dc2tog over next 2 sts, [dc in next st, dc2tog over next 2 sts] 5 times; join with sl st in top
  of beg ch-3.
""",
    ),
    Piece(
        "gored hat crown", "circle", """
Ring: Make a magic ring.
Rnd 1: 8 hdc in ring; join with sl st in first hdc.
Rnd 2: Ch 1 (does not count as a st), 2 hdc in each st around; join with sl st in first hdc.
Rnd 3: Ch 1 (does not count as a st), [hdc in next st, 2 hdc in next st] 8 times; join with sl st in first hdc.
Rnds 4-6: Ch 1 (does not count as a st), hdc in each st around; join with sl st in first hdc.
Rnd 7: Ch 1 (does not count as a st), [hdc in next st, hdc2tog over next 2 sts] 8 times; join with sl st in first hdc.
Rnd 8: Ch 1 (does not count as a st), [hdc2tog over next 2 sts] 8 times; join with sl st in first hdc.
""",
    ),
)  # fmt: skip
