"""Beginnings, joins and yarn."""

from __future__ import annotations

import pytest
from notation_shorthand import short

BEGINNINGS = [
    ("ch 3", "ch3"),
    ("ch-3", "ch3"),
    ("ch3", "ch3"),
    ("3 ch", "ch3"),
    ("chain 3", "ch3"),
    ("ch 3 (counts as dc)", "ch3{=dc}"),
    ("ch 3 (counts as first dc)", "ch3{=dc}"),
    ("ch 3 (counts as 1 dc here and throughout)", "ch3{=dc throughout}"),
    ("ch 3, counts as dc", "ch3{=dc}"),
    ("ch 3 (counts as a st)", "ch3{=dc}"),
    ("ch 4 (counts as dc and ch 1)", "ch4{=dc+ch1}"),
    ("ch 4 (counts as dc, ch 1)", "ch4{=dc+ch1}"),
    ("ch 5 (counts as 1 dc + ch-2)", "ch5{=dc+ch2}"),
    ("ch 5 (counts as first dc and ch-2 sp)", "ch5{=dc+ch2}"),
    ("ch 1 (does not count as a st)", "ch1{=nothing}"),
    ("ch 1 (doesn't count as st here and throughout)", "ch1{=nothing throughout}"),
    ("ch 2 (not counted as a st)", "ch2{=nothing}"),
]

JOINS = [
    ("Ring: Ch 4; join with sl st in first ch to form a ring.", "ch4; RING sl st@first ch"),
    ("Ring: Ch 4, sl st in first ch to form ring.", "ch4; RING sl st@first ch"),
    ("Ring: Ch 6; join.", "ch6; RING usual"),
    ("Ring: Ch 5, join into a ring with sl st.", "ch5; RING sl st"),
    ("Ring: Make a magic ring.", "MR"),
    ("Rnd 1: 6 sc in magic ring", "MR; 6 sc@current ring"),
    ("Rnd 1: Magic ring, ch 1, 6 sc", "MR; ch1; 6 sc@current ring"),
    ("Rnd 1: Ch 4, sl st in first ch, ch 3, 11 dc in ring", "ch4; RING sl st@first ch; ch3; 11 dc@current ring"),
    ("6 sc in next st; join with sl st in top of beg ch-3", "6 sc@next st; JOIN sl st@top ch of <beg ch3>"),
    ("6 sc in next st; join with sl st to top of beg ch-3", "6 sc@next st; JOIN sl st@top ch of <beg ch3>"),
    ("6 sc in next st; sl st in top of beg ch-3 to join", "6 sc@next st; JOIN sl st@top ch of <beg ch3>"),
    ("6 sc in next st; sl st to first st", "6 sc@next st; JOIN sl st@first st"),
    ("6 sc in next st; sl st in first sc, turn", "6 sc@next st; JOIN sl st@first sc; TURN"),
    ("6 sc in next st; join to first sc with sl st", "6 sc@next st; JOIN sl st@first sc"),
    ("6 sc in next st; join with a slip stitch to the first sc", "6 sc@next st; JOIN sl st@first sc"),
    ("6 sc in next st; join", "6 sc@next st; JOIN usual"),
    ("6 sc in next st; join, ch 1, turn", "6 sc@next st; JOIN usual; ch1; TURN"),
    ("6 sc in next st; join round with sl st in first sc", "6 sc@next st; JOIN sl st@first sc"),
    ("6 sc in next st; join with ch 1, hdc in first sc (counts as ch-3 sp)", "6 sc@next st; JOIN work(ch1, hdc@first sc{=sp3})"),
    ("6 sc in next st; ch 1, join with hdc in first sc (counts as ch-3 sp)", "6 sc@next st; JOIN work(ch1, hdc@first sc{=sp3})"),
    (
        "*ch 5, sc in next sp; rep from * around, ending with ch 2, dc in first sc",
        "[ch5, sc@next sp]~around; JOIN work(ch2, dc@first sc{=sp5})",
    ),
    ("6 sc in next st; invisible join", "6 sc@next st; JOIN invisible"),
    ("6 sc in next st; invisible join in first st", "6 sc@next st; JOIN invisible@first st"),
    ("6 sc in next st; do not join", "6 sc@next st; JOIN none"),
    ("6 sc in next st; don't join", "6 sc@next st; JOIN none"),
    ("6 sc in next st; join with sl st in 3rd ch of beg ch-4", "6 sc@next st; JOIN sl st@nth3 ch of <beg ch4>"),
    ("6 sc in next st; sl st in 3rd ch of ch-4", "6 sc@next st; JOIN sl st@nth3 ch of <beg ch4>"),
]

YARN = [
    ("With B, join with sl st in any ch-3 sp, ch 3", "with B; ATTACH sl st@any sp3; ch3"),
    ("Join B with sl st in any corner sp, ch 3", "with B; ATTACH sl st@any corner sp; ch3"),
    ("Join B in any ch-2 sp, ch 3", "with B; ATTACH usual@any sp2; ch3"),
    ("Attach B in any ch-2 sp, ch 3", "with B; ATTACH usual@any sp2; ch3"),
    ("Join yarn with sl st in any st, ch 3", "ATTACH sl st@any st; ch3"),
    ("With B, standing dc in any st", "with B; ATTACH standing; standing dc@any st"),
    ("Join B with a standing dc in any corner sp", "with B; ATTACH standing; standing dc@any corner sp"),
    ("Join B with sc in any st", "with B; ATTACH sc@any st"),
    (
        "6 sc in next st; join; fasten off. Join B with sl st in same sp, ch 1",
        "6 sc@next st; JOIN usual; FO; with B; ATTACH sl st@same sp; ch1",
    ),
    ("With A, ch 3", "with A; ch3"),
    ("Using B, sc in next st", "with B; sc@next st"),
    ("sc in next st, change to B", "sc@next st; change B"),
    ("sc in next st, changing to B in last yo", "sc@next st; change B in yo"),
    ("sc in next st changing to B in last yo of last sc", "sc@next st; change B in yo"),
    ("6 sc in next st; join; change to the other yarn; turn", "6 sc@next st; JOIN usual; change other; TURN"),
    ("sc in next st, change yarn", "sc@next st; change other"),
    ("drop A, pick up B", "drop A; pick up B"),
    ("carry A along", "carry A"),
    ("fasten off", "FO"),
    ("Fasten off A.", "FO A"),
    ("Fasten off both yarns.", "FO all"),
    ("Break A.", "FO A"),
    ("Fasten off, leaving a long tail for sewing.", "FO; 'leaving a long tail for sewing'"),
]

REMARKS = [
    ("pm in first st, sm", "MARK place@first st; MARK slip"),
    ("place marker", "MARK place"),
    ("{The petals will curl: that is right.} sc in next st", "{The petals will curl: that is right.}; sc@next st"),
    ("working behind petals, sc in next st", "'working behind petals' behind petals; sc@next st"),
    ("sc in next 3 sts; leave remaining sts unworked", "sc@next 3* st; 'leave remaining sts unworked' LEAVE"),
    ("Weave in ends.", "'Weave in ends'"),
    ("sl st in next ch-2 sp, ch 3", "sl st@next sp2; ch3"),
    ("sl st to next ch-2 sp, ch 3", "sl st@next sp2; ch3"),
    ("sl st in next 2 dc and in next ch-2 sp, ch 3", "sl st@next 2* dc; sl st@next sp2; ch3"),
    ("(ch 3, 2 dc, ch 2, 3 dc) in same sp", "(ch3, 2 dc, ch2, 3 dc)@same sp"),
    ("sl st in next sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp", "sl st@next sp; ch3; (2 dc, ch2, 3 dc)@same sp"),
    ("ch 1, sl st in corresponding ch-3 sp of previous motif, ch 1", "ch1; sl st@corresponding sp3 'of previous motif'; ch1"),
    ("ch 3, sl st in 3rd ch from hook", "ch3; sl st@nth3 ch from hook"),
    ("ch 3, sl st in last sc made", "ch3; sl st@made sc 'made'"),
    ("sk next st, dc in next st, dc in skipped st", "sk next st; dc@next st; dc@same missed"),
    ("sc in same st as joining", "sc@same st 'as joining'"),
    ("in next ch-2 sp work (3 dc, ch 2, 3 dc)", "(3 dc, ch2, 3 dc)@next sp2"),
    ("sc in each st around, working 3 sc in each corner sp", "[sc@each st~to next corner sp, **, 3 sc@next corner sp]~around"),
]

AGAIN = [
    ("Rnd 5: Rep Rnd 3.", "AGAIN (3,)"),
    ("Rnds 5-8: Rep Rnds 3 and 4 twice.", "AGAIN (3, 4) x2"),
    ("Row 2: Rep Rows 2-3 until piece measures 20 cm, ending with a WS row.", "AGAIN (2, 3) until 20.0cm WS"),
    ("Row 2: Rep Row 1 until piece measures 8 1/2 in.", "AGAIN (1,) until 21.59cm"),
    ("Rnd 5: As Rnd 3.", "AGAIN (3,)"),
    ("Rnd 5: Work as for Rnd 3.", "AGAIN (3,)"),
]


@pytest.mark.parametrize(("written", "meant"), BEGINNINGS)
def test_a_beginning_chain_says_what_it_counts_as(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), JOINS)
def test_a_join_is_read_in_any_order(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), YARN)
def test_yarn_is_attached_changed_and_left(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), REMARKS)
def test_what_is_said_by_the_way_is_kept(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), AGAIN)
def test_rounds_are_repeated_as_a_whole(written: str, meant: str) -> None:
    assert short(written) == meant


def test_a_measure_for_each_size_goes_through_the_gauge() -> None:
    assert short("Row 2: Rep Row 1 until piece measures 15 (16, 17) cm.", sizes=3) == "AGAIN (1,) until (15.0, 16.0, 17.0)cm"


def test_the_last_rounds_are_counted_back_from_the_line() -> None:
    assert short("Rnd 1: 6 sc in ring\nRnd 2: inc around\nRnds 3-6: Rep last 2 rnds twice.").endswith("AGAIN (1, 2) x2")


def test_a_repeat_of_rows_behind_the_work_of_one_is_a_line_of_its_own() -> None:
    text = "Row 2: Ch 1, sc in each st across; turn. Rep Row 2 until piece measures 20 cm, ending with a WS row.\nNext row: Sc across."
    assert short(text, rows=True) == "ch1; sc@each st~across; TURN | AGAIN (2,) until 20.0cm WS | sc@each st~across"
