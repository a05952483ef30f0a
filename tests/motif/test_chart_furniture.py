"""Numbers, letters and edges of real patterns: every round is told, rows outside the fabric, edgings on their pale edge."""

from __future__ import annotations

import pytest

from motifold.render.charts import charts_of, draw_charts, part_of, pattern_look, pieces_of
from motifold.render.drawing.display import Drawing, Group, Operation, Text
from motifold.render.fabric.model import Fabric
from motifold.render.motif import lay_out
from motifold.render.motif.chart import ChartLook, chart_json, entries_used, prepare
from motifold.render.pattern import read_pattern
from motifold.render.worked import Worked, work_pattern

HEAD = '[pattern]\ntitle = "T"\nterms = "US"\n[yarn.A]\nhex = "#8c4a2f"\n[yarn.B]\nhex = "#1f6f78"\n'
DENSE = """[motif.m]
rounds = '''
Ring: With A, make a magic ring.
Rnd 1 (RS): Ch 1, 6 sc in ring; join. (6 sc)
Rnd 2: Ch 1, 2 sc in each sc; join. (12 sc)
Rnd 3: With B, ch 1, [sc in next sc, 2 sc in next sc] 6 times; join. (18 sc)
Rnd 4: Ch 1, [sc in each of next 2 sc, 2 sc in next sc] 6 times; join. (24 sc)
Rnd 5: With A, ch 1, [sc in each of next 3 sc, 2 sc in next sc] 6 times; join. (30 sc)
'''
"""
ROWS = """[motif.m]
rows = '''
Foundation: With A, ch 10.
Row 1 (RS): Sc in second ch from hook and in each ch across, turn. (9 sc)
Row 2: Ch 1, sc in each sc across, turn. (9 sc)
Row 3: Change to B, ch 1, sc in each sc across, turn. (9 sc)
Row 4: Ch 1, sc in each sc across. (9 sc)
'''
"""
EDGED = """[stitch.bob]
name = "bobble"
means = "dc4tog in same st"
[motif.m]
shape = "square"
rounds = '''
Ring: With A, make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 1, *sc in next dc, bob in next dc, sc in next dc, (sc, ch 2, sc) in next ch-2 sp; rep from * around; join.
'''
[edging.rim]
motif = "m"
rounds = '''
Rnd 1: With B, join with sl st in any sc, ch 1, sc in same st, picot, *sc in next st, picot; rep from * around; join.
'''
"""


def worked(body: str) -> Worked:
    reading = read_pattern("t.toml", (HEAD + body).encode())
    assert reading.pattern is not None, reading.problems
    return work_pattern(reading.pattern)


def fabric_of(body: str, name: str = "m") -> Fabric:
    return pieces_of(worked(body).sizes[0])[name]


def groups(drawing: Drawing, css: str) -> list[Group]:
    return [op for op in drawing.operations if isinstance(op, Group) and (op.css_class or "").split()[-1] == css]


def texts(operations: tuple[Operation, ...]) -> list[Text]:
    found: list[Text] = []
    for op in operations:
        found += texts(op.children) if isinstance(op, Group) else [op] if isinstance(op, Text) else []
    return found


@pytest.mark.parametrize("pitch", [1.3, 2.0, 3.0])
@pytest.mark.parametrize("body", [DENSE, ROWS])
def test_every_round_has_its_number_and_no_letter_is_under_six_points(body: str, pitch: float) -> None:
    fabric = fabric_of(body)
    items = prepare(fabric, lay_out(fabric), ChartLook(pitch_mm=pitch)).items
    numbers = [item for item in items if item.kind == "number"]
    assert {item.words.removeprefix("Rnd ") for item in numbers} == {str(r.number) for r in fabric.rounds if r.number}
    assert all(item.words.startswith("Rnd ") == (item.leader is not None) for item in numbers)  # outside a bare number is the last round's
    assert all(item.size_pt >= 6 for item in items if item.words)


@pytest.mark.parametrize("pitch", [1.3, 3.0])
@pytest.mark.parametrize("body", [DENSE, ROWS])
def test_every_yarn_is_named_in_the_chart_or_below_it(body: str, pitch: float) -> None:
    [drawing] = draw_charts(worked(body), ChartLook(pitch_mm=pitch))
    assert {"A", "B"} <= {text.words for text in texts(drawing.drawing.operations)}


def test_numbers_of_rows_stand_outside_the_fabric_at_the_row_s_start() -> None:
    fabric = fabric_of(ROWS)
    chart = prepare(fabric, lay_out(fabric), ChartLook())
    points = [p[0] for s in chart.symbols for mark in s.marks for p in mark.points]
    numbers = {item.words: item for item in chart.items if item.kind == "number"}
    for words, item in numbers.items():
        on_the_right = int(words) % 2 == 1
        assert item.center[0] - item.width / 2 > max(points) if on_the_right else item.center[0] + item.width / 2 < min(points)


def test_edgings_are_charted_on_their_pale_edge_and_their_picots_are_in_the_key() -> None:
    made = worked(EDGED)
    drawings = {d.name: d.drawing for d in draw_charts(made, ChartLook())}
    assert list(drawings) == ["m", "rim"]
    assert groups(drawings["rim"], "given") and not groups(drawings["m"], "given")
    told = chart_json(charts_of(made), ChartLook())["charts"]
    assert [chart["motif"] for chart in told] == ["m", "rim"]
    assert {s["round"] for s in told[1]["symbols"]} == {1}
    entries = entries_used(pieces_of(made.sizes[0]).values(), pattern_look(made.pattern, ChartLook()))
    assert any("picot" in entry.id for entry in entries)


def test_several_tall_stitches_together_in_one_stitch_are_closed_as_the_pattern_s_own_name_says() -> None:
    fabric = fabric_of(EDGED)
    made = [stitch for stitch in fabric.stitches if len(stitch.legs) == 4]
    assert len(made) == 4
    assert {stitch.gather for stitch in made} == {"bobble"}
    look = ChartLook(names={"bob": "bobble"})
    [line] = [entry for entry in entries_used([fabric], look) if entry.id == "bob"]
    assert (line.short("US"), line.full("UK"), line.gathered) == ("bob", "bobble", True)


def test_what_is_shown_fills_its_drawing_and_a_series_keeps_one_size() -> None:
    made = worked(DENSE)
    [whole] = draw_charts(made, ChartLook(title="T"))
    [part] = draw_charts(made, ChartLook(title="T", show=(1, 2)))
    assert part.drawing.height_mm < 0.75 * whole.drawing.height_mm
    assert {d.drawing.box[3] - d.drawing.box[1] for d in draw_charts(made, ChartLook(), steps=True)} == {whole.drawing.height_mm}


def test_a_part_is_drawn_only_of_an_edging_that_is_too_wide() -> None:
    for name, fabric in pieces_of(worked(EDGED).sizes[0]).items():
        assert part_of(fabric, lay_out(fabric)) is None, name
