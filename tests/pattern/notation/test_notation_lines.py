"""Lines: their labels, their counts, comments, words in braces, and what goes on from line to line."""

from __future__ import annotations

import pytest
from notation_shorthand import counts, label, label_short, line_short, problems, read, short

LABELS = [
    ("Rnd 1: sc", "rnd 1"),
    ("Rnd 1 (RS): sc", "rnd 1 RS"),
    ("Rnd 1 [WS]: sc", "rnd 1 WS"),
    ("Rnd 1, RS: sc", "rnd 1 RS"),
    ("Row 1 (right side): sc", "row 1 RS"),
    ("Row 1 (WS facing): sc", "row 1 WS"),
    ("Round 1 - sc in next st", "rnd 1"),
    ("Round 1 – sc in next st", "rnd 1"),
    ("Round 1—sc in next st", "rnd 1"),
    ("Rnd 1. Sc in next st", "rnd 1"),
    ("Rnd. 1: sc", "rnd 1"),
    ("RND 1: SC", "rnd 1"),
    ("R1: sc", "rnd 1"),
    ("Rnd 1 Sc in next st", "rnd 1"),
    ("Round one: sc", "rnd 1"),
    ("1st rnd: sc", "rnd 1"),
    ("2nd Row: sc", "row 2"),
    ("Rnds 4-6: sc", "rnd 4-6"),
    ("Rnds 4–6: sc", "rnd 4-6"),
    ("Rnds 4 - 6: sc", "rnd 4-6"),
    ("Rnds 4 to 6: sc", "rnd 4-6"),
    ("Rnds 4 through 6: sc", "rnd 4-6"),
    ("Rnds 4 and 5: sc", "rnd 4-5"),
    ("Rnds 4 & 5: sc", "rnd 4-5"),
    ("Rnds 4, 5 and 6: sc", "rnd 4-6"),
    ("Rnds 2, 4 and 6: sc", "rnd 2 | rnd 4 | rnd 6"),
    ("Rnds 2, 4, and 6-8 (RS): sc", "rnd 2 RS | rnd 4 RS | rnd 6-8 RS"),
    ("Rows 2 and 4: sc", "row 2 | row 4"),
    ("Rows 2 & 4: sc", "row 2 | row 4"),
    ("Rnd 4 and following: sc", "rnd 4+"),
    ("Rnd 4 and all following rnds: sc", "rnd 4+"),
    ("Rnd 4 onwards: sc", "rnd 4+"),
    ("Rnd 4+: sc", "rnd 4+"),
    ("Ring: ch 4; join", "ring"),
    ("Foundation ring: ch 4; join", "ring"),
    ("Chain: ch 21", "chain"),
    ("Foundation: fsc 20", "foundation"),
    ("Foundation chain: ch 21", "foundation"),
    ("Finish: fasten off", "finish"),
    ("Finishing: fasten off", "finish"),
]


@pytest.mark.parametrize(("text", "meant"), LABELS, ids=[row[0] for row in LABELS])
def test_a_label_is_read_however_it_is_written(text: str, meant: str) -> None:
    assert label(text) == meant


def test_r_is_a_row_where_the_motif_is_worked_in_rows() -> None:
    assert label("R2 (WS): sc in each st across; turn", rows=True) == "row 2 WS"


def test_next_rnd_takes_the_next_number() -> None:
    assert label("Rnds 1-3: sc\nNext rnd: sc\nNext rnd (WS): sc") == "rnd 1-3 | rnd 4 | rnd 5 WS"


def test_a_side_in_the_words_of_the_line_goes_to_its_label() -> None:
    assert label("Rnd 1: With RS facing, join A with sl st in any st, ch 1") == "rnd 1 RS"
    assert label("Row 2: With A and WS facing, sc in next st") == "row 2 WS"


def test_a_line_without_a_label_goes_on_with_the_one_before() -> None:
    text = "Rnd 1: Ch 3, 11 dc in ring;\n  join with sl st in top of\n  beg ch-3. (12 dc)\nRnd 2: Ch 1"
    assert short(text) == "ch3; 11 dc@current ring; JOIN sl st@top ch of <beg ch3> | ch1"


def test_a_round_that_is_only_spoken_of_begins_no_line() -> None:
    assert short("Rnd 5: FPdc around next dc of\nRnd 2, dc in next st") == "FPdc@around next dc R2; dc@next st"


def test_a_label_in_the_middle_of_a_line_begins_a_new_one() -> None:
    assert label("Rnd 1: 6 sc in ring. (6 sc) Rnd 2: inc around. (12 sc)") == "rnd 1 | rnd 2"


def test_what_stands_before_the_first_label_is_the_ring_or_the_chain() -> None:
    assert label("Ch 4; join with sl st in first ch to form a ring.\nRnd 1: 6 sc in ring") == "ring | rnd 1"
    assert label("With A, ch 21.\nRow 1: sc in 2nd ch from hook", rows=True) == "chain | row 1"
    assert label("Magic ring.\nRnd 1: 6 sc in ring") == "ring | rnd 1"


def test_comments_are_left_out() -> None:
    assert short("Rnd 1: ch 1, # not (yet, 3 dc\n sc in next st # done") == "ch1; sc@next st"


def test_words_in_braces_are_kept_and_not_read() -> None:
    assert short("Rnd 1: sc in next st {frogs: 3 dc, [ } , ch 1") == "sc@next st; {frogs: 3 dc, [}; ch1"


def test_capitals_and_curly_marks_change_nothing() -> None:
    assert short("Rnd 1: CH 1, SC IN NEXT ST, Don’t join") == "ch1; sc@next st; JOIN none"


def test_no_break_spaces_and_full_stops_of_abbreviations_change_nothing() -> None:
    assert short("Rnd 1: 3\u00a0dc in next\u00a0st, sl. st. in next ch-2 sp") == "3 dc@next st; sl st@next sp2"


@pytest.mark.parametrize("separator", [", ", "; ", ". ", " and ", ", then ", ", and ", " ", "\n"])
def test_steps_may_be_parted_in_any_way(separator: str) -> None:
    assert short(f"Rnd 1: sc in next st{separator}ch 1{separator}dc in next st") == "sc@next st; ch1; dc@next st"


COUNTS = [
    ("(36 dc, 8 ch-1 sps, 4 ch-2 sps)", "36 dc, 8 sp1, 4 sp2"),
    ("[36 sts]", "36 st"),
    ("-- 36 sts", "36 st"),
    ("— 36 sts", "36 st"),
    ("- 36 sts", "36 st"),
    ("= 36 sts", "36 st"),
    (": 36 sts", "36 st"),
    ("(18)", "18 st"),
    ("36 sts.", "36 st"),
    ("You should have 36 sts.", "36 st"),
    ("(Total: 36 sts)", "36 st"),
    ("(36 sts total)", "36 st"),
    ("(36 dc and 4 corners)", "36 dc, 4 corner"),
    ("(36 dc + 4 ch-2 corner sps)", "36 dc, 4 corner sp2"),
    ("(8 groups, 4 corners)", "8 group, 4 corner"),
    ("(12 3-dc groups)", "12 group"),
    ("(6 ch-3 lps)", "6 sp3 lp"),
    ("(24 dc) (4 ch-2 sps)", "24 dc, 4 sp2"),
    ("(4 corner sps, 9 dc on each side)", "4 corner sp, 9 dc a side"),
    ("(24 sc, including beg ch)", "24 sc"),
    ("(24 sc made)", "24 sc"),
    ("(8 shells)", "8 group"),
    ("(24 dc). Turn.", "24 dc"),
    ("(24 dc); join", "24 dc"),
    ("(24 dc), join", "24 dc"),
]


@pytest.mark.parametrize(("written", "meant"), COUNTS, ids=[row[0] for row in COUNTS])
def test_counts_stand_at_the_end_of_a_line(written: str, meant: str) -> None:
    dot = "" if written.startswith((":", "-", "=", "—")) else "."
    assert counts(f"Rnd 1: dc in each st around{dot} {written}") == meant


def test_counts_may_follow_the_join_as_a_sentence() -> None:
    lines, found = read("Rnd 1: 12 dc in ring. Join. 12 dc.")
    assert not found
    assert line_short(lines[0]) == "12 dc@current ring; JOIN usual"
    assert counts("Rnd 1: 12 dc in ring. Join. 12 dc.") == "12 dc"


def test_counts_for_several_sizes() -> None:
    assert counts("Rnd 1: sc in each st. (116 (132, 148) sc, 4 ch-1 sps)", sizes=3) == "116/132/148 sc, 4 sp1"
    assert counts("Rnd 1: sc in each st. (18, 24, 30 sts)", sizes=3) == "18/24/30 st"


def test_a_repeat_keeps_its_brackets_and_the_count_its_own() -> None:
    lines, found = read("R3: (1 sc, inc) x 6 (18)")
    assert not found
    assert line_short(lines[0]) == "[sc, sc inc2]x6"
    assert counts("R3: (1 sc, inc) x 6 (18)") == "18 st"


def test_a_shell_is_a_stitch_where_somebody_works_one() -> None:
    assert counts("Row 1: Shell in next st. (8 shells)") == "8 shell"
    assert counts("Row 1: 5 dc in next st. (8 shells)") == "8 group"


def test_what_is_not_said_in_counts_is_no_count() -> None:
    lines, found = read("Rnd 1: Join with ch 1, hdc in first sc (counts as ch-3 sp).")
    assert not found
    assert lines[0].counts == ()


def test_ids_are_unique_and_begin_where_the_file_says() -> None:
    lines, _ = read("Rnd 1: 3 dc in ring, [ch 1, (dc, ch 1) in next sp] 3 times\nRnd 2: sc around")
    ids: list[int] = []

    def walk(node: object) -> None:
        if hasattr(node, "id"):
            ids.append(node.id)
        for inner in getattr(node, "steps", ()):
            walk(inner)

    for line in lines:
        walk(line)
    assert len(ids) == len(set(ids))
    assert min(ids) == 1


def test_every_word_has_its_place() -> None:
    text = "Rnd 1: 3 dc in ring,\n  [ch 1, 2 tr in next ch-1 sp] 3 times; join"
    lines, _ = read(text)
    repeat = lines[0].steps[1]
    assert (repeat.span.line, repeat.span.column) == (2, 3)
    assert label_short(lines[0].label) == "rnd 1"
    assert problems(text) == []


def test_rounds_that_share_a_line_stand_among_the_others_in_their_order() -> None:
    lines, found = read("Rnd 1: 6 sc in ring\nRnds 2, 4 and 6: Inc around\nRnd 3: Sc around\nRnd 5: Rep Rnd 3")
    assert found == ()
    assert [label_short(line.label) for line in lines] == ["rnd 1", "rnd 2", "rnd 3", "rnd 4", "rnd 5", "rnd 6"]
    assert {line_short(line) for line in lines[1::2]} == {"sc inc2@each st~around"}
    assert len({line.id for line in lines} | {step.id for line in lines for step in line.steps}) == 12


def test_a_mistake_in_a_line_for_several_rounds_is_told_once() -> None:
    assert problems("Rnds 2, 4 and 6: frogs around, join") == [("word", "frogs")]


COUNTS_BEFORE_ROWS = ["(11 sc)", "[11 sc]", "-- 11 sc", "— 11 sc.", "= 11 sc", "11 sc.", "(11)", "(11 sc)."]


@pytest.mark.parametrize("count", COUNTS_BEFORE_ROWS)
@pytest.mark.parametrize("rep", ["Rep Rows 2-3", "Repeat rows 2 and 3", "Work Rows 2-3", "Rep last 2 rows"])
def test_repeated_rows_without_a_label_follow_a_line_that_ends_in_its_count(count: str, rep: str) -> None:
    text = f"Row 3: Ch 1, sc in each st across; turn. {count}\n{rep} until piece measures 20 cm, ending with a WS row."
    lines, found = read(text, rows=True)
    assert found == ()
    assert [line_short(line) for line in lines] == ["ch1; sc@each st~across; TURN", "AGAIN (2, 3) until 20.0cm WS"]
    assert [len(line.counts) for line in lines] == [1, 0]


def test_rows_repeated_under_their_label_keep_their_measure() -> None:
    text = "Rows 4 and following: Rep Rows 2-3 until piece measures 20 cm, ending with a WS row."
    assert short(text, rows=True) == "AGAIN (2, 3) until 20.0cm WS"


def test_a_line_that_could_not_all_be_read_is_marked() -> None:
    lines, _ = read("Rnd 1: 12 dc in ring\nRnd 2: frogs in next st, ch 1\nRnd 3: (dc, ch 1 in next st\nRnd 4: dc around")
    assert [line.broken for line in lines] == [False, True, True, False]


def test_a_bracket_that_never_closes_is_the_only_problem_of_its_line() -> None:
    text = "Rnd 2: Ch 1, *(4 dc, ch 4, 4 dc in next ch-4 sp, ch 1; rep from * once more; join. (24 dc)"
    assert problems(text) == [("bracket", "(")]
