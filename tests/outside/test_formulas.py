# ruff: noqa: E501 (rounds keep their lines)
"""Counts against closed formulas that anyone can work out: the trade's common motifs at any number of rounds."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.proof import proof_json
from motifold.render.worked import work_pattern

SAMPLES = Path(__file__).parents[2] / "samples"


def proof_of(text: str, rounds: int) -> dict[str, object]:
    reading = read_pattern("formula.toml", text.encode())
    assert reading.pattern is not None and not reading.problems
    worked = work_pattern(reading.pattern, rounds=rounds)
    assert not [problem for problem in worked.problems if problem.severity == "error"]
    content: dict[str, object] = json.loads(json.dumps(proof_json(worked)))
    return content


def counts_of(text: str, motif: str, rounds: int) -> dict[int, dict[str, int]]:
    content = proof_of(text, rounds)
    [size] = list(content["sizes"].values())[:1]  # type: ignore[attr-defined]
    return {r["number"]: r["counts"] for r in size["motifs"][motif]["rounds"] if r["number"]}


@pytest.mark.parametrize("rounds", [1, 2, 3, 8, 20])
def test_an_open_square_of_three_stitch_clusters(rounds: int) -> None:
    """Common practice, no source: r clusters a side, so 12r dc, 4(r-1) ch-1 spaces and 4 corner spaces in round r."""
    text = (SAMPLES / "lighthouse-basket.toml").read_text(encoding="utf-8").split("[size]")[0]
    counts = counts_of(text, "square", rounds)
    assert set(counts) == set(range(1, rounds + 1))
    for r, found in counts.items():
        expected = {"dc": 12 * r, "ch-1 sp": 4 * (r - 1), "ch-2 sp": 4}
        assert found == {name: number for name, number in expected.items() if number}


def polygon(corners: int, increase: int) -> str:
    """A solid polygon in dc: ``increase`` dc on either side of each corner space, in the fewest words."""
    fan = f"({increase} dc, ch 2, {increase} dc)"
    return f"""
[pattern]
title = "Formula"
terms = "US"
[yarn.A]
name = "Chalk"
[motif.m]
shape = "polygon: {corners}"
rounds = \"\"\"
Ring: With A, make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] {corners - 1} times; join with sl st in top of beg ch-3.
Rnd 2 and following: Ch 3, dc in each dc to next ch-2 sp, *{fan} in next ch-2 sp, dc in each dc to next ch-2 sp; rep from * {corners - 2} more times, {fan} in next ch-2 sp, dc in each dc to end; join with sl st in top of beg ch-3.
Finish: Fasten off.
\"\"\"
"""


@pytest.mark.parametrize("corners", [3, 4, 5, 6, 7, 8, 12])
@pytest.mark.parametrize("increase", [1, 2, 3])
def test_a_solid_polygon_grows_by_twice_its_increase_at_each_corner(corners: int, increase: int) -> None:
    """Arithmetic, no source needed: n(3 + 2k(r - 1)) stitches in round r of an n-gon that gains k on either side of a corner."""
    for r, found in counts_of(polygon(corners, increase), "m", 6).items():
        assert found == {"dc": corners * (3 + 2 * increase * (r - 1)), "ch-2 sp": corners}


@pytest.mark.parametrize(("size", "rounds"), [("Small", 7), ("Medium", 8), ("Large", 9)])
def test_the_rim_of_the_basket_has_every_stitch_of_its_four_sides(size: str, rounds: int) -> None:
    """Common practice, no source: a side has 3r stitches, r-1 chain spaces and its own corner space at either end: 4r + 1."""
    data = (SAMPLES / "lighthouse-basket.toml").read_bytes()
    reading = read_pattern("basket", data)
    assert reading.pattern is not None
    content = proof_json(work_pattern(reading.pattern))
    [rim] = [r for r in content["sizes"][size]["edgings"]["rim"]["rounds"] if r["number"] == 1]
    assert rim["counts"] == {"sc": 4 * (4 * rounds + 1), "ch-1 sp": 4}
    assert all(side["stitches"] == 4 * rounds + 1 for side in content["sizes"][size]["motifs"]["square"]["sides"])


def test_the_corners_of_the_basket_and_of_the_basket_with_a_lid() -> None:
    """Descartes' theorem on the total angular defect (De solidorum elementis, c. 1630; see Federico 1982): 720 degrees when closed."""
    reading = read_pattern("basket", (SAMPLES / "lighthouse-basket.toml").read_bytes())
    assert reading.pattern is not None
    corners = proof_json(work_pattern(reading.pattern))["sizes"]["Small"]["assembly"]["corners"]
    assert sorted(c["degrees"] for c in corners if not c["on_opening"]) == [270.0] * 4
    text = (SAMPLES / "lighthouse-basket.toml").read_text(encoding="utf-8")
    text = text.replace(".     south  .\n", ".     south  .\n.     lid    .\n").split("[edging.rim]")[0]
    lid = '"lid.left + west.left", "lid.right + east.right", "lid.bottom + north.top"]'
    text = text.replace('"south.right + east.bottom"]', f'"south.right + east.bottom", {lid}')
    text = "\n".join(line for line in text.splitlines() if not line.startswith("open ="))
    reading = read_pattern("box", text.encode())
    assert reading.pattern is not None, reading.problems
    size = proof_json(work_pattern(reading.pattern))["sizes"]["Small"]
    closed = size["assembly"]["corners"]
    assert len(closed) == 8 and not size["assembly"]["openings"]
    assert sum(360 - c["degrees"] for c in closed) == pytest.approx(720)
