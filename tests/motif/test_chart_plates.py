"""Charts as printed plates and pages: brackets on what repeats, one repeat by itself, sheets that overlap, pale yarns, scale bars."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import gallery
import pytest

from motifold.render.charts import ChartSheet, draw_charts, pattern_look
from motifold.render.drawing.display import Group, Operation, StrokePath, Text
from motifold.render.drawing.measure import bounds, contrast, relative_luminance
from motifold.render.drawing.sheets import OVERLAP_MM
from motifold.render.motif import lay_out
from motifold.render.motif.chart import ChartLook, prepare
from motifold.render.motif.chart.ink import path_of, styled
from motifold.render.motif.chart.tiles import LEAST_U_MM, PAPERS_MM
from motifold.render.motif.chart.tones import tone_of
from motifold.render.pattern import read_pattern
from motifold.render.worked import Worked, work_pattern
from motifold.symbols.ink import Stroke
from motifold.symbols.sizes import STEM_WIDTH

HEAD = '[pattern]\ntitle = "T"\nterms = "US"\n[yarn.A]\nhex = "#fff6dc"\n'
MESH = """[gauge]
stitches = 24
width = "10 cm"
rows = 11
height = "10 cm"
[motif.m]
rows = '''
Chain: With A, ch 65.
Row 1 (RS): Dc in 8th ch from hook, [ch 2, sk next 2 ch, dc in next ch] to end; turn.
Row 2: Ch 5 (counts as dc and ch 2), sk first st and ch-2 sp, dc in next dc, [ch 2, sk next ch-2 sp, dc in next dc] across; turn.
Rows 3-30: Rep Row 2.
'''
"""
DISC = """[gauge]
motif = "m"
rounds = 2
width = "6 cm"
[motif.m]
rounds = '''
Ring: With A, make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc), 11 dc in ring; join. (12 dc)
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join. (24 dc)
'''
"""


def worked(body: str) -> Worked:
    reading = read_pattern("t.toml", (HEAD + body).encode())
    assert reading.pattern is not None, reading.problems
    return work_pattern(reading.pattern)


def texts(operations: tuple[Operation, ...]) -> list[str]:
    found: list[str] = []
    for op in operations:
        found += texts(op.children) if isinstance(op, Group) else [op.words] if isinstance(op, Text) else []
    return found


def piece(name: str) -> gallery.Piece:
    return next(piece for piece in gallery.PIECES if piece.name == name)


BRACKETS = [("open square of 3s, 3", 4), ("open hexagon of 2s, 5", 6), ("solid triangle, 4", 3), ("sc spiral, 12", 6)]


@pytest.mark.parametrize(("name", "times"), BRACKETS)
def test_a_bracket_says_how_often_the_motif_repeats(name: str, times: int) -> None:
    fabric = gallery.fabric_of(piece(name))
    items = prepare(fabric, lay_out(fabric), ChartLook()).items
    [bracket] = [item for item in items if item.kind == "repeat"]
    assert bracket.words == f"\u00d7\u202f{times}"


def test_rows_have_their_bracket_below_and_say_which_side_faces() -> None:
    made = worked(MESH)
    fabric = made.sizes[0].fabrics["m"]
    chart = prepare(fabric, lay_out(fabric), ChartLook())
    [bracket] = [item for item in chart.items if item.kind == "repeat"]
    assert bracket.words == "\u00d7\u202f19"
    assert max(p[1] for mark in bracket.marks for p in mark.points) < min(p[1] for s in chart.symbols for m in s.marks for p in m.points)
    sides = {item.round_index: item.words for item in chart.items if item.kind == "side"}
    assert all(sides[index] == fabric.rounds[index].side for index in sides)
    assert {"RS", "WS"} == set(sides.values())


def test_one_repeat_is_drawn_by_itself_and_said_to_be_one() -> None:
    [whole] = draw_charts(worked(MESH), ChartLook())
    [once] = draw_charts(worked(MESH), ChartLook(), sheet=ChartSheet(once=True))
    assert once.drawing.width_mm < 0.5 * whole.drawing.width_mm
    assert "The bracketed stitches are worked 19 times; they are drawn once." in texts(once.drawing.operations)
    [disc] = draw_charts(worked(DISC), ChartLook(), sheet=ChartSheet(once=True))
    assert "One of 12 repeats: work it 12 times around. Beginning chains and joins are left out." in texts(disc.drawing.operations)


def test_a_sector_has_all_rounds_and_nothing_beyond_its_edges() -> None:
    from motifold.render.motif.chart.look import in_sector
    from motifold.render.motif.chart.once import one_repeat

    fabric = gallery.fabric_of(piece("open square of 3s, 5"))
    found = one_repeat(fabric, lay_out(fabric), ChartLook())
    assert found is not None
    chart = prepare(fabric, *found)
    stitches = [s for s in chart.symbols if fabric.rounds[s.round_index].kind == "round"]
    assert {s.round for s in stitches} == {1, 2, 3, 4, 5}
    assert all(in_sector(s.head, found[1].sector) for s in stitches)
    assert sum(1 for s in stitches if s.stitch == "dc" and s.round == 5) == 15  # a quarter of 60


def test_a_chart_too_large_for_its_page_goes_over_sheets_that_overlap() -> None:
    pages = [named.drawing for named in draw_charts(worked(MESH), ChartLook(), sheet=ChartSheet(key=True, paper="A5"))]
    assert len(pages) > 2
    wide, high = PAPERS_MM["A5"]
    assert {(round(p.width_mm, 3), round(p.height_mm, 3)) for p in pages} <= {(wide, high), (high, wide)}
    for page in pages:
        box = bounds(page.operations)
        assert box is not None
        assert box[0] >= 4 and box[1] >= 4 and box[2] <= page.width_mm - 4 and box[3] <= page.height_mm - 4
    drawn: dict[str, int] = {}
    for page in pages[1:]:
        for group in (g for op in page.operations if isinstance(op, Group) for g in op.children if isinstance(g, Group)):
            if (group.css_class or "").startswith("stitch"):
                drawn[dict(group.data)["id"]] = drawn.get(dict(group.data)["id"], 0) + 1
    fabric = worked(MESH).sizes[0].fabrics["m"]
    assert {int(key[1:]) for key in drawn} == {p.stitch for p in lay_out(fabric).placed if fabric.stitches[p.stitch].role != "standing"}
    assert max(drawn.values()) > 1
    assert any(f"{OVERLAP_MM:g} mm of overlap" in words for words in texts(pages[0].operations))
    assert any("a chain is" in words for words in texts(pages[0].operations))
    assert LEAST_U_MM >= 1.8


def test_a_small_chart_takes_one_page() -> None:
    for name, (wide, high) in PAPERS_MM.items():
        [page] = draw_charts(worked(DISC), ChartLook(), sheet=ChartSheet(key=True, paper=name))
        assert (page.drawing.width_mm, page.drawing.height_mm) == (wide, high)


def test_steps_on_paper_keep_one_size_and_place() -> None:
    pages = [named.drawing for named in draw_charts(worked(DISC), ChartLook(), steps=True, sheet=ChartSheet(paper="A5"))]
    assert len(pages) == 2
    placed = [next(op for op in page.operations if isinstance(op, Group) and op.transform).transform for page in pages]
    assert placed[0] == placed[1]


def test_a_scale_bar_is_as_long_as_it_says() -> None:
    made = worked(DISC)
    [plate] = draw_charts(made, ChartLook(), sheet=ChartSheet(key=True))
    [words] = [word for word in texts(plate.drawing.operations) if "of the work" in word]
    cm = float(words.split(" cm")[0])
    bar = max(
        (abs(float(op.path.commands[1][1]) - float(op.path.commands[0][1])) for op in plate.drawing.operations
         if isinstance(op, StrokePath) and op.path.commands[0][2] == op.path.commands[1][2] and op.color != "#c9cfd6"),
    )  # fmt: skip
    layout = lay_out(made.sizes[0].fabrics["m"])
    across_mm = 2 * max(hypot(*p) for p in layout.shapes[-1].outline) * 3.0
    assert bar == pytest.approx(cm / 6.0 * across_mm, abs=0.2)


def test_a_pale_yarn_keeps_its_colour_between_dark_edges() -> None:
    made = worked(DISC)
    [named] = draw_charts(made, pattern_look(made.pattern, ChartLook()))
    stitch = next(op for op in named.drawing.operations if isinstance(op, Group) and op.css_class == "stitch dc" and op.children)
    strokes = [op for op in stitch.children if isinstance(op, StrokePath)]
    edges, cores = strokes[: len(strokes) // 2], strokes[len(strokes) // 2 :]
    assert {op.color for op in cores} == {"#fff6dc"}
    assert all(contrast(op.color, "#ffffff") >= 3 for op in edges)
    assert [op.path for op in edges] == [op.path for op in cores]
    assert all(edge.width_mm - core.width_mm >= 0.15 for edge, core in zip(edges, cores, strict=True))
    [mono] = draw_charts(made, replace(pattern_look(made.pattern, ChartLook()), mono=True))
    assert "#fff6dc" not in str(mono.drawing.operations)


@pytest.mark.parametrize("pitch", [2.4, 3.0, 4.0])
def test_a_pale_yarn_reads_as_well_as_others(pitch: float) -> None:
    """Edges and core together, as they melt into one another at arm's length, stand out 3:1 from paper."""
    look = ChartLook(pitch_mm=pitch, yarn_colors={"A": "#efe3c2"})
    tone = tone_of(0, gallery.fabric_of(gallery.PIECES[0]).rounds, look, "A")
    assert tone.core is not None
    mark = Stroke(((0.0, 0.0), (0.0, 2.0)), STEM_WIDTH)
    edge, core = styled((mark,), (path_of(mark.points, False, False, pitch),), tone.color, pitch, tone.weight, tone.core)
    dark = 1 - core.width_mm / edge.width_mm  # type: ignore[union-attr]
    seen = dark * relative_luminance(tone.color) + (1 - dark) * relative_luminance(tone.core)
    assert 1.05 / (seen + 0.05) >= 3.0
