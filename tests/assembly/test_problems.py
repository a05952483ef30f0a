"""What cannot be joined is told in the trade's words, at its place."""

from __future__ import annotations

from dataclasses import replace
from importlib import resources
from types import SimpleNamespace

import pytest

from motifold.render.assembly import assemble
from motifold.render.pattern import read_pattern
from motifold.render.pattern.problem import Problem, Span
from motifold.render.worked import work_pattern


def problems_of(by_hand: SimpleNamespace, source: object, **fabrics: object) -> dict[str, Problem]:
    _, problems = assemble(source, fabrics or {"square": by_hand.open_motif()}, {"square": 12.8})
    return {problem.code: problem for problem in problems}


def test_sides_that_differ_are_told_with_both_counts_and_names(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("", ["A.top + B.bottom"], panels={"B": "small"})
    found = problems_of(by_hand, source, square=by_hand.open_motif(), small=by_hand.open_motif(4, 7, "small"))
    assert found["sides-differ"].message == "A.top has 33 stitches but B.bottom has 29 stitches: they don't meet one to one"
    assert found["sides-differ"].span is not None and found["sides-differ"].span.line == 100


def test_a_longer_side_may_be_eased_in(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("", ["A.top + B.bottom"], panels={"B": "small"}, ease=True)
    fabrics = {"square": by_hand.open_motif(), "small": by_hand.open_motif(4, 7, "small")}
    assembly, problems = assemble(source, fabrics, {"square": 12.8})
    assert problems == () and assembly is not None
    assert assembly.seams[0].eased == (33, 29) and assembly.seams[0].stitches == 29


@pytest.mark.parametrize(
    ("joins", "code", "words"),
    [
        (["A.left + C.left"], "unknown-panel", "no panel C"),
        (["A.lefft + B.right"], "unknown-side", "A has no side lefft"),
        (["A.right + B.top"], "joined-twice", "A.right is joined twice"),
        (["A.top + B.top", "A.top[1/2] + B.bottom"], "joined-twice", "A.top is joined twice"),
        (["A.left + A.left"], "joined-twice", "as if it were two sides"),
    ],
)
def test_a_join_that_cannot_be(by_hand: SimpleNamespace, joins: list[str], code: str, words: str) -> None:
    found = problems_of(by_hand, by_hand.source("A B", joins))
    assert words in found[code].message


def test_a_name_almost_right_is_suggested(by_hand: SimpleNamespace) -> None:
    assert problems_of(by_hand, by_hand.source("A B", ["A.lefft + B.right"]))["unknown-side"].hint == "left?"
    assert problems_of(by_hand, by_hand.source("north B", ["norht.left + B.right"]))["unknown-panel"].hint == "north?"


def test_a_panel_joined_to_nothing(by_hand: SimpleNamespace) -> None:
    found = problems_of(by_hand, by_hand.source("A B . C"))
    assert found["panel-unjoined"].message == "C is joined to nothing"
    assert found["panel-unjoined"].span is not None and found["panel-unjoined"].span.column == 4


def test_a_panel_left_over(by_hand: SimpleNamespace) -> None:
    found = problems_of(by_hand, by_hand.source("A B", panels={"Bb": "square"}))
    assert "Bb is left over" in found["panel-left-over"].message


def test_what_should_stay_open_is_compared_with_what_does(by_hand: SimpleNamespace) -> None:
    found = problems_of(by_hand, by_hand.source("A B", open_sides=("A.right", "A.top", "A.left", "A.bottom", "B.top", "B.bottom")))
    assert found["open-differs"].message == "A.right should stay open but is joined; B.right stays open and `open` doesn't say so"


def test_a_side_joined_twice_is_one_problem_and_the_free_side_is_named(by_hand: SimpleNamespace) -> None:
    joins = ["F.left + B.left", "F.top + B.top"]
    source = by_hand.source("F B", joins, open_sides=("F.bottom", "B.bottom"))
    _, problems = assemble(source, {"square": by_hand.open_motif()}, {"square": 12.8})
    assert [problem.code for problem in problems] == ["joined-twice"]
    assert problems[0].hint == "each side has one seam; B.bottom and B.right have none"


def test_a_wrong_join_is_told_at_the_join(by_hand: SimpleNamespace) -> None:
    box = ". back .\nwest base east\n. front ."
    joins = ["back.left + west.top", "back.right + east.top", "front.left + west.bottom", "front.right + east.right"]
    rim = ("back.top", "west.left", "front.bottom", "east.right")
    found = problems_of(by_hand, by_hand.source(box, joins, open_sides=rim))
    assert found["open-differs"].span is not None and found["open-differs"].span.line == 103
    assert found["open-differs"].hint == "is east.bottom meant here instead of east.right?"
    found = problems_of(by_hand, by_hand.source(box, joins))
    assert found["side-rolled"].span is not None and found["side-rolled"].span.line == 103
    assert found["side-rolled"].severity == "warning" and "both ends of east.bottom" in found["side-rolled"].message


def test_an_opening_that_open_leaves_out_is_told_at_open(by_hand: SimpleNamespace) -> None:
    source = replace(by_hand.source("A B", open_sides=("A.top", "A.left", "A.bottom", "B.top", "B.bottom")), open_span=Span(7, 8, 9))
    found = problems_of(by_hand, source)
    assert list(found) == ["open-differs"] and found["open-differs"].span == Span(7, 8, 9)


def test_tubes_of_one_panel_and_pouches_are_not_doubted(by_hand: SimpleNamespace) -> None:
    for net, joins in (("A", ["A.left + A.right"]), ("F", ["F.bottom + itself"]), ("P Q", ["P.left + Q.right"])):
        assert problems_of(by_hand, by_hand.source(net, joins)) == {}


def test_a_hexagon_has_no_neighbours_in_a_net(by_hand: SimpleNamespace) -> None:
    found = problems_of(
        by_hand, by_hand.source("A B", panels={"B": "hex"}), square=by_hand.open_motif(), hex=by_hand.open_motif(6, 8, "hex")
    )
    assert "B has 6 sides" in found["net-shape"].message


def test_a_panel_twice_in_the_net(by_hand: SimpleNamespace) -> None:
    assert problems_of(by_hand, by_hand.source("A A"))["panel-twice"].message == "A stands twice in the net"


def test_a_panel_without_a_motif(by_hand: SimpleNamespace) -> None:
    assert "no motif" in problems_of(by_hand, by_hand.source("A B", motif=None))["panel-motif"].message
    assert problems_of(by_hand, by_hand.source("A B", motif="sqare"))["panel-motif"].hint == "square?"


def test_own_passes_must_sew_each_seam_once(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A B C", passes=(("A.right",), ("B.left",)))
    found = problems_of(by_hand, source)
    assert "A.right + B.left: sewn more than once" in found["pass-twice"].message
    assert "B.right + C.left: no pass sews it" in found["pass-missing"].message


def test_own_passes_must_be_walkable(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A B C", passes=(("A.right", "C.left"),))
    assert "share no corner" in problems_of(by_hand, source)["pass-broken"].message


def test_own_passes_must_name_seams(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A B", passes=(("A.top",),))
    assert "no seam is called A.top" in problems_of(by_hand, source)["pass-unknown"].message


def test_a_rolled_side_is_told_once_and_not_again_by_the_edging_on_its_rim() -> None:
    basket = resources.files("motifold.samples").joinpath("lighthouse-basket.toml").read_text()
    text = basket.replace("south.left + west.bottom", "south.left + west.left")
    text = "\n".join(line for line in text.split("\n") if not line.startswith("open "))
    reading = read_pattern("basket", text.encode())
    assert reading.pattern is not None
    assert [problem.code for problem in work_pattern(reading.pattern).problems] == ["side-rolled"]


@pytest.mark.parametrize(
    ("sides", "joins", "hint"),
    [
        (6, [f"F.{i} + B.{i}" for i in range(1, 7)], '"F.2 + B.6", "F.3 + B.5", "F.5 + B.3", "F.6 + B.2"'),
        (4, [f"F.{side} + B.{side}" for side in ("top", "left", "bottom", "right")], '"F.left + B.right", "F.right + B.left"'),
        (4, [f"F.{side} + B.{side}" for side in ("left", "bottom", "right")], '"F.left + B.right", "F.right + B.left"'),
        (3, [f"F.{i} + B.{i}" for i in (1, 2, 3)], '"F.2 + B.3", "F.3 + B.2"'),
    ],
)
def test_two_panels_joined_as_if_neither_were_turned_over(by_hand: SimpleNamespace, sides: int, joins: list[str], hint: str) -> None:
    source = by_hand.source("", joins)
    found = problems_of(by_hand, source, square=by_hand.open_motif(sides))
    assert list(found) == ["surface"]
    assert "a hole right through" in found["surface"].message and hint in (found["surface"].hint or "")


def test_corners_of_720_degrees_are_told(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("", [f"F.{i} + B.{i}" for i in range(1, 7)])
    found = problems_of(by_hand, source, square=by_hand.open_motif(6))["surface"]
    assert "6 corners meet at F.6-1 (and so at 1 more), 720 degrees" in found.message


@pytest.mark.parametrize(
    ("net", "joins"),
    [
        ("", ["F.top + B.top", "F.left + B.right", "F.bottom + B.bottom", "F.right + B.left"]),
        ("A B C\nE F G", ["A.left + C.right", "E.left + G.right", "A.top + E.bottom", "B.top + F.bottom", "C.top + G.bottom"]),
        ("A B C D", ["A.left ~ D.right"]),
        (". S .\nL B R\n. F .\n. T .", ["S.left + L.top", "S.right + R.top"]),
        ("", [f"{a}.left + {b}.top" for a, b in zip("ABCDE", "BCDEA", strict=True)]),
    ],
)
def test_what_is_meant_is_not_doubted(by_hand: SimpleNamespace, net: str, joins: list[str]) -> None:
    """A cushion, a double cowl, a twisted cowl, a bag's strap, and five squares in a saddle."""
    assert problems_of(by_hand, by_hand.source(net, joins)) == {}


def test_a_saddle_says_that_it_may_be_meant(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("", [f"{a}.left + {b}.top" for a, b in zip("ABCDEF", "BCDEFA", strict=True)])
    found = problems_of(by_hand, source)["surface"]
    assert "540 degrees" in found.message and "saddle" in (found.hint or "")


def test_a_twist_that_twists_nothing(by_hand: SimpleNamespace) -> None:
    found = problems_of(by_hand, by_hand.source("A B", ["A.top ~ C.top"], panels={"C": "square"}))
    assert "twists nothing" in found["surface"].message and '"A.top + C.top"' in (found["surface"].hint or "")


def test_pieces_that_nothing_joins(by_hand: SimpleNamespace) -> None:
    found = problems_of(by_hand, by_hand.source("A B . C D"))
    assert found["pieces"].message == "the panels make 2 pieces that nothing joins: A, B; C, D"
    assert "copies = 2" in (found["pieces"].hint or "")
    sides = (*(f"{panel}.{side}" for panel in "ABCD" for side in ("top", "bottom")), "A.left", "B.right", "C.left", "D.right")
    assert problems_of(by_hand, by_hand.source("A B . C D", (), sides)) == {}
