"""Row work as designers write it, met for the first time when cables, half motifs and work from one chain were mended."""

from __future__ import annotations

from gallery import Piece

DESIGNS: tuple[Piece, ...] = (
    Piece(
        "shawl from the tip", "triangle", """
Chain: Ch 4.
Row 1 (RS): 2 dc in 4th ch from hook (missed 3 ch count as dc), ch 1, 3 dc in same ch, turn.
Row 2 and following: Ch 3 (counts as dc), dc in first st, dc in each st to next ch-1 sp, (2 dc, ch 1, 2 dc) in next ch-1 sp,
  dc in each st to last st, 2 dc in last st, turn.
""", last=6, rows=True,
    ),
    Piece(
        "shell stitch", "swatch", """
Chain: Ch 26.
Row 1 (RS): Sc in 2nd ch from hook, [sk next 2 ch, 5 dc in next ch, sk next 2 ch, sc in next ch] 4 times, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first st, [sk next 2 sts, sc in next st, sk next 2 sts, 5 dc in next st] 3 times, sk next
  2 sts, sc in next st, sk next 2 sts, 3 dc in last st, turn.
Row 3: Ch 1 (does not count as a st), sc in first st, [sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st] 4 times,
  turn.
Row 4: Rep Row 2.
""", rows=True,
    ),
    Piece(
        "v stitch", "swatch", """
Chain: Ch 24.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), [sk next 2 ch, (dc, ch 1, dc) in next ch] 6 times, sk next ch,
  dc in next ch, turn.
Row 2: Ch 3 (counts as dc), [(dc, ch 1, dc) in next ch-1 sp] 6 times, sk next st, dc in next st, dc in last st, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in next st, [(dc, ch 1, dc) in next ch-1 sp] 6 times, sk next st, dc in last st,
  turn.
""", rows=True, lace=True,
    ),
    Piece(
        "mesh", "swatch", """
Chain: Ch 24.
Row 1 (RS): Dc in 6th ch from hook (missed 5 ch count as dc and ch 1), [ch 1, sk next ch, dc in next ch] 9 times, turn.
Row 2: Ch 4 (counts as dc and ch 1), [dc in next dc, ch 1] 9 times, dc in last st, turn.
Row 3: Ch 4 (counts as dc and ch 1), [dc in next dc, ch 1] 9 times, dc in last st, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "filet heart", "swatch", """
Chain: Ch 26.
Row 1 (RS): Dc in 8th ch from hook (missed 7 ch count as dc and ch 2), [ch 2, sk next 2 ch, dc in next ch] 6 times, turn.
Row 2: Ch 5 (counts as dc and ch 2), dc in next dc, ch 2, dc in next dc, ch 2, dc in next dc, 2 dc in next ch-2 sp, dc in next
  dc, [ch 2, dc in next dc] 2 times, ch 2, dc in last st, turn.
Row 3: Ch 5 (counts as dc and ch 2), dc in next dc, ch 2, dc in next dc, 2 dc in next ch-2 sp, dc in next 4 dc, 2 dc in next
  ch-2 sp, dc in next dc, ch 2, dc in next dc, ch 2, dc in last st, turn.
Row 4: Ch 5 (counts as dc and ch 2), dc in next dc, 2 dc in next ch-2 sp, dc in next 10 dc, 2 dc in next ch-2 sp, dc in next
  dc, ch 2, dc in last st, turn.
Row 5: Ch 5 (counts as dc and ch 2), dc in next 7 dc, ch 2, sk next 2 dc, dc in next 7 dc, ch 2, dc in last st, turn.
Row 6: Ch 5 (counts as dc and ch 2), dc in next dc, ch 2, sk next 2 dc, dc in next dc, ch 2, sk next 2 dc, dc in next dc, ch
  2, dc in next dc, ch 2, sk next 2 dc, dc in next dc, ch 2, sk next 2 dc, dc in next dc, ch 2, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "feather fan eyelets", "swatch", """
Chain: Ch 36.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, [[dc2tog over next 2 sts] 2 times, [ch 1, dc in next st] 3 times, ch 1, [dc2tog over
  next 2 sts] 2 times] 3 times, dc in last st, turn.
Row 3: Ch 1 (does not count as a st), sc in each st and each ch-1 sp to end, turn.
Row 4: Ch 3 (counts as dc), sk first st, [[dc2tog over next 2 sts] 2 times, [ch 1, dc in next st] 3 times, ch 1, [dc2tog over
  next 2 sts] 2 times] 3 times, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "bobble panel", "swatch", """
Chain: Ch 20.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Row 2: Ch 1 (does not count as a st), sc in next 4 sts, bob in next st, [sc in next 4 sts, bob in next st] 2 times, sc in next
  4 sts, turn.
Row 3: Ch 1 (does not count as a st), sc in each st to end, turn.
Row 4: Ch 1 (does not count as a st), sc in next 2 sts, [bob in next st, sc in next 3 sts] 4 times, sc in next st, turn.
Row 5: Ch 1 (does not count as a st), sc in each st to end, turn.
""", special=(("bob", "dc5tog in same st"),), rows=True,
    ),
    Piece(
        "cable panel", "swatch", """
Chain: Ch 18.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, BPdc around next st, dc in next 2 sts, BPdc around next 2 sts, dc in next 4 sts, BPdc
  around next 2 sts, dc in next 2 sts, BPdc around next st, dc in last st, turn.
Row 3: Ch 3 (counts as dc), sk first st, FPdc around next st, dc in next 2 sts, FPdc around next 2 sts, sk next 2 sts, FPtr
  around next 2 sts, FPtr around 2 missed sts, FPdc around next 2 sts, dc in next 2 sts, FPdc around next st, dc in last st,
  turn.
Row 4: Ch 3 (counts as dc), sk first st, BPdc around next st, dc in next 2 sts, BPdc around next 8 sts, dc in next 2 sts, BPdc
  around next st, dc in last st, turn.
Row 5: Ch 3 (counts as dc), sk first st, FPdc around next st, dc in next 2 sts, sk next 2 sts, FPtr around next 2 sts, FPtr
  around 2 missed sts, sk next 2 sts, FPtr around next 2 sts, FPtr around 2 missed sts, dc in next 2 sts, FPdc around next st,
  dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "cable 1 over 1", "swatch", """
Chain: Ch 16.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in next st, [sk next st, FPdc around next st, FPdc around missed st, dc in next
  st] 3 times, dc in next 2 sts, dc in last st, turn.
Row 4: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
""", rows=True,
    ),
    Piece(
        "cable 3 over 3", "swatch", """
Chain: Ch 18.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
Row 3: Ch 3 (counts as dc), sk first st, dc in next 4 sts, sk next 3 sts, FPtr around each of next 3 sts, FPtr around each of
  3 missed sts, dc in next 5 sts, turn.
Row 4: Ch 3 (counts as dc), sk first st, dc in next 4 sts, BPdc around next 6 sts, dc in next 5 sts, turn.
Row 5: Ch 3 (counts as dc), sk first st, dc in next 4 sts, FPdc around next 6 sts, dc in next 5 sts, turn.
""", rows=True,
    ),
    Piece(
        "basketweave", "swatch", """
Chain: Ch 18.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2: Ch 3 (counts as dc), sk first st, [FPdc around next 4 sts, BPdc around next 4 sts] 1 time, FPdc around next 4 sts, BPdc
  around next 2 sts, dc in last st, turn.
Row 3: Ch 3 (counts as dc), sk first st, FPdc around next 2 sts, BPdc around next 4 sts, FPdc around next 4 sts, BPdc around
  next 4 sts, dc in last st, turn.
Row 4: Ch 3 (counts as dc), sk first st, BPdc around next 4 sts, FPdc around next 4 sts, BPdc around next 4 sts, FPdc around
  next 2 sts, dc in last st, turn.
Row 5: Ch 3 (counts as dc), sk first st, BPdc around next 2 sts, FPdc around next 4 sts, BPdc around next 4 sts, FPdc around
  next 4 sts, dc in last st, turn.
""", rows=True,
    ),
    Piece(
        "crescent", "swatch", """
Ring: Make a magic ring.
Row 1 (RS): Ch 3 (counts as dc), 6 dc in ring, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first st, dc in each st to last st, 3 dc in last st, turn.
Row 3: Ch 3 (counts as dc), 2 dc in first st, [2 dc in next st, dc in next st] 4 times, dc in next st, 3 dc in last st, turn.
Row 4: Ch 3 (counts as dc), 2 dc in first st, dc in each st to last st, 3 dc in last st, turn.
Row 5: Ch 1 (does not count as a st), sc in first st, [sk next st, 5 dc in next st, sk next st, sc in next st] 5 times, sc in
  each st to end, turn.
""", rows=True,
    ),
    Piece(
        "half granny", "triangle", """
Ring: Make a magic ring.
Row 1 (RS): Ch 4 (counts as dc and ch 1), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring, turn.
Row 2: Ch 3 (counts as dc), 2 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 2 dc in next ch-1 sp, dc in
  last st, turn.
Row 3: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1
  sp, ch 1, sk next 2 sts, dc in last st, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "half hexagon open", "half hexagon", """
Ring: Ch 5; join with sl st in first ch to form a ring.
Row 1 (RS): Ch 3 (counts as dc), 2 dc in ring, [ch 2, 3 dc in ring] 2 times, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first st, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 2 times, sk next 2 sts, 3 dc in
  last st, turn.
Row 3: Ch 3 (counts as dc), 2 dc in first st, ch 1, 3 dc in next ch-1 sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3
  dc in next ch-1 sp, ch 1] 2 times, sk next 2 sts, 3 dc in last st, turn.
""", rows=True, lace=True,
    ),
    Piece(
        "rect sc border 3", "swatch", """
Chain: Ch 13.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch to end, turn.
Rows 2-8: Ch 1 (does not count as a st), sc in each st to end, turn.
Rnd 9: Ch 1 (does not count as a st), 3 sc in first st, sc in next 10 sts, 3 sc in next st, sc in next 7 row ends, 3 sc in
  first ch of foundation, sc in next 10 ch, 3 sc in next ch, sc in next 7 row ends; join with sl st in first sc.
""", rows=True,
    ),
    Piece(
        "circle from two chains", "circle", """
Chain: Ch 2.
Rnd 1: 6 sc in 2nd ch from hook; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), 2 sc in each st around; join with sl st in first sc.
Rnd 3: Ch 1 (does not count as a st), [sc in next st, 2 sc in next st] 6 times; join with sl st in first sc.
""",
    ),
    Piece(
        "circle from four chains", "circle", """
Chain: Ch 4.
Rnd 1: 11 dc in 4th ch from hook (missed 3 ch count as dc); join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3.
""",
    ),
    Piece(
        "half circle from four chains", "half circle", """
Chain: Ch 4.
Row 1: 6 dc in 4th ch from hook (missed 3 ch count as dc), turn.
Row 2: Ch 3 (counts as dc), dc in first st, 2 dc in each st to end, turn.
Row 3: Ch 3 (counts as dc), sk first st, [2 dc in next st, dc in next st] 6 times, dc in next st, turn.
""", rows=True,
    ),
    Piece(
        "shawl from four chains", "triangle", """
Chain: Ch 4.
Row 1: 2 dc in 4th ch from hook (missed 3 ch count as dc), ch 2, 3 dc in same ch, turn.
Row 2: Ch 3 (counts as dc), 2 dc in same st, ch 1, sk next 2 dc, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, sk next 2 dc, 3 dc
  in last st, turn.
""", rows=True,
    ),
)  # fmt: skip
