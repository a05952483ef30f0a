"""What is written can be read again, and makes the same piece: in either terms, short or plain, for one size or all."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from importlib import resources
from itertools import groupby

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from words_corpus import STEPS, TEXTS

from motifold.render.fabric import Workshop, work_motif
from motifold.render.fabric.model import Fabric
from motifold.render.pattern import read_pattern
from motifold.render.pattern.instructions import (
    Amount,
    Chain,
    Extent,
    Group,
    Instructions,
    Marker,
    Place,
    Repeat,
    Skip,
    Step,
    StitchSpec,
    Target,
    Turn,
    Words,
    Work,
)
from motifold.render.pattern.model import MotifSource, Pattern, Terms
from motifold.render.pattern.notation import NotationContext, parse_definition, parse_instructions
from motifold.render.pattern.notation.stitches import spec_of
from motifold.render.pattern.problem import NOWHERE, Problem, Span
from motifold.render.words import WordsLook, to_text, write_document
from motifold.render.words.formats import line_text
from motifold.render.words.model import RoundText
from motifold.render.words.rounds import Piece, piece_blocks
from motifold.render.words.steps import steps_text
from motifold.render.words.voice import Voice
from motifold.render.worked import needs_by_size, work_pattern

PETAL = {"US": "(sc, hdc, 3 dc, hdc, sc) in same st", "UK": "(dc, htr, 3 tr, htr, dc) in same st"}
OWN = {"petal": "petal"}
VOICES = [("US", False), ("US", True), ("UK", False), ("UK", True)]


@dataclass(frozen=True)
class Loose:
    """A text that stands in no file."""

    text: str

    def span(self, start: int, end: int) -> Span:
        return Span(1, start + 1, end - start)


def read(text: str, terms: Terms, worked: str = "rounds", sizes: int = 1) -> tuple[Instructions, tuple[Problem, ...]]:
    context = NotationContext(terms, ("A", "B"), OWN, sizes, worked)  # type: ignore[arg-type]
    return parse_instructions(Loose(text), context)


def work(instructions: Instructions, worked: str, rounds: int | None = None) -> tuple[Fabric, tuple[Problem, ...]]:
    definition, _ = parse_definition("petal", Loose(PETAL["US"]), NotationContext("US", (), OWN))
    assert definition is not None
    source = MotifSource("piece", "square" if worked == "rounds" else "strip", 4, worked, instructions)  # type: ignore[arg-type]
    return work_motif(source, Workshop({"petal": definition}, ("A", "B"), rounds, 0, 1.25, "US", None))


def bare(node: object) -> object:
    """A tree or a Fabric without what only says where it was written."""
    if isinstance(node, tuple):
        return tuple(bare(part) for part in node)
    fields = getattr(node, "__dataclass_fields__", None)
    if fields is None:
        return dict(node) if hasattr(node, "items") else node  # type: ignore[call-overload]
    if isinstance(node, Words):  # plain words spell a remark out
        node = replace(node, text=Voice(plain=True).spelt_out(node.text))
        fields = node.__dataclass_fields__
    kept = [name for name in fields if name not in ("id", "span", "origin", "line", "label")]
    return (type(node).__name__, *((name, bare(getattr(node, name))) for name in kept))


def made(fabric: Fabric) -> object:
    return bare(fabric.stitches), bare(fabric.runs), bare(fabric.groups), bare(fabric.rounds)


@pytest.mark.parametrize(("terms", "plain"), VOICES)
@pytest.mark.parametrize("name", TEXTS)
def test_a_motif_written_again_makes_the_same_fabric(name: str, terms: Terms, plain: bool) -> None:
    source_terms, worked, text = TEXTS[name]
    rounds = 5 if name == "granny" else None
    instructions, problems = read(text, source_terms, worked)  # type: ignore[arg-type]
    assert not problems
    fabric, _ = work(instructions, worked, rounds)
    assert fabric.stitches
    blocks = piece_blocks(Voice(terms, plain, 0, False, OWN), Piece(instructions, (fabric,), ("One size",)))
    written = "\n".join(line_text(block) for block in blocks if isinstance(block, RoundText))
    again, new_problems = read(written, terms, worked)
    assert not new_problems, written
    fabric_again, _ = work(again, worked, rounds)
    assert made(fabric_again) == made(fabric)


@pytest.mark.parametrize("plain", [False, True])
@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("text", STEPS)
def test_every_form_of_step_is_read_as_it_was(text: str, terms: Terms, plain: bool) -> None:
    instructions, problems = read(f"Rnd 4: {text}", "US", sizes=3)
    assert not problems
    steps = instructions.lines[0].steps
    written = steps_text(Voice(terms, plain, None, False, OWN), steps)
    again, new_problems = read(f"Rnd 4: {written}", terms, sizes=3)
    assert not new_problems, written
    assert bare(again.lines[0].steps) == bare(steps), written


@cache
def worked_sample(name: str) -> tuple[Pattern, object]:
    reading = read_pattern(name, resources.files("motifold.samples").joinpath(name).read_bytes())
    assert reading.pattern is not None
    return reading.pattern, work_pattern(reading.pattern)


SAMPLES = sorted(item.name for item in resources.files("motifold.samples").iterdir() if item.name.endswith(".toml"))


@pytest.mark.parametrize(("terms", "plain"), VOICES)
@pytest.mark.parametrize("sample", SAMPLES)
def test_a_sample_pasted_into_its_file_makes_the_same_fabric_in_every_size(sample: str, terms: Terms, plain: bool) -> None:
    pattern, worked = worked_sample(sample)
    document = write_document(worked, needs_by_size(worked), WordsLook(terms, plain))  # type: ignore[arg-type]
    names = tuple(yarn.key for yarn in pattern.yarns)
    defined = {stitch.key: stitch.name for stitch in pattern.stitches}
    definitions = {stitch.key: stitch.definition for stitch in pattern.stitches if stitch.definition}
    sizes = worked.sizes  # type: ignore[attr-defined]
    for section in document.sections:
        motif = next((m for m in pattern.motifs if section.key == "motif" and m.name == section.subject), None)
        if motif is None:
            continue
        text = "\n".join(line_text(block) for block in section.blocks if isinstance(block, RoundText))
        again, problems = parse_instructions(Loose(text), NotationContext(terms, names, defined, len(sizes), motif.worked))
        assert not problems, text
        for size in sizes:
            shop = Workshop(definitions, names, size.choice.rounds[motif.name], size.choice.index, None, terms, motif.counts_as)
            source = MotifSource(motif.name, motif.shape, motif.sides, motif.worked, again, motif.last_round, motif.counts_as)
            assert made(work_motif(source, shop)[0]) == made(size.fabrics[motif.name])


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("sample", SAMPLES)
def test_an_edging_reads_back_to_the_same_steps(sample: str, terms: Terms) -> None:
    pattern, worked = worked_sample(sample)
    document = write_document(worked, {}, WordsLook(terms))  # type: ignore[arg-type]
    sizes = len(worked.sizes)  # type: ignore[attr-defined]
    for section in document.sections:
        edging = next((e for e in pattern.edgings if section.key == "edging" and e.name == section.subject), None)
        if edging is None:
            continue
        text = "\n".join(line_text(block) for block in section.blocks if isinstance(block, RoundText))
        again, problems = parse_instructions(Loose(text), NotationContext(terms, tuple(y.key for y in pattern.yarns), {}, sizes))
        assert not problems, text
        assert told_once(again) == told_once(edging.instructions)
        printed = [bare(line.counts) for line in again.lines]
        assert all(bare(line.counts) in printed for line in edging.instructions.lines if line.counts)


def told_once(instructions: Instructions) -> list[object]:
    """What the lines say one after another; rounds that are worked alike share a line in print, and brackets "once" are none."""
    return [steps for steps, _ in groupby(bare(unbracketed(line.steps)) for line in instructions.lines)]


def unbracketed(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    once = Amount((1,))
    return tuple(one for step in steps for one in (step.steps if isinstance(step, Repeat) and step.times == once else (step,)))


# Trees of every kind, made up: each must come back from its own words.

NAMES = ["sc", "hdc", "dc", "tr", "dtr", "FPdc", "BPtr", "dc3tog", "5-dc cl", "edc", "puff", "petal"]
ONE_NUMBER = st.integers(1, 30).map(lambda n: Amount((n,)))
A_NUMBER_A_SIZE = st.lists(st.integers(1, 30), min_size=3, max_size=3, unique=True).map(lambda numbers: Amount(tuple(numbers)))
NUMBERS = st.one_of(ONE_NUMBER, A_NUMBER_A_SIZE)
NOUNS = st.one_of(
    st.builds(Target, st.just("st"), corner=st.booleans()),
    st.builds(Target, st.just("stitch"), name=st.sampled_from(["sc", "hdc", "dc", "tr", "FPdc", "petal"])),
    st.builds(Target, st.just("sp"), chains=st.integers(1, 9), corner=st.booleans(), loop=st.booleans()),
    st.just(Target("corner", corner=True)),
)


def extents() -> st.SearchStrategy[Extent]:
    way = st.sampled_from(["around", "across", "end"]).map(lambda kind: Extent(kind))  # type: ignore[arg-type]
    last = st.builds(lambda n: Extent("last", count=n, target=Target("st")), NUMBERS)
    to = NOUNS.map(lambda noun: Extent("to", place=Place(NOWHERE, "next", noun)))
    return st.one_of(way, last, to)


def places() -> st.SearchStrategy[Place]:
    one = st.builds(lambda which, noun: Place(NOWHERE, which, noun), st.sampled_from(["next", "same", "first", "last"]), NOUNS)
    several = st.builds(lambda noun, n: Place(NOWHERE, "next", noun, n, each=True), NOUNS, NUMBERS.filter(lambda n: n.values != (1,)))
    each = st.builds(lambda noun, extent: Place(NOWHERE, "each", noun, each=True, extent=extent), NOUNS, extents())
    loop = st.builds(lambda side: Place(NOWHERE, "next", Target("st"), loop=side), st.sampled_from(["back", "front"]))
    return st.one_of(one, several, each, loop)


def works() -> st.SearchStrategy[Work]:
    return st.builds(lambda name, n, place: Work(0, NOWHERE, spec_of(name), n, place), st.sampled_from(NAMES), NUMBERS, places())


def increases() -> st.SearchStrategy[Work]:
    places = NOUNS.filter(lambda noun: noun.kind == "st").map(lambda noun: Place(NOWHERE, "next", noun))
    spec = st.sampled_from(["sc", "hdc", "dc"]).map(lambda name: StitchSpec(name, increase=2))
    return st.builds(lambda spec, place: Work(0, NOWHERE, spec, place=place), spec, places)


def markers() -> st.SearchStrategy[Marker]:
    spots = st.builds(lambda which, noun: Place(NOWHERE, which, noun), st.sampled_from(["next", "first", "last", "same"]), NOUNS)
    corners = st.just(Place(NOWHERE, "each", Target("corner", corner=True), each=True))
    return st.one_of(
        st.builds(lambda place: Marker(0, NOWHERE, "place", place), st.one_of(st.none(), spots, corners)),
        st.builds(lambda place: Marker(0, NOWHERE, "slip", place), st.one_of(st.none(), spots)),
    )


MARKED = st.one_of(
    st.just(Target("marker")), st.one_of(st.none(), st.integers(1, 5)).map(lambda n: Target("marker", name="sp", chains=n))
)


def skips() -> st.SearchStrategy[Skip]:
    things = NOUNS.filter(lambda noun: noun.kind != "corner")
    several = st.builds(lambda noun, n: Place(NOWHERE, "next", noun, n, each=True), things, NUMBERS.filter(lambda n: n.values != (1,)))
    first = NOUNS.map(lambda noun: Place(NOWHERE, "first", noun))
    return st.one_of(several, first, MARKED.map(lambda noun: Place(NOWHERE, "next", noun))).map(lambda place: Skip(0, NOWHERE, place))


def in_turn() -> st.SearchStrategy[Repeat]:
    """Each kind of place met in its turn: "sc in each dc, 2 sc in each ch-1 sp and 3 sc in each corner around"."""
    stitch = st.sampled_from(["sc", "hdc", "dc", "tr", "petal"]).map(lambda name: Target("stitch", name=name))
    space = st.integers(1, 9).map(lambda n: Target("sp", chains=n))
    nouns = st.tuples(stitch, space, st.just(Target("corner", corner=True)))
    names = st.sampled_from(["sc", "hdc", "dc"])
    parts = nouns.flatmap(
        lambda kinds: st.tuples(*(
            names.map(lambda name, n=n, noun=noun: Work(0, NOWHERE, spec_of(name), Amount((n,)), Place(NOWHERE, "each", noun, each=True)))
            for n, noun in enumerate(kinds, 1)
        ))
    )
    return parts.map(lambda steps: Repeat(0, NOWHERE, steps, extent=Extent("around"), style="each"))


PLAIN_STEPS = st.one_of(
    works(),
    increases(),
    markers(),
    skips(),
    MARKED.map(lambda noun: Work(0, NOWHERE, spec_of("dc"), Amount((2,)), Place(NOWHERE, "next", noun))),
    st.builds(lambda n: Chain(0, NOWHERE, n), NUMBERS),
    st.builds(lambda noun: Skip(0, NOWHERE, Place(NOWHERE, "next", noun)), NOUNS),
    st.just(Turn(0, NOWHERE)),
    st.builds(
        lambda inner, noun: Group(0, NOWHERE, tuple(Work(0, NOWHERE, spec_of(name), n) for name, n in inner), Place(NOWHERE, "next", noun)),
        st.lists(st.tuples(st.sampled_from(["sc", "dc", "tr"]), st.integers(1, 5).map(lambda n: Amount((n,)))), min_size=2, max_size=4),
        NOUNS,
    ),
)


def repeats(inner: st.SearchStrategy[Step]) -> st.SearchStrategy[Step]:
    steps = st.lists(inner, min_size=2, max_size=4).map(tuple)
    timed = st.builds(lambda steps, n: Repeat(0, NOWHERE, steps, times=n), steps, st.integers(2, 9).map(lambda n: Amount((n,))))
    until = st.builds(lambda steps, extent: Repeat(0, NOWHERE, steps, extent=extent), steps, extents())
    return st.one_of(timed, until)


LINES = st.lists(st.one_of(st.recursive(PLAIN_STEPS, repeats, max_leaves=6), in_turn()), min_size=1, max_size=5).map(tuple)


@settings(max_examples=60, deadline=None)
@given(LINES, st.sampled_from(["US", "UK"]), st.booleans())
def test_made_up_lines_come_back_from_their_words(steps: tuple[Step, ...], terms: Terms, plain: bool) -> None:
    written = steps_text(Voice(terms, plain, None, False, OWN), steps)
    again, problems = read(f"Rnd 4: {written}", terms, sizes=3)
    assert not problems, written
    assert unstyled(bare(again.lines[0].steps)) == unstyled(bare(steps)), written


def unstyled(node: object) -> object:
    """Without the brackets that a repeat was written with: square and round ones take turns."""
    if not isinstance(node, tuple):
        return node
    return tuple(unstyled(part) for part in node if not (isinstance(part, tuple) and part[:1] == ("style",)))


def test_a_document_can_be_pasted_whole() -> None:
    pattern, worked = worked_sample("tidepool-coaster.toml")
    text = to_text(write_document(worked, {}, WordsLook("US")))  # type: ignore[arg-type]
    lines = [line for line in text.splitlines() if line.startswith(("Ring:", "Rnd", "Finish:"))]
    assert len(lines) == len(pattern.motifs[0].instructions.lines)


