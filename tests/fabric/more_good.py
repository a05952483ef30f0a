# ruff: noqa: E501 (texts keep their lines)
"""More good patterns: half of them in UK terms, of kinds that the first library has not. They must be worked in silence too."""

from __future__ import annotations

from good import RING, Good

MORE: dict[str, Good] = {
    "UK spiral beanie": Good(
        """Rnd 1: 2 ch, 8 htr in 2nd ch from hook; do not join. (8 htr)
Rnd 2: 2 htr in each st around. (16 htr)
Rnd 3: [Htr in next st, 2 htr in next st] 8 times. (24 htr)
Rnds 4-6: Htr in each st around. (24 htr)
Rnd 7: [Htr in next 2 sts, htr2tog] 6 times. (18 sts)
Finish: Ss in next 2 sts. Fasten off.
""",
        terms="UK",
    ),
    "UK hexagon": Good(
        """Ring: 6 ch; join with ss in first ch to form a ring.
Rnd 1: 3 ch (counts as tr), tr in ring, 1 ch, [2 tr in ring, 1 ch] 5 times; join with ss in top of beg 3-ch. (12 tr, 6 1-ch sps)
Rnd 2: 3 ch (counts as tr), tr in next tr, (tr, 2 ch, tr) in next 1-ch sp, [tr in next 2 tr, (tr, 2 ch, tr) in next 1-ch sp] 5 times; join with ss in top of beg 3-ch. (24 tr, 6 2-ch sps)
""",
        shape="hexagon",
        terms="UK",
    ),
    "UK trellis rows": Good(
        """Chain: 20 ch.
Row 1: Dc in 2nd ch from hook, [5 ch, miss next 5 ch, dc in next ch] 3 times; turn. (4 dc, 3 5-ch sps)
Row 2: 5 ch (counts as tr and 2 ch), dc in next 5-ch sp, [5 ch, dc in next 5-ch sp] twice, 2 ch, tr in last dc; turn. (3 dc, 2 tr, 2 2-ch sps, 2 5-ch sps)
""",
        terms="UK",
        rows=True,
    ),
    "UK solid rows": Good(
        """Chain: 16 ch.
Row 1 (RS): Htr in 3rd ch from hook and in each ch to end; turn. (14 htr)
Row 2: 2 ch (does not count as a st), htr in each st to end; turn. (14 htr)
Rows 3-6: Rep Row 2.
""",
        terms="UK",
        rows=True,
        counts_as=False,
    ),
    "UK flower of five petals": Good(
        """Ring: 5 ch; join with ss to form a ring.
Rnd 1: 1 ch, 10 dc in ring; join with ss in first dc. (10 dc)
Rnd 2: 1 ch, dc in same st, [petal in next st, dc in next st] 4 times, petal in next st; join with ss in first dc. (5 dc, 5 petals)
""",
        terms="UK",
        stitches={"petal": "(htr, 3 tr, htr) in same st"},
    ),
    "UK granny triangle": Good(
        RING
        + """Rnd 1: 3 ch (counts as tr), 2 tr in ring, 3 ch, [3 tr in ring, 3 ch] twice; join with ss in top of beg 3-ch; fasten off. (9 tr, 3 3-ch sps)
Rnd 2: With B, join with ss in any 3-ch sp, 3 ch (counts as tr), (2 tr, 3 ch, 3 tr) in same sp, 1 ch, [(3 tr, 3 ch, 3 tr) in next 3-ch sp, 1 ch] twice; join with ss in top of beg 3-ch. (18 tr, 3 1-ch sps, 3 3-ch sps)
""",
        shape="triangle",
        terms="UK",
    ),
    "UK picot mat": Good(
        RING
        + """Rnd 1: 1 ch, 8 dc in ring; join with ss in first dc. (8 dc)
Rnd 2: 4 ch (counts as tr and 1 ch), [tr in next dc, 1 ch] 7 times; join with ss in 3rd ch of beg 4-ch. (8 tr, 8 1-ch sps)
Rnd 3: 1 ch, [dc in next 1-ch sp, 3-ch picot, dc in same sp, dc in next tr] 8 times; join with ss in first dc. (24 dc, 8 picots)
""",
        terms="UK",
    ),
    "UK basket base and wall": Good(
        RING
        + """Rnd 1: 1 ch, 8 dc in ring; join with ss in first dc. (8 dc)
Rnd 2: 1 ch, 2 dc in each st around; join with ss in first dc. (16 dc)
Rnd 3: 1 ch, [dc in next st, 2 dc in next st] 8 times; join with ss in first dc. (24 dc)
Rnd 4: 1 ch, dc in BLO of each st around; join with ss in first dc. (24 dc)
Rnds 5-7: 1 ch, dc in each st around; join with ss in first dc. (24 dc)
Finish: Fasten off.
""",
        terms="UK",
    ),
    "UK zigzag": Good(
        """Chain: 22 ch.
Row 1: Dc in 2nd ch from hook, dc in next 4 ch, miss next 2 ch, dc in next 4 ch, 3 dc in next ch, dc in next 4 ch, miss next 2 ch, dc in last 3 ch; turn. (19 dc)
""",
        terms="UK",
        rows=True,
    ),
    "UK raised rib": Good(
        """Chain: 14 ch.
Row 1: Tr in 4th ch from hook (missed 3 ch count as tr), tr in each ch to end; turn. (12 tr)
Row 2: 2 ch (counts as htr), [FPtr around next st, BPtr around next st] 5 times, htr in top of beg ch; turn. (2 htr, 5 FPtr, 5 BPtr)
""",
        terms="UK",
        rows=True,
    ),
    "pentagon": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 4 times; join with sl st in top of beg ch-3. (15 dc, 5 ch-2 sps)
Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, (dc, ch 2, dc) in next ch-2 sp, [dc in next 3 dc, (dc, ch 2, dc) in next ch-2 sp] 4 times; join with sl st in top of beg ch-3. (25 dc, 5 ch-2 sps)
""",
        shape="pentagon",
    ),
    "circle in a square": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3. (24 dc)
Rnd 3: Ch 1, sc in same st, sc in next st, hdc in next st, (2 dc, ch 2, 2 dc) in next st, hdc in next st, sc in next st, [sc in next 2 sts, hdc in next st, (2 dc, ch 2, 2 dc) in next st, hdc in next st, sc in next st] 3 times; join with sl st in first sc. (12 sc, 8 hdc, 16 dc, 4 ch-2 sps)
""",
        shape="square",
    ),
    "granny square to any size": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 3 times; join with sl st in top of beg ch-3.
Rnd 3 and following: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, [3 dc in next ch-1 sp, ch 1] to next ch-2 sp, \\
*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, [3 dc in next ch-1 sp, ch 1] to next ch-2 sp; rep from * twice more; join with sl st in top of beg ch-3.
""".replace("\\\n", ""),
        shape="square",
    ),
    "cowl of V-stitches": Good(
        """Chain: Ch 24; join with sl st in first ch to form a ring.
Rnd 1: Ch 1, sc in each ch around; join with sl st in first sc. (24 sc)
Rnd 2: Ch 4 (counts as dc and ch 1), dc in same st, sk next 2 sts, [V-st in next st, sk next 2 sts] 7 times; join with sl st in 3rd ch of beg ch-4. (2 dc, 7 V-sts, 1 ch-1 sp)
"""
    ),
    "mitten cuff, sideways": Good(
        """Chain: Ch 13.
Row 1: Hdc in 3rd ch from hook and in each ch across; turn. (11 hdc)
Row 2: Ch 2 (does not count as a st), hdc in BLO of each st across; turn. (11 hdc)
Rows 3-8: Rep Row 2.
Finish: Fasten off.
""",
        rows=True,
        counts_as=False,
    ),
    "triangle from the point": Good(
        """Chain: Ch 4.
Row 1: 2 dc in 4th ch from hook; turn. (3 dc)
Row 2: Ch 3 (counts as dc), dc in first st, dc in next st, 2 dc in tch; turn. (5 dc)
Row 3: Ch 3 (counts as dc), dc in first st, dc in next 3 sts, 2 dc in tch; turn. (7 dc)
""",
        rows=True,
    ),
    "mandala of two stitches": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st in top of beg ch-3. Fasten off. (16 dc)
Rnd 2: With B, join with sl st in any dc, ch 1, sc in same st, ch 2, sk next dc, [sc in next dc, ch 2, sk next dc] 7 times; join with sl st in first sc. (8 sc, 8 ch-2 sps)
Rnd 3: Ch 1, [sc in next sc, 4 dc in next ch-2 sp] 8 times; join with sl st in first sc. Fasten off B. (8 sc, 32 dc)
"""
    ),
    "spiral of two in one": Good("""Rnd 1: 6 sc in magic ring. (6 sc)
Rnd 2: Inc 6 times. (12 sc)
Rnd 3: [Sc, inc] 6 times. (18 sc)
Rnd 4: [2 sc, inc] 6 times. (24 sc)
Rnd 5: Sc in BLO of each st around. (24 sc)
Rnds 6-8: Sc in each st around. (24 sc)
Rnd 9: [2 sc, inv dec] 6 times. (18 sts)
Rnd 10: [Sc, inv dec] 6 times. (12 sts)
"""),
    "bobble rows": Good(
        """Chain: Ch 14.
Row 1: Sc in 2nd ch from hook and in each ch across; turn. (13 sc)
Row 2: Ch 1, sc in next 2 sts, [bobble in next st, sc in next 2 sts] 3 times, sc in next 2 sts; turn. (10 sc, 3 bobbles)
Row 3: Ch 1, sc in each st across; turn. (13 sc)
""",
        rows=True,
    ),
    "tall stitches": Good(
        RING
        + """Rnd 1: Ch 4 (counts as tr), 15 tr in ring; join with sl st in top of beg ch-4. (16 tr)
Rnd 2: Ch 5 (counts as dtr), dtr in same st, 2 dtr in each st around; join with sl st in top of beg ch-5. (32 dtr)
"""
    ),
    "half squares of two colours": Good(
        """Ring: With A, ch 4; join with sl st in first ch to form a ring.
Row 1: Ch 4 (counts as dc and ch 1), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring; turn. (8 dc, 2 ch-1 sps, 1 ch-2 sp)
Row 2: With B, ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1, dc in 3rd ch of beg ch-4; turn. (14 dc, 4 ch-1 sps, 1 ch-2 sp)
""",
        rows=True,
    ),
    "counts with dashes": Good("""Ring: Ch 5, join with sl st to form a ring.
Round 1: Ch 3 (counts as dc), 13 dc in ring; join with sl st in top of beg ch-3. -- 14 dc
Round 2: Ch 3 (counts as dc), dc in same st, [2 dc in next st] 13 times; join with sl st in top of beg ch-3. -- 28 dc
"""),
}
