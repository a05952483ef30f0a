"""Whole lines as different people write them: squares, flowers, spirals in the round, lace, mitts and edgings, in both terms."""

from __future__ import annotations

from typing import Literal

import pytest
from notation_shorthand import amount, label_short, line_short, read, target

US_LINES = [
    (
        "Rnd 1: Ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; sl st to top of ch 3.",
        "rnd 1: ch3; 2 dc@current ring; ch2; [3 dc@current ring, ch2]x3; JOIN sl st@top ch of <beg ch3>",
        "",
    ),
    (
        "Rnd 2: Sl st across to ch-2 sp, ch 3 (counts as dc), [2 dc, ch 2, 3 dc] in same sp, *ch 1, [3 dc, ch 2, 3 dc] in next "
        "ch-2 sp; rep from * around, ch 1; join in top of beg ch.",
        "rnd 2: sl st@next sp2; ch3{=dc}; (2 dc, ch2, 3 dc)@same sp; [ch1, (3 dc, ch2, 3 dc)@next sp2]~around; ch1; JOIN "
        "usual@top ch of <beg ch>",
        "",
    ),
    (
        "Rnd 2 (WS): Ch 1, sc in each dc and 2 sc in each ch-1 sp around; join with a sl st in first sc, turn. [48 sc]",
        "rnd 2 WS: ch1; [sc@each dc~to next sp1, **, 2 sc@next sp1]~around; JOIN sl st@first sc; TURN",
        "48 sc",
    ),
    (
        "R4: 2 sc, inc, (3 sc, inc) x 5, 1 sc (30)",
        "rnd 4: 2 sc; sc inc2; [3 sc, sc inc2]x5; sc",
        "30 st",
    ),
    (
        "Rnd 5: *Sc in next 4 sts, sc2tog; rep from * around. (30 sts)",
        "rnd 5: [sc@next 4* st, sc2tog]~around",
        "30 st",
    ),
    (
        "Rnd 14 - 18: sc in each st around [36]",
        "rnd 14-18: sc@each st~around",
        "36 st",
    ),
    (
        "Rnd 19: [4 sc, dec] repeat 6 times (30)",
        "rnd 19: [4 sc, sc2tog]x6",
        "30 st",
    ),
    (
        "Rnd 3: Ch 3, dc in same st, *dc in next st, 2 dc in next st*; repeat between * and * around; join. (36 dc)",
        "rnd 3: ch3; dc@same st; [dc@next st, 2 dc@next st]~around; JOIN usual",
        "36 dc",
    ),
    (
        "Rnd 4: Ch 1; sc in first st, ch 3, sk 2 sts; [sc in next st, ch 3, sk 2 sts] 11 times; sl st in first sc to join. -- 12 ch-3 sps",
        "rnd 4: ch1; sc@first st; ch3; sk next 2* st; [sc@next st, ch3, sk next 2* st]x11; JOIN sl st@first sc",
        "12 sp3",
    ),
    (
        "Rnd 5: Sl st in ch-3 sp, ch 1, (sc, hdc, dc, tr, dc, hdc, sc) in same sp and in each ch-3 sp around; join. Fasten off "
        "A. (12 petals)",
        "rnd 5: sl st@current sp3; ch1; (sc, hdc, dc, tr, dc, hdc, sc)@same sp; (sc, hdc, dc, tr, dc, hdc, sc)@each "
        "sp3~around; JOIN usual; FO A",
        "12 group",
    ),
    (
        "Rnd 6: With B, join with sl st in back of any sc, *ch 4, sk next petal, sl st in next sc; rep from * around.",
        "rnd 6: with B; ATTACH sl st@behind any sc; [ch4, sk next group, sl st@next sc]~around",
        "",
    ),
    (
        "Rnd 7: Sl st in first lp, ch 2, 2-dc cl in same lp, ch 3, (3-dc cl, ch 3) in same lp, *(3-dc cl, ch 3) twice in next "
        "lp; rep from * around; join with sl st in top of beg cl.",
        "rnd 7: sl st@first sp lp; ch2; 2-dc cl@same sp lp; ch3; (3-dc cl, ch3)@same sp lp; [([3-dc cl, ch3]x2)@next sp "
        "lp]~around; JOIN sl st@beg cl",
        "",
    ),
    (
        "Rnd 8: (Sc, ch 3, sc) in each ch-3 sp around, join with sl st to first sc; finish off.",
        "rnd 8: (sc, ch3, sc)@each sp3~around; JOIN sl st@first sc; FO",
        "",
    ),
    (
        "Rnd 3: Ch 6 (counts as dc and ch 3), dc in same st, *ch 1, sk 2 sts, (dc, ch 3, dc) in next st; rep from * 5 more "
        "times, ch 1; sl st in 3rd ch of beg ch-6. (6 V-sts)",
        "rnd 3: ch6{=dc+ch3}; dc@same st; [ch1, sk next 2* st, (dc, ch3, dc)@next st]x6; ch1; JOIN sl st@nth3 ch of <beg ch6>",
        "6 group",
    ),
    (
        "Rnd 4: Sl st in ch-3 sp, ch 3, 6 dc in same sp, *sc in next ch-1 sp, 7 dc in next ch-3 sp; rep from * around, sc in "
        "last ch-1 sp; join with sl st in top of beg ch-3.",
        "rnd 4: sl st@current sp3; ch3; 6 dc@same sp; [sc@next sp1, 7 dc@next sp3]~around; sc@last sp1; JOIN sl st@top ch of <beg ch3>",
        "",
    ),
    (
        "Rnd 9: *Sc in next 7 dc, ch 3, sl st in last sc made (picot made), sk next sc; rep from * around. Join with sl st in "
        "first sc and fasten off.",
        "rnd 9: [sc@next 7* dc, ch3, sl st@made sc 'made', '(picot made)', sk next sc]~around; JOIN sl st@first sc; FO",
        "",
    ),
    (
        "Rnd 10: Ch 4 (counts as tr), 2 tr in same st, ch 3, 3 tr in next st, *dc in next 3 sts, hdc in next st, sc in next 3 "
        "sts, hdc in next st, dc in next 3 sts, (3 tr, ch 3, 3 tr) in next st; rep from * twice more. Join. (4 corners)",
        "rnd 10: ch4{=tr}; 2 tr@same st; ch3; 3 tr@next st; [dc@next 3* st, hdc@next st, sc@next 3* st, hdc@next st, dc@next "
        "3* st, (3 tr, ch3, 3 tr)@next st]x3; JOIN usual",
        "4 corner",
    ),
    (
        "Row 1 (RS): Hdc in 3rd ch from hook and in each ch to end. Turn. (28 (32, 36) hdc)",
        "row 1 RS: hdc@nth3 ch from hook; hdc@each ch~end; TURN",
        "28/32/36 hdc",
    ),
    (
        "Row 2: Ch 2, hdc in back loops only across, turn.",
        "row 2: ch2; hdc@each st back~across; TURN",
        "",
    ),
    (
        "Row 3: Ch 1, sc in first 2 sts, *bobble in next st, sc in next 3 sts; rep from * to last 2 sts, bobble in next st, sc "
        "in last st; turn.",
        "row 3: ch1; sc@first 2* st; [bobble@next st, sc@next 3* st]~last 2 st; bobble@next st; sc@last st; TURN",
        "",
    ),
    (
        "Row 4: Ch 3 (counts as dc, now and throughout), dc in next 2 sts, *ch 2, sk next 2 sts, dc in next st; rep from * "
        "across to last 2 sts, dc in last 2 sts; turn.",
        "row 4: ch3{=dc throughout}; dc@next 2* st; [ch2, sk next 2* st, dc@next st]~last 2 st; dc@last 2* st; TURN",
        "",
    ),
    (
        "Row 5: Ch 1, sc in first dc, *sk next dc, 5-dc shell in next dc, sk next dc, sc in next dc; rep from * across; turn. (6 shells)",
        "row 5: ch1; sc@first dc; [sk next dc, 5-dc shell@next dc, sk next dc, sc@next dc]~across; TURN",
        "6 shell",
    ),
    (
        "Row 6: Ch 3, 2 dc in first sc (half shell made), *sc in center dc of next shell, shell in next sc; rep from * to last "
        "shell, sc in center dc of last shell, 3 dc in last sc; turn.",
        "row 6: ch3; 2 dc@first sc; '(half shell made)'; [sc@center dc of <next shell>, shell@next sc]~last 1 shell; sc@center "
        "dc of <last shell>; 3 dc@last sc; TURN",
        "",
    ),
    (
        "Row 7: Ch 4 (counts as dc and ch-1 sp), sk first 2 sts, dc in next st, *ch 1, sk next st, dc in next st; rep from * to end.",
        "row 7: ch4{=dc+ch1}; sk first 2* st; dc@next st; [ch1, sk next st, dc@next st]~end",
        "",
    ),
    (
        "Row 8: Ch 3, turn; *V-st in center ch-1 sp of next V-st; rep from * across, dc in top of beg ch-3.",
        "row 8: ch3; TURN; [V-st@center sp1 of <next V-st>]~across; dc@top ch of <beg ch3>",
        "",
    ),
    (
        "Row 9: Ch 2, *FPdc around each of next 2 sts, BPdc around each of next 2 sts; rep from * across, hdc in top of turning ch; turn.",
        "row 9: ch2; [FPdc@around next 2* st, BPdc@around next 2* st]~across; hdc@top st of <current tch>; TURN",
        "",
    ),
    (
        "Row 10: Ch 1, sc in each st across, working 2 sc in each ch-2 sp; fasten off.",
        "row 10: ch1; [sc@each st~to next sp2, **, 2 sc@next sp2]~across; FO",
        "",
    ),
    (
        "Row 12: Sl st in each of first 5 sts, ch 1, sc in same st, hdc in next st, dc in next 10 sts, hdc in next st, sc in "
        "next st, leave rem 5 sts unworked, turn.",
        "row 12: sl st@first 5* st; ch1; sc@same st; hdc@next st; dc@next 10* st; hdc@next st; sc@next st; 'leave rem 5 sts "
        "unworked' LEAVE; TURN",
        "",
    ),
    (
        "Row 13 (WS): Ch 1, sc2tog over first 2 sts, sc to last 2 sts, sc2tog; turn. (3 (5, 7) sc)",
        "row 13 WS: ch1; sc2tog@over first 2 st; sc@each st~last 2 st; sc2tog; TURN",
        "3/5/7 sc",
    ),
    (
        "Rnd 1 (RS): With RS facing, join A with sl st in any corner, ch 1, 3 sc in same corner, sc evenly across to next "
        "corner, *3 sc in corner, sc evenly across to next corner; rep from * 2 more times; join with sl st in first sc.",
        "rnd 1 RS: with A; ATTACH sl st@any corner; ch1; 3 sc@same corner; sc@evenly side~to next corner; [3 sc@current "
        "corner, sc@evenly side~to next corner]x3; JOIN sl st@first sc",
        "",
    ),
    (
        "Rnd 2: Ch 1, sc in first sc, *ch 3, sl st in 3rd ch from hook, sk 1 sc, sc in each of next 3 sc; rep from * to end, "
        "omitting last sc; join.",
        "rnd 2: ch1; sc@first sc; [ch3, sl st@nth3 ch from hook, sk next sc, sc@next 3* sc]~end omit1; JOIN usual",
        "",
    ),
    (
        "Rnd 3: *5 dc in next st, sk 1 st, sl st in next st, sk 1 st; rep from * around, join, fasten off, and weave in ends.",
        "rnd 3: [5 dc@next st, sk next st, sl st@next st, sk next st]~around; JOIN usual; FO; 'weave in ends'",
        "",
    ),
    (
        "Rnd 4: Reverse sc in each st around; join with sl st in first st. Cut yarn.",
        "rnd 4: rev sc@each st~around; JOIN sl st@first st; FO",
        "",
    ),
]

UK_LINES = [
    (
        "Foundation ring: Using A, make 4ch, ss in 1st ch to form a ring.",
        "ring: with A; ch4; RING sl st@first ch",
        "",
    ),
    (
        "Round 1: 3ch (counts as 1tr), 2tr in ring, 2ch, [3tr in ring, 2ch] 3 times, ss in 3rd of 3ch to join. (12 tr)",
        "rnd 1: ch3{=dc}; 2 dc@current ring; ch2; [3 dc@current ring, ch2]x3; JOIN sl st@nth3 ch of <beg ch3>",
        "12 dc",
    ),
    (
        "Round 2: Ss across to 2ch-sp, 3ch, (2tr, 2ch, 3tr) in same sp, *1ch, (3tr, 2ch, 3tr) in next 2ch-sp; rep from * twice "
        "more, 1ch, ss in top of 3ch.",
        "rnd 2: sl st@next sp2; ch3; (2 dc, ch2, 3 dc)@same sp; [ch1, (3 dc, ch2, 3 dc)@next sp2]x3; ch1; JOIN sl st@top ch of <beg ch3>",
        "",
    ),
    (
        "Round 3: Join B in any 2ch-sp, 3ch, 2tr in same sp, 2ch, 3tr in same sp, 1ch, *3tr in next 1ch-sp, 1ch, [3tr, 2ch, "
        "3tr] in next corner sp, 1ch; rep from * 2 more times, 3tr in last 1ch-sp, 1ch; ss to join. Fasten off.",
        "rnd 3: with B; ATTACH usual@any sp2; ch3; 2 dc@same sp; ch2; 3 dc@same sp; ch1; [3 dc@next sp1, ch1, (3 dc, ch2, 3 "
        "dc)@next corner sp, ch1]x3; 3 dc@last sp1; ch1; JOIN sl st; FO",
        "",
    ),
    (
        "Round 4: 1ch (does not count as a st), 1 dc in same place, 1 dc in each st and 3 dc in each 2ch-sp around, ss in first dc.",
        "rnd 4: ch1{=nothing}; sc@same st; [sc@each st~to next sp2, **, 3 sc@next sp2]~around; JOIN sl st@first sc",
        "",
    ),
    (
        "Round 5: 2ch (counts as 1htr), 1htr in each dc around; ss into top of 2ch. (48 htr)",
        "rnd 5: ch2{=hdc}; hdc@each sc~around; JOIN sl st@top ch of <beg ch2>",
        "48 hdc",
    ),
    (
        "Row 1: 1dc in 2nd ch from hook, 1dc in each ch to end, turn. (20dc)",
        "row 1: sc@nth2 ch from hook; sc@each ch~end; TURN",
        "20 sc",
    ),
    (
        "Row 2: 3ch (counts as 1tr), miss first st, *1tr in next st, 1ch, miss 1 st; rep from * to last st, 1tr in last st, turn.",
        "row 2: ch3{=dc}; sk first st; [dc@next st, ch1, sk next st]~last 1 st; dc@last st; TURN",
        "",
    ),
    (
        "Round 6: *miss 2 sts, 5 tr in next st, miss 2 sts, ss in next st; rep from * around. (8 shells)",
        "rnd 6: [sk next 2* st, 5 dc@next st, sk next 2* st, sl st@next st]~around",
        "8 group",
    ),
    (
        "Round 7: dtr in each of next 4 tr, (dtr, 3ch, dtr) in corner sp, *dtr in each tr to next corner; rep from * around",
        "rnd 7: tr@next 4* dc; (tr, ch3, tr)@current corner sp; [tr@each dc~to next corner]~around",
        "",
    ),
    (
        "Round 8: working into back loop only, 1dc in each st to end, changing to B on last yrh",
        "rnd 8: 'working into back loop only'; sc@each st back~end; change B in yo",
        "",
    ),
]


def whole(text: str, terms: Literal["US", "UK"]) -> tuple[str, str]:
    sizes = 3 if "(32, 36)" in text or "(5, 7)" in text else 1
    lines, problems = read(text, terms, sizes=sizes, rows=text.startswith("Row "))
    assert not problems, problems
    claims = [f"{amount(claim.amount)} {target(claim.target)}" for line in lines for claim in line.counts]
    return " | ".join(f"{label_short(line.label)}: {line_short(line)}" for line in lines), ", ".join(claims)


@pytest.mark.parametrize(("text", "meant", "counted"), US_LINES, ids=[row[0][:40] for row in US_LINES])
def test_a_line_in_us_terms_is_read(text: str, meant: str, counted: str) -> None:
    assert whole(text, "US") == (meant, counted)


@pytest.mark.parametrize(("text", "meant", "counted"), UK_LINES, ids=[row[0][:40] for row in UK_LINES])
def test_a_line_in_uk_terms_is_read(text: str, meant: str, counted: str) -> None:
    assert whole(text, "UK") == (meant, counted)
