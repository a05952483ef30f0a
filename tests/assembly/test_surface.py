"""Panels joined make a surface: its openings, corners, pieces and sides."""

from __future__ import annotations

import subprocess
import sys
import time
from types import SimpleNamespace

import pytest

from motifold.render.assembly import assemble, corner_name, opening_edge, side_text
from motifold.render.assembly.model import Assembly
from motifold.render.pattern.model import AssemblySource


def made(by_hand: SimpleNamespace, source: AssemblySource, width: float | None = 12.8, sides: int = 4) -> Assembly:
    motif = by_hand.open_motif(sides)
    assembly, problems = assemble(source, {"square": motif}, {"square": width})
    assert problems == ()
    assert assembly is not None
    return assembly


def test_the_basket_has_one_opening_as_long_as_four_sides(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, by_hand.basket)
    (rim,) = basket.openings
    assert [side_text(side) for side in rim.sides] == ["north.top", "west.left", "south.bottom", "east.right"]
    assert rim.girth_cm == pytest.approx(4 * 12.8)
    assert (basket.pieces, basket.orientable, basket.euler) == (1, True, 1)


def test_three_squares_meet_at_each_corner_of_the_baskets_base(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, by_hand.basket)
    inner = [corner for corner in basket.corners if not corner.on_opening]
    assert [corner.degrees for corner in inner] == [270] * 4
    names = {corner_name(basket, at) for corner in inner for at in corner.at}
    assert {"base.top-left", "base.top-right", "base.bottom-left", "base.bottom-right"} <= names
    assert all(corner.degrees == 180 for corner in basket.corners if corner.on_opening)


def test_seams_add_width_where_they_end_on_the_opening(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, by_hand.source(by_hand_net(by_hand.basket), joins(by_hand.basket), adds=0.5))
    assert basket.openings[0].girth_cm == pytest.approx(4 * 12.8 + 4 * 0.5)


def by_hand_net(source: AssemblySource) -> str:
    rows: dict[int, dict[int, str]] = {}
    for cell in source.net:
        rows.setdefault(cell.row, {})[cell.column] = cell.panel
    width = max(cell.column for cell in source.net) + 1
    return "\n".join(" ".join(rows[row].get(column, ".") for column in range(width)) for row in sorted(rows))


def joins(source: AssemblySource) -> list[str]:
    return [f"{side_text(j.a)} {'~' if j.twist else '+'} {side_text(j.b) if j.b else 'itself'}" for j in source.join]


def test_a_row_of_squares_closed_into_a_ring_is_a_cowl_with_two_openings(by_hand: SimpleNamespace) -> None:
    cowl = made(by_hand, by_hand.source("A B C D", ["D.right + A.left"]))
    assert [opening.girth_cm for opening in cowl.openings] == [pytest.approx(51.2)] * 2
    assert (cowl.euler, cowl.orientable) == (0, True)


def test_a_twist_makes_a_cowl_with_one_side_and_one_rim(by_hand: SimpleNamespace) -> None:
    cowl = made(by_hand, by_hand.source("A B C D", ["D.right ~ A.left"]))
    (rim,) = cowl.openings
    assert not cowl.orientable
    assert rim.girth_cm == pytest.approx(8 * 12.8)
    assert sorted(rim.reversed) == [False] * 4 + [True] * 4


def test_two_twists_give_two_sides_again(by_hand: SimpleNamespace) -> None:
    cowl = made(by_hand, by_hand.source("A B . C D", ["B.right ~ C.left", "D.right ~ A.left"]))
    assert cowl.orientable
    assert len(cowl.openings) == 2


def test_a_pair_of_cuffs_is_one_cuff_twice(by_hand: SimpleNamespace) -> None:
    cuffs = made(by_hand, by_hand.source("A B", ["B.right + A.left"], copies=2))
    assert cuffs.pieces == 2
    assert [panel.name for panel in cuffs.panels] == ["A", "B", "A 2", "B 2"]
    assert [p.number for p in cuffs.passes] == list(range(1, len(cuffs.passes) + 1))
    assert cuffs.passes[-1].steps[0].seam >= len(cuffs.seams) // 2
    assert side_text(cuffs.openings[-1].sides[0]).startswith(("A 2.", "B 2."))
    assert all(corner < len(cuffs.corners) for seam in cuffs.seams for corner in seam.corners)


def test_a_side_folded_on_itself_pairs_from_its_ends(by_hand: SimpleNamespace) -> None:
    pouch = made(by_hand, by_hand.source("A", ["A.bottom + itself"]))
    (seam,) = pouch.seams
    assert seam.stitches == 33 // 2
    fold = [corner for corner in pouch.corners if corner.along]
    assert [(side_text(corner.along[0]), corner.degrees, corner.on_opening) for corner in fold] == [("A.bottom[1/2]", 180, False)]


def test_halves_of_a_side_may_go_to_two_others(by_hand: SimpleNamespace) -> None:
    large, small = by_hand.open_motif(4, 8, "large"), by_hand.open_motif(4, 4, "small")
    source = by_hand.source("", ["C.top[1/2] + A.bottom", "C.top[2/2] + B.bottom"], motif="small", panels={"C": "large"})
    assembly, problems = assemble(source, {"large": large, "small": small}, {"large": 12.0})
    assert problems == () and assembly is not None
    assert [seam.stitches for seam in assembly.seams] == [17, 17]
    assert {side_text(side) for side in assembly.openings[0].sides} >= {"C.left", "A.top", "B.top"}
    # Nobody measured the small square: it is sewn to half a side of the large one.
    assert assembly.panels[1].sides_cm == pytest.approx((6.0,) * 4) and assembly.scaled


def test_two_faces_eased_to_each_other_all_round_are_as_large(by_hand: SimpleNamespace) -> None:
    front, back = by_hand.open_motif(4, 8, "front"), by_hand.open_motif(4, 9, "back")
    widths = {"front": 12.0, "back": 14.0}  # the back's by the heights of its stitches
    for sides, width in ((("top", "left", "bottom", "right"), 12.0), (("top", "left", "bottom"), 14.0)):
        faces = zip(sides, [{"left": "right", "right": "left"}.get(side, side) for side in sides], strict=True)
        source = by_hand.source("", [f"F.{a} + B.{b}" for a, b in faces], motif="front", panels={"B": "back"}, ease=True)
        assembly, problems = assemble(source, {"front": front, "back": back}, widths, measured_on="front")
        assert problems == () and assembly is not None
        assert assembly.panels[1].sides_cm == pytest.approx((width,) * 4)


def test_folded_hexagons_make_a_jacket(by_hand: SimpleNamespace) -> None:
    """Two hexagons, each folded to a right angle: sleeve, half of the back, half of the front."""
    source = by_hand.source("", ["L.1 + L.3", "R.1 + R.3", "L.5 + R.5"], motif="square")
    jacket = made(by_hand, source, sides=6)
    assert jacket.pieces == 1 and jacket.orientable
    girths = sorted(opening.girth_cm or 0 for opening in jacket.openings)
    side = 12.8 / 3**0.5
    assert girths == pytest.approx([side, side, 4 * side])


def test_the_edging_of_the_basket_meets_each_stitch_of_the_rim(by_hand: SimpleNamespace) -> None:
    for rounds in (7, 8, 9):
        motif = by_hand.open_motif(4, rounds)
        assembly, _ = assemble(by_hand.basket, {"square": motif}, {"square": 12.8})
        assert assembly is not None
        met = opening_edge(assembly, {"square": motif}, by_hand.piece("north.top"))
        # One stitch in each dc and ch-1 space, and one in the corner space at either end of each side.
        assert len(met) == 4 * (4 * rounds + 1)
        assert [item.side for item in met if item.starts_side] == ["north.top", "west.left", "south.bottom", "east.right"]
        assert [item.corner for item in met[: 4 * rounds + 1]] == [True] + [False] * (4 * rounds - 1) + [True]


def test_a_lone_panel_turns_its_corner_once(by_hand: SimpleNamespace) -> None:
    blanket = made(by_hand, by_hand.source("A B"))
    met = opening_edge(blanket, {"square": by_hand.open_motif()}, by_hand.piece("A.top"))
    assert sum(item.corner for item in met) == 8
    assert len(met) == 6 * 31 + 8


def test_a_blanket_has_four_corners_not_two_at_each_seam(by_hand: SimpleNamespace) -> None:
    motif = by_hand.open_motif()
    for net, turns in (("A B\nC D", 4), ("A B C", 4), ("A B\nC .", 5), ("A", 4)):
        met = opening_edge(made(by_hand, by_hand.source(net)), {"square": motif}, by_hand.piece("A.top"))
        corners = [item for item in met if item.corner and not item.passing]
        assert len(corners) == turns, net
        assert sum(item.corner for item in met) > turns or net == "A"
    rim, _ = assemble(by_hand.basket, {"square": motif}, {"square": 12.8})
    assert rim is not None and not any(item.passing for item in opening_edge(rim, {"square": motif}, by_hand.piece("north.top")))


def test_the_edging_of_half_a_side_has_the_corner_at_one_end(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A", ["A.bottom[1/2] + A.right[1/2]"])
    motif = by_hand.open_motif()
    assembly, _ = assemble(source, {"square": motif}, {"square": 12.8})
    assert assembly is not None
    met = opening_edge(assembly, {"square": motif}, by_hand.piece("A.bottom[2/2]"))
    half = [item for item in met if item.side == "A.bottom[2/2]"]
    assert not half[0].corner and half[0].starts_side
    assert len(half) in (15, 16)


def test_after_a_twist_a_side_is_met_backwards(by_hand: SimpleNamespace) -> None:
    motif = by_hand.open_motif()
    assembly, _ = assemble(by_hand.source("A B", ["B.right ~ A.left"]), {"square": motif}, {"square": 12.8})
    assert assembly is not None
    met = opening_edge(assembly, {"square": motif}, by_hand.piece("A.top"))
    top = [item.source.id for item in met if item.side == "A.top" and not item.corner and item.kind == "stitch"]
    bottom = [item.source.id for item in met if item.side == "A.bottom" and not item.corner and item.kind == "stitch"]
    assert top == sorted(top) and bottom == sorted(bottom, reverse=True)


def test_circles_may_be_sewn_rim_to_rim(by_hand: SimpleNamespace) -> None:
    cushion = made(by_hand, by_hand.source("", ["front.edge + back.edge"]), width=40.0, sides=1)
    assert (len(cushion.openings), cushion.euler, cushion.pieces) == (0, 2, 1)
    assert cushion.passes[0].closed


def test_without_a_width_no_length_is_claimed(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, by_hand.basket, width=None)
    assert not basket.scaled and basket.openings[0].girth_cm is None
    assert all(length is None for panel in basket.panels for length in panel.sides_cm)


def test_a_net_of_a_thousand_panels_is_assembled_in_a_second(by_hand: SimpleNamespace) -> None:
    net = "\n".join(" ".join(f"p{row}x{column}" for column in range(25)) for row in range(40))
    source = by_hand.source(net)
    began = time.process_time()
    blanket = made(by_hand, source)
    assert time.process_time() - began < 1.5
    assert len(blanket.passes) == 24 + 39
    assert blanket.euler == 1


def test_proving_a_surface_loads_nothing_that_draws() -> None:
    code = "import sys; import motifold.render.assembly; print([m for m in sys.modules if 'drawing' in m or m in ('numpy', 'fontTools')])"
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.strip() == "[]"
