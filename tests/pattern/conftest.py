"""A whole file to make mistakes in, and a reader of instructions that finds nothing."""

from __future__ import annotations

import sys
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from motifold.render.pattern import notation
from motifold.render.pattern.instructions import ONE, Chain, Definition, Instructions, Label, Line, Repeat
from motifold.render.pattern.locator import LocatedText
from motifold.render.pattern.notation import NotationContext
from motifold.render.pattern.problem import Problem

sys.path.insert(0, str(Path(__file__).parents[1] / "fabric"))  # the library of good patterns

GOOD = '''\
# a bag of two squares and a half
[pattern]
title = "Harbour Bag"
terms = "US"
level = "easy"
language = "en"

[materials]
hook = "4 mm"
notions = ["yarn needle", "scissors"]

[yarn.A]
name = "Slate"
hex = "#8c9aa5"
weight = 3
length = "110 m / 50 g"
ball = "50 g"

[yarn.B]
hex = "#B43"

[gauge]
motif = "square"
rounds = 8
width = "12.8 cm"
grams = 11.5
after_wash = "-3 %"

[stitch.petal]
means = "5 dc in same st"

[motif.square]
shape = "square"
rounds = """
Rnd 1: Ch 3, 11 dc in ring; join.
"""

[motif.half]
shape = "half square"
rows = "Row 1: Ch 3, 2 dc in ring."
last_round = 5

[size]
measure = "girth"
across = 2
motif = "square"
ease = "0 % to 12 %"

[size.bodies]
Small = "42 cm"
Child = "table: head, 2 years"

[assembly]
motif = "square"
panels = { F2 = "half" }
net = """
.  F1
B1 C1
"""
join = ["F1.left + B1.top", "F2.1 ~ C1.right", "C1.bottom[1/2] + itself"]
open = ["F1.top", "B1.bottom[2/2]"]

[assembly.seam]
method = "whip stitch"
yarn = "A"
passes = [["F1.left"], ["B1.top"]]
adds = "3 mm"

[edging.rim]
opening = "F1.top"
rounds = "Rnd 1: Sc in each st around."

[notes]
before = ["Turn after every round."]
after = "Wash by hand."

[pattern.changes]
"1.1" = "Rnd 2: 24 dc, not 22."

[picture.front]
file = "front.jpg"
caption = "The bag."
at = "cover"
'''


@dataclass
class Recorder:
    """Stands in for the reader of instructions: remembers what it was asked, and answers with a little tree."""

    asked: list[tuple[str, NotationContext]] = field(default_factory=list)

    def instructions(self, text: LocatedText, context: NotationContext) -> tuple[Instructions, tuple[Problem, ...]]:
        self.asked.append((text.text, context))
        span = text.span(0, 3)
        inner = Chain(context.first_id + 2, span, ONE)
        steps = (Repeat(context.first_id + 1, span, (inner,)),)
        return Instructions((Line(context.first_id, span, Label("rnd", 1, 1), steps),)), ()

    def definition(self, key: str, text: LocatedText, context: NotationContext) -> tuple[Definition | None, tuple[Problem, ...]]:
        self.asked.append((text.text, context))
        return Definition(key, (Chain(context.first_id, text.span(0, 1), ONE),)), ()


@pytest.fixture
def recorder(monkeypatch: pytest.MonkeyPatch) -> Recorder:
    """Files are read with a reader of instructions that accepts everything."""
    stand_in = Recorder()
    monkeypatch.setattr(notation, "parse_instructions", stand_in.instructions, raising=False)
    monkeypatch.setattr(notation, "parse_definition", stand_in.definition, raising=False)
    return stand_in


@pytest.fixture
def good() -> str:
    """A file with everything in it, and no mistake."""
    return GOOD
