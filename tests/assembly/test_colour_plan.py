"""The plan of colourways shows on the net what the words say row by row."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from pathlib import Path
from types import SimpleNamespace

from assembly_kit import flat, made

from motifold.render.assembly.colour_plan import TONES, draw_colour_plan
from motifold.render.assembly.style import INK
from motifold.render.drawing.display import FillPath, Group, Text
from motifold.render.drawing.measure import contrast
from motifold.render.pattern import read_pattern
from motifold.render.schematics import draw_schematics, drawn_size
from motifold.render.worked import work_pattern

MAT = Path(__file__).parents[2] / "samples" / "quarterdeck-mat.toml"


def test_a_chess_board_of_two_colourways() -> None:
    reading = read_pattern(MAT.name, MAT.read_bytes())
    assert reading.pattern is not None
    worked = work_pattern(reading.pattern)
    size = drawn_size(worked)
    assert size is not None
    plan = next(named.drawing for named in draw_schematics(worked, size) if named.name == "colourways")
    panels = {group.title: group for group in plan.operations if isinstance(group, Group) and ("motif", "square") in group.data}
    assert len(panels) == 16
    ways = {name: dict(group.data)["colourway"] for name, group in panels.items()}
    assert Counter(ways.values()) == {"watch": 8, "lantern": 8}
    rows, columns = "ABCD", "1234"
    assert all(ways[r + c] != ways[r + d] for r in rows for c, d in pairwise(columns))
    assert all(ways[r + c] != ways[s + c] for c in columns for r, s in pairwise(rows))
    grounds = {next(op.color for op in flat(group.children) if isinstance(op, FillPath)) for group in panels.values()}
    assert len(grounds) == 2
    words = Counter(op.words for op in flat(plan.operations) if isinstance(op, Text))
    assert words["1"] == words["2"] == 8 + 1  # each panel's, and the key's
    assert words["watch (8)"] == words["lantern (8)"] == 1


def test_numbers_can_be_read_on_every_tone() -> None:
    assert min(contrast(INK, tone) for tone in TONES) >= 7.0


def test_of_one_colourway_or_none_there_is_no_plan(by_hand: SimpleNamespace) -> None:
    assembly = made(by_hand, "blanket")
    assert draw_colour_plan(assembly, {}) is None
    assert draw_colour_plan(assembly, {panel.name: "dawn" for panel in assembly.panels}) is None
    plan = draw_colour_plan(assembly, {panel.name: f"way {i % 7}" for i, panel in enumerate(assembly.panels)})
    assert plan is not None and plan.width_mm <= 124.0 and plan.height_mm <= 170.0
