"""One thing, however it is typed: places and stitches in the spellings that people use."""

from __future__ import annotations

import pytest
from notation_shorthand import short

SPACES = [
    "dc in next ch-2 sp", "dc in next ch 2 sp", "dc in next ch2 sp", "dc in next ch2-sp", "dc in next ch-2-sp", "dc in next 2-ch sp",
    "dc in next 2ch-sp", "dc in next 2ch sp", "dc in next 2 ch sp", "dc in next 2-ch-sp", "Dc In Next Ch-2 Sp", "DC IN NEXT CH-2 SP",
    "dc in the next ch-2 space", "1 dc into next ch-2 space", "dc in next chain-2 space", "dc in next chain 2 space", "dc in nxt ch-2 sp",
    "dc in next ch‑2 sp", "dc in next ch–2 sp", "dc\u00a0in\u00a0next\u00a0ch-2\u00a0sp", "dc in next ch-2\u202fsp",
    "dc in next ch-2 sp.", "double crochet in next ch-2 sp", "work 1 double crochet in the next ch-2 sp", "Dc into foll ch-2 sp",
    "dc in following ch-2 sp", "dc in next ch2sp", "dc in next 2chsp", "dc in next ch-two sp",
]  # fmt: skip
OTHERS = [
    ("sl st in top of beg ch-3", "sl st@top ch of <beg ch3>"),
    ("sl st in top of beg ch 3", "sl st@top ch of <beg ch3>"),
    ("sl st in top of beginning ch-3", "sl st@top ch of <beg ch3>"),
    ("sl st in top of beg 3-ch", "sl st@top ch of <beg ch3>"),
    ("sl st in top of beg 3ch", "sl st@top ch of <beg ch3>"),
    ("Sl St in Top of Beg Ch3", "sl st@top ch of <beg ch3>"),
    ("slip stitch in top of starting ch-3", "sl st@top ch of <beg ch3>"),
    ("slst in top of beg ch-3", "sl st@top ch of <beg ch3>"),
    ("sl. st. in top of beg ch-3", "sl st@top ch of <beg ch3>"),
    ("sl-st in top of beg ch-3", "sl st@top ch of <beg ch3>"),
    ("SC2TOG over next 2 sts", "sc2tog@over next 2 st"),
    ("sc 2 tog over next 2 sts", "sc2tog@over next 2 st"),
    ("sc-2-tog over next 2 sts", "sc2tog@over next 2 st"),
    ("sc2 tog over next 2 sts", "sc2tog@over next 2 st"),
    ("FPDC around next dc", "FPdc@around next dc"),
    ("fpdc around next dc", "FPdc@around next dc"),
    ("FP dc around next dc", "FPdc@around next dc"),
    ("Fpdc around post of next dc", "FPdc@around next dc"),
    ("front post dc around next dc", "FPdc@around next dc"),
    ("front-post double crochet around next dc", "FPdc@around next dc"),
    ("HDC in next st", "hdc@next st"),
    ("half double crochet in next stitch", "hdc@next st"),
    ("half-double crochet in next st", "hdc@next st"),
    ("V-st in next V-st", "V-st@next V-st"),
    ("v-st in next v-st", "V-st@next V-st"),
    ("V st in next V st", "V-st@next V-st"),
    ("V-stitch in next V-stitch", "V-st@next V-st"),
    ("ch-3 picot", "3-picot"),
    ("ch3 picot", "3-picot"),
    ("3-ch picot", "3-picot"),
    ("picot (ch 3, sl st in 3rd ch from hook), sc in next st", "picot; '(ch 3, sl st in 3rd ch from hook)'; sc@next st"),
    ("V-st (dc, ch 1, dc) in next st, ch 1", "V-st@next st; ch1"),
    ("sc in BLO", "sc@next st back"),
    ("sc in blo of next st", "sc@next st back"),
    ("sc in back loop only of next st", "sc@next st back"),
]
CURLY = [
    ("don’t turn, sc in next st", "'don’t turn'; sc@next st"),
    ("do not turn, sc in next st", "'do not turn'; sc@next st"),
    ("rep rows 2–3 until piece measures 8”", "AGAIN (2, 3) until 20.32cm"),
    ("rep rows 2–3 until piece measures 8″", "AGAIN (2, 3) until 20.32cm"),
]


@pytest.mark.parametrize("written", SPACES)
def test_a_space_is_the_same_however_it_is_typed(written: str) -> None:
    assert short(written) == "dc@next sp2"


@pytest.mark.parametrize(("written", "meant"), [*OTHERS, *CURLY])
def test_a_stitch_and_its_place_are_the_same_however_they_are_typed(written: str, meant: str) -> None:
    assert short(written) == meant
