# ruff: noqa: E501 (texts keep their lines)
"""Patterns of the kinds that a designer writes in a season: they are worked in silence, and one slip in each is told once, at its place."""

from __future__ import annotations

import pytest
from good import Good
from make import made

DESIGNS: dict[str, Good] = {
    "triangle shawl rows": Good(
        """Ring: Ch 4; join with sl st in first ch to form a ring.
Row 1 (RS): Ch 4 (counts as dc and ch 1 here and throughout), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring; turn. (8 dc, 2 ch-1 sps, 1 ch-2 sp)
Row 2 (WS): Ch 4, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1, dc in last dc; turn. (14 dc, 4 ch-1 sps, 1 ch-2 sp)
Row 3: Ch 4, *3 dc in next ch-1 sp, ch 1; rep from * to next ch-2 sp, (3 dc, ch 2, 3 dc) in ch-2 sp, *ch 1, 3 dc in next ch-1 sp; rep from * across, ch 1, dc in last dc; turn. (20 dc, 6 ch-1 sps, 1 ch-2 sp)
""",
        rows=True,
    ),
    "yoke circle": Good(
        """Chain: Ch 60; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), dc in each of next 59 ch; join with sl st in top of beg ch-3. (60 dc)
Rnd 2: Ch 3, dc in next 4 dc, 2 dc in next dc, *dc in next 5 dc, 2 dc in next dc; rep from * around; join. (70 dc)
Rnd 3: Ch 3, dc in each dc around; join. (70 dc)
Rnd 4: Ch 3, dc in next 5 dc, 2 dc in next dc, [dc in next 6 dc, 2 dc in next dc] 9 times; join. (80 dc)
Rnd 5: Ch 1, sc in same st, ch 3, sk next dc, [sc in next dc, ch 3, sk next dc] around; join with sl st in first sc. (40 sc, 40 ch-3 sps)
""",
    ),
    "mosaic stripes": Good(
        """Chain: With A, ch 22.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (21 sc)
Row 2 (WS): Ch 1, sc in each sc across; change to B, turn. (21 sc)
Row 3: Ch 1, sc in first sc, *ch 2, sk next 2 sc, sc in next sc; rep from * across to last 2 sc, sc in last 2 sc; turn. (9 sc, 6 ch-2 sps)
Row 4: Ch 1, sc in first 3 sc, *ch 2, sk next ch-2 sp, sc in next sc; rep from * across; change to A, turn. (9 sc, 6 ch-2 sps)
""",
        rows=True,
    ),
    "filet": Good(
        """Chain: Ch 32.
Row 1: Dc in 8th ch from hook (counts as dc and ch 2), [ch 2, sk next 2 ch, dc in next ch] 8 times; turn. (10 dc, 9 ch-2 sps)
Row 2: Ch 3 (counts as dc), 2 dc in next ch-2 sp, dc in next dc, [ch 2, dc in next dc] 7 times, 2 dc in next ch-2 sp, dc in last st; turn. (14 dc, 7 ch-2 sps)
Row 3: Ch 3 (counts as dc), dc in next 3 dc, [ch 2, dc in next dc] 3 times, 2 dc in next ch-2 sp, dc in next dc, [ch 2, dc in next dc] 3 times, dc in next 2 dc, dc in last st; turn. (16 dc, 6 ch-2 sps)
""",
        rows=True,
    ),
    "cable": Good(
        """Chain: Ch 18.
Row 1 (RS): Hdc in 3rd ch from hook (missed 2 ch count as hdc), hdc in each ch across; turn. (17 hdc)
Row 2: Ch 2 (counts as hdc here and throughout), hdc in each st across; turn. (17 hdc)
Row 3: Ch 2, hdc in next 3 sts, [sk next 2 sts, FPdc around each of next 2 sts, FPdc around each of 2 skipped sts, hdc in next st] twice, hdc in next 2 sts, hdc in last st; turn. (9 hdc, 8 FPdc)
Row 4: Ch 2, hdc in each st across; turn. (17 hdc)
""",
        rows=True,
    ),
    "sock tube": Good(
        """Rnd 1: Ch 4, 3 sc in 2nd ch from hook, sc in next ch, 3 sc in last ch; working in other side of foundation ch, sc in next ch; do not join. (8 sc)
Rnd 2: [2 sc in next st, sc in next 2 sts, 2 sc in next st] twice. (12 sc)
Rnd 3: [2 sc in next st, sc in next 4 sts, 2 sc in next st] twice. (16 sc)
Rnds 4-10: Sc in each st around. (16 sc)
Rnd 11: Sc in next 4 sts, ch 8, sk next 8 sts, sc in next 4 sts. (8 sc, 1 ch-8 sp)
Rnd 12: Sc in next 4 sc, sc in each of next 8 ch, sc in next 4 sc. (16 sc)
""",
    ),
    "ball": Good(
        """Rnd 1: 6 sc in magic ring. [6]
Rnd 2: 2 sc in each st. [12]
Rnd 3: (sc, inc) x 6. [18]
Rnds 4-6: sc in each st. [18]
Rnd 7: (sc, dec) x 6. [12]
Rnd 8: dec x 6. [6]
Finish: Fasten off, leaving a tail.
""",
    ),
    "doily": Good(
        """Ring: Ch 8; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 23 dc in ring; join with sl st in top of beg ch-3. (24 dc)
Rnd 2: Ch 5 (counts as dc and ch 2), sk next dc, [dc in next dc, ch 2, sk next dc] 11 times; join with sl st in 3rd ch of beg ch-5. (12 dc, 12 ch-2 sps)
Rnd 3: Sl st in next ch-2 sp, ch 3, 3 dc in same sp, [ch 1, 4 dc in next ch-2 sp] 11 times, ch 1; join. (48 dc, 12 ch-1 sps)
Rnd 4: Ch 1, sc in same st, *ch 5, sk next 2 dc, sc in next dc, ch 3, sk next ch-1 sp, sc in next dc; rep from * around, omitting last sc; join with sl st in first sc. (24 sc, 12 ch-5 sps, 12 ch-3 sps)
Rnd 5: Sl st in next ch-5 sp, ch 1, (sc, hdc, 3 dc, hdc, sc) in same sp, sc in next ch-3 sp, [(sc, hdc, 3 dc, hdc, sc) in next ch-5 sp, sc in next ch-3 sp] 11 times; join. (36 sc, 24 hdc, 36 dc)
""",
    ),
    "solid granny": Good(
        """Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 1, [3 dc in ring, ch 1] 3 times; join. (12 dc, 4 ch-1 sps)
Rnd 2: Sl st in next 2 dc and in next ch-1 sp, ch 3, (2 dc, ch 1, 3 dc) in same sp, ch 1, [(3 dc, ch 1, 3 dc) in next ch-1 sp, ch 1] 3 times; join. (24 dc, 8 ch-1 sps)
Rnd 3: Sl st in next 2 dc and in next corner ch-1 sp, ch 3, (2 dc, ch 1, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, [(3 dc, ch 1, 3 dc) in next corner ch-1 sp, ch 1, 3 dc in next ch-1 sp, ch 1] 3 times; join. (36 dc, 12 ch-1 sps)
""",
        shape="square",
    ),
    "hexagon jayg": Good(
        """Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join. (12 dc, 6 ch-2 sps)
Rnd 2: Ch 3, dc in next dc, (dc, ch 2, dc) in next ch-2 sp, [dc in next 2 dc, (dc, ch 2, dc) in next ch-2 sp] 5 times; join. (24 dc, 6 ch-2 sps)
Rnd 3: Ch 1, sc in same st, sc in next 2 dc, (sc, ch 1, sl st in corresponding ch-2 sp of previous motif, ch 1, sc) in next ch-2 sp, [sc in next 4 dc, (sc, ch 2, sc) in next ch-2 sp] 5 times, sc in next dc; join. (36 sc)
""",
        shape="hexagon",
    ),
    "bobble square": Good(
        """Chain: Ch 14.
Row 1 (WS): Sc in 2nd ch from hook and in each ch across; turn. (13 sc)
Row 2 (RS): Ch 1, sc in each sc across; turn. (13 sc)
Row 3: Ch 1, sc in first 3 sc, [bobble in next sc, sc in next 2 sc] 3 times, sc in last sc; turn. (10 sc, 3 bobbles)
Row 4: Ch 1, sc in each st across; turn. (13 sc)
Row 5: Ch 1, sc in first 5 sc, bobble in next sc, sc in next sc, bobble in next sc, sc in last 5 sc; turn. (11 sc, 2 bobbles)
""",
        rows=True,
        stitches={"bobble": "5 dc in same st, gathered"},
    ),
    "uk star": Good(
        """Ring: 6 ch; join with ss in first ch to form a ring.
Round 1: 3 ch (counts as tr), 19 tr in ring; join with ss in top of beg 3-ch. (20 tr)
Round 2: 1 ch, dc in same st, *5 ch, miss next 3 tr, dc in next tr; rep from * 3 more times, 5 ch, miss last 3 tr; join with ss in first dc. (5 dc, 5 5-ch sps)
Round 3: 1 ch, *(dc, htr, 2 tr, 2 ch, 2 tr, htr, dc) in next 5-ch sp; rep from * around; join with ss in first dc. (10 dc, 10 htr, 20 tr, 5 2-ch sps)
""",
        terms="UK",
    ),
}


def work(name: str, good: str = "", bad: str = "") -> list[tuple[str, str, str]]:
    """Works a design with one thing changed: code, words at the place, and hint of each problem."""
    design = DESIGNS[name]
    text = design.text.replace(good, bad, 1)
    assert (text != design.text) == bool(good)
    worked = made(text, design.shape, design.terms, design.stitches, rows=design.rows)
    lines = text.split("\n")
    told = []
    for problem in (*worked.read, *worked.problems):
        span = problem.span
        assert span is not None
        told.append((problem.code, lines[span.line - 1][span.column - 1 :][: span.length], problem.hint or ""))
    return told


@pytest.mark.parametrize("name", sorted(DESIGNS))
def test_a_design_is_worked_in_silence(name: str) -> None:
    assert work(name) == []


SLIPS = [
    ("triangle shawl rows", "Row 2 (WS): Ch 4, 3 dc in next ch-1 sp", "Row 2 (WS): Ch 4, 3 dc in same ch-1 sp", "place", "in same ch-1 sp", "next ch-1 sp"),
    ("yoke circle", "[dc in next 6 dc, 2 dc in next dc] 9", "[dc in next 6 dc, 2 dc in next dc] 8", "left-over", "2 dc in next dc", "9 times instead of 8"),
    ("mosaic stripes", "Sc in 2nd ch", "Sc in 3rd ch", "count", "21 sc", "2nd ch from hook"),
    ("filet", "[ch 2, dc in next dc] 7 times", "[ch 2, dc in next dc] 6 times", "left-over", "dc in last st", "7 times instead of 6"),
    ("cable", "each of 2 skipped sts", "each of 3 skipped sts", "place", "around each of 3 skipped sts", "skip 3 sts"),
    ("sock tube", "sk next 8 sts", "sk next 7 sts", "left-over", "sc in next 4 sts", "sk next 8 sts"),
    ("ball", "Rnd 7: (sc, dec) x 6", "Rnd 7: (sc, dec) x 5", "left-over", "dec", "6 times instead of 5"),
    ("doily", "sk next 2 dc, ", "", "passed", "next ch-1 sp", "skipped too"),
    ("doily", "ch 3, 3 dc in same sp, [ch 1", "ch 3, 3 dc in next sp, [ch 1", "beyond", "4 dc in next ch-2 sp", "same sp instead of next sp"),
    ("solid granny", "3 dc in next ch-1 sp, ch 1] 3 times", "3 dc in next ch-1 sp, ch 1] 4 times", "beyond", "3 dc in next ch-1 sp", "3 times instead of 4"),
    ("bobble square", "sc in last sc; turn. (10 sc", "sc in last 2 sc; turn. (10 sc", "beyond", "sc in last 2 sc", "sc in last sc"),
    ("uk star", "rep from * 3 more times", "rep from * 4 more times", "beyond", "miss last 3 tr", "4 times instead of 5"),
]  # fmt: skip


@pytest.mark.parametrize("name, good, bad, code, words, hint", SLIPS, ids=[f"{slip[0]}: {slip[2]}" for slip in SLIPS])
def test_one_slip_is_told_once_at_its_place(name: str, good: str, bad: str, code: str, words: str, hint: str) -> None:
    told = work(name, good, bad)
    assert [one[0] for one in told] == [code]
    assert words in told[0][1]
    assert hint in told[0][2]
