"""What a chart draws is what its key shows: special stitches by their construction and name, in the chart and in the key."""

from __future__ import annotations

from collections.abc import Iterator
from math import atan2, hypot

import pytest

from motifold.render.charts import pattern_look, pieces_of
from motifold.render.fabric.model import Fabric
from motifold.render.motif import lay_out
from motifold.render.motif.chart import ChartLook, entries_used
from motifold.render.motif.chart.draw import own_symbols
from motifold.render.motif.chart.scene import Symbol, symbols_of
from motifold.render.pattern import read_pattern
from motifold.render.worked import work_pattern
from motifold.symbols.ink import Fill, Mark, Stroke
from motifold.symbols.key import KeyEntry

BASE = """Ring: Ch 6, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
"""


def piece(definitions: str, last: str) -> tuple[Fabric, ChartLook]:
    text = f"[pattern]\ntitle = 'T'\nterms = 'US'\n{definitions}\n[motif.m]\nrounds = '''\n{BASE}{last}\n'''\n"
    reading = read_pattern("t.toml", text.encode())
    assert reading.pattern is not None, reading.problems
    made = work_pattern(reading.pattern)
    assert not [p for p in made.problems if p.severity == "error"], made.problems
    return pieces_of(made.sizes[0])["m"], pattern_look(made.pattern, ChartLook())


def defined(name: str, means: str, printed: str = "") -> str:
    return f"[stitch.{name}]\nmeans = '{means}'\n" + (f"name = '{printed}'\n" if printed else "")


def drawn(fabric: Fabric, look: ChartLook) -> tuple[Symbol, ...]:
    return symbols_of(fabric, lay_out(fabric), False, own_symbols(look.symbols))


def kinds_of_marks(marks: tuple[Mark, ...]) -> Iterator[tuple[str, int, float, bool]]:
    """What each mark is made of, whatever its place: stroke or fill, number of points, weight, open or closed."""
    for mark in marks:
        yield ("fill", len(mark.points), 0.0, True) if isinstance(mark, Fill) else ("stroke", len(mark.points), mark.width, mark.closed)


@pytest.mark.parametrize(
    ("name", "means", "printed", "gather"),
    [
        ("bob", "dc5tog in same st", "bobble", "bobble"), ("bob", "dc3tog in same st", "mini bobble", "bobble"),
        ("bump", "dc5tog in same st", "", "bobble"), ("bump", "dc3tog in same st", "", "cluster"),
        ("clump", "tr6tog in same st", "big cluster", "cluster"), ("cloud", "hdc4tog in same st", "", "puff"),
        ("pop", "5 dc in same st, gathered", "popcorn", "popcorn"), ("knob", "5 dc in same st, gathered", "", "popcorn"),
        ("bo", "5 dc in same st, gathered", "bobble", "popcorn"), ("knob", "5 dc in same st, gathered into a cluster", "", "cluster"),
        ("knob", "5 dc in same st, worked together", "", "bobble"), ("low", "sc3tog in same st", "", "together"),
    ],
)  # fmt: skip
def test_a_stitch_of_the_pattern_s_own_is_closed_by_its_construction_and_its_name(
    name: str, means: str, printed: str, gather: str
) -> None:
    fabric, look = piece(defined(name, means, printed), f"Rnd 2: Ch 1, [sc in next dc, {name} in next dc] 6 times; join.")
    many = [stitch for stitch in fabric.stitches if len(stitch.legs) > 1]
    assert len(many) == 6
    assert {stitch.gather for stitch in many} == {gather}
    [entry] = [entry for entry in entries_used([fabric], look) if entry.id == name]
    for symbol in drawn(fabric, look):
        if symbol.id in {f"s{stitch.id}" for stitch in many}:
            assert sorted(kinds_of_marks(symbol.marks)) == sorted(kinds_of_marks(entry.marks))


@pytest.mark.parametrize(
    ("text", "listed"),
    [
        ("dc3tog in next dc", "dc3tog in one place"), ("5-dc bobble in next dc", "5-dc bobble"), ("3-dc bobble in next dc", "3-dc bobble"),
        ("cl in next dc", "cl"), ("4-tr cl in next dc", "4-tr cl"), ("puff in next dc", "puff"), ("pc in next dc", "pc"),
        ("shell in next dc", "shell"), ("7-dc shell in next dc", "7-dc shell"), ("V-st in next dc", "V-st"),
        ("FPdc around next dc", "FPdc"),
        ("sc in BLO of next dc", "sc in back loop"), ("hdc in FLO of next dc", "hdc in front loop"), ("edc in next dc", "edc"),
        ("ltr in next dc", "ltr"), ("2 sc in next dc", "sc"), ("standing tr in next dc", "tr"),
        ("hdc3tog in next dc", "hdc3tog in one place"),
    ],
)  # fmt: skip
def test_every_stitch_that_a_chart_draws_has_its_line_in_the_key(text: str, listed: str) -> None:
    fabric, look = piece("", f"Rnd 2: Ch 1, [sc in next dc, {text}] 6 times; join.")
    assert listed in {entry.id for entry in entries_used([fabric], look)}


def test_crossed_stitches_are_in_the_key_as_they_cross() -> None:
    fabric, look = piece("", "Rnd 2: Ch 3 (counts as dc), [crossed dc over next 2 sts] 5 times, dc in next dc; join.")
    assert "crossed dc" in {entry.id for entry in entries_used([fabric], look)}


def test_after_a_post_stitch_the_same_stitch_is_entered_as_usual() -> None:
    fabric, _ = piece("", "Rnd 2: Ch 2 (does not count as a st), [FPdc around next dc, dc in same dc] 12 times; join.")
    feet = {stitch.kind: stitch.legs[0].base.foot for stitch in fabric.stitches if stitch.round == 2 and stitch.role == "stitch"}
    assert feet == {"FPdc": "front post", "dc": "loops"}


def test_a_pattern_s_own_symbol_stands_for_its_whole_group_upright_on_its_base() -> None:
    leaf = defined("leaf", "(hdc, dc, ch 1, dc, hdc) in same st") + 'symbol = "M0 0 V-10 M-2 -5 H2"\n'
    fabric, look = piece(leaf, "Rnd 2: Ch 1, [sc in next dc, leaf in next dc] 6 times; join.")
    members = {f"s{i}" for group in fabric.groups if group.name == "leaf" for i in (*group.stitches, *_chains(fabric, group.runs))}
    inked = [symbol for symbol in drawn(fabric, look) if symbol.id in members and symbol.marks]
    assert len(inked) == 6
    for symbol in inked:
        stem = symbol.marks[0]
        assert isinstance(stem, Stroke)
        (x0, y0), (x1, y1) = stem.points[0], stem.points[-1]
        lean = atan2(y1 - y0, x1 - x0) - atan2(y0, x0)  # the way up against the way out from the middle
        assert abs((lean + 3.1416) % 6.2832 - 3.1416) < 0.25
        assert 1.0 < hypot(x1 - x0, y1 - y0) < 3.0
    [entry] = [entry for entry in entries_used([fabric], look) if entry.id == "leaf"]
    assert _height(entry) == pytest.approx(2.2, abs=0.15)  # its tallest stitch
    assert not {"hdc", "hdc inc"} & {entry.id for entry in entries_used([fabric], look)}


def _chains(fabric: Fabric, runs: tuple[int, ...]) -> list[int]:
    return [i for run in runs for i in fabric.runs[run].stitches]


def _height(entry: KeyEntry) -> float:
    ys = [y for mark in entry.marks for _, y in mark.points]
    return max(ys) - min(ys)
