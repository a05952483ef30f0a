"""Every form of the notation: read without a problem, worked to the counts of hand arithmetic, and read back from its own words."""

from __future__ import annotations

import pytest
from forms_corpus import BASES, FORMS, WHOLE, Counts
from test_read_back import VOICES, Loose
from test_read_back import made as bare_fabric

from motifold.render.fabric import Workshop, work_motif
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.instructions import Definition, Instructions
from motifold.render.pattern.model import MotifSource, Terms
from motifold.render.pattern.notation import NotationContext, parse_definition, parse_instructions
from motifold.render.pattern.problem import Problem
from motifold.render.words.formats import line_text
from motifold.render.words.model import RoundText
from motifold.render.words.rounds import Piece, piece_blocks
from motifold.render.words.voice import Voice

CORNERS = {"circle": 0, "triangle": 3, "square": 4, "hexagon": 6, "octagon": 8, "rectangle": 4}
PETAL = {"petal": "(sc, hdc, 3 dc, hdc, sc) in same st"}
YARNS = ("A", "B")


def read(text: str, terms: Terms, worked: str, own: dict[str, str]) -> tuple[Instructions, dict[str, Definition], tuple[Problem, ...]]:
    names = {key: key for key in own}
    definitions: dict[str, Definition] = {}
    for key, means in own.items():
        definition, _ = parse_definition(key, Loose(means), NotationContext("US", YARNS, names))
        assert definition is not None
        definitions[key] = definition
    instructions, problems = parse_instructions(Loose(text), NotationContext(terms, YARNS, names, 1, worked))  # type: ignore[arg-type]
    return instructions, definitions, problems


def work(instructions: Instructions, definitions: dict[str, Definition], shape: str, worked: str) -> tuple[Fabric, tuple[Problem, ...]]:
    source = MotifSource("piece", shape, CORNERS[shape], worked, instructions)  # type: ignore[arg-type]
    return work_motif(source, Workshop(definitions, YARNS, None, 0, None, "US", None))


def holds(text: str, terms: Terms, worked: str, shape: str, own: dict[str, str], counts: Counts) -> None:
    instructions, definitions, problems = read(text, terms, worked, own)
    assert not problems
    fabric, found = work(instructions, definitions, shape, worked)
    assert [problem.message for problem in found if problem.severity == "error"] == []
    made = {one.number: dict(one.counts) for one in fabric.rounds if one.number in counts}
    assert made == counts
    for other, plain in VOICES:
        voice = Voice(other, plain, 0, False, {key: key for key in own}, rows=worked == "rows", source=terms)  # type: ignore[arg-type]
        blocks = piece_blocks(voice, Piece(instructions, (fabric,), ("One size",)))
        written = "\n".join(line_text(block) for block in blocks if isinstance(block, RoundText))
        again, _, problems = read(written, other, worked, own)  # type: ignore[arg-type]
        assert not problems, written
        assert bare_fabric(work(again, definitions, shape, worked)[0]) == bare_fabric(fabric), written


@pytest.mark.parametrize(("text", "base", "counts"), FORMS, ids=[row[0][:60] for row in FORMS])
def test_a_form_is_read_worked_and_read_back(text: str, base: str, counts: Counts) -> None:
    terms, worked, beginning = BASES[base]
    shape = "rectangle" if worked == "rows" else "circle"
    holds(beginning + text, terms, worked, shape, PETAL, counts)  # type: ignore[arg-type]


@pytest.mark.parametrize(("name", "text", "shape", "own", "counts"), WHOLE, ids=[row[0] for row in WHOLE])
def test_a_whole_piece_is_read_worked_and_read_back(name: str, text: str, shape: str, own: dict[str, str], counts: Counts) -> None:
    holds(text, "US", "rounds", shape, own, counts)


def test_colours_change_where_it_is_said() -> None:
    beginning = BASES["sc rows"][2]
    every_row = "Row 2: Ch 1, sc across; turn.\nRows 3-6: Rep Row 2, changing color every row.\n"
    named = "Row 2: Ch 1, sc across; turn.\nRow 3: With B, rep Row 2.\nRow 4: Rep Row 2; change to A.\nRow 5: Ch 1, sc across.\n"
    for text, yarns in ((every_row, "AABABA"), (named, "AABBA")):
        instructions, definitions, problems = read(beginning + text, "US", "rows", {})
        assert not problems
        fabric, _ = work(instructions, definitions, "rectangle", "rows")
        assert "".join(one.yarns[0] for one in fabric.rounds if one.kind == "row") == yarns
