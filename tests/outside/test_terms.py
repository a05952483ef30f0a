"""US and UK names against published lists.

Pairs: the US/UK conversion tables printed by funcrochetdesigns.com, sugarplumcrochet, woollykits and gekophaken.nl (rows agree;
read second-hand). Abbreviations: as quoted from the Craft Yarn Council list by several pattern sites (second-hand); UK abbreviations as in
a UK craft publisher's list (CB960, page 9). Repeats: the "standards & symbols" of anniescatalog.com and crochet-world.com, with the Craft
Yarn Council's wording (second-hand): brackets hold what is worked as many times as told, parentheses what is worked in one place; what
stands after an asterisk is worked once and then again as often as told, so that "3 more times" is four in all; a double asterisk is where
the last repeat stops.
"""

from __future__ import annotations

import pytest

from motifold.render.pattern.instructions import Group, Repeat, Step, Work
from motifold.render.pattern.notation import NotationContext, parse_instructions
from motifold.render.pattern.problem import Span
from motifold.render.words.steps import steps_text
from motifold.render.words.voice import Voice
from motifold.symbols.terms import abbreviation, canonical, full_name, word

PAIRS = [
    ("ch", "chain", "ch", "chain"),
    ("sl st", "slip stitch", "ss", "slip stitch"),
    ("sc", "single crochet", "dc", "double crochet"),
    ("hdc", "half double crochet", "htr", "half treble"),
    ("dc", "double crochet", "tr", "treble"),
    ("tr", "treble crochet", "dtr", "double treble"),
    ("dtr", "double treble crochet", "trtr", "triple treble"),
    ("trtr", "triple treble crochet", "qtr", "quadruple treble"),
]


@pytest.mark.parametrize(("us", "us_full", "uk", "uk_full"), PAIRS)
def test_the_published_conversion_table(us: str, us_full: str, uk: str, uk_full: str) -> None:
    assert (abbreviation(us, "US"), full_name(us, "US")) == (us, us_full)
    assert (abbreviation(us, "UK"), full_name(us, "UK")) == (uk, uk_full)
    assert canonical(us_full, "US") == canonical(uk_full, "UK") == canonical(uk, "UK") == us


@pytest.mark.parametrize(
    ("short", "full"),
    [
        ("ch", "chain"), ("CL", "cluster"), ("dc", "double crochet"), ("dc2tog", "double crochet 2 together"), ("dtr", "double treble"),
        ("edc", "extended double crochet"), ("ehdc", "extended half double crochet"), ("esc", "extended single crochet"),
        ("etr", "extended treble crochet"), ("FPdc", "front post double crochet"), ("FPsc", "front post single crochet"),
        ("FPtr", "front post treble crochet"), ("BPdc", "back post double crochet"), ("BPsc", "back post single crochet"),
        ("BPhdc", "back post half double crochet"), ("BPdtr", "back post double treble crochet"), ("hdc", "half double crochet"),
        ("hdc2tog", "half double crochet 2 together"), ("pc", "popcorn"), ("puff", "puff stitch"), ("ps", "puff stitch"),
        ("bo", "bobble"), ("sc", "single crochet"), ("sc2tog", "single crochet 2 together"), ("sh", "shell"), ("sl st", "slip stitch"),
        ("tr", "treble crochet"), ("tr2tog", "treble crochet 2 together"), ("trtr", "triple treble crochet"),
    ],
)  # fmt: skip
def test_the_published_us_abbreviations_stand_for_what_they_are_said_to(short: str, full: str) -> None:
    assert canonical(short, "US") is not None
    assert canonical(short, "US") == canonical(full, "US")


@pytest.mark.parametrize("short", ["dc", "dc2tog", "dtr", "FPtr", "htr", "tr", "tr2tog", "PS"])
def test_the_published_uk_abbreviations_are_read(short: str) -> None:
    assert canonical(short, "UK") is not None


def test_the_marks_that_tell_the_terms_apart() -> None:
    """sc and hdc are US only; htr, miss and tension are UK only; "dc" is both."""
    assert canonical("sc", "UK") is None
    assert canonical("hdc", "UK") is None
    assert canonical("htr", "US") is None
    assert (word("gauge", "UK"), word("skip", "UK")) == ("tension", "miss")
    assert canonical("dc", "US") != canonical("dc", "UK")


class Loose(str):
    """A text that stands in no file."""

    @property
    def text(self) -> str:
        return str(self)

    def span(self, start: int, end: int) -> Span:
        return Span(1, start + 1, end - start)


def steps_of(text: str) -> tuple[Step, ...]:
    instructions, problems = parse_instructions(Loose(f"Rnd 4: {text}"), NotationContext("US", ("A",), {}))
    assert not problems
    return instructions.lines[0].steps


@pytest.mark.parametrize(
    ("written", "passes"),
    [("[sc in next st, ch 1] 4 times", 4), ("*sc in next st, ch 1; rep from * 3 more times", 4),
     ("*sc in next st, ch 1; rep from * 3 times", 4),
     ("*sc in next st, ch 1; rep from * once more", 2), ("*sc in next st, ch 1*; rep between * and * 3 more times", 4)],
)  # fmt: skip
def test_an_asterisks_words_are_worked_once_and_then_repeated(written: str, passes: int) -> None:
    (repeat,) = steps_of(written)
    assert isinstance(repeat, Repeat)
    assert repeat.times is not None
    assert repeat.times.values == (passes,)


def test_brackets_are_for_times_and_parentheses_for_a_place() -> None:
    repeat, group, work = steps_of("[2 dc in next st] twice, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next st")
    assert isinstance(repeat, Repeat)
    assert isinstance(group, Group)
    assert isinstance(work, Work)
    assert steps_text(Voice("UK"), (repeat, group)).replace("\u00a0", " ") == "[2 tr in next st] twice, (2 tr, ch 2, 2 tr) in next ch-2 sp"


def test_nested_repeats_take_other_brackets_and_an_asterisk_stays_outside() -> None:
    bracketed = "[sc in next st, (ch 1, sc in next st) 3 times, sk next st] 4 times"
    starred = "*[dc in next st, ch 1] twice**, tr in next st; rep from * around, ending last rep at **"
    for text in (bracketed, starred):
        assert steps_text(Voice("US"), steps_of(text)).replace("\u00a0", " ") == text
