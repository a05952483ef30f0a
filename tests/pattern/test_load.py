"""What a whole file says, typed."""

from __future__ import annotations

import time
from fractions import Fraction
from typing import Any

import pytest

from motifold.render.pattern import Pattern, notation, read_pattern
from motifold.render.pattern.model import GaugePoint, SidePiece
from motifold.render.pattern.problem import Problem, Span
from motifold.render.pattern.quantity import Quantity
from motifold.render.pattern.shapes import SHAPE_NAMES, corners

SMALL = '[pattern]\ntitle = "Mat"\nterms = "UK"\n[motif.mat]\nrounds = "Rnd 1: x"\n'


def read(source: str) -> Pattern:
    reading = read_pattern("bag.toml", source.encode())
    assert reading.problems == ()
    assert reading.pattern
    return reading.pattern


def codes(source: str) -> list[str]:
    return [problem.code for problem in read_pattern("bag.toml", source.encode()).problems]


def test_title_terms_and_one_motif_are_enough(recorder: Any) -> None:
    pattern = read(SMALL)
    assert (pattern.title, pattern.terms, pattern.format, pattern.language, pattern.author) == ("Mat", "UK", 1, "en", None)
    assert (pattern.gauge, pattern.size, pattern.assembly, pattern.edgings, pattern.stitches, pattern.yarns) == (
        None,
        None,
        None,
        (),
        (),
        (),
    )
    [motif] = pattern.motifs
    assert (motif.name, motif.shape, motif.sides, motif.worked, motif.counts_as) == ("mat", "circle", 0, "rounds", None)


def test_rows_without_a_shape_are_a_rectangle(recorder: Any) -> None:
    [motif] = read(SMALL.replace("rounds", "rows")).motifs
    assert (motif.shape, motif.sides, motif.worked) == ("rectangle", 4, "rows")


def test_materials_yarns_and_gauge(recorder: Any, good: str) -> None:
    pattern = read(good)
    assert pattern.materials.hook == Quantity(Fraction(4), "mm")
    assert pattern.materials.notions == ("yarn needle", "scissors")
    a, b = pattern.yarns
    assert (a.name, a.hex, a.weight, b.name, b.hex) == ("Slate", "#8c9aa5", 3, "B", "#bb4433")
    assert a.length
    assert (a.length.length.metres, a.ball) == (110, Quantity(Fraction(50), "g"))
    assert pattern.gauge
    assert pattern.gauge.points == (GaugePoint(8, 12.8),)
    assert (pattern.gauge.grams, pattern.gauge.grams_rounds, pattern.gauge.after_wash) == (11.5, 8, pytest.approx(0.97))


def test_sizes_and_their_tables(recorder: Any, good: str) -> None:
    size = read(good).size
    assert size
    assert size.bodies == (("Small", 42.0), ("Child", "table: head, 2 years"))
    assert size.ease
    assert (size.ease.low.fraction, size.ease.high.fraction, size.across) == (0, Fraction(12, 100), 2.0)


def test_assembly_edgings_and_notes(recorder: Any, good: str) -> None:
    pattern = read(good)
    assembly = pattern.assembly
    assert assembly
    assert [cell.panel for cell in assembly.net] == ["F1", "B1", "C1"]
    assert assembly.panels == {"F2": "half"}
    assert [(join.a.panel, join.twist, join.b is None) for join in assembly.join] == [
        ("F1", False, False),
        ("F2", True, False),
        ("C1", False, True),
    ]
    assert assembly.open == (SidePiece("F1", "top"), SidePiece("B1", "bottom", 2, 2))
    assert (assembly.seam.method, assembly.seam.yarn, assembly.seam.adds_cm) == ("whip stitch", "A", pytest.approx(0.3))
    assert assembly.seam.passes == (("F1.left",), ("B1.top",))
    assert [(edging.name, edging.opening) for edging in pattern.edgings] == [("rim", SidePiece("F1", "top"))]
    assert (pattern.notes_before, pattern.notes_after) == (("Turn after every round.",), ("Wash by hand.",))


def test_an_assembly_without_a_net_has_the_panels_that_its_joins_name(recorder: Any) -> None:
    source = SMALL + '[assembly]\njoin = ["A.1 + B.2"]\n[edging.rim]\nopening = "B.1"\nrounds = "Rnd 1: y"\n'
    assert read(source).edgings[0].opening == SidePiece("B", "1")


def test_an_edging_without_an_assembly_goes_around_the_only_motif(recorder: Any) -> None:
    assert read(SMALL + '[edging.rim]\nrounds = "Rnd 1: y"\n').edgings[0].motif == "mat"


def test_every_place_can_be_asked_for(recorder: Any, good: str) -> None:
    pattern = read(good)
    assert pattern.place("materials", "hook") == Span(9, 8, 6)
    assert pattern.place("motif", "half") == Span(38, 8, 4)
    assert pattern.place("motif", "half", "counts_as") == Span(38, 8, 4)
    assert pattern.place("nothing") == Span(1, 1, 0)
    lines = good.split("\n")
    for path, span in pattern.places.items():
        assert lines[span.line - 1][span.column - 1 : span.column - 1 + span.length] != "", path


def test_ids_go_on_from_text_to_text(recorder: Any, good: str) -> None:
    read(good)
    # a definition has one node, a text three
    assert [context.first_id for _, context in recorder.asked] == [1, 2, 5, 8]


def test_the_reader_of_instructions_knows_the_file(recorder: Any, good: str) -> None:
    read(good)
    text, context = recorder.asked[1]
    assert text == "Rnd 1: Ch 3, 11 dc in ring; join.\n"
    assert (context.terms, context.yarns, dict(context.defined), context.sizes) == ("US", ("A", "B"), {"petal": "petal"}, 2)
    assert [context.worked for _, context in recorder.asked[1:]] == ["rounds", "rows", "rounds"]


def test_a_body_that_cannot_be_read_still_counts_as_a_size(recorder: Any, good: str) -> None:
    read_pattern("x", good.replace('Small = "42 cm"', "Small = 42").encode())
    assert recorder.asked[1][1].sizes == 2


def test_problems_of_the_instructions_stand_among_the_others(recorder: Any, good: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def complain(text: Any, context: Any) -> Any:
        return recorder.instructions(text, context)[0], (Problem("word", "error", text.span(0, 3), "what?"),)

    monkeypatch.setattr(notation, "parse_instructions", complain)
    found = codes(good.replace('hook = "4 mm"', "hook = 4").replace('method = "whip stitch"', "method = 1"))
    assert found == ["type", "word", "word", "type", "word"]


def test_several_measured_rounds(recorder: Any) -> None:
    source = SMALL + '[gauge]\npoints = [{ rounds = 2, width = "4 cm" }, { rounds = 4, width = "7.5 cm" }]\ngrams = 3\n'
    gauge = read(source).gauge
    assert gauge
    assert (gauge.motif, gauge.points) == ("mat", (GaugePoint(2, 4.0), GaugePoint(4, 7.5)))
    tables = SMALL + '[[gauge.points]]\nrounds = 2\nwidth = "4 cm"\n[[gauge.points]]\nrounds = 4\nwidth = "7.5 cm"\n'
    assert read(tables).gauge == gauge.__class__(motif="mat", points=gauge.points)
    assert codes(source.replace("rounds = 4", "rounds = 2")) == ["gauge"]
    assert codes(source.replace("rounds = 4, ", "")) == ["missing"]
    assert codes(source.replace("rounds = 4", "rounds = 4, colour = 1")) == ["key"]


def test_a_gauge_of_rows(recorder: Any) -> None:
    source = SMALL + '[gauge]\nstitches = 16\nwidth = "10 cm"\nrows = 9\nheight = "4 in"\n'
    gauge = read(source).gauge
    assert gauge
    assert (gauge.stitches, gauge.width_cm, gauge.rows, gauge.height_cm, gauge.points) == (16, 10.0, 9, pytest.approx(10.16), ())
    assert codes(source.replace('height = "4 in"\n', "")) == ["missing"]


@pytest.mark.parametrize(
    ("shape", "sides"),
    [
        ("circle", 0),
        ("triangle", 3),
        ("Square", 4),
        ("solid square", 4),
        ("pentagon", 5),
        ("hexagon", 6),
        ("heptagon", 7),
        ("octagon", 8),
        ("polygon: 7", 7),
        ("polygon 9", 9),
        ("12-gon", 12),
        ("strip", 4),
        ("swatch", 4),
        ("flower", 0),
        ("lace doily", 0),
        ("half hexagon", 4),
        ("half square", 3),
        ("half octagon", 5),
        ("half circle", 2),
        ("half polygon: 6", 4),
        ("half triangle", 3),
        ("polygon: 2", None),
        ("polygon: 25", None),
        ("blob", None),
        ("", None),
        ("half", None),
    ],
)
def test_a_shape_has_its_corners(shape: str, sides: int | None) -> None:
    assert corners(shape) == sides


def test_a_half_of_every_shape_has_corners() -> None:
    assert all((corners(f"half {name}") or 0) >= 2 for name in SHAPE_NAMES)


def test_a_special_stitch_may_not_be_what_everyone_knows(recorder: Any) -> None:
    stitch = '[stitch.{}]\nmeans = "5 dc in same st"\n'
    for name in ("petal", "shell", "cl", "pc", "bobble", "beg-shell", '"V-st"', "fan2"):
        assert codes(SMALL + stitch.format(name)) == [], name
    for name in ("dc", "htr", "ss", "tr2tog", "FPtr", "inc", "next", "turn", '"double crochet"', '"?"', '""'):
        assert codes(SMALL + stitch.format(name)) == ["name"], name


def test_one_mistake_in_terms_does_not_hide_the_others(recorder: Any, good: str) -> None:
    assert codes(
        good.replace('terms = "US"', 'terms = "XX"').replace('hook = "4 mm"', "hook = 4").replace('"F1.top", "B1', '"F1", "B1')
    ) == [
        "value",
        "type",
        "panel-side",
    ]


def test_a_long_file_is_read_in_time_with_its_length(recorder: Any) -> None:
    def seconds(motifs: int) -> float:
        text = "".join(f'[motif.m{number}]\nrounds = """\n' + "Rnd 1: dc in each st around.\n" * 50 + '"""\n' for number in range(motifs))
        data = (SMALL + text).encode()
        began = time.perf_counter()
        assert read_pattern("x", data).problems == ()
        return time.perf_counter() - began

    seconds(10)
    small = min(seconds(40) for _ in range(3))
    large = min(seconds(400) for _ in range(2))
    assert large < 40 * small + 0.05


@pytest.mark.parametrize(
    ("hook", "code", "hint"),
    [
        ("G-6", "quantity", "its size in millimetres"),
        ("US G-6 / 4 mm", "quantity", "its size in millimetres"),
        ("4", "quantity", "its size in millimetres"),
        ("4,5 mm", "quantity", "write 4.5 mm"),
        ("4 m", "value", "is the unit right?"),
        ("0.1 mm", "value", "is the unit right?"),
    ],
)
def test_a_hook_has_a_size_in_millimetres(recorder: Any, hook: str, code: str, hint: str) -> None:
    [problem] = read_pattern("x", (SMALL + f'[materials]\nhook = "{hook}"\n').encode()).problems
    assert problem.code == code
    assert (problem.hint or "").startswith(hint)


def test_a_yarn_weight_by_name_is_told_its_number(recorder: Any) -> None:
    [problem] = read_pattern("x", (SMALL + '[yarn.A]\nweight = "DK"\n').encode()).problems
    assert problem.hint == "the standard number: weight = 3"


def test_what_stays_open_is_not_claimed_where_a_join_could_not_be_read(recorder: Any, good: str) -> None:
    reading = read_pattern("x", good.replace("F1.left + B1.top", "F1.left + B9.top").encode())
    assert [problem.code for problem in reading.problems] == ["reference"]
    assert reading.pattern
    assert reading.pattern.assembly
    assert reading.pattern.assembly.open is None
