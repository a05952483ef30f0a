"""Every stitch has a name in each set of terms, and the name leads back to the stitch."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from motifold.symbols.stitches import MAX_YARN_OVERS, height_of, kind, stitch_name
from motifold.symbols.terms import Terms, abbreviation, canonical, craft_keys, craft_word, full_name, meaning, word, word_keys
from motifold.symbols.terms_english import SHARED_NAMES

TERMS = st.sampled_from(["US", "UK"])
BASIC = st.one_of(st.integers(0, MAX_YARN_OVERS).map(stitch_name), st.just("hdc"), st.just("sl st"))
VARIANT = st.tuples(st.sampled_from(["", "e", "l", "f"]), st.integers(1, 9).map(stitch_name)).map("".join)
ANY = st.one_of(
    BASIC,
    VARIANT,
    st.tuples(st.sampled_from(["FP", "BP"]), st.integers(0, 9).map(stitch_name)).map("".join),
    st.tuples(st.integers(0, 9).map(stitch_name), st.integers(2, 12)).map(lambda pair: f"{pair[0]}{pair[1]}tog"),
    st.tuples(st.integers(2, 12), st.integers(1, 9).map(stitch_name), st.sampled_from(["cl", "bobble", "pc", "puff", "shell"])).map(
        lambda parts: f"{parts[0]}-{parts[1]} {parts[2]}"
    ),
    st.sampled_from(["picot", "ch-4 picot", "cl", "beg cl", "bobble", "pc", "puff", "shell", "V-st", "inv dec", "rev sc", "crossed dc"]),
)


@given(name=ANY, terms=TERMS, plural=st.booleans())
def test_every_name_written_in_a_set_of_terms_is_read_back_as_the_same_stitch(name: str, terms: Terms, plural: bool) -> None:
    assert canonical(abbreviation(name, terms, plural), terms) == name
    assert canonical(full_name(name, terms, plural), terms) == name


@given(yarn_overs=st.integers(2, MAX_YARN_OVERS - 1))
def test_a_uk_fold_has_one_yarn_over_fewer_than_the_us_fold_of_the_same_number(yarn_overs: int) -> None:
    us = full_name(stitch_name(yarn_overs + 1), "US").removesuffix(" crochet")
    assert us == full_name(stitch_name(yarn_overs), "UK")


@given(words=st.text(max_size=40), terms=TERMS)
def test_any_words_at_all_are_read_or_refused(words: str, terms: Terms) -> None:
    found = canonical(words, terms)
    assert found is None or kind(found).height >= 0


@pytest.mark.parametrize(
    ("words", "terms", "expected"),
    [
        ("sl st", "US", "sl st"), ("slip stitches", "UK", "sl st"), ("ss", "UK", "sl st"), ("ch", "UK", "ch"), ("chains", "US", "ch"),
        ("trc", "US", "tr"), ("triple crochet", "US", "tr"), ("double treble", "UK", "tr"), ("ttr", "UK", "dtr"), ("tr tr", "US", "trtr"),
        ("quad tr", "US", "quadtr"), ("qtr", "UK", "trtr"), ("quintr", "UK", "quadtr"), ("half trebles", "UK", "hdc"),
        ("fp dc", "US", "FPdc"), ("front post treble", "UK", "FPdc"), ("rtrf", "UK", "FPdc"), ("dc 3 tog", "US", "dc3tog"),
        ("2 tr tog", "UK", "dc2tog"), ("double crochet 3 together", "US", "dc3tog"), ("invisible decrease", "US", "inv dec"),
        ("extended double crochet", "US", "edc"), ("foundation single crochet", "US", "fsc"), ("linked treble", "UK", "ldc"),
        ("popcorns", "US", "pc"), ("puff sts", "US", "puff"), ("v-stitch", "UK", "V-st"), ("5-tr cluster", "UK", "5-dc cl"),
        ("ch-5 picot", "US", "ch-5 picot"), ("crab stitch", "US", "rev sc"), ("beginning cluster", "US", "beg cl"),
    ],
)  # fmt: skip
def test_spellings_that_designers_use(words: str, terms: Terms, expected: str) -> None:
    assert canonical(words, terms) == expected


@pytest.mark.parametrize(("words", "terms"), [("sc", "UK"), ("htr", "US"), ("st", "US"), ("inc", "UK"), ("dec", "US"), ("", "US")])
def test_words_that_are_no_stitch_in_these_terms(words: str, terms: Terms) -> None:
    assert canonical(words, terms) is None


def test_heights_follow_one_rule() -> None:
    assert [height_of(n) for n in range(5)] == [1.0, 2.2, 3.0, 3.8, 4.6]
    assert kind("hdc").height == 1.5
    assert kind("edc").height > kind("dc").height
    assert kind("trtr").yarn_overs == 4


def test_a_kind_says_how_it_is_made() -> None:
    assert (kind("dc3tog").legs, kind("dc3tog").stem, kind("dc3tog").gather) == (3, "dc", "together")
    assert (kind("5-tr pc").legs, kind("5-tr pc").stem, kind("5-tr pc").gather) == (5, "tr", "popcorn")
    assert kind("FPtr").post == "front"
    assert kind("BPhdc").post == "back"
    assert kind("inv dec").invisible
    assert kind("fsc").family == "foundation"
    assert kind("ldc").family == "linked"
    assert kind("V-st").chains == 1


@pytest.mark.parametrize("name", ["petal", "", "dc1tog", "dc999tog", "lsc", "FPch", "99-fold tr", "dc tog", "Dc"])
def test_what_is_no_stitch_of_the_trade_is_refused(name: str) -> None:
    with pytest.raises(KeyError):
        kind(name)


def test_craft_words_differ_by_terms() -> None:
    assert (word("gauge", "US"), word("gauge", "UK")) == ("gauge", "tension")
    assert (word("sk", "US"), word("sk", "UK")) == ("sk", "miss")
    assert (word("yo", "US"), word("yo", "UK")) == ("yo", "yrh")
    assert (word("center", "UK"), word("color", "UK")) == ("centre", "colour")
    assert meaning("rnd", "US") == "round"
    with pytest.raises(KeyError):
        word("frog", "US")


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_a_table_of_terms_lacks_nothing_that_another_has(terms: Terms) -> None:
    """So that no sentence falls back on another language: every stitch, every craft word, short and in full, singular and plural."""
    assert set(word_keys(terms)) == set(word_keys("US"))
    assert all(word(key, terms).strip() for key in word_keys(terms))
    assert set(craft_keys(terms)) == set(craft_keys("US"))
    assert all(craft_word(key, terms, plain).strip() for key in craft_keys(terms) for plain in (False, True))
    for name in (*SHARED_NAMES, "sl st", "hdc", *(stitch_name(yarn_overs) for yarn_overs in range(MAX_YARN_OVERS + 1))):
        for written in (abbreviation, full_name):
            assert all(written(name, terms, plural).strip() for plural in (False, True))
    with pytest.raises(KeyError):
        word("nothing of the craft", terms)
    with pytest.raises(KeyError):
        craft_word("nothing of the craft", terms)


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_every_short_craft_word_is_explained_by_its_own_table(terms: Terms) -> None:
    shortened = [key for key in craft_keys(terms) if craft_word(key, terms) != craft_word(key, terms, plain=True)]
    assert shortened
    for key in shortened:
        plain = craft_word(key, terms, plain=True)
        told = meaning(key, terms) or meaning(key.removesuffix("s"), terms)
        assert told in (plain, plain.removesuffix("s"), plain.removesuffix("es"))
