"""The net in words, sides, joins: what they say, and what cannot be said so."""

from __future__ import annotations

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.pattern.locator import plain_text
from motifold.render.pattern.model import SidePiece
from motifold.render.pattern.net import MOST_PANELS, read_join, read_net, read_side

PANELS = ("F1", "B1", "T1", "C", "base")


def cells(net: str) -> dict[str, tuple[int, int]]:
    found, problems = read_net(plain_text(net))
    assert problems == []
    return {cell.panel: (cell.row, cell.column) for cell in found}


def join_problem(text: str) -> tuple[str, str]:
    join, problems = read_join(plain_text(text), PANELS)
    assert join is None
    [problem] = problems
    assert problem.span
    return problem.code, text[problem.span.column - 1 : problem.span.column - 1 + problem.span.length]


def test_a_word_is_a_panel_and_a_dot_an_empty_place() -> None:
    assert cells(".     north  .\nwest  base   east\n.     south  .\n") == {
        "north": (0, 1),
        "west": (1, 0),
        "base": (1, 1),
        "east": (1, 2),
        "south": (2, 1),
    }


def test_rows_may_be_ragged_and_lines_empty_around_them() -> None:
    assert cells("\n\nA B C\nD\n. E\n\n") == {"A": (0, 0), "B": (0, 1), "C": (0, 2), "D": (1, 0), "E": (2, 1)}


def test_an_empty_line_between_rows_is_an_empty_row() -> None:
    assert cells("A\n\nB") == {"A": (0, 0), "B": (2, 0)}


def test_a_net_set_in_as_a_whole_means_no_other_place() -> None:
    assert cells("    . A\n    B C D") == {"A": (0, 1), "B": (1, 0), "C": (1, 1), "D": (1, 2)}


def test_a_panel_knows_its_place_in_the_file() -> None:
    [a, _b], _ = read_net(plain_text(".  Ä1\nB-2"))
    assert (a.span.line, a.span.column, a.span.length) == (1, 4, 2)


@pytest.mark.parametrize(
    ("net", "words"),
    [
        ("A A", "stands in the net twice"),
        ("A ..", "cannot be a panel"),
        ("1A", "cannot be a panel"),
        ("A+B", "cannot be a panel"),
        ("  \n", "no panels"),
    ],
)
def test_what_cannot_be_a_net(net: str, words: str) -> None:
    _, problems = read_net(plain_text(net))
    assert [problem.code for problem in problems] == ["net"]
    assert words in problems[0].message


def test_a_row_set_in_with_spaces_alone_is_a_warning() -> None:
    _, [problem] = read_net(plain_text("      north\nwest  base  east"))
    assert (problem.code, problem.severity) == ("net-shift", "warning")
    assert "under base" in problem.message
    assert (problem.hint or "").endswith(": . north")


def test_a_net_has_bounds() -> None:
    found, problems = read_net(plain_text(" ".join(f"P{number}" for number in range(5000))))
    assert len(found) == MOST_PANELS == 2000
    assert len(problems) == 1


@pytest.mark.parametrize(
    ("text", "side"),
    [
        ("F1.left", SidePiece("F1", "left")),
        (" F1 . left ", SidePiece("F1", "left")),
        ("C.3", SidePiece("C", "3")),
        ("C.top[1/2]", SidePiece("C", "top", 1, 2)),
        ("C.top [ 2 / 3 ]", SidePiece("C", "top", 2, 3)),
    ],
)
def test_a_side_is_its_panel_and_its_name_or_number(text: str, side: SidePiece) -> None:
    assert read_side(plain_text(text), 0, len(text), PANELS) == (side, None)


def test_joins() -> None:
    plain, _ = read_join(plain_text("F1.left + B1.left"), PANELS)
    assert plain
    assert (plain.a, plain.b, plain.twist) == (SidePiece("F1", "left"), SidePiece("B1", "left"), False)
    twisted, _ = read_join(plain_text("F1.left~B1.left"), PANELS)
    assert twisted
    assert twisted.twist
    folded, _ = read_join(plain_text(" T1.left + itself "), PANELS)
    assert folded
    assert (folded.a, folded.b, folded.span.column, folded.span.length) == (SidePiece("T1", "left"), None, 2, 16)
    halves, _ = read_join(plain_text("C.top[1/2] + C.top[2/2]"), PANELS)
    assert halves
    assert halves.b == SidePiece("C", "top", 2, 2)


def test_how_sides_of_unlike_lengths_meet() -> None:
    eased, _ = read_join(plain_text("F1.left + B1.left, eased"), PANELS)
    assert eased
    assert (eased.ease, eased.ratio) == (True, None)
    for text in ("F1.left + B1.top, 3 sts to 2 rows", "F1.left + B1.top, 3:2", "F1.left + B1.top, 3 to 2"):
        ratio, _ = read_join(plain_text(text), PANELS)
        assert ratio
        assert (ratio.ease, ratio.ratio) == (False, (3, 2))


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("F1.left B1.left", ("panel-join", "F1.left B1.left")),
        ("F1.left + B1.left + C.top", ("panel-join", "F1.left + B1.left + C.top")),
        ("F1.left + F1.left", ("panel-join", "F1.left + F1.left")),
        ("F1.left + B1.left, tightly", ("panel-join", " tightly")),
        ("F1.left + B1.left, 0 to 2", ("panel-join", " 0 to 2")),
        ("F1.left + ", ("panel-side", "")),
        ("F1.left + B1", ("panel-side", "B1")),
        ("F1.left + B1.left[0/2]", ("panel-side", "0/2")),
        ("F1.left + B1.left[1/99]", ("panel-side", "1/99")),
        ("F1.left + bse.left", ("reference", "bse")),
        ("F1.left + B1.left.top", ("panel-side", "B1.left.top")),
        ("", ("panel-join", "")),
    ],
)
def test_what_is_no_join_is_a_problem_at_its_words(text: str, problem: tuple[str, str]) -> None:
    assert join_problem(text) == problem


def _joined(table: str) -> tuple[list[tuple[bool, tuple[int, int] | None]], list[tuple[str, int, int]]]:
    """Ease and ratio of each join of a file whose ``join`` is ``table``, and the code, line and column of its problems."""
    source = f"""[pattern]
title = "Pouch"
terms = "US"

[motif.square]
shape = "square"
last_round = 1
rounds = '''
Ring: Make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
'''

[assembly]
join = {table}
"""
    result = read_pattern("pouch.toml", source.encode())
    joins = result.pattern.assembly.join if result.pattern and result.pattern.assembly else ()
    return [(join.ease, join.ratio) for join in joins], [(p.code, p.span.line, p.span.column) for p in result.problems if p.span]


def test_a_join_may_be_a_table() -> None:
    both = '[{ sides = "F.left + B.right", ease = true }, "F.right + B.left, eased", { join = "F.top + B.top", sides = "3 sts to 2 rows" }]'
    assert _joined(both) == ([(True, None), (True, None), (False, (3, 2))], [])


def test_what_is_wrong_with_a_join_in_a_table_is_told_at_its_place() -> None:
    assert _joined('[{ ease = true }, "F.right + B.left"]') == ([(False, None)], [("panel-join", 14, 9)])
    assert _joined('[{ sides = "F.left + B.right", easy = true }]')[1] == [("key", 14, 39)]
    assert _joined('[{ join = "F.left + B.right", sides = "3 rows per" }]')[1] == [("panel-join", 14, 47)]
    assert _joined('[{ sides = "F.left B.right" }]')[1] == [("panel-join", 14, 20)]
    assert _joined("[{ sides = 3 }]")[1][-1] == ("type", 14, 19)
