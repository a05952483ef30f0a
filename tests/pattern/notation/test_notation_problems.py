"""What cannot be read is one problem, at the word, with what would mend it; reading goes on behind it."""

from __future__ import annotations

import pytest
from notation_shorthand import line_short, only_problem, problems, read

ONE_MISTAKE = [
    ("Rnd 1: 12 dcc in ring; join", "word", "dcc"),
    ("Rnd 1: dc in nxt stich, ch 1", "word", "stich"),
    ("Rnd 1: dc in , ch 1", "word", ","),
    ("Rnd 1: frogs in next st, ch 1", "word", "frogs"),
    ("Rnd 1: 3 in next st", "word", "in"),
    ("Rnd 1: dc in next st 3", "word", "3"),
    ("Rnd 1: @ dc in next st", "word", "@"),
    ("Rnd 1: dc in next st, again", "word", "again"),
    ("Rnd 1: [dc in next st, ch 1 3 times; join", "bracket", "["),
    ("Rnd 1: dc in next st, ch 1] 3 times; join", "bracket", "]"),
    ("Rnd 1: [dc in next st, ch 1) 3 times; join", "bracket", ")"),
    ("Rnd 1: [dc in next st, ch 1]; join", "bracket", "["),
    ("Rnd 1: (3 dc, ch 2, 3 dc), ch 1; join", "bracket", "("),
    ("Rnd 1: {dc, ch 1} 3 times", "bracket", "{dc, ch 1}"),
    ("Rnd 1: {dc in next st", "bracket", "{"),
    ("Rnd 1: dc in next st 3, ch 1", "word", "3"),
    ("Rnd 1: *dc in next st, ch 1; join", "star", "*"),
    ("Rnd 1: dc in next st; rep from * around; join", "star", "rep"),
    ("Rnd 1: dc in next st, ch 1**, dc; join", "star", "**"),
    ("Rnd 1: *dc in next st, ch 1; rep from * around, ending last rep at **; join", "star", "**"),
    ("Rnd 1: *dc in next st**, ch 1; rep from * around; join", "star", "**"),
    ("Rnd 1: dc 3 (2, 1); join", "sizes", "3 (2, 1)"),
    ("Rnd 1: dc 999999 in ring", "number", "999999"),
    ("Rnd 1: ch 0", "number", "0"),
    ("Rnd 1: dc99tog", "number", "tog"),
    ("Rnd 1: change to C; turn", "yarn", "C"),
    ("Rnd 1: with Q, ch 3", "yarn", "Q"),
    ("Rnd 1: surface sl st around, ch 1", "not-worked", "surface sl st"),
    ("Rnd 1: sc in each st, cont in pat", "not-worked", "cont"),
    ("Rnd 1: spike st in next st", "not-worked", "spike st"),
    ("Rnd 1: skp, sc in next st", "not-worked", "skp"),
    ("Rnd 1: petal in next ch-2 sp, ch 1", "word", "petal"),
    ("Rnd 1: [fan in next st, ch 1] 3 times", "word", "fan"),
    ("Rnd 1: 3 leaves in ring, ch 1", "word", "leaves"),
    ("Rnd 1: ch 1, sc in next st, ch 2; repeat around; join", "star", "repeat"),
    ("Rnd 1: dc in next st. (36 dc, 8 ch-1 spces)", "word", "spces"),
    ("Rnds 6, 4 and 2: dc in each st around", "round", "Rnds 6, 4 and 2:"),
    ("Rnds 6-4: dc in each st around", "round", "Rnds 6-4:"),
    ("Rnd 2: Rep Rnds 3-1", "round", "1"),
    ("Rnd 1: Rep last 4 rnds", "round", "rnds"),
    ("Row 2: Rep Row 1 until piece measures a hand", "measure", "hand"),
]


@pytest.mark.parametrize(("text", "code", "words"), ONE_MISTAKE, ids=[row[0][:45] for row in ONE_MISTAKE])
def test_one_mistake_is_one_problem_at_its_words(text: str, code: str, words: str) -> None:
    found = problems(text)
    if (code == "round" and "last 4" in text) or code == "measure":
        assert [problem[0] for problem in found] == [code]
    else:
        assert found == [(code, words)]


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("Rnd 1: 12 dcc in ring", 'did you mean "dc"?'),
        ("Rnd 1: dc in next stich", 'did you mean "stitch"?'),
        ("Rnd 1: bobbel in next st", 'did you mean "bobble"?'),
        ("Rnd 1: 3 dc in next conrer", 'did you mean "corner"?'),
        ("Rnd 1: dc in ring. (12 spces)", 'did you mean "spaces"?'),
        ("Rnd 1: trebel in next st", 'did you mean "treble"?'),
    ],
)
def test_the_nearest_word_is_suggested(text: str, hint: str) -> None:
    assert problems(text)
    assert hint in {problem.hint for problem in read(text)[1]}


def test_a_suggestion_is_in_the_files_own_terms() -> None:
    assert only_problem("Rnd 1: htrr in next st", "UK").hint == 'did you mean "htr"?'


def test_reading_goes_on_behind_a_mistake() -> None:
    lines, found = read("Rnd 1: frogs in next st, ch 1, 2 dc in next st; leap; join. (24 dc)")
    assert len(found) == 2
    assert line_short(lines[0]) == "ch1; 2 dc@next st; JOIN usual"
    assert len(lines[0].counts) == 1


def test_a_mistake_in_brackets_does_not_lose_the_repeat() -> None:
    lines, found = read("Rnd 1: [dc in next st, frogs, ch 1] 3 times, [ch 1, leap in next st] around")
    assert [problem.code for problem in found] == ["word", "word"]
    assert line_short(lines[0]) == "[dc@next st, ch1]x3; [ch1]~around"


def test_all_mistakes_are_told_in_the_order_of_the_text() -> None:
    found = problems("Rnd 1: frogs, ch 1\nRnd 2: *dc; join\nRnd 3: change to Q")
    assert [code for code, _ in found] == ["word", "star", "yarn"]


@pytest.mark.parametrize(("text", "expected", "given"), [("ch 80 (90)", "3", "2"), ("[dc in next st] 5 (6, 7, 8) times", "3", "4")])
def test_a_wrong_number_of_sizes_says_how_many_were_expected(text: str, expected: str, given: str) -> None:
    problem = only_problem(f"Rnd 1: {text}", sizes=3)
    assert problem.code == "sizes"
    assert problem.message == f"{expected} numbers were expected, one for each size, and here are {given}"


def test_a_file_without_sizes_expects_one_number() -> None:
    assert "the file has no sizes" in only_problem("Rnd 1: dc 3 (2, 1)").message


def test_a_us_stitch_in_a_uk_file_is_told_once_and_read() -> None:
    lines, found = read("Rnd 1: sc in next st, hdc in next st, dc in next st, sc in next st", "UK")
    assert [(problem.code, problem.severity) for problem in found] == [("terms", "error")]
    assert found[0].span is not None and found[0].span.column == 8
    assert line_short(lines[0]) == "sc@next st; hdc@next st; sc@next st; sc@next st"


def test_a_uk_stitch_in_a_us_file_is_told_once_and_read() -> None:
    lines, found = read("Rnd 1: htr in next st, half treble in next st, dc in next st")
    assert [problem.code for problem in found] == ["terms"]
    assert line_short(lines[0]) == "hdc@next st; hdc@next st; dc@next st"


@pytest.mark.parametrize(
    ("text", "terms", "word"),
    [("miss next st, dc in next st", "US", "miss"), ("skip next st, dc in next st", "UK", "skip"), ("sk 2", "UK", "sk")],
)
def test_a_word_of_the_other_terms_that_changes_no_stitch_is_a_warning(text: str, terms: str, word: str) -> None:
    found = read(f"Rnd 1: {text}", "UK" if terms == "UK" else "US")[1]
    assert [(problem.code, problem.severity) for problem in found] == [("terms", "warning")]
    assert f'"{word}"' in found[0].message


def test_slip_stitches_and_centres_are_at_home_in_both_terms() -> None:
    assert problems("Rnd 1: ss in next st, sl st in centre ch of next ch-5 sp", "US") == []
    assert problems("Rnd 1: ss in next st, sl st in center ch of next ch-5 sp", "UK") == []


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("3 sc in next 3 sts", '"sc in next 3 sts"'),
        ("2 sc in next 2 sts", '"2 sc in each of next 2 sts"'),
        ("3 dc in last 3 sts", '"dc in last 3 sts"'),
    ],
)
def test_what_can_be_read_in_two_ways_is_said_with_the_reading_taken(text: str, taken: str) -> None:
    problem = only_problem(f"Rnd 1: {text}")
    assert (problem.code, problem.severity) == ("ambiguous", "warning")
    assert taken in problem.message


def test_each_and_over_leave_no_doubt() -> None:
    assert problems("Rnd 1: 3 sc in each of next 3 sts, 5 sc over next 5 sts, 2 sc in next st") == []


def test_a_group_without_brackets_in_another_place_than_the_same_is_doubtful() -> None:
    assert only_problem("Rnd 1: 2 dc, ch 2, 2 dc in next corner sp").code == "ambiguous"


def test_a_group_without_brackets_in_the_same_place_is_a_group() -> None:
    lines, found = read("Rnd 2: Sl st in next ch-2 sp, ch 3; dc, ch 2, 2 dc in same sp")
    assert found == ()
    assert line_short(lines[0]) == "sl st@next sp2; ch3; (dc, ch2, 2 dc)@same sp"


def test_a_stitch_that_the_file_does_not_explain_is_named_with_what_would_explain_it() -> None:
    problem = only_problem("Rnd 1: 3 leaves in ring")
    assert '"leaves"' in problem.message
    assert problem.hint is not None and "[stitch.leaf]" in problem.hint


def test_a_petal_as_a_place_is_a_group_of_stitches() -> None:
    assert problems("Rnd 2: sc in center dc of next petal, sc in next petal. (8 petals)") == []


@pytest.mark.parametrize("text", ["[2 dc, ch 2, 2 dc in next ch-3 sp] around", "*2 dc, ch 2, 2 dc in next ch-3 sp; rep from * around"])
def test_what_is_repeated_whole_into_a_space_goes_there_though_it_is_doubtful(text: str) -> None:
    lines, found = read(f"Rnd 2: {text}")
    assert [problem.code for problem in found] == ["ambiguous"]
    assert line_short(lines[0]) == "[(2 dc, ch2, 2 dc)@next sp3]~around"


def test_what_counts_as_a_cluster_is_worked_by_that_name() -> None:
    lines, _ = read("Rnd 1: Ch 3, dc2tog in ring (counts as first cl), [ch 3, dc3tog in ring] 5 times, ch 3; join. (6 cl)")
    assert lines[0].counts[0].target.kind == "stitch"
