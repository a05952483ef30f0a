"""The names of stitches, in both terms, with the numbers in them."""

from __future__ import annotations

import pytest
from notation_shorthand import short

US_NAMES = [
    ("inc 6 times", "6 sc inc2"),
    ("inc x 6", "6 sc inc2"),
    ("inc in each st around", "sc inc2@each st~around"),
    ("dec 3 times", "3 sc2tog"),
    ("sc2tog 3 times", "3 sc2tog"),
    ("hdc in next st, inc, dec", "hdc@next st; hdc inc2; hdc2tog"),
    ("sc inc", "sc inc2"),
    ("hdc inc in next st", "hdc inc2@next st"),
    ("inv dec", "inv sc2tog"),
    ("sc2tog over next 2 sts", "sc2tog@over next 2 st"),
    ("dc3tog", "dc3tog"),
    ("tr3tog over next 3 sts", "tr3tog@over next 3 st"),
    ("dc 3 together", "dc3tog"),
    ("work 3 dc together", "dc3tog"),
    ("dc2tog over same st and next st", "dc2tog@over same st then <next st>"),
    ("5-dc cl in next sp", "5-dc cl@next sp"),
    ("3 tr cluster in next sp", "3-tr cl@next sp"),
    ("beg cl in same sp", "beg cl@same sp"),
    ("4-dc popcorn in next st", "4-dc pc@next st"),
    ("ch-3 picot", "3-picot"),
    ("ch 3 picot", "3-picot"),
    ("picot", "picot"),
    ("puff st in next st", "puff@next st"),
    ("bobble in next st", "bobble@next st"),
    ("V-st in next V-st", "V-st@next V-st"),
    ("fsc 20", "20 fsc"),
    ("20 foundation single crochet", "20 fsc"),
    ("edc in next st, extended sc in next st", "edc@next st; esc@next st"),
    ("linked tr in next st", "ltr@next st"),
    ("standing dc in any st", "ATTACH standing; standing dc@any st"),
    ("dtr in next st, trtr in next st", "dtr@next st; trtr@next st"),
    ("rev sc in each st around", "rev sc@each st~around"),
]

UK_NAMES = [
    ("dc in next st", "sc@next st"),
    (
        "htr in next st, tr in next st, dtr in next st, trtr in next st, qtr in next st",
        "hdc@next st; dc@next st; tr@next st; dtr@next st; trtr@next st",
    ),
    ("3ch (counts as 1tr), 2tr in next 2ch-sp", "ch3{=dc}; 2 dc@next sp2"),
    ("miss next st, ss in next st", "sk next st; sl st@next st"),
    ("tr2tog, dc2tog, rtrf around next tr", "dc2tog; sc2tog; FPdc@around next dc"),
    ("half treble in next st, double treble in next st", "hdc@next st; tr@next st"),
    ("double crochet in centre tr of next shell", "sc@center dc of <next group>"),
]

OWN_NAMES = [
    ("5-dc shell in next st", "shell@next st"),
    ("petal in next st, 2 petals", "petal@next st; 2 petal"),
    ("beg petal in same st", "beg petal@same st"),
]


@pytest.mark.parametrize(("written", "meant"), US_NAMES)
def test_us_names_are_read(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), UK_NAMES)
def test_uk_names_mean_the_us_stitch_one_step_up(written: str, meant: str) -> None:
    assert short(written, "UK") == meant


@pytest.mark.parametrize(("written", "meant"), OWN_NAMES)
def test_the_files_own_stitches_are_read_by_name(written: str, meant: str) -> None:
    assert short(written, defined=("petal", "shell")) == meant
