"""Motifs of our own, written many ways: what they say must survive being written again."""

# ruff: noqa: E501
# Each line of a pattern is one line here, as a designer writes it.

from __future__ import annotations

GRANNY = """
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3; change to B; turn. (12 dc, 4 ch-2 sps)
Rnd 2 (WS): Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 3 times, 3 dc in beg sp, ch 2; join; change to A; turn. (24 dc, 4 ch-1 sps, 4 ch-2 sps)
Rnd 3 and following: Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp, 3 dc in beg sp, ch 2; join; change to the other yarn; turn.
Finish: Fasten off both yarns.
"""

SOLID = """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 3 (counts as dc), dc in each of next 2 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp**, dc in each of next 3 dc; rep from * around, ending last rep at **; join with sl st in top of beg ch-3. (28 dc, 4 ch-2 sps)
Rnd 3: Ch 3 (counts as dc), dc in each of next 4 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * 2 more times, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each of next 2 dc; join. (44 dc, 4 ch-2 sps)
Finish: Fasten off.
"""

CIRCLE_UK = """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as tr), 11 tr in ring; join with ss in top of beg ch-3. (12 tr)
Rnd 2: Ch 3 (counts as tr), tr in same st, 2 tr in each st around; join with ss in top of beg ch-3. (24 tr)
Rnd 3: Ch 3 (counts as tr), 2 tr in next st, [tr in next st, 2 tr in next st] around; join with ss in top of beg ch-3. (36 tr)
Rnd 4: Ss in same st, [miss next st, petal in next st, miss next st, ss in next st] 8 times, miss next st, petal in next st, miss next st; join with ss in first ss. (9 petals, 9 ss)
Finish: Fasten off.
"""

SPIRAL = """
Ring: Make a magic ring.
Rnd 1: 6 sc in ring; do not join, pm in first st. (6 sc)
Rnd 2: [Inc] 6 times. (12 sc)
Rnd 3: (Sc in next st, inc) x 6. (18 sc)
Rnds 4-5: Sc in each st around. (18 sc)
Rnd 6: [Sc in next st, dec] 6 times. (12 sc)
Finish: Sl st in next st, fasten off.
"""

BLO = """
Ring: Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 8 sc in ring; join with sl st in first sc. (8 sc)
Rnd 2: Ch 1 (does not count as a st), 2 sc in BLO of each st around; join with sl st in first sc. (16 sc)
Rnd 3: Ch 1 (does not count as a st), [sc in next st, FPsc around next st] around; join with sl st in first sc. (8 sc, 8 FPsc)
Rnd 4: Ch 1 (does not count as a st), [sc in next st, sk next st, 5 dc in next st, sk next st] 4 times; join. (4 sc, 20 dc)
"""

ROWS = """
Chain: Ch 21.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (20 sc)
Row 2 (WS): Ch 1 (does not count as a st), sc in each st across; turn. (20 sc)
Rows 3-6: Rep Row 2.
Row 7: Ch 1 (does not count as a st), sc2tog, sc in each st to last 2 sts, sc2tog; turn. (18 sc)
Row 8: Ch 3 (counts as dc), sk first st, dc in next st, [ch 1, sk next st, dc in next st] across; turn. (10 dc, 8 ch-1 sps)
"""

LACE = """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 11 times; join with sl st in 3rd ch of beg ch-4. (12 dc, 12 ch-1 sps)
Rnd 2: Sl st in next ch-1 sp, ch 1 (does not count as a st), sc in same sp, [ch 3, sc in next ch-1 sp] 11 times, join with ch 1, hdc in first sc (counts as ch-3 sp). (12 sc, 12 ch-3 sps)
Rnd 3: Ch 1 (does not count as a st), sc in same sp, [5 dc in next ch-3 sp, sc in next ch-3 sp] 5 times, 5 dc in next ch-3 sp; join with sl st in first sc. (6 sc, 30 dc)
"""

FLOWER = """
Ring: With A, make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: [Ch 3, sk next st, sl st in next st] 6 times. (6 sl st, 6 ch-3 sps)
Rnd 3: [(Sc, hdc, 3 dc, hdc, sc) in next ch-3 sp] 6 times; join with sl st in first sc; fasten off A. (12 sc, 12 hdc, 18 dc)
"""

UNTIL = """
Chain: Ch 21.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch across; turn. (19 dc)
Row 2: Ch 1 (does not count as a st), sc in each st across; turn. (19 sc)
Row 3: Ch 3 (counts as dc), sk first st, dc in each st across; turn. (19 dc)
Row 4: Rep Rows 2 and 3 until piece measures 10 cm.
Next row: Ch 1 (does not count as a st), sc in each st across. (19 sc)
Finish: Fasten off.
"""

PICOTS = """
Ring: With A, ch 5, join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 1 (does not count as a st), 16 sc in ring; join with sl st in first sc. (16 sc)
Rnd 2: Ch 1 (does not count as a st), sc in same st, *ch-3 picot, sc in next st, ch 4, sk 2 sts, sc in next st; rep from * 3 more times, omitting last sc; join. (8 sc, 4 ch-4 sps)
Finish: Fasten off.
"""

TEXTS: dict[str, tuple[str, str, str]] = {
    "granny": ("US", "rounds", GRANNY), "solid": ("US", "rounds", SOLID), "circle": ("UK", "rounds", CIRCLE_UK), "spiral": ("US", "rounds", SPIRAL),
    "blo": ("US", "rounds", BLO), "rows": ("US", "rows", ROWS), "lace": ("US", "rounds", LACE), "flower": ("US", "rounds", FLOWER), "until": ("US", "rows", UNTIL), "picots": ("US", "rounds", PICOTS),
}  # fmt: skip
"""Name -> terms, rounds or rows, text."""

STEPS = tuple(
    """
sc inc in next st, 3 sc, inc
sc in next st and in each st around
2 sc in first st, sc in each of next 3 sts, hdc in last st
dc3tog over next 3 sts
dc2tog over same st and next st, ch 1
FPtr around next dc, BPdc around next 2 sts
FPsc around next sc of Rnd 2
ch-3 picot in next st
5-dc cl in next ch-2 sp, ch 3
beg cl in same sp
5-tr bobble in next st, pc in next st, puff in next st
shell in next ch-3 sp, V-st in next V-st
dc in ch-1 sp of next V-st
petal in next st, sc in center dc of next petal
sc in center ch of ch-5 lp
sc in next ch-5 lp
dc between next 2 dc
3 dc in sp between next two groups
sc in next ch, sc in each ch across
dc in 4th ch from hook
sc in 3rd ch of beg ch-4
dc in top of beg ch-3
dc in tch
dc in top of 3 missed ch
sc in st 2 rnds below
hdc in flo of next st, hdc in BLO of each st to last 2 sts
working behind petals, ch 5, sc in next st
sk next 2 sts, sk ch-1 sp, sk first st
sc evenly along side
20 sc evenly along side
sc in each row end across
dc in other side of foundation ch
3 sc in each corner sp, sc in next corner
*sc in next st, ch 1; rep from * around, omitting last ch 1
[(sc in next st, ch 3) twice, sk next st] 3 times
[sc in next st, (ch 1, sk next st, sc in next st) 3 times] to last 2 sts
*dc in next dc, [ch 1, dc in next dc] twice**, 2 dc in next ch-2 sp; rep from * around, ending last rep at **
join with ch 1, hdc in first sc (counts as ch-3 sp)
invisible join
do not join
with B, join with sl st in any ch-3 sp, ch 1, sc in same sp
join B with sc in first st, sc in next st
with B, standing dc in any ch-2 sp, 2 dc in same sp
changing to B in last yo, drop A, pick up B, carry A
pm in first st, sm
{The petals will curl: that is right.} sc in next st
leave remaining sts unworked
do not turn
sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp
(sc, ch 2, sc) in next st
sc in each dc and each ch-1 sp to next corner sp
edc in next st, ldc in next st
fsc 20
inv dec, sc2tog, dec
rev sc in each st around
ch 1, turn
sc in every other st around
2 sc in each of next 3 (4, 5) sts
tr in same st as join
sc in last 2 sts
sc around
3 dc in each ch-1 sp to beg sp
sl st in top of dc just made
sc in first and last st
ch 5, dc in 2nd ch from hook, tr in next ch
sc in next ch-1 sp, ch 1, sl st in corresponding ch-3 sp of previous motif, ch 1
dc in each of next 2 groups
(dc, ch 1, dc) in each of next 3 ch-1 sps
sk first st, dc in each st to tch, dc in top of tch
[sc in next st, 2 sc in next st] 6 (7, 8) times
fasten off A, fasten off both yarns
""".strip().splitlines()
)
"""Steps of every form, in US terms."""
