"""Steps of the work and their drawings: the same numbers, every seam once, arrows on the sides that meet."""

from __future__ import annotations

from math import hypot
from types import SimpleNamespace

import pytest
from assembly_kit import (
    NAMES,
    flat,
    made,
    points_of,
    strokes_over_words,
)

from motifold.render.assembly import assemble
from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.fold_paint import letters
from motifold.render.assembly.schematics import draw_finished, draw_net, draw_steps
from motifold.render.assembly.steps import assembly_steps
from motifold.render.assembly.style import INK, PALE, PANEL
from motifold.render.drawing.display import FillPath, Text


@pytest.mark.parametrize("name", NAMES)
def test_every_seam_that_lies_open_is_lettered_in_the_step_that_sews_it(by_hand: SimpleNamespace, name: str) -> None:
    assembly = made(by_hand, name)
    steps = [step for step in assembly_steps(assembly) if step.kind != "fold flat"]
    laid = lay(assembly, 100.0, 100.0)
    for step, drawing in zip(steps, draw_steps(assembly), strict=True):
        words = [o.words for o in flat(drawing.operations) if isinstance(o, Text)]
        for sewn in step.steps:
            if not laid.touching[sewn.seam]:
                twisted = "~" if assembly.seams[sewn.seam].twist else ""
                assert words.count(letters(laid.fold_number[sewn.seam]) + twisted) >= 2


def test_arrows_of_a_fold_point_at_its_sides(by_hand: SimpleNamespace) -> None:
    """Front and back of a cushion turn their outer sides away from each other: an arrow runs onto either, none leads off the work."""
    assembly = made(by_hand, "cushion of eight")
    at = next(i for i, step in enumerate(assembly_steps(assembly)) if step.seams == ("F1.left + B2.right",))
    fills = [o for o in flat(draw_steps(assembly)[at].operations) if isinstance(o, FillPath)]
    heads = [fill for fill in fills if fill.color == INK]
    laid = [p for fill in fills if fill.color in (PANEL, PALE) for p in points_of(fill)]
    middle = (min(x for x, _ in laid) + max(x for x, _ in laid)) / 2
    assert len(heads) == 2
    for head in heads:
        tip, *base = points_of(head)[:3]
        assert abs(tip[0] - middle) < min(abs(p[0] - middle) for p in base)


def test_a_gap_is_drawn_and_closed_by_a_step(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A B\nC D", passes=(("A.right",), ("C.right",), ("A.bottom",), ("B.bottom",)))
    assembly, problems = assemble(source, {"square": by_hand.open_motif()}, {"square": 12.8})
    assert problems == () and assembly is not None
    last = assembly_steps(assembly)[-1]
    assert (last.kind, last.start) == ("gap", ("A.bottom-right", "B.bottom-left", "D.top-left", "C.top-right"))
    net = draw_net(assembly)
    assert "gap to close" in {o.words for o in flat(net.operations) if isinstance(o, Text)}
    assert strokes_over_words(net) == []


def test_a_drawing_for_each_step(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, "basket")
    steps = assembly_steps(basket)
    assert [step.kind for step in steps] == ["seam", "fold", "fold", "fold", "fold"]
    assert len(draw_steps(basket)) == 5
    assert (steps[0].attach, steps[0].fasten_off, steps[1].attach, steps[1].fasten_off) == (True, False, False, True)
    assert sum(step.stitches for step in steps) == sum(one.stitches for one in basket.passes)
    assert len({drawing.box for drawing in draw_steps(basket)}) == 1


def test_a_step_starts_at_a_corner_of_the_side_that_it_sews(by_hand: SimpleNamespace) -> None:
    """In a ring of panels a corner of the last one is also the first one's, but not while the work lies open."""
    joins = ["t3.right + t1.left", "u3.right + u1.left"]
    assembly, _ = assemble(by_hand.source("t1 t2 t3\nu1 u2 u3", joins), {"square": by_hand.open_motif()}, {"square": 12.8})
    assert assembly is not None
    for step in assembly_steps(assembly):
        first, last = assembly.seams[step.steps[0].seam], assembly.seams[step.steps[-1].seam]
        assert first.b is not None and last.b is not None
        assert [name.split(".")[0] for name in step.start[:2]] == [first.a.panel, first.b.panel]
        assert [name.split(".")[0] for name in step.end[:2]] == [last.a.panel, last.b.panel]
        assert first.a.side in step.start[0] and last.a.side in step.end[0]
    assert assembly_steps(assembly)[0].start[0] == "t3.bottom-right"


def test_a_steps_title_says_its_own_number_and_its_passs(by_hand: SimpleNamespace) -> None:
    titles = [drawing.title for drawing in draw_steps(made(by_hand, "basket"))]
    assert titles == ["Step 1 (pass 1)", "Step 2 (pass 1)", "Step 3 (pass 2)", "Step 4 (pass 3)", "Step 5 (pass 4)"]


def test_hexagons_joined_side_by_side_are_sewn_flat(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("", ["A.1 + B.4", "B.3 + C.6", "C.5 + A.2"])
    assembly, _ = assemble(source, {"square": by_hand.open_motif(6)}, {"square": 9.0})
    assert assembly is not None
    assert [step.kind for step in assembly_steps(assembly)] == ["seam", "seam"]
    assert draw_finished(assembly) is not None


@pytest.mark.parametrize("name", NAMES)
def test_steps_sew_every_seam_once(by_hand: SimpleNamespace, name: str) -> None:
    assembly = made(by_hand, name)
    sewn = [sewn.seam for step in assembly_steps(assembly) for sewn in step.steps]
    assert sorted(sewn) == list(range(len(assembly.seams) // assembly.copies))
    per_pass = {one.number: one.stitches for one in assembly.passes[: len(assembly.passes) // assembly.copies]}
    for step in assembly_steps(assembly):
        per_pass[step.pass_number or 0] -= step.stitches
    assert set(per_pass.values()) == {0}


def test_join_as_you_go_works_motif_after_motif(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A B C\nD E F", method="join as you go")
    assembly, problems = assemble(source, {"square": by_hand.open_motif()}, {"square": 12.8})
    assert problems == () and assembly is not None
    assert assembly.passes == ()
    steps = assembly_steps(assembly)
    assert [(step.panels[0], len(step.seams)) for step in steps] == [("A", 0), ("B", 1), ("C", 1), ("D", 1), ("E", 2), ("F", 2)]
    for drawing in (draw_net(assembly), *draw_steps(assembly)):
        assert strokes_over_words(drawing) == []


def test_arrows_of_a_fold_start_where_the_sides_meet(by_hand: SimpleNamespace) -> None:
    """Both lines of a fold run away from the corner that they share: their dots lie beside each other."""
    basket = made(by_hand, "basket")
    laid = lay(basket, 100.0, 100.0)
    for seam in laid.fold_number:
        a, b = laid.fold_lines(seam)
        # One end of each is the same corner of the base on the sheet.
        ends = [hypot(a.points[i][0] - b.points[i][0], a.points[i][1] - b.points[i][1]) for i in (0, -1)]
        assert min(ends) < 0.01 < max(ends)
