"""A chart drawn from positions: every stitch a group of its own, numbers on white, readable in any yarn, the same box whatever is shown."""

from __future__ import annotations

import io
from collections.abc import Iterator
from itertools import pairwise

import jsonschema
import numpy as np
import pytest
import shapely
from chart_by_hand import disc
from hypothesis import given
from hypothesis import strategies as st

from motifold.render.drawing import to_png, to_svg
from motifold.render.drawing.display import Drawing, Group, Operation, StrokePath, Text
from motifold.render.drawing.measure import contrast
from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart import ChartLook, ChartOf, chart_json, draw_chart
from motifold.render.motif.chart.draw import CLEAR, all_ink, chart_box
from motifold.render.motif.chart.furniture import furnish
from motifold.render.motif.chart.scene import symbols_of
from motifold.render.motif.chart.tones import readable, tone_of
from motifold.render.motif.chart.white import White, edges_of
from motifold.render.motif.model import Layout
from motifold.symbols.ink import outlines

ROUND = disc("dc", 4)


def groups(drawing: Drawing, css: str) -> list[Group]:
    return [op for op in drawing.operations if isinstance(op, Group) and (op.css_class or "").split()[0] == css]


def flat(operations: tuple[Operation, ...]) -> Iterator[Operation]:
    for operation in operations:
        if isinstance(operation, Group):
            yield from flat(operation.children)
        else:
            yield operation


def test_every_stitch_is_a_group_that_says_its_round_its_base_and_its_instruction() -> None:
    drawn = groups(draw_chart(*ROUND, ChartLook()), "stitch")
    assert len(drawn) == 12 + 24 + 36 + 48
    assert {g.css_class for g in drawn} == {"stitch dc"}
    last = dict(drawn[-1].data)
    assert (last["round"], last["index"], last["from"]) == ("4", "48", "7")
    assert last["into"].startswith("s")
    assert dict(drawn[0].data)["into"] == "ring"


@pytest.mark.parametrize("stitch", ["dc", "sc", "tr", "hdc"])
@pytest.mark.parametrize("yarns", ["A", "AB"])
@pytest.mark.parametrize("turned", [False, True])
def test_no_number_or_mark_is_set_over_a_symbol(stitch: str, yarns: str, turned: bool) -> None:
    fabric, layout = disc(stitch, 5, yarns, turned)
    look = ChartLook()
    symbols = symbols_of(fabric, layout, False, {})
    drawn = all_ink(fabric, symbols)
    box = chart_box(symbols, drawn)
    white = White(box, edges_of(drawn), CLEAR)
    items = furnish(fabric, layout, symbols, white, look)
    assert [item.words for item in items if item.kind == "number"] == ["1", "2", "3", "4", "5"]
    ink = shapely.STRtree([shapely.Polygon(ring).buffer(0) for ring in outlines(drawn)])
    boxes = [shapely.box(x - i.width / 2, y - i.height / 2, x + i.width / 2, y + i.height / 2) for i in items for x, y in [i.center]]
    for item, area in zip(items, boxes, strict=True):
        assert not len(ink.query(area, predicate="intersects")), item
        assert shapely.box(*box).covers(area)
    assert not any(a.intersects(b) for i, a in enumerate(boxes) for b in boxes[i + 1 :])


@given(color=st.integers(0, 0xFFFFFF).map(lambda n: f"#{n:06x}"), shade=st.booleans())
def test_any_yarn_can_be_read_on_white_paper(color: str, shade: bool) -> None:
    assert contrast(readable(color, shade), "#ffffff") >= 3.0


def test_a_dark_yarn_keeps_its_colour() -> None:
    assert readable("#3f6b57") == "#3f6b57"


def test_rounds_that_follow_each_other_differ_without_colour() -> None:
    fabric, _ = ROUND
    tones = [tone_of(i, fabric.rounds, ChartLook(mono=True), "A") for i in range(1, 5)]
    assert all(a.weight != b.weight and a.color != b.color for a, b in pairwise(tones))
    colors = [tone_of(i, fabric.rounds, ChartLook(yarn_colors={"A": "#b3402e"}), "A").color for i in range(1, 5)]
    assert all(a != b for a, b in pairwise(colors))


def test_mono_charts_have_no_colour() -> None:
    for operation in flat(draw_chart(*ROUND, ChartLook(mono=True, yarn_colors={"A": "#ff0000"})).operations):
        color = operation.color  # type: ignore[union-attr]
        assert color[1:3] == color[3:5] == color[5:7]


def test_a_growing_chart_keeps_one_box_and_greys_what_is_done() -> None:
    whole = draw_chart(*ROUND, ChartLook())
    steps = [draw_chart(*ROUND, ChartLook(show=(1, n), emphasise=n)) for n in range(1, 5)]
    assert {step.box for step in steps} == {whole.box}
    assert [len(groups(step, "stitch")) for step in steps] == [12, 36, 72, 120]
    colors = {dict(g.data)["round"]: g.children[0].color for g in groups(steps[2], "stitch") if isinstance(g.children[0], StrokePath)}
    assert colors["1"] == colors["2"] != colors["3"]


def test_a_left_handed_chart_is_the_mirror_image_with_upright_numbers() -> None:
    from PIL import Image

    plain = ChartLook(furniture=False, mono=True)
    right, left = (
        np.asarray(Image.open(io.BytesIO(to_png(draw_chart(*ROUND, look), dpi=100))).convert("L"), dtype=int)
        for look in (plain, ChartLook(furniture=False, mono=True, left_handed=True))
    )
    # bars keep their slant in both hands, rings their tail: only stems and heads mirror, so most ink must fall on ink
    both = ((right[:, ::-1] < 128) & (left < 128)).sum()
    assert both / (left < 128).sum() > 0.8
    numbers = [op for op in flat(draw_chart(*ROUND, ChartLook(left_handed=True)).operations) if isinstance(op, Text)]
    assert numbers
    assert all(text.angle_deg == 0 for text in numbers)


def test_the_json_has_every_symbol_with_its_outlines_in_mm() -> None:
    fabric, layout = ROUND
    told = chart_json([ChartOf("disc", "One size", fabric, layout)], ChartLook(pitch_mm=2.0))
    symbols = told["charts"][0]["symbols"]
    assert (told["unit"], told["pitch"], len(symbols)) == ("mm", 2.0, 120)
    first = symbols[0]
    assert (first["id"], first["stitch"], first["round"], first["index"], first["into"]) == ("s0", "dc", 1, 1, ["ring"])
    length = np.hypot(first["head"][0] - first["foot"][0], first["head"][1] - first["foot"][1])
    assert length == pytest.approx(2.2 * 2.0, rel=0.3)
    assert len(first["outlines"]) == 3
    for ring in first["outlines"]:
        assert shapely.Polygon(ring).is_valid
    by_id = {s["id"]: s for s in symbols}
    assert all(s["id"] in by_id[t]["touches"] for s in symbols for t in s["touches"])
    schema = {"type": "object", "required": ["unit", "pitch", "charts"]}
    jsonschema.validate(told, schema)


def test_the_json_shows_only_the_rounds_that_are_asked_for() -> None:
    fabric, layout = ROUND
    told = chart_json([ChartOf("disc", "One size", fabric, layout)], ChartLook(show=(2, 3)))
    assert {s["round"] for s in told["charts"][0]["symbols"]} == {2, 3}


def test_the_same_chart_is_the_same_bytes() -> None:
    assert to_svg(draw_chart(*ROUND, ChartLook())) == to_svg(draw_chart(*ROUND, ChartLook()))


def test_a_chart_says_in_words_what_it_shows() -> None:
    drawing = draw_chart(*ROUND, ChartLook(terms="UK", title="Coaster"))
    assert drawing.title == "Coaster"
    assert "Rnd 2 (RS): 24 tr." in drawing.description


def test_an_empty_motif_is_an_empty_chart() -> None:
    nothing = Fabric("none", "circle", 0, "rounds", (), (), (), (), ())
    drawing = draw_chart(nothing, Layout("rounds", (), (), ()), ChartLook())
    assert drawing.width_mm > 0
    assert not groups(drawing, "stitch")
