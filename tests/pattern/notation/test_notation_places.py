"""Where stitches go, in the many ways in which people write it."""

from __future__ import annotations

import pytest
from notation_shorthand import short

STITCHES = [
    ("dc in next st", "dc@next st"),
    ("1 dc in next st", "dc@next st"),
    ("a dc in the next stitch", "dc@next st"),
    ("double crochet in next stitch", "dc@next st"),
    ("work 1 dc into next st", "dc@next st"),
    ("2dc in next st", "2 dc@next st"),
    ("2 dc in next st", "2 dc@next st"),
    ("dc2 in next st", "2 dc@next st"),
    ("dc 2 in next st", "2 dc@next st"),
    ("work 2 double crochets in the next st", "2 dc@next st"),
    ("3-dc in next st", "3 dc@next st"),
    ("5 sc", "5 sc"),
    ("sc 5", "5 sc"),
    ("sc in next 5 sts", "sc@next 5* st"),
    ("sc in each of next 5 sts", "sc@next 5* st"),
    ("sc in each of the next five stitches", "sc@next 5* st"),
    ("5 sc over next 5 sts", "sc@next 5* st"),
    ("sc next 5 sts", "sc@next 5* st"),
    ("sc in next", "sc@next st"),
    ("2 sc in each st around", "2 sc@each st~around"),
    ("sc around", "sc@each st~around"),
    ("sc in each st to end", "sc@each st~end"),
    ("sc in each st to last 2 sts", "sc@each st~last 2 st"),
    ("dc in each dc to next corner sp", "dc@each dc~to next corner sp"),
    ("dc in each dc across to next ch-2 sp", "dc@each dc~to next sp2"),
    ("sc in each dc and each ch-1 sp to next corner sp", "sc@each dc+sp1~to next corner sp"),
    ("sc in each dc and in each ch-1 sp around", "sc@each dc+sp1~around"),
    ("sc in each sc and ch-1 sp around", "sc@each sc+sp1~around"),
    ("dc in next st and in each st around", "dc@next st; dc@each st~around"),
    ("sc in first st and in each of next 5 sts", "sc@first st; sc@next 5* st"),
    ("sc in 2nd ch from hook and in each ch across", "sc@nth2 ch from hook; sc@each ch~across"),
    ("dc in 4th ch from hook (missed 3 ch count as dc) and in each ch across", "dc@nth4 ch from hook{=dc}; dc@each ch~across"),
]

PLACES = [
    ("3 dc in ring", "3 dc@current ring"),
    ("12 dc into ring", "12 dc@current ring"),
    ("12 dc in the circle", "12 dc@current ring"),
    ("dc in ch-2 sp", "dc@current sp2"),
    ("dc in next ch-2 sp", "dc@next sp2"),
    ("dc in next ch2-sp", "dc@next sp2"),
    ("dc in next ch-2-sp", "dc@next sp2"),
    ("dc in next 2-ch sp", "dc@next sp2"),
    ("dc in next 2 ch-sp", "dc@next sp2"),
    ("dc in next ch 2 sp", "dc@next sp2"),
    ("dc in next ch2sp", "dc@next sp2"),
    ("dc in next chain-2 space", "dc@next sp2"),
    ("dc in next chain 2 space", "dc@next sp2"),
    ("dc in next ch-2", "dc@next sp2"),
    ("dc in next ch sp", "dc@next sp"),
    ("dc in next ch-sp", "dc@next sp"),
    ("dc in next sp", "dc@next sp"),
    ("dc in next lp", "dc@next sp lp"),
    ("dc in next ch-5 loop", "dc@next sp5 lp"),
    ("dc in next 5-ch loop", "dc@next sp5 lp"),
    ("sc in next 2 ch-1 sps", "sc@next 2* sp1"),
    ("sc in next two 2-ch sps", "sc@next 2* sp2"),
    ("sc in next 2 ch sps", "sc@next 2* sp"),
    ("dc in same sp", "dc@same sp"),
    ("dc in same st", "dc@same st"),
    ("dc in same ch-2 sp", "dc@same sp2"),
    ("dc in beg sp", "dc@beg sp"),
    ("dc in corner sp", "dc@current corner sp"),
    ("dc in next corner sp", "dc@next corner sp"),
    ("dc in next corner ch-2 sp", "dc@next corner sp2"),
    ("dc in next ch-2 corner sp", "dc@next corner sp2"),
    ("dc in next corner", "dc@next corner"),
    ("dc in any ch-3 sp", "dc@any sp3"),
    ("sc in center ch of ch-5 lp", "sc@center ch of <current sp5 lp>"),
    ("sc in center ch of next ch-5 lp", "sc@center ch of <next sp5 lp>"),
    ("sc in 3rd ch of next ch-5 lp", "sc@nth3 ch of <next sp5 lp>"),
    ("sl st in 3rd ch of beg ch-4, ch 1", "sl st@nth3 ch of <beg ch4>; ch1"),
    ("dc in top of beg ch-3", "dc@top ch of <beg ch3>"),
    ("dc in top of tch", "dc@top st of <current tch>"),
    ("dc in tch", "dc@current tch"),
    ("dc in turning chain", "dc@current tch"),
    ("hdc in top of 3 missed ch", "hdc@top missed3"),
    ("sc in center dc of next petal", "sc@center dc of <next group>"),
    ("sc in 2nd dc of next 3-dc group", "sc@nth2 dc of <next group>"),
    ("dc in ch-2 sp of next shell", "dc@current sp2 of <next group>"),
    ("sc in center of next shell", "sc@center st of <next group>"),
    ("sc between next 2 dc", "sc@between next 2 gap of dc"),
    ("3 dc between next two groups", "3 dc@between next 2 gap of group"),
    ("3 dc in sp between next two groups", "3 dc@between next 2 gap of group"),
    ("FPdc around next dc", "FPdc@around next dc"),
    ("FPdc around post of next dc", "FPdc@around next dc"),
    ("front post double crochet around next dc", "FPdc@around next dc"),
    ("BPdc around next st 2 rnds below", "BPdc@around next st below2"),
    ("FPtr around next sc of Rnd 2", "FPtr@around next sc R2"),
    ("sc in st 2 rnds below", "sc@next st below2"),
    ("dc in next st one row below", "dc@next st below1"),
    ("sc in next unused front lp of Rnd 3", "sc@next unused loop front R3"),
    ("sc in unused front lps of Rnd 3", "sc@each unused loop front R3"),
    ("sc in other side of foundation ch", "sc@each foundation"),
    ("sc in each ch on other side of foundation ch", "sc@each foundation"),
    ("sc in row ends", "sc@each row end"),
    ("sc in each row end", "sc@each row end"),
    ("sc evenly along side", "sc@evenly side"),
    ("20 sc evenly along side", "20 sc@evenly side"),
    ("sc in BLO", "sc@next st back"),
    ("sc BLO", "sc@next st back"),
    ("5 sc in BLO", "sc@next 5* st back"),
    ("BLO sc in next st", "sc@next st back"),
    ("sc in BLO of each st around", "sc@each st back~around"),
    ("sc BLO in each st around", "sc@each st back~around"),
    ("sc in each st around in back loops only", "sc@each st back~around"),
    ("hdc in flo of next st", "hdc@next st front"),
    ("sc through back loop of next st", "sc@next st back"),
    ("Working in back loops only, sc in next st, dc in next 2 sts", "'Working in back loops only'; sc@next st back; dc@next 2* st back"),
]

MOVES = [
    ("sk next st", "sk next st"),
    ("sk 2 sts", "sk next 2* st"),
    ("sk 2", "sk next 2* st"),
    ("skip the next 2 stitches", "sk next 2* st"),
    ("sk ch-1 sp", "sk next sp1"),
    ("sk first st", "sk first st"),
    ("sk next dc and next ch-1 sp", "sk next dc; sk next sp1"),
    ("turn", "TURN"),
    ("ch 1, turn", "ch1; TURN"),
    ("turn work", "TURN"),
]


@pytest.mark.parametrize(("written", "meant"), STITCHES)
def test_stitches_with_their_counts_are_read_however_they_are_written(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), PLACES)
def test_a_place_is_read_however_it_is_written(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), MOVES)
def test_what_is_passed_is_read_as_passed(written: str, meant: str) -> None:
    assert short(written) == meant
