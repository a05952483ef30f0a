"""Edgings on the finished thing: how deep they are, whether they are turned back, and what they add."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt
from types import SimpleNamespace

import pytest
from assembly_kit import made, strokes_over_words, words_over_words

from motifold.render.assembly import assemble
from motifold.render.assembly.brim import with_rims
from motifold.render.assembly.form import finished_measures, worn_over
from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.rims import Edge, band, rims_of
from motifold.render.assembly.schematics import draw_finished
from motifold.render.assembly.solid import stand_up
from motifold.render.assembly.standing import as_box
from motifold.render.drawing.display import Drawing, Group
from motifold.render.pattern import read_pattern
from motifold.render.pattern.model import SidePiece
from motifold.render.worked import work_pattern


def measures(assembly: Assembly, *rims: Rim) -> dict[str, float]:
    return {measure.name: round(measure.cm, 3) for measure in finished_measures(assembly, rims)}


def notes(drawing: Drawing | None) -> list[str]:
    assert drawing is not None and strokes_over_words(drawing) == [] and words_over_words(drawing) == []
    return [o.title for o in drawing.operations if isinstance(o, Group) and o.css_class == "note" and o.title]


def test_a_rim_makes_a_basket_higher_and_no_wider(by_hand: SimpleNamespace) -> None:
    basket, rim = made(by_hand, "basket", 10.0), Rim("rim", 0, 1.5)
    assert measures(basket, rim) == {"width": 10.0, "depth": 10.0, "height": 11.5, "opening": 40.0}
    finished = draw_finished(basket, rims=(rim,))
    assert notes(finished) == ["opening 40 cm (15¾ in) round, rim, 1.5 cm (⅝ in) deep"]
    assert finished is not None and "11.5 cm (4½ in) high with its rim" in finished.description


def test_a_brim_turned_back_adds_nothing_and_lies_off_the_walls(by_hand: SimpleNamespace) -> None:
    hat, brim = replace(made(by_hand, "hat", 10.0), form="hat, brim up"), Rim("brim", 0, 4.0, turned=True)
    assert measures(hat, brim)["height"] == 10.0 and measures(hat, replace(brim, turned=False))["height"] == 14.0
    solid = stand_up(hat, upside_down=True)
    assert solid is not None
    bare, brimmed = len(solid.faces), with_rims(solid, (brim,))
    assert brimmed.over == frozenset(range(bare, bare + 4)) and as_box(brimmed) == pytest.approx((10.0, 10.0, 10.0), abs=0.05)
    band_points = [brimmed.points[c] for face in brimmed.over for c in brimmed.faces[face]]
    assert {round(z, 2) for _, _, z in band_points} == {0.0, 4.0}
    assert max(x for x, _, _ in band_points) - min(x for x, _, _ in band_points) > 10.5
    assert notes(draw_finished(hat, rims=(brim,))) == ["opening 40 cm (15¾ in) round, brim turned back, 4 cm (1⅝ in) deep"]


def test_a_border_lies_all_round_a_blanket_and_edgings_at_both_ends_of_a_cowl(by_hand: SimpleNamespace) -> None:
    assert measures(made(by_hand, "blanket", 10.0), Rim("border", 0, 2.0)) == {"width": 94.0, "height": 124.0}
    cowl = made(by_hand, "cowl", 10.0)
    assert measures(cowl, Rim("one", 0, 2.0), Rim("two", 1, 3.0)) == {"round": 60.0, "flat width": 30.0, "depth": 15.0}
    assert len(notes(draw_finished(cowl, rims=(Rim("one", 0, 2.0), Rim("two", 1, 3.0))))) == 2
    assert measures(made(by_hand, "twisted cowl", 10.0), Rim("edge", 0, 2.0))["depth"] == 14.0


def test_a_border_round_a_strip_of_triangles_reaches_out_at_its_sharp_corners(by_hand: SimpleNamespace) -> None:
    """Half the angle there is 30 degrees: a border of depth d reaches d times the square root of 3 beyond each end, d above and below."""
    bunting = made(by_hand, "bunting", 10.0)
    bare, edged = measures(bunting), measures(bunting, Rim("border", 0, 1.0))
    assert edged["height"] - bare["height"] == pytest.approx(2.0, abs=2e-3)
    assert edged["width"] - bare["width"] in (pytest.approx(2 * sqrt(3), abs=2e-3), pytest.approx(sqrt(3) + 1 / sqrt(3), abs=2e-3))


def test_what_is_folded_flat_grows_where_it_opens(by_hand: SimpleNamespace) -> None:
    pouch = made(by_hand, "envelope", 10.0)
    assert measures(pouch, Rim("rim", 0, 2.0)) == {"flat width": 10.0, "flat height": 12.0, "opening": 20.0}
    assert measures(pouch, Rim("rim", 0, 2.0, turned=True))["flat height"] == 10.0
    assert notes(draw_finished(pouch, rims=(Rim("rim", 0, 2.0),)))


@pytest.mark.parametrize(
    ("form", "fold", "turned"),
    [
        ("hat, brim up", (), True),
        ("hat, brim down", (), False),
        ("hat", ("Turn the brim up.",), True),
        ("hat", (), False),
        ("basket", (), False),
        ("basket, rim down", (), True),
        ("basket", ("Fold the rim over to the outside.",), True),
        ("basket, rim turned", (), True),
        ("basket", ("Do not fold the rim over.",), False),
        ("basket", ("Fold the base up.",), False),
    ],
)  # fmt: skip
def test_a_brim_is_turned_where_the_pattern_says_so(by_hand: SimpleNamespace, form: str, fold: tuple[str, ...], turned: bool) -> None:
    assembly = replace(made(by_hand, "hat" if "hat" in form else "basket"), form=form, fold=fold)
    opening = assembly.openings[0].sides[0]
    (rim,) = rims_of(assembly, [("brim" if worn_over(assembly) else "rim", SidePiece(opening.panel, opening.side), 2.0)])
    assert rim == Rim(rim.name, 0, 2.0, turned)


def test_an_edging_without_a_depth_or_without_an_opening_is_left_out(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, "basket")
    opening = basket.openings[0].sides[0]
    side = SidePiece(opening.panel, opening.side)
    assert rims_of(basket, [("a", side, None), ("b", None, 2.0), ("c", SidePiece("nowhere", "top"), 2.0)]) == ()


def test_bands_meet_in_a_mitre() -> None:
    square = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]
    edges = [Edge(a, b) for a, b in zip(square, [*square[1:], square[0]], strict=True)]
    assert {point for quad in band(edges, 1.0) for point in quad[2:]} == {(-1.0, -1.0), (5.0, -1.0), (5.0, 5.0), (-1.0, 5.0)}
    assert {point for quad in band(edges, -1.0) for point in quad[2:]} == {(1.0, 1.0), (3.0, 1.0), (3.0, 3.0), (1.0, 3.0)}


def test_points_are_marked_and_said(by_hand: SimpleNamespace) -> None:
    finished = draw_finished(made(by_hand, "basket"))
    assert finished is not None and "4 points of 270 degrees" in finished.description
    assert [o for o in finished.operations if isinstance(o, Group) and o.css_class == "points"]
    blanket = draw_finished(made(by_hand, "blanket"))
    assert blanket is not None and "point" not in blanket.description


def test_an_edging_round_an_opening_in_two_planes_leaves_the_measures_of_the_box(by_hand: SimpleNamespace) -> None:
    """A bonnet: four squares of a box, its face and its neck one opening."""
    source = by_hand.source("L T R\n. K .", ["L.bottom + K.left", "R.bottom + K.right"], form="bonnet")
    bonnet, _ = assemble(source, {"square": by_hand.open_motif()}, {"square": 10.0})
    assert bonnet is not None
    edged = measures(bonnet, Rim("face", 0, 1.0, estimate=True))
    assert edged == measures(bonnet) and edged["width"] == edged["height"] == 10.0
    (said,) = notes(draw_finished(bonnet, rims=(Rim("face", 0, 1.0, estimate=True),)))
    assert said == "opening 60 cm (23⅝ in) round, face, about 1 cm (⅜ in) deep"


def test_a_depth_that_nobody_measured_is_marked(by_hand: SimpleNamespace) -> None:
    cowl = made(by_hand, "cowl", 10.0)
    for estimate in (True, False):
        rim = Rim("edge", 0, 2.0, estimate=estimate)
        found = {one.name: one.estimate for one in finished_measures(cowl, (rim,))}
        assert found == {"round": False, "flat width": False, "depth": estimate}
        drawing = draw_finished(cowl, rims=(rim,))
        assert drawing is not None and ("is an estimate" in drawing.description) == estimate
        assert [note.endswith("about 2 cm (¾ in) deep") for note in notes(drawing) if "edge" in note] == [estimate]
        words = [o.title for o in drawing.operations if isinstance(o, Group) and o.css_class == "dimension"]
        assert (f"{'about ' if estimate else ''}12 cm (4¾ in)") in words


def test_straight_rounds_on_a_circle_stand_up_and_growing_ones_lie_flat(by_hand: SimpleNamespace) -> None:
    """A crown 20 cm across with 15 cm of straight rounds is a hat, not a plate of 50 cm; with a border that grows it is a plate."""
    source = by_hand.source("crown", form="hat")
    crown, _ = assemble(source, {"square": by_hand.open_motif(1)}, {"square": 20.0})
    assert crown is not None
    wall = Rim("body", 0, 15.0, estimate=True)
    assert measures(crown, wall) == {"across": 20.0, "depth": 15.0}
    assert [one.estimate for one in finished_measures(crown, (wall,))] == [False, True]
    hat = draw_finished(crown, rims=(wall,))
    assert hat is not None and "open at the bottom; 20 cm (7⅞ in) across, about 15 cm (5⅞ in) deep" in hat.description
    assert notes(hat) == ["opening 62.8 cm (24¾ in) round, body, about 15 cm (5⅞ in) deep"]
    assert measures(crown, replace(wall, spread=2.5))["width"] == pytest.approx(50.0, abs=0.1)
    assert measures(crown, replace(wall, depth_cm=1.0))["width"] == pytest.approx(22.0, abs=0.1)


def test_a_row_along_one_side_deepens_that_side_alone(by_hand: SimpleNamespace) -> None:
    blanket = made(by_hand, "blanket", 10.0)
    bottom = tuple(f"L{i}.bottom" for i in range(1, 10))
    assert measures(blanket, Rim("fringe", 0, 2.0, sides=bottom)) == {"width": 90.0, "height": 122.0}
    assert notes(draw_finished(blanket, rims=(Rim("fringe", 0, 2.0, sides=bottom),))) == ["fringe, 2 cm (¾ in) deep"]


def test_it_is_known_along_which_sides_an_edging_is_worked() -> None:
    flag = """[pattern]
title = "Flag"
terms = "US"
[yarn.A]
name = "Oat"
[gauge]
motif = "flag"
rounds = 1
width = "6 cm"
[motif.flag]
shape = "square"
rounds = \"\"\"
Ring: Make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
\"\"\"
[assembly]
motif = "flag"
net = "flag"
[edging.hem]
opening = "flag.bottom"
rounds = \"\"\"
Row 1 (RS): Join with sl st in next dc, ch 1 (does not count as a st), sc in same st, sc in each of next 2 dc, leave remaining sts unworked.
\"\"\"
"""
    reading = read_pattern("flag.toml", flag.encode())
    assert reading.pattern is not None
    (size,) = work_pattern(reading.pattern).sizes
    assert [(rim.name, rim.sides) for rim in size.rims] == [("hem", ("flag.bottom",))]
