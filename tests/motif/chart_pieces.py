"""Whole pattern files for the tests of charts: rounds in several yarns, begun in spaces, in spirals, in lace."""

from __future__ import annotations

from motifold.render.charts import pieces_of
from motifold.render.fabric.model import Fabric
from motifold.render.pattern import read_pattern
from motifold.render.worked import work_pattern

HEAD = '''[pattern]
title = "T"
terms = "US"
[yarn.A]
name = "Moss"
hex = "#5d7a3a"
[yarn.B]
name = "Clay"
hex = "#b8623f"
[yarn.C]
name = "Cream"
hex = "#efe3c2"
'''


def fabric_of_text(body: str) -> Fabric:
    """The first motif of a pattern with this body."""
    reading = read_pattern("t.toml", (HEAD + body).encode())
    assert reading.pattern is not None, reading.problems
    return next(iter(pieces_of(work_pattern(reading.pattern).sizes[0]).values()))


TESTED = {
    "granny in three yarns": """
[motif.m]
shape = "square"
rounds = '''
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of
  beg ch-3; fasten off. (12 dc, 4 ch-2 sps)
Rnd 2: With B, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch
  1] 3 times; join with sl st in top of beg ch-3; fasten off. (24 dc, 4 ch-1 sps, 4 ch-2 sps)
Rnd 3: With C, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next
  ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp; join with sl
  st in top of beg ch-3; fasten off. (36 dc, 8 ch-1 sps, 4 ch-2 sps)
Rnd 4: With A, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next
  ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp; join with sl
  st in top of beg ch-3; fasten off. (48 dc, 12 ch-1 sps, 4 ch-2 sps)
Rnd 5: With B, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next
  ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp; join with sl
  st in top of beg ch-3; fasten off. (60 dc, 16 ch-1 sps, 4 ch-2 sps)
Rnd 6: With C, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next
  ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp; join with sl
  st in top of beg ch-3; fasten off. (72 dc, 20 ch-1 sps, 4 ch-2 sps)
Rnd 7: With A, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next
  ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp; join with sl
  st in top of beg ch-3; fasten off. (84 dc, 24 ch-1 sps, 4 ch-2 sps)
Rnd 8: With B, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next
  ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp; join with sl
  st in top of beg ch-3; fasten off. (96 dc, 28 ch-1 sps, 4 ch-2 sps)
'''
""",
    "mandala": """
[stitch.V-st]
name = "V-stitch"
means = "(dc, ch 1, dc) in same st"
[stitch.pc]
name = "popcorn"
means = "4 dc in same st, gathered"
[stitch.scallop]
name = "scallop"
means = "(sc, hdc, 3 dc, hdc, sc) in same sp"
[stitch.shell]
name = "shell"
means = "5 dc in same sp"
[motif.m]
shape = "circle"
rounds = '''
Ring: With A, make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 4 (counts as dc and ch 1), dc in same st, V-st in each of next 11 sts; join with sl st in 3rd ch of beg ch-4. (24 dc, 12
  ch-1 sps)
Rnd 3: Sl st in next ch-1 sp, ch 3, 2 dc in same sp, 3 dc in each of next 11 ch-1 sps; join with sl st in top of beg ch-3; fasten
  off. (36 dc)
Rnd 4: With B, join with sl st in first st, ch 1 (does not count as a st), [sc in next st, pc in next st, sc in next st, ch 1] 12
  times; join with sl st in first sc; fasten off. (24 sc, 12 pc, 12 ch-1 sps)
Rnd 5: With A, join with sl st in any ch-1 sp, ch 1 (does not count as a st), sc in same sp, ch 5, [sc in next ch-1 sp, ch 5] 11
  times; join with sl st in first sc. (12 sc, 12 ch-5 sps)
Rnd 6: Sl st in next ch-5 sp, ch 1 (does not count as a st), scallop in same sp, scallop in each of next 11 ch-5 sps; join with sl
  st in first sc; fasten off. (12 scallops)
Rnd 7: With B, join with sl st in center dc of next scallop, ch 1 (does not count as a st), sc in same st, ch 6, [sc in center dc
  of next scallop, ch 6] 11 times; join with sl st in first sc. (12 sc, 12 ch-6 sps)
Rnd 8: Sl st in next ch-6 sp, ch 3, 6 dc in same sp, 7 dc in each of next 11 ch-6 sps; join with sl st in top of beg ch-3. (84 dc)
Rnd 9: Ch 4 (counts as dc and ch 1), dc in same st, sk next 2 sts, [V-st in next st, sk next 2 sts] 27 times; join with sl st in
  3rd ch of beg ch-4; fasten off. (56 dc, 28 ch-1 sps)
Rnd 10: With A, join with sl st in any ch-1 sp, ch 1 (does not count as a st), sc in same sp, shell in next ch-1 sp, [sc in next
  ch-1 sp, shell in next ch-1 sp] 13 times; join with sl st in first sc; fasten off. (14 sc, 14 shells)
Rnd 11: With B, join with sl st in center dc of next shell, ch 1 (does not count as a st), sc in same st, ch 3, tr in next sc, ch
  3, [sc in center dc of next shell, ch 3, tr in next sc, ch 3] 13 times; join with sl st in first sc. (14 sc, 14 tr, 28 ch-3 sps)
Rnd 12: Sl st in next ch-3 sp, ch 1 (does not count as a st), (2 sc, ch-3 picot, 2 sc) in same sp, (2 sc, ch-3 picot, 2 sc) in
  each of next 27 ch-3 sps; join with sl st in first sc. (112 sc, 28 picots)
Finish: Fasten off.
'''
""",
    "pineapple doily": """
[stitch.shell]
name = "shell"
means = "(2 dc, ch 2, 2 dc) in same sp"
[motif.m]
shape = "circle"
rounds = '''
Ring: With A, ch 6; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 17 dc in ring; join with sl st in top of beg ch-3. (18 dc)
Rnd 2: Ch 4 (counts as dc and ch 1), [dc in next st, ch 1] 17 times; join with sl st in 3rd ch of beg ch-4. (18 dc, 18 ch-1 sps)
Rnd 3: Sl st in next ch-1 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 3, sk next 2 ch-1 sps, [shell in next ch-1 sp, ch 3, sk next 2
  ch-1 sps] 5 times; join with sl st in top of beg ch-3. (24 dc, 6 ch-2 sps, 6 ch-3 sps)
Rnd 4: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 1, 8 dc in next ch-3 sp, ch 1, [shell in
  next ch-2 sp, ch 1, 8 dc in next ch-3 sp, ch 1] 5 times; join with sl st in top of beg ch-3. (72 dc, 12 ch-1 sps, 6 ch-2 sps)
Rnd 5: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 2, sk next 2 sts, [dc in next st, ch 1] 7
  times, dc in next st, ch 2, *shell in next ch-2 sp, ch 2, sk next 2 sts, [dc in next st, ch 1] 7 times, dc in next st, ch 2; rep
  from * 4 more times; join with sl st in top of beg ch-3. (72 dc, 42 ch-1 sps, 18 ch-2 sps)
Rnd 6: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 3, [sc in next ch-1 sp, ch 3] 7 times, sk
  next ch-2 sp, *shell in next ch-2 sp, ch 3, [sc in next ch-1 sp, ch 3] 7 times, sk next ch-2 sp; rep from * 4 more times; join
  with sl st in top of beg ch-3. (24 dc, 42 sc, 6 ch-2 sps, 48 ch-3 sps)
Rnd 7: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 4, sk next ch-3 sp, [sc in next ch-3 sp, ch
  3] 5 times, sc in next ch-3 sp, ch 4, sk next ch-3 sp, *shell in next ch-2 sp, ch 4, sk next ch-3 sp, [sc in next ch-3 sp, ch 3]
  5 times, sc in next ch-3 sp, ch 4, sk next ch-3 sp; rep from * 4 more times; join with sl st in top of beg ch-3. (24 dc, 36 sc,
  6 ch-2 sps, 30 ch-3 sps, 12 ch-4 sps)
Rnd 8: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 4, sk next ch-4 sp, [sc in next ch-3 sp, ch
  3] 4 times, sc in next ch-3 sp, ch 4, sk next ch-4 sp, *shell in next ch-2 sp, ch 4, sk next ch-4 sp, [sc in next ch-3 sp, ch 3]
  4 times, sc in next ch-3 sp, ch 4, sk next ch-4 sp; rep from * 4 more times; join with sl st in top of beg ch-3. (24 dc, 30 sc,
  6 ch-2 sps, 24 ch-3 sps, 12 ch-4 sps)
Rnd 9: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc, ch 2, 2 dc) in same sp, ch 4, sk next ch-4 sp, [sc in next
  ch-3 sp, ch 3] 3 times, sc in next ch-3 sp, ch 4, sk next ch-4 sp, *(2 dc, ch 2, 2 dc, ch 2, 2 dc) in next ch-2 sp, ch 4, sk
  next ch-4 sp, [sc in next ch-3 sp, ch 3] 3 times, sc in next ch-3 sp, ch 4, sk next ch-4 sp; rep from * 4 more times; join with
  sl st in top of beg ch-3. (36 dc, 24 sc, 12 ch-2 sps, 18 ch-3 sps, 12 ch-4 sps)
Rnd 10: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 2, shell in next ch-2 sp, ch 4, sk next
  ch-4 sp, [sc in next ch-3 sp, ch 3] 2 times, sc in next ch-3 sp, ch 4, sk next ch-4 sp, *shell in next ch-2 sp, ch 2, shell in
  next ch-2 sp, ch 4, sk next ch-4 sp, [sc in next ch-3 sp, ch 3] 2 times, sc in next ch-3 sp, ch 4, sk next ch-4 sp; rep from * 4
  more times; join with sl st in top of beg ch-3. (48 dc, 18 sc, 18 ch-2 sps, 12 ch-3 sps, 12 ch-4 sps)
Rnd 11: Sl st in next st, sl st in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 4, sk next ch-2 sp, shell in next ch-2 sp,
  ch 4, sk next ch-4 sp, sc in next ch-3 sp, ch 3, sc in next ch-3 sp, ch 4, sk next ch-4 sp, *shell in next ch-2 sp, ch 4, sk
  next ch-2 sp, shell in next ch-2 sp, ch 4, sk next ch-4 sp, sc in next ch-3 sp, ch 3, sc in next ch-3 sp, ch 4, sk next ch-4 sp;
  rep from * 4 more times; join with sl st in top of beg ch-3. (48 dc, 12 sc, 12 ch-2 sps, 6 ch-3 sps, 18 ch-4 sps)
Finish: Fasten off.
'''
""",
    "sunburst square": """
[stitch.cl]
name = "cluster"
means = "3 dc in same sp, closed together"
[motif.m]
shape = "square"
rounds = '''
Ring: With A, ch 5; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 15 times; join with sl st in 3rd ch of beg ch-4; fasten off. (16 dc,
  16 ch-1 sps)
Rnd 2: With B, join with sl st in any ch-1 sp, ch 2 (does not count as a st), [puff in next ch-1 sp, ch 2] 16 times; join with sl
  st in first puff; fasten off. (16 puffs, 16 ch-2 sps)
Rnd 3: With A, join with sl st in any ch-2 sp, ch 2 (does not count as a st), [cl in next ch-2 sp, ch 3] 16 times; join with sl st
  in first cl; fasten off. (16 cl, 16 ch-3 sps)
Rnd 4: With C, join with sl st in any ch-3 sp, ch 4 (counts as tr), (2 tr, ch 2, 3 tr) in same sp, 3 dc in next ch-3 sp, 3 hdc in
  next ch-3 sp, 3 dc in next ch-3 sp, *(3 tr, ch 2, 3 tr) in next ch-3 sp, 3 dc in next ch-3 sp, 3 hdc in next ch-3 sp, 3 dc in
  next ch-3 sp; rep from * 2 more times; join with sl st in top of beg ch-4. (24 tr, 24 dc, 12 hdc, 4 ch-2 sps)
Rnd 5: Ch 3 (counts as dc here and throughout), dc in each of next 2 sts, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each of next
  15 sts; rep from * 2 more times, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each of next 12 sts; join with sl st in top of beg
  ch-3. (76 dc, 4 ch-2 sps)
Rnd 6: Ch 1 (does not count as a st), sc in same st, sc in each of next 4 sts, *3 sc in next ch-2 sp, sc in each of next 19 sts;
  rep from * 2 more times, 3 sc in next ch-2 sp, sc in each of next 14 sts; join with sl st in first sc. (88 sc)
Finish: Fasten off.
'''
""",
    "spiral": """
[motif.m]
shape = "circle"
rounds = '''
Ring: With A, make a magic ring.
Rnd 1 (RS): Ch 1 (does not count as a st), 6 sc in ring; do not join. (6 sc)
Rnd 2: 2 sc in each st around. (12 sc)
Rnd 3: [Sc in next st, 2 sc in next st] 6 times. (18 sc)
Rnd 4: [Sc in each of next 2 sts, 2 sc in next st] 6 times. (24 sc)
Rnd 5: [Sc in each of next 3 sts, 2 sc in next st] 6 times. (30 sc)
Rnd 6: [Sc in each of next 4 sts, 2 sc in next st] 6 times. (36 sc)
Rnd 7: [Sc in each of next 5 sts, 2 sc in next st] 6 times. (42 sc)
Rnd 8: [Sc in each of next 6 sts, 2 sc in next st] 6 times. (48 sc)
Rnd 9: [Sc in each of next 7 sts, 2 sc in next st] 6 times. (54 sc)
Rnd 10: [Sc in each of next 8 sts, 2 sc in next st] 6 times. (60 sc)
Finish: Sl st in next st. Fasten off.
'''
""",
    "octagon in two yarns": """
[motif.m]
shape = "octagon"
rounds = '''
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 15 dc in ring; join with sl st in top of beg ch-3. (16 dc)
Rnd 2: Ch 3, [3 dc in next st, dc in next st] 7 times, 3 dc in next st; join with sl st in top of beg ch-3; fasten off. (32 dc)
Rnd 3: With B, join with sl st in first st, ch 3, dc in next st, [3 dc in next st, dc in each of next 3 sts] 7 times, 3 dc in next
  st, dc in next st; join with sl st in top of beg ch-3. (48 dc)
Rnd 4: Ch 3, dc in each of next 2 sts, [3 dc in next st, dc in each of next 5 sts] 7 times, 3 dc in next st, dc in each of next 2
  sts; join with sl st in top of beg ch-3; fasten off. (64 dc)
Rnd 5: With A, join with sl st in first st, ch 3, dc in each of next 3 sts, [3 dc in next st, dc in each of next 7 sts] 7 times, 3
  dc in next st, dc in each of next 3 sts; join with sl st in top of beg ch-3. (80 dc)
Finish: Fasten off.
'''
""",
    "triangle with picots": """
[motif.m]
shape = "triangle"
rounds = '''
Ring: With A, make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 3 dc in ring, ch 2, [4 dc in ring, ch 2] twice; join with sl st in top of beg
  ch-3. (12 dc, 3 ch-2 sps)
Rnd 2: Ch 3, dc in each st to next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * once
  more, (3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3. (30 dc, 3 ch-2 sps)
Rnd 3: Ch 3, dc in each st to next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * once
  more, (3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3. (48 dc, 3 ch-2 sps)
Rnd 4: Ch 3, dc in each st to next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * once
  more, (3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3. (66 dc, 3 ch-2 sps)
Rnd 5: Ch 3, dc in each st to next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * once
  more, (3 dc, ch 2, 3 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3. (84 dc, 3 ch-2 sps)
Rnd 6: Ch 1 (does not count as a st), sc in same st, sc in each st to next ch-2 sp, *(2 sc, ch-3 picot, 2 sc) in next ch-2 sp, sc
  in each st to next ch-2 sp; rep from * once more, (2 sc, ch-3 picot, 2 sc) in next ch-2 sp, sc in each st to end; join with sl
  st in first sc. (96 sc, 3 picots)
Finish: Fasten off.
'''
""",
    "square with a shell edge": """
[motif.m]
shape = "square"
rounds = '''
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of
  beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 3, dc in each st to next ch-2 sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * 2 more
  times, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3. (28 dc, 4 ch-2 sps)
Rnd 3: Ch 3, dc in each st to next ch-2 sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * 2 more
  times, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3. (44 dc, 4 ch-2 sps)
Rnd 4: Ch 3, dc in each st to next ch-2 sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp; rep from * 2 more
  times, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to end; join with sl st in top of beg ch-3; fasten off. (60 dc, 4 ch-2
  sps)
Rnd 5: With B, join with sl st in any ch-2 sp, ch 1 (does not count as a st), 3 sc in same sp, sc in each of next 15 sts, [3 sc in
  next ch-2 sp, sc in each of next 15 sts] 3 times; join with sl st in first sc. (72 sc)
Rnd 6: Sl st in next st, ch 3, 6 dc in same st, sk next 2 sts, sc in next st, sk next 2 sts, *[5 dc in next st, sk next 2 sts, sc
  in next st, sk next 2 sts] twice, 7 dc in next st, sk next 2 sts, sc in next st, sk next 2 sts; rep from * 2 more times, [5 dc
  in next st, sk next 2 sts, sc in next st, sk next 2 sts] twice; join with sl st in top of beg ch-3. (68 dc, 12 sc)
Finish: Fasten off.
'''
""",
}
