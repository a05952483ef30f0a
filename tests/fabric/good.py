# ruff: noqa: E501 (texts keep their lines)
"""Good patterns of many kinds, each stating its own counts: they must be worked in silence."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True, slots=True)
class Good:
    text: str
    shape: str = "circle"
    terms: Literal["US", "UK"] = "US"
    rows: bool = False
    stitches: dict[str, str] = field(default_factory=dict)
    row_height_cm: float | None = None
    counts_as: bool | None = None


def as_file(name: str, good: Good) -> str:
    """A good text as a whole pattern file."""
    worked = "rows" if good.rows else "rounds"
    lines = ["[pattern]", f'title = "{name}"', f'terms = "{good.terms}"', '[yarn.A]\nname = "Oat"']
    if re.search(r"\bB\b|other yarn", good.text):
        lines.append('[yarn.B]\nname = "Rye"')
    if good.row_height_cm is not None:
        lines.append(f'[gauge]\nrows = 20\nheight = "{20 * good.row_height_cm:g} cm"')
    lines += [f'[stitch.{key}]\nmeans = "{means}"' for key, means in good.stitches.items()]
    lines.append("[motif.piece]")
    if not good.rows:
        lines.append(f'shape = "{good.shape}"')
    if good.counts_as is not None:
        lines.append(f"counts_as = {str(good.counts_as).lower()}")
    return "\n".join([*lines, f'{worked} = """', good.text.rstrip("\n"), '"""', ""])


RING = "Ring: Make a magic ring.\n"

GOOD: dict[str, Good] = {
    "amigurumi ball": Good("""Rnd 1: 6 sc in magic ring. (6)
Rnd 2: Inc in each st around. (12)
Rnd 3: (Sc, inc) x 6. (18)
Rnds 4-6: Sc in each st around. (18)
Rnd 7: (Sc, dec) x 6. (12)
Rnd 8: Dec x 6. (6)
Finish: Fasten off.
"""),
    "amigurumi ball, old way": Good("""Rnd 1: Ch 2, 6 sc in 2nd ch from hook; do not join. (6 sc)
Rnd 2: 2 sc in each sc around. (12 sc)
Rnd 3: [Sc in next st, 2 sc in next st] around. (18 sc)
Rnd 4: [Sc in next st, sc2tog] around. (12 sts)
Rnd 5: Sc2tog around. (6 sts)
"""),
    "double crochet rows": Good(
        """Chain: Ch 20.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch across; turn. (18 dc)
Row 2: Ch 3 (counts as dc), sk first st, dc in each st across, dc in top of 3 missed ch; turn. (18 dc)
Row 3: Ch 3 (counts as dc), dc in next 16 sts, dc in top of beg ch-3; turn. (18 dc)
Row 4: Ch 1, sc in each dc across, sc in tch. (18 sc)
""",
        rows=True,
    ),
    "turning chains at the row's end": Good(
        """Chain: Ch 12.
Row 1: Dc in 4th ch from hook and in each ch across, ch 3, turn. (10 dc)
Row 2: Dc in next 8 dc, dc in top of tch, ch 3, turn. (10 dc)
Row 3: Dc in each st across. (10 dc)
Finish: Fasten off.
""",
        rows=True,
    ),
    "turning chains that do not count": Good(
        """Chain: Ch 12.
Row 1: Dc in 3rd ch from hook (missed ch do not count as a st) and in each ch across; turn. (10 dc)
Rows 2-4: Ch 2 (does not count as a st), dc in each st across; turn. (10 dc)
""",
        rows=True,
    ),
    "ripple": Good(
        """Chain: Ch 31.
Row 1: Sc in 2nd ch from hook, sc in next 6 ch, [3 sc in next ch, sc in next 6 ch, sk next 2 ch, sc in next 6 ch] to last 8 ch, 3 sc in next ch, \
sc in next 7 ch; turn. (32 sc)
Row 2: Ch 1, sk first sc, sc in next 7 sc, 3 sc in next sc, sc in next 6 sc, sk next 2 sc, sc in next 6 sc, 3 sc in next sc, sc in next 6 sc, \
sk next sc, sc in last sc; turn. (32 sc)
""",
        rows=True,
    ),
    "mesh": Good(
        """Chain: Ch 24.
Row 1: Dc in 6th ch from hook, [ch 1, sk next ch, dc in next ch] 9 times; turn. (11 dc, 10 ch-1 sps)
Row 2: Ch 4 (counts as dc and ch 1), sk first ch-1 sp, [dc in next dc, ch 1] 9 times, dc in 4th ch of beg ch-5; turn. (11 dc, 10 ch-1 sps)
""",
        rows=True,
    ),
    "filet": Good(
        """Chain: Ch 23.
Row 1: Dc in 8th ch from hook, [ch 2, sk 2 ch, dc in next ch] 5 times; turn. (7 dc, 6 ch-2 sps)
Row 2: Ch 5 (counts as dc and ch 2), sk first ch-2 sp, dc in next dc, [2 dc in next ch-2 sp, dc in next dc] twice, [ch 2, dc in next dc] twice, \
ch 2, dc in 3rd ch of beg ch-5; turn. (11 dc, 4 ch-2 sps)
""",
        rows=True,
    ),
    "leaves along a chain": Good(
        RING
        + """Rnd 1: Ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)
Rnd 2: Ch 1, [sc in next sc, ch 5, dc in 2nd ch from hook, tr in next ch, dc in next ch, sc in next ch, sc in next sc] 4 times; join. (12 sc, 8 dc, 4 tr)
"""
    ),
    "a lace that closes with a stitch": Good("""Ring: Ch 5, join to form a ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in first sc, [ch 3, sk next sc, sc in next sc] 5 times, sk last sc; join with ch 1, hdc in first sc (counts as ch-3 sp). (6 sc, 6 ch-3 sps)
Rnd 3: Ch 1, sc in same sp, [ch 5, sc in next ch-3 sp] 5 times; join with ch 2, dc in first sc. (6 sc, 6 ch-5 sps)
Rnd 4: Ch 1, sc in same sp, [7 dc in next sc, sc in next ch-5 sp] 5 times, 7 dc in next sc; join. (6 sc, 42 dc)
"""),
    "layered flower": Good("""Ring: Ch 6; join with sl st to form a ring.
Rnd 1: Ch 1, [sc in ring, ch 3] 6 times; join with sl st in first sc. (6 sc, 6 ch-3 lps)
Rnd 2: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 lp around; join with sl st in first sc. (6 petals)
Rnd 3: Ch 1, working behind petals, [sc around next sc of Rnd 1, ch 5] 6 times; join with sl st in first sc. (6 sc, 6 ch-5 lps)
Rnd 4: [(Sc, hdc, 5 dc, hdc, sc) in next ch-5 lp] around; join. (6 petals)
"""),
    "front and back post rib": Good(
        """Chain: Ch 15.
Row 1: Hdc in 3rd ch from hook and in each ch across; turn. (14 hdc)
Row 2: Ch 2 (counts as hdc), [FPdc around next st, BPdc around next st] to last st, hdc in last st; turn. (2 hdc, 6 FPdc, 6 BPdc)
Row 3: Ch 2 (counts as hdc), [FPdc around next FPdc, BPdc around next BPdc] 6 times, hdc in tch; turn. (14 sts)
""".replace("[FPdc around next FPdc, BPdc around next BPdc] 6 times", "[FPdc around next BPdc, BPdc around next FPdc] 6 times"),
        rows=True,
    ),
    "V-stitches": Good(
        """Chain: Ch 23.
Row 1: V-st in 5th ch from hook, [sk 2 ch, V-st in next ch] 5 times, sk 2 ch, dc in last ch; turn. (6 V-sts, 2 dc)
Row 2: Ch 3, V-st in each V-st across, dc in tch; turn. (6 V-sts, 2 dc)
Row 3: Ch 3, [V-st in ch-1 sp of next V-st] 6 times, dc in top of beg ch-3. (6 V-sts, 2 dc)
""",
        rows=True,
    ),
    "shells into shells": Good(
        """Chain: Ch 26.
Row 1: Sc in 2nd ch from hook, [sk 2 ch, shell in next ch, sk 2 ch, sc in next ch] across; turn. (4 shells, 5 sc)
Row 2: Ch 3 (counts as dc), 2 dc in first sc, [sc in center dc of next shell, shell in next sc] 3 times, sc in center dc of next shell, \
3 dc in last sc; turn. (3 shells, 6 dc, 4 sc)
Row 3: Ch 1, sc in first dc, [shell in next sc, sc in 3rd dc of next shell] 3 times, shell in next sc, sc in tch. (4 shells, 5 sc)
""",
        rows=True,
        stitches={"shell": "5 dc in same st"},
    ),
    "oval": Good("""Chain: Ch 11.
Rnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch; working in other side of foundation ch, sc in next 8 ch, 2 sc in last ch; \
join with sl st in first sc. (22 sc)
Rnd 2: Ch 1, 2 sc in same st, sc in next 8 sts, [2 sc in next st] 3 times, sc in next 8 sts, [2 sc in next st] twice; join. (28 sc)
"""),
    "picot edge": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 1, sc in same st, [ch 3, sl st in 3rd ch from hook, sc in next st] around, picot; join with sl st in first sc. (12 sc, 12 picots)
Rnd 3: Ch 1, [sc in next sc, picot] around; join. (12 sc)
"""
    ),
    "unused loops": Good(
        RING
        + """Rnd 1: Ch 1, 10 sc in ring; join with sl st in first sc. (10 sc)
Rnd 2: Ch 1, sc in BLO of each st around; join with sl st in first sc. (10 sc)
Rnd 3: Ch 1, 2 sc in each unused front lp of Rnd 1; join. (20 sc)
"""
    ),
    "hexagon": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join. (12 dc, 6 ch-2 sps)
Rnd 2: Ch 3, dc in next dc, (dc, ch 2, dc) in next ch-2 sp, [dc in next 2 dc, (dc, ch 2, dc) in next ch-2 sp] 5 times; join. (24 dc, 6 ch-2 sps)
""",
        shape="hexagon",
    ),
    "two colours joined anew": Good(
        """Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3. Fasten off A. (12 dc)
Rnd 2: With B, join with sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] around; \
join with sl st in top of beg ch-3. Fasten off B. (24 dc, 4 ch-1 sps, 4 ch-2 sps)
Rnd 3: Join A with sc in any corner sp, (sc, ch 2, 2 sc) in same sp, [sc in each dc and each ch-1 sp to next corner sp, (2 sc, ch 2, 2 sc) in corner sp] \
3 times, sc in each dc and each ch-1 sp to beg sp; join with sl st in first sc. (44 sc, 4 ch-2 sps)
""",
        shape="square",
    ),
    "clusters, beginning ones too": Good(
        RING
        + """Rnd 1: Beg cl in ring, ch 3, [cl in ring, ch 3] 5 times; join with sl st in top of beg cl. (6 cl, 6 ch-3 sps)
Rnd 2: Sl st in ch-3 sp, (beg cl, ch 2, cl) in same sp, ch 2, [(cl, ch 2, cl) in next ch-3 sp, ch 2] around; join. (12 cl, 12 ch-2 sps)
"""
    ),
    "puffs, popcorns, bobbles": Good(
        RING
        + """Rnd 1: Ch 1, [puff in ring, ch 2] 6 times; join with sl st in first puff. (6 puffs, 6 ch-2 sps)
Rnd 2: Sl st in ch-2 sp, ch 3 (counts as dc), 3 dc in same sp, ch 1, [4 dc in next ch-2 sp, ch 1] around; join. (24 dc, 6 ch-1 sps)
Rnd 3: Ch 1, [pc in next st, sc in next 3 sts] around; join. (6 pc, 18 sc)
Rnd 4: Ch 3, [dc in next 3 sts, 3-dc bobble in next pc] 5 times, dc in next 3 sts; join. (5 bobbles, 19 dc)
"""
    ),
    "clusters written as stitches together": Good(RING + """Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 3 (counts as dc), dc2tog in same st, ch 3, sk next st, [dc3tog in next st, ch 3, sk next st] 5 times; join. (7 sts, 6 ch-3 sps)
Rnd 3: Ch 1, [sc in next ch-3 sp, ch 5] around; join. (6 sc, 6 ch-5 sps)
"""),
    "short rows": Good(
        """Chain: Ch 11.
Row 1: Sc in 2nd ch from hook and in each ch across; turn. (10 sc)
Row 2: Ch 1, sc in next 5 sc, leave remaining sts unworked; turn. (5 sc)
Row 3: Ch 1, sc in next 5 sc, turn, ch 1, sc in next 3 sc, leave remaining sts unworked; turn. (3 sc)
""",
        rows=True,
    ),
    "decreases to the end": Good(
        """Chain: Ch 13.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (12 sc)
Row 2: Ch 1, sc2tog across; turn. (6 sts)
Row 3: Ch 1, [sc2tog] across; turn. (3 sts)
Row 4: Ch 1, sc3tog. (1 st)
Finish: Fasten off.
""",
        rows=True,
    ),
    "spike stitches": Good(
        """Chain: Ch 9.
Row 1: Sc in 2nd ch from hook and in each ch across; turn. (8 sc)
Row 2: Ch 1, sc in each st across; turn. (8 sc)
Row 3: Ch 1, [sc in next st, sc in next st 2 rows below] across; turn. (8 sc)
""",
        rows=True,
    ),
    "crossed stitches": Good(
        """Chain: Ch 14.
Row 1: Dc in 4th ch from hook and in each ch across; turn. (12 dc)
Row 2: Ch 3, [sk next st, dc in next st, dc in skipped st] 5 times, dc in top of beg ch; turn. (12 dc)
""",
        rows=True,
    ),
    "octagon": Good(
        """Ring: Ch 5; join with sl st to form ring.
Rnd 1: Ch 3, 15 dc in ring; join with sl st in top of beg ch-3. (16 dc)
Rnd 2: Ch 3, (dc, ch 1, 2 dc) in same st, [dc in next st, (2 dc, ch 1, 2 dc) in next st] 7 times, dc in next st; join. (40 dc, 8 ch-1 sps)
""",
        shape="octagon",
    ),
    "triangle": Good(
        RING
        + """Rnd 1: Ch 3, 3 dc in ring, ch 3, [4 dc in ring, ch 3] twice; join. (12 dc, 3 corners)
Rnd 2: Sl st in next 3 dc, sl st in ch-3 sp, ch 3, (3 dc, ch 3, 4 dc) in same sp, [(4 dc, ch 3, 4 dc) in next corner] twice; join. (24 dc, 3 ch-3 sps)
""",
        shape="triangle",
    ),
    "half a circle in rows": Good(
        RING
        + """Row 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 5 times, dc in ring; turn. (7 dc, 6 ch-1 sps)
Row 2: Ch 3, 2 dc in next ch-1 sp, [dc in next dc, 2 dc in next ch-1 sp] to last ch-1 sp, dc in next dc, 2 dc in last ch-1 sp, dc in tch; turn. (19 dc)
""",
        rows=True,
    ),
    "stitches between stitches": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join. Fasten off. (12 dc)
Rnd 2: With B, join with sl st in sp between any 2 dc, ch 3, dc in same sp, 2 dc in each sp between dc around; join. Fasten off B. (24 dc)
Rnd 3: With A, standing dc in any st, ch 1, sk next st, [dc in next st, ch 1, sk next st] around; join. (12 dc, 12 ch-1 sps)
"""
    ),
    "groups between groups": Good(
        RING
        + """Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 1, [3 dc in ring, ch 1] 3 times; join. (12 dc, 4 ch-1 sps)
Rnd 2: Sl st in next 2 dc, sl st in ch-1 sp, ch 3, (2 dc, ch 1, 3 dc) in same sp, [(3 dc, ch 1, 3 dc) in next ch-1 sp] 3 times; join. (24 dc, 8 groups)
Rnd 3: Sl st in next 2 dc, sl st in ch-1 sp, ch 3, (2 dc, ch 1, 3 dc) in same sp, [3 dc in sp between next 2 groups, (3 dc, ch 1, 3 dc) in next ch-1 sp] \
3 times, 3 dc in sp between next 2 groups; join. (36 dc)
""",
        shape="square",
    ),
    "wheel with loops": Good(
        RING
        + """Rnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 7 times; join with sl st in 3rd ch of beg ch-4. (8 dc, 8 ch-1 sps)
Rnd 2: Sl st in ch-1 sp, ch 3, 2 dc in same sp, ch 1, [3 dc in next ch-1 sp, ch 1] around; join with sl st in top of beg ch-3. (24 dc, 8 ch-1 sps)
Rnd 3: Ch 1, sc in same st, sc in each dc and each ch-1 sp around; join. (32 sc)
Rnd 4: Ch 1, sc in same st, ch 5, sk next 3 sts, [sc in next st, ch 5, sk next 3 sts] around; join. (8 sc, 8 ch-5 sps)
Rnd 5: Ch 1, [7 sc in next ch-5 sp, sl st in next sc] around; join. (56 sc, 8 sl sts)
"""
    ),
    "star repeats": Good(
        RING
        + """Rnd 1: Ch 1, 12 sc in ring; join.
Rnd 2: Ch 1, *sc in next sc, ch 3, sk next sc; rep from * around; join. (6 sc, 6 ch-3 sps)
Rnd 3: Ch 1, *sc in next sc, 3 sc in next ch-3 sp; rep from * 5 more times; join. (24 sc)
Rnd 4: Ch 3, dc in same st, *dc in next 3 sts, 2 dc in next st; rep from * to last 3 sts, dc in last 3 sts; join. (30 dc)
Rnd 5: Ch 1, sc in same st, *ch 2, sk next 2 sts**, sc in next st; rep from * around, ending last rep at **; join. (10 sc, 10 ch-2 sps)
"""
    ),
    "back loop rib": Good(
        """Chain: Ch 9.
Row 1: Sc in 2nd ch from hook and in each ch across; turn. (8 sc)
Row 2: Ch 1, sc in BLO of each st across; turn. (8 sc)
Rows 3-9: Rep Row 2.
Row 10: Ch 1, working in back loops only, sc in each st across; turn. (8 sc)
Rows 11-16: Rep Rows 9 and 10 3 times.
Finish: Fasten off.
""",
        rows=True,
    ),
    "until it measures": Good(
        """Chain: Ch 9.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (8 sc)
Row 2: Ch 1, sc in each st across; turn. (8 sc)
Row 3: Rep Row 2 until piece measures 5.2 cm, ending with a WS row.
""",
        rows=True,
        row_height_cm=0.5,
    ),
    "hat crown": Good(
        RING
        + """Rnd 1: Ch 2 (does not count as a st), 10 hdc in ring; join with sl st in first hdc. (10 hdc)
Rnd 2: Ch 2, 2 hdc in each st around; join with sl st in first hdc. (20 hdc)
Rnd 3: Ch 2, [hdc in next st, 2 hdc in next st] around; join. (30 hdc)
Rnd 4: Ch 2, hdc in each st around; join. (30 hdc)
Rnds 5-8: Rep Rnd 4.
""".replace("Ch 2, ", "Ch 2 (does not count as a st), ")
    ),
    "chainless foundation": Good(
        """Foundation: 12 fsc; turn. (12 fsc)
Row 1: Ch 1, sc in each st across; turn. (12 sc)
""",
        rows=True,
    ),
    "tube": Good("""Chain: Ch 24; join with sl st in first ch to form a ring.
Rnd 1: Ch 1, sc in each ch around; join with sl st in first sc. (24 sc)
Rnd 2: Ch 3 (counts as dc), dc in each st around; join. (24 dc)
"""),
    "UK square": Good(
        """Ring: Ch 4; join with ss in first ch to form a ring.
Rnd 1: Ch 3 (counts as tr), 2 tr in ring, ch 2, [3 tr in ring, ch 2] 3 times; join with ss in top of beg ch-3. (12 tr, 4 ch-2 sps)
Rnd 2: Ss in next 2 tr and in next ch-2 sp, ch 1, [(2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 3 tr] 4 times; join with ss in first dc. (28 dc, 4 ch-2 sps)
""",
        shape="square",
        terms="UK",
    ),
    "turned square, whichever side": Good(
        """Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 1, [3 sc in ring, ch 2] 4 times; join with sl st in first sc; turn. (12 sc)
Rnd 2 (WS): Ch 1, [(sc, ch 2, sc) in next ch-2 sp, sc in next 3 sc] 4 times; join with sl st in first sc; turn. (20 sc, 4 ch-2 sps)
Rnd 3 (RS): Ch 1, [sc in each sc to next ch-2 sp, (sc, ch 2, sc) in next ch-2 sp] 4 times, sc in each sc to end of rnd; join. (28 sc)
""",
        shape="square",
    ),
    "rounds of several parts": Good(
        RING
        + """Rnd 1: Ch 1, 8 sc in ring; join with sl st in first sc. Fasten off. (8 sc)
Rnd 2: Join B with sl st in any sc, ch 1, 2 sc in each st around; join with sl st in first sc. Fasten off B. (16 sc)
Rnd 3: Join A with sc in first sc, sc in next st, [2 sc in next st, sc in next st] around; join with sl st in first sc. (23 sc)
"""
    ),
    "unstated beginning chains": Good(
        RING
        + """Rnd 1: Ch 3, 12 dc in ring; join with sl st in first dc. (12 dc)
Rnd 2: Ch 3, 2 dc in each st around; join with sl st in first dc. (24 dc)
"""
    ),
    "an edging about a piece in rows": Good(
        """Chain: Ch 11.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (10 sc)
Rows 2-9: Ch 1, sc in each sc across; turn. (10 sc)
Rnd 1: Ch 1, 3 sc in next st, sc in next 8 sts, 3 sc in next st, sc in each row end, 3 sc in next ch, sc in next 8 ch, 3 sc in next ch, \
sc in each row end; join. (46 sc)
""",
        rows=True,
    ),
}
