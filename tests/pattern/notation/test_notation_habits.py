"""Habits of writing that no standard has and many people share."""

from __future__ import annotations

import pytest
from notation_shorthand import short

HABITS = [
    ("ch 3 (= 1 dc), dc in next st", "ch3{=dc}; dc@next st"),
    ("ch 3 (counts 1 dc)", "ch3{=dc}"),
    ("ch 3 (replaces first dc)", "ch3{=dc}"),
    ("ch 3 (counts as dc here and in all following rnds)", "ch3{=dc throughout}"),
    ("ch 2 (does not count as a stitch, here and throughout)", "ch2{=nothing throughout}"),
    ("6 sc in next st; join with sl st in beg dc", "6 sc@next st; JOIN sl st@first dc"),
    ("*sc in next st, inc, repeat 6 times", "[sc@next st, sc inc2]x6"),
    ("*sc in next st, inc; repeat around", "[sc@next st, sc inc2]~around"),
    ("(sc, inc) repeat around", "[sc, sc inc2]~around"),
    ("*sc in next st, inc; rep from * around, end with sc in last st", "[sc@next st, sc inc2]~last 1 st; sc@last st"),
    ("sc in each st around (do not join)", "sc@each st~around; JOIN none"),
    ("move marker up each rnd, sc in next st", "MARK slip; sc@next st"),
    ("Continue in a spiral, sc in next st", "'Continue in a spiral'; sc@next st"),
    ("begin working in the round, sc in next st", "'begin working in the round'; sc@next st"),
    ("fasten off with invisible join", "ATTACH invisible; FO"),
    ("Cut yarn, leaving a 20 cm tail", "FO; 'leaving a 20 cm tail'"),
    ("ch 3, dc in st at base of ch 3", "ch3; dc@same st 'at base of ch 3'"),
    ("dc in base of ch-3", "dc@same st"),
    ("sc in next st (place marker), ch 2 (corner), sc in next st", "sc@next st; MARK place; ch2; '(corner)'; sc@next st"),
    ("sc in same st (same st as join), ch 1", "sc@same st; '(same st as join)'; ch1"),
    ("2 sc in next st twice", "[2 sc@next st]x2"),
    ("(2 sc in next st) twice", "[2 sc@next st]x2"),
    ("[(sc, ch 3, sc) in next st] around", "[(sc, ch3, sc)@next st]~around"),
    ("switch to A", "change A"),
    ("change to colour B", "change B"),
    ("Fasten off yarn A", "FO A"),
    ("dc in each of the next 2 dc, 2 dc in first ch-sp", "dc@next 2* dc; 2 dc@first sp"),
    ("ch 1 & turn", "ch1; TURN"),
    ("dc in first dc, sc in last dc of row", "dc@first dc; sc@last dc"),
    ("sc in each st and 3 sc in each corner sp around", "[sc@each st~to next corner sp, **, 3 sc@next corner sp]~around"),
    ("sc in each dc around with 3 sc in each corner", "[sc@each dc~to next corner, **, 3 sc@next corner]~around"),
    ("5 sc in ring, ch 2", "5 sc@current ring; ch2"),
    ("tr in next 2 sts, ch 4, sk next 2 ch-2 sps", "tr@next 2* st; ch4; sk next 2* sp2"),
    ("sc in ch-3 sp between petals", "sc@current sp3 'between petals'"),
    ("sl st in sp between first and last dc", "sl st@between first 2 gap of dc"),
    ("Rnd 2 (B): sc in next st", "with B; sc@next st"),
    ("Rnd 2 (WS) (with B): sc in next st", "with B; sc@next st"),
    ("Rnd 2 (with B): ch 1", "with B; ch1"),
]


@pytest.mark.parametrize(("written", "meant"), HABITS, ids=[row[0][:50] for row in HABITS])
def test_a_habit_is_understood(written: str, meant: str) -> None:
    assert short(written) == meant
