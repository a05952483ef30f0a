"""Schematics: words clear of lines, letters large enough, the same bytes, and what the drawing says is what was found."""

from __future__ import annotations

import subprocess
import sys
import time
from types import SimpleNamespace

import pytest
from assembly_kit import (
    NAMES,
    drawings,
    flat,
    made,
    strokes_over_words,
    words_over_words,
)

from motifold.render.assembly import assemble
from motifold.render.assembly.measures import inch_text, length_text
from motifold.render.assembly.schematics import draw_finished, draw_net, draw_steps, schematic_json
from motifold.render.assembly.style import BOLD_MM, FLAT, FOLD, INK, PANEL, PAPER, QUIET, THICK_MM, THIN_MM
from motifold.render.drawing import record, to_svg
from motifold.render.drawing.display import FillPath, Text
from motifold.render.drawing.measure import bounds, contrast


@pytest.mark.parametrize("name", NAMES)
def test_no_line_runs_through_words(by_hand: SimpleNamespace, name: str) -> None:
    for drawing in drawings(made(by_hand, name)):
        assert strokes_over_words(drawing) == [] and words_over_words(drawing) == [], drawing.title


@pytest.mark.parametrize("name", NAMES)
def test_no_line_runs_through_words_in_the_room_of_a_small_page(by_hand: SimpleNamespace, name: str) -> None:
    """What a page of A5 has for a net, for the finished thing, and for a step beside its words."""
    assembly = made(by_hand, name)
    finished = draw_finished(assembly, 124.0, 68.0)
    for drawing in (draw_net(assembly, 124.0, 92.0), *draw_steps(assembly, 68.0, 56.0), *([finished] if finished else [])):
        assert strokes_over_words(drawing) == [] and words_over_words(drawing) == [], drawing.title


def test_the_legs_of_a_pass_that_goes_to_and_fro_are_lettered_in_their_order(by_hand: SimpleNamespace) -> None:
    """A bag's first pass: the seams that lie together in one line, then two that lie open; the passes of one or two legs keep a number."""
    assembly = made(by_hand, "bag")
    words = [op.words for op in flat(draw_net(assembly).operations) if isinstance(op, Text)]
    assert "1a" in words and words.count("1b") == words.count("1c") == 2  # both halves of an open seam
    assert "1d" not in words and "1" not in words and words.count("2") >= 2
    assert "1a, 1b, ...: one pass, in this order" in words
    plain = [op.words for op in flat(draw_net(made(by_hand, "hat")).operations) if isinstance(op, Text)]
    assert "1" in plain and not any(word.startswith("1a") for word in plain)


def test_the_check_sees_a_line_through_words() -> None:
    from motifold.render.assembly.sheet import Sheet

    sheet = Sheet()
    sheet.words((10.0, 10.0), "base")
    sheet.line([(0.0, 11.0), (20.0, 11.0)], INK, THIN_MM)
    assert strokes_over_words(sheet.drawing("", "")) == ["'base' at 10.0, 10.0"]


@pytest.mark.parametrize("name", NAMES)
def test_words_are_nine_points_or_more_and_everything_lies_in_the_box(by_hand: SimpleNamespace, name: str) -> None:
    for drawing in drawings(made(by_hand, name)):
        texts = [o for o in flat(drawing.operations) if isinstance(o, Text)]
        assert all(text.size_pt >= 9 for text in texts)
        box = bounds(drawing.operations)
        assert box is not None
        assert drawing.box[0] <= box[0] and drawing.box[1] <= box[1] and box[2] <= drawing.box[2] and box[3] <= drawing.box[3]
        assert drawing.title and drawing.description


@pytest.mark.parametrize("name", ["basket", "cube", "bag", "jacket", "dodecahedron", "blanket"])
def test_the_net_fits_a_page_of_a5(by_hand: SimpleNamespace, name: str) -> None:
    drawing = draw_net(made(by_hand, name))
    assert drawing.width_mm <= 128.5 and drawing.height_mm <= 190


def test_inks_can_be_read_and_weights_are_two_to_one() -> None:
    for ink in (INK, QUIET):
        assert contrast(ink, PAPER) >= 7 and contrast(ink, PANEL) >= 4.5
    for ink in (FLAT, FOLD):
        assert contrast(ink, PAPER) >= 4.5
    assert THIN_MM * 2 == THICK_MM and THICK_MM * 2 == BOLD_MM


@pytest.mark.parametrize(
    ("cm", "words"), [(12.8, "12.8 cm (5 in)"), (38.4, "38.4 cm (15⅛ in)"), (2.54, "2.5 cm (1 in)"), (25.4, "25.4 cm (10 in)")]
)
def test_lengths_in_both_units(cm: float, words: str) -> None:
    assert length_text(cm) == words


def test_every_eighth_of_an_inch_is_found() -> None:
    for eighths in range(200):
        text = inch_text(eighths * 2.54 / 8)
        whole, fraction = divmod(eighths, 8)
        assert text == f"{whole if whole or not fraction else ''}{'⁰⅛¼⅜½⅝¾⅞'[fraction] if fraction else ''} in"


def test_each_dimension_of_the_net_stands_once(by_hand: SimpleNamespace) -> None:
    texts = [o.words for o in flat(draw_net(made(by_hand, "cube")).operations) if isinstance(o, Text) and " cm" in o.words]
    assert sorted(texts) == ["12.8 cm (5 in)", "38.4 cm (15⅛ in)", "51.2 cm (20⅛ in)"]


def test_an_empty_column_of_the_net_is_not_measured(by_hand: SimpleNamespace) -> None:
    """Front and back lie a column apart: each is two squares wide, and nothing is five."""
    texts = [o.words for o in flat(draw_net(made(by_hand, "cushion of eight")).operations) if isinstance(o, Text) and " cm" in o.words]
    assert sorted(texts) == ["12.8 cm (5 in)", "25.6 cm (10⅛ in)", "25.6 cm (10⅛ in)"]


def test_every_loose_piece_of_the_net_is_measured(by_hand: SimpleNamespace) -> None:
    assembly, _ = assemble(by_hand.source("A B C . D E", ["C.right + D.left"]), {"square": by_hand.open_motif()}, {"square": 10.0})
    assert assembly is not None
    texts = [o.words for o in flat(draw_net(assembly).operations) if isinstance(o, Text) and " cm" in o.words]
    assert sorted(texts) == ["10 cm (3⅞ in)", "10 cm (3⅞ in)", "20 cm (7⅞ in)", "30 cm (11¾ in)"]


def test_without_a_width_nothing_is_measured(by_hand: SimpleNamespace) -> None:
    for name in ("basket", "cowl", "blanket"):
        for drawing in drawings(made(by_hand, name, None)):
            assert not [o for o in flat(drawing.operations) if isinstance(o, Text) and " cm" in o.words]
            assert " cm" not in drawing.description


def test_the_data_is_what_the_drawing_shows(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, "basket")
    data = schematic_json(basket)
    assert [panel["name"] for panel in data["panels"]] == ["north", "west", "base", "east", "south"]
    fills = [o for o in flat(draw_net(basket).operations) if isinstance(o, FillPath) and o.color == PANEL]
    drawn = [[[round(float(x), 3), round(float(y), 3)] for _, x, y in fill.path.commands[:-1]] for fill in fills]
    assert drawn == [panel["outline"] for panel in data["panels"]]
    first = [seam for seam in data["seams"] if seam["pass"] == 1]
    assert sorted(seam["order"] for seam in first) == [1, 2, 3, 4, 5]
    assert data["seams"][4] == {"name": "north.left + west.top", "sides": ["north.left", "west.top"], "pass": 1, "order": 5}


def test_a_thousand_panels_are_planned_and_drawn_in_three_seconds(by_hand: SimpleNamespace) -> None:
    net = "\n".join(" ".join(f"p{row}x{column}" for column in range(25)) for row in range(40))
    source, fabrics = by_hand.source(net), {"square": by_hand.open_motif()}
    began = time.process_time()
    assembly, _ = assemble(source, fabrics, {"square": 12.8})
    assert assembly is not None
    drawing = draw_net(assembly)
    assert time.process_time() - began < 3.0
    numbers = {o.words for o in flat(drawing.operations) if isinstance(o, Text)}
    assert {"1", "39", "40", "63"} <= numbers


def test_the_bytes_do_not_depend_on_the_hash_seed(request: pytest.FixtureRequest) -> None:
    conftest = str(request.path.parent / "conftest.py")
    code = (
        f"import importlib.util, hashlib; s = importlib.util.spec_from_file_location('c', {conftest!r}); "
        "c = importlib.util.module_from_spec(s); "
        "s.loader.exec_module(c); from motifold.render.assembly import assemble; "
        "from motifold.render.assembly.schematics import draw_net, draw_steps, draw_finished; from motifold.render.drawing import to_svg; "
        "a, _ = assemble(c.CUBE, {'square': c.open_motif()}, {'square': 12.8}); "
        "print(hashlib.sha256(''.join(to_svg(d) for d in (draw_net(a), *draw_steps(a), draw_finished(a))).encode()).hexdigest())"
    )
    runs = {
        subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env={"PYTHONHASHSEED": seed}).stdout
        for seed in ("1", "77")
    }
    assert len(runs) == 1


def test_the_drawing_can_be_written_and_recorded(by_hand: SimpleNamespace) -> None:
    drawing = draw_net(made(by_hand, "basket"))
    assert 'data-pass="1"' in to_svg(drawing)
    assert record(drawing)
