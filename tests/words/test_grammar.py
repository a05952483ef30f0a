"""Grammar and typography, as a careful technical editor would have them."""

from __future__ import annotations

import pytest

from motifold.render.pattern.instructions import Amount, Extent, Place, Target
from motifold.render.pattern.problem import NOWHERE
from motifold.render.words.howto import how_to_make
from motifold.render.words.places import ordinal, place_text, target_text
from motifold.render.words.translate import translated
from motifold.render.words.voice import Voice, capitalised, handed, with_article
from motifold.symbols.terms import plural_of

US, UK = Voice("US"), Voice("UK")


@pytest.mark.parametrize(
    ("noun", "text"),
    [("sc", "an sc"), ("dc", "a dc"), ("hdc", "an hdc"), ("htr", "an htr"), ("tr", "a tr"), ("single crochet", "a single crochet"),
     ("extended treble", "an extended treble"), ("FPdc", "an FPdc"), ("petal", "a petal")],
)  # fmt: skip
def test_the_article_goes_by_the_sound(noun: str, text: str) -> None:
    assert with_article(noun) == text


@pytest.mark.parametrize(
    ("noun", "many"),
    [("petal", "petals"), ("bunch", "bunches"), ("leaf", "leaves"), ("berry", "berries"), ("box", "boxes"), ("spray", "sprays")],
)
def test_plurals_of_a_designers_own_stitches(noun: str, many: str) -> None:
    assert plural_of(noun) == many


def test_spaces_have_a_plural_and_stitches_have_none_in_short() -> None:
    space = Target("sp", chains=1)
    assert (target_text(US, space), target_text(US, space, True)) == ("ch-1 sp", "ch-1 sps")
    assert target_text(US, Target("stitch", name="dc"), True) == "dc"
    assert target_text(Voice("US", plain=True), Target("stitch", name="dc"), True) == "double crochets"


def test_numbers_stay_with_their_nouns() -> None:
    place = Place(NOWHERE, "next", Target("st"), Amount((2,)), each=True)
    assert place_text(US, place) == "in each of next 2\u00a0sts"
    assert place_text(Voice("UK", plain=True), place) == "in each of the next 2\u00a0stitches"


def test_several_sizes_stand_in_brackets_and_one_size_stands_alone() -> None:
    amount = Amount((5, 6, 7))
    assert US.number(amount) == "5\u00a0(6, 7)"
    assert Voice("US", size=1).number(amount) == "6"


def test_one_of_several_is_singular() -> None:
    to_last = Place(NOWHERE, "each", Target("st"), each=True, extent=Extent("last", count=Amount((1,)), target=Target("st")))
    assert place_text(US, to_last) == "in each st to last st"


@pytest.mark.parametrize(("number", "text"), [(1, "1st"), (2, "2nd"), (3, "3rd"), (4, "4th"), (11, "11th"), (12, "12th"), (21, "21st")])
def test_ordinals(number: int, text: str) -> None:
    assert ordinal(number) == text


@pytest.mark.parametrize(("text", "capital"), [("sl st in ring", "Sl st in ring"), ("*dc", "*Dc"), ("[(sc", "[(Sc"), ("2 dc", "2 dc")])
def test_lines_begin_with_a_capital(text: str, capital: str) -> None:
    assert capitalised(text) == capital


def test_left_and_right_change_places_but_sides_stay() -> None:
    assert handed("at right end of any side, right side facing") == "at left end of any side, right side facing"
    assert Voice("US", left_handed=True).said("Left to right.") == "Right to left."


@pytest.mark.parametrize(
    ("us", "uk"),
    [("work 3 dc in each", "work 3 tr in each"), ("The double crochets lean.", "The trebles lean."), ("skip none", "miss none"),
     ("Use the yarn double.", "Use the yarn double."), ("Sc loosely", "Dc loosely"), ("the hdc3tog row", "the htr3tog row")],
)  # fmt: skip
def test_stitches_in_sentences_change_terms(us: str, uk: str) -> None:
    assert translated(us, "US", "UK") == uk
    assert translated(uk, "UK", "US") == us


SPECIAL = ["dc3tog", "5-dc cl", "pc", "puff", "FPtr", "BPsc", "edc", "ldc", "fsc", "V-st", "shell", "ch-3 picot", "inv dec", "rev sc"]


@pytest.mark.parametrize("name", SPECIAL)
@pytest.mark.parametrize("voice", [US, UK, Voice("UK", plain=True)])
def test_what_needs_telling_is_told_in_one_sentence(name: str, voice: Voice) -> None:
    text = how_to_make(voice, name)
    assert text is not None
    assert text.endswith(".")
    assert ".." not in text
    assert ("yo " in text) <= (voice.terms == "US")


def test_basic_stitches_need_no_telling() -> None:
    assert [how_to_make(US, name) for name in ("ch", "sl st", "sc", "hdc", "dc", "tr", "dtr", "petal")] == [None] * 8
