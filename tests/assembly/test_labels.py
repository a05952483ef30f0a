"""Every schematic of the samples and of things nobody drew before: words clear of lines and of each other, 9 pt on a page of A5."""

from __future__ import annotations

from collections.abc import Sequence
from importlib import resources
from types import SimpleNamespace

import pytest
from assembly_kit import DODECAHEDRON, flat, strokes_over_words, words_over_words

from motifold.render.assembly import assemble
from motifold.render.assembly.model import Rim
from motifold.render.assembly.schematics import draw_finished, draw_net, draw_steps
from motifold.render.drawing.display import Drawing, Text
from motifold.render.pattern import read_pattern
from motifold.render.schematics import draw_schematics, drawn_size
from motifold.render.worked import work_pattern

A5_WIDE_MM = 128.5  # of text, with the white round a drawing
SAMPLES = sorted(path.name for path in resources.files("motifold.samples").iterdir() if path.name.endswith(".toml"))


def wrong(drawings: Sequence[Drawing]) -> list[str]:
    found = []
    for drawing in drawings:
        found += [f"{drawing.title}: a line through {word}" for word in strokes_over_words(drawing)]
        found += [f"{drawing.title}: {word} on another" for word in words_over_words(drawing)]
        found += [f"{drawing.title}: {o.words} is small" for o in flat(drawing.operations) if isinstance(o, Text) and o.size_pt < 9]
        found += [f"{drawing.title} is {drawing.width_mm:.0f} mm wide"] if drawing.width_mm > A5_WIDE_MM else []
    return found


@pytest.mark.parametrize("sample", SAMPLES)
def test_the_schematics_of_the_samples(sample: str) -> None:
    reading = read_pattern(sample, resources.files("motifold.samples").joinpath(sample).read_bytes())
    assert reading.pattern is not None
    worked = work_pattern(reading.pattern)
    size = drawn_size(worked)
    if size is not None:
        assert wrong([named.drawing for steps in (False, True) for named in draw_schematics(worked, size, steps)]) == []


TOTE = (
    "F1 F2 . B1 B2\nF3 F4 . B3 B4",
    [
        *("F2.right + B1.left", "F4.right + B3.left", "F1.left + B2.right", "F3.left + B4.right"),
        *("F3.bottom + B4.bottom", "F4.bottom + B3.bottom"),
    ],
)
BRIM = Rim("brim", 0, 5.0, turned=True, estimate=True)
THINGS = {
    "cardigan": (6, "", ["L.1 + L.3", "R.1 + R.3", "L.5 + R.5"], (Rim("left cuff", 0, 2.4, estimate=True),)),
    "tote": (4, *TOTE, (Rim("rim", 0, 2.0),)),
    "bucket hat": (
        4, "W1 W2 W3 W4\n. C . .", ["W4.right + W1.left", "C.left + W1.bottom", "C.right + W3.bottom", "C.bottom + W4.bottom"], (BRIM,),
    ),
    "bunting": (3, "", ["A.2 + B.3", "B.2 + C.3"], (Rim("cord", 0, 1.0, sides=("A.1",)),)),
    "ball": (5, "", DODECAHEDRON, ()),
    "cowl of hexagons": (6, "", [f"{a}.2 + {b}.5" for a, b in zip("ABCDEF", "BCDEFA", strict=True)], (Rim("edge", 0, 1.0, estimate=True),)),
    "bonnet": (4, "L T R\n. K .", ["L.bottom + K.left", "R.bottom + K.right"], (Rim("face", 0, 1.5, estimate=True),)),
    "cushion": (4, "", ["F.top + B.top", "F.left + B.right", "F.right + B.left"], (Rim("flap", 0, 3.0),)),
    "vest": (4, "B1 B2 . F1\nB3 B4 . F2\nB5 B6 F3 F4", ["F1.top + B2.top"], ()),
    "round basket": (1, "base", [], (Rim("wall", 0, 9.0),)),
}  # fmt: skip


@pytest.mark.parametrize("name", THINGS)
def test_the_schematics_of_new_things(by_hand: SimpleNamespace, name: str) -> None:
    sides, net, joins, rims = THINGS[name]
    source = by_hand.source(net, by_hand.solid(joins) if name == "ball" else joins, form=name)
    assembly, problems = assemble(source, {"square": by_hand.open_motif(sides)}, {"square": 14.0})
    assert assembly is not None and [one for one in problems if one.severity == "error"] == []
    finished = draw_finished(assembly, rims=rims)
    assert wrong([draw_net(assembly), *draw_steps(assembly), *([finished] if finished is not None else [])]) == []
