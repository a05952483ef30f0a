"""Borders all round pieces in rows, and layers worked into loops that an earlier round left unused.
"""

from __future__ import annotations

from gallery import Piece

_SC = """
Chain: Ch 13.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across; turn.
Rows 2-8: Ch 1 (does not count as a st), sc in each st across; turn.
Rnd 9: Ch 1, 3 sc in first st, sc in each of next 10 sts, 3 sc in last st, 8 sc evenly along side, working in other side of foundation ch,
  3 sc in first ch, sc in each of next 10 ch, 3 sc in last ch, 8 sc evenly along side; join with sl st in first sc. (48 sc)
"""

BORDERS: tuple[Piece, ...] = (
    Piece("coaster", "rectangle", _SC + """
Rnd 10: Ch 1, sc in first st, 3 sc in next st, sc in each of next 12 sts, 3 sc in next st, sc in each of next 10 sts, 3 sc in next st,
  sc in each of next 12 sts, 3 sc in next st, sc in each of next 9 sts; join with sl st in first sc. (56 sc)
""", rows=True),
    Piece("coaster with picots", "rectangle", _SC + """
Rnd 10: Ch 1, [sc in next 3 sts, ch-3 picot] 16 times; join with sl st in first sc. (48 sc, 16 picots)
""", rows=True),
    Piece("panel in dc, chained corners", "rectangle", """
Chain: Ch 18.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch across; turn.
Rows 2-6: Ch 3 (counts as dc), sk first st, dc in each st across; turn.
Rnd 7: Ch 1, (sc, ch 2, sc) in first st, sc in each of next 14 sts, (sc, ch 2, sc) in last st, 2 sc in each of 6 row ends, working in
  other side of foundation ch, (sc, ch 2, sc) in first ch, sc in each of next 13 ch, (sc, ch 2, sc) in last ch, 2 sc in each of 6 row
  ends; join with sl st in first sc.
Rnd 8: Sl st in next ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, [dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in
  next ch-2 sp] 3 times, dc in each st to end; join with sl st in top of beg ch-3.
""", rows=True),
    Piece("long narrow scarf", "rectangle", """
Chain: Ch 9.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across; turn.
Rows 2-24: Ch 1 (does not count as a st), sc in each st across; turn.
Rnd 25: Ch 1, sc in each st across, 24 sc evenly along side, working in other side of foundation ch, sc in each of next 8 ch, 24 sc
  evenly along side; join with sl st in first sc. (64 sc)
""", rows=True),
    Piece("blanket square, wrong side facing", "rectangle", """
Chain: Ch 20.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across; turn.
Rows 2-13: Ch 1 (does not count as a st), sc in each st across; turn.
Rnd 14 (WS): Ch 1, (sc, ch 2, sc) in first st, sc in each of next 17 sts, (sc, ch 2, sc) in last st, 13 sc evenly along side, working in
  other side of foundation ch, (sc, ch 2, sc) in first ch, sc in each of next 17 ch, (sc, ch 2, sc) in last ch, 13 sc evenly along side;
  join with sl st in first sc. (68 sc, 4 ch-2 sps)
""", rows=True),
)  # fmt: skip

LAYERS: tuple[Piece, ...] = (
    Piece("ball with a skirt of leaves", "circle", """
Ring: Magic ring.
Rnd 1: 6 sc in ring; do not join. [6 sts]
Rnd 2: inc x 6. [12 sts]
Rnd 3: (sc, inc) x 6. [18 sts]
Rnd 4: sc in BLO of each st around. [18 sts]
Rnd 5: sc in each st around. [18 sts]
Rnd 6: (sc, dec) x 6. [12 sts]
Rnd 7: 11 sc, sl st in next st; fasten off.
Rnd 8: With A, join with sl st in any unused front lp of Rnd 3, ch 1, sc in same st, [ch 3, sc in 2nd ch from hook, hdc in next ch, sc in
  next unused front lp of Rnd 3] 17 times; join with sl st in first sc. (35 sc, 17 hdc)
"""),
    Piece("square with a ruffle", "square", """
Ring: Ch 4; join with sl st in first ch.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
Rnd 2: Ch 1, [sc in BLO of each of next 3 sts, 3 sc in next ch-2 sp] 4 times; join with sl st in first sc. (24 sc)
Rnd 3: Ch 1, sc in each st around; join with sl st in first sc. Fasten off. (24 sc)
Rnd 4: With A, join with sl st in any unused front lp of Rnd 1, ch 1, sc in same lp, [ch 3, sc in next unused front lp of Rnd 1] 11 times,
  ch 3; join with sl st in first sc. (12 sc, 12 ch-3 sps)
"""),
)  # fmt: skip

CABLES = Piece("cable panel", "rectangle", """
Foundation: Work 20 fdc; turn.
Row 1 (RS): Ch 3 (counts as dc), sk first st, dc in next st, [sk next 2 sts, FPtr around each of next 2 sts, FPtr around each of 2 skipped
  sts, dc in each of next 2 sts] 3 times; turn.
Row 2 (WS): Ch 3 (counts as dc), sk first st, dc in next dc, [BPdc around each of next 4 sts, dc in each of next 2 dc] 3 times; turn.
Rows 3-8: Rep Rows 1 and 2 three times.
""", rows=True)  # fmt: skip
