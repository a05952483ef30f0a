"""Assembled things of every kind as whole pattern files: found right, and told in words that follow the drawings."""

from __future__ import annotations

from functools import cache
from importlib import resources

import pytest

from motifold.render.assembly.foldflat import Folded
from motifold.render.assembly.form import finished_form, finished_measures, worn_over
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.schematics import draw_net
from motifold.render.assembly.solid import Solid
from motifold.render.assembly.steps import assembly_steps
from motifold.render.drawing.display import Group, Text
from motifold.render.pattern import read_pattern
from motifold.render.words import write_document
from motifold.render.words.model import Items
from motifold.render.words.voice import WordsLook
from motifold.render.worked import Worked, needs_by_size, work_pattern

from assembly_kit import flat, words_over_words  # isort: skip

ASSEMBLED = (
    *("lighthouse-basket", "harbour-jacket", "ferry-hat", "cargo-bag", "buoy-ball", "pier-blanket"),
    *("deckhand-mitts", "signal-bunting", "sea-pink-blanket", "watch-headband"),
)


@cache
def worked(name: str) -> Worked:
    reading = read_pattern(name, resources.files("motifold.samples").joinpath(f"{name}.toml").read_bytes())
    assert reading.pattern is not None
    return work_pattern(reading.pattern, reading_problems=reading.problems)


def assembly_of(name: str) -> Assembly:
    assembly = worked(name).sizes[-1].assembly
    assert assembly is not None
    return assembly


def steps_in_words(name: str) -> list[str]:
    made = worked(name)
    document = write_document(made, needs_by_size(made), WordsLook())
    section = next(section for section in document.sections if section.key == "assembly")
    return [item for block in section.blocks if isinstance(block, Items) and block.numbered for item in block.items]


@pytest.mark.parametrize("name", ASSEMBLED)
def test_a_sample_is_proved_in_silence(name: str) -> None:
    assert worked(name).problems == ()
    assembly = assembly_of(name)
    assert assembly.pieces == assembly.copies and assembly.orientable and assembly.gaps == ()
    assert len(steps_in_words(name)) == len(assembly_steps(assembly))


def test_a_pentagon_that_nobody_measured_takes_its_size_from_the_hexagons_beside_it() -> None:
    ball = assembly_of("buoy-ball")
    # The hexagon is 5.6 cm across: its side is 5.6 tan 30.
    assert all(side == pytest.approx(5.6 / 3**0.5) for panel in ball.panels for side in panel.sides_cm)
    assert isinstance(finished_form(ball), Solid)
    assert sum(360 - corner.degrees for corner in ball.corners) == pytest.approx(720)


def test_the_balls_plan_has_names_and_no_crowd_of_letters() -> None:
    net = draw_net(assembly_of("buoy-ball"))
    words = [o.words for o in flat(net.operations) if isinstance(o, Text)]
    assert {panel.name for panel in assembly_of("buoy-ball").panels} <= set(words)
    assert words_over_words(net) == []


def test_a_hat_with_its_brim_up_is_still_worn_over() -> None:
    assert worn_over(assembly_of("ferry-hat"))


def test_the_bag_measures_three_squares_across_and_its_mouth_four_sides() -> None:
    measures = {measure.name: measure.cm for measure in finished_measures(assembly_of("cargo-bag"))}
    assert measures == pytest.approx({"flat width": 42.0, "flat height": 42.0, "opening": 56.0})


def test_a_blanket_of_108_squares_is_joined_in_four_kinds_of_steps() -> None:
    blanket = assembly_of("pier-blanket")
    steps = assembly_steps(blanket)
    assert [(len(step.made), set(step.own)) for step in steps] == [(1, set()), (8, {"left"}), (11, {"top"}), (88, {"left", "top"})]
    assert sorted(seam.seam for step in steps for seam in step.steps) == list(range(8 * 12 + 9 * 11))
    words = [item.replace("\N{NO-BREAK SPACE}", " ") for item in steps_in_words("pier-blanket")]
    assert words[0] == "Work A1 as written."
    # Four rounds: three ch-1 spaces a side, a ch-2 space at each corner.
    assert words[1] == "Work A2 to A9, each joined along its left side: 5 joining sl sts in place of 3 ch-1 sps and 2 ch-2 sps."
    assert words[3].endswith("9 joining sl sts in place of 6 ch-1 sps and 3 ch-2 sps.")


def test_a_jackets_hem_hangs_down_and_its_cuffs_are_above_it() -> None:
    jacket = finished_form(assembly_of("harbour-jacket"))
    assert isinstance(jacket, Folded)

    def height(opening: int) -> float:
        middles = [jacket.panels[p].sides[e][1][1] for p, e in jacket.openings[opening]]
        return min(middles) if opening == longest else sum(middles) / len(middles)

    longest = max(range(3), key=lambda opening: len(jacket.openings[opening]))
    cuffs = [height(opening) for opening in range(3) if opening != longest]
    assert min(cuffs) - height(longest) > 50 and cuffs[0] == pytest.approx(cuffs[1])
    lowest = min(y for _, y in jacket.points)
    names = [panel.name for panel in assembly_of("harbour-jacket").panels]
    hem = {names[p] for p, e in jacket.openings[longest] if jacket.panels[p].sides[e][1][1] < lowest + 30}
    assert hem == {"L", "R"}


def test_the_headbands_edgings_widen_it_and_the_mitts_cuffs_lengthen_them() -> None:
    band = worked("watch-headband").sizes[0]
    assert band.assembly is not None and len(band.rims) == 2
    bare, edged = ({m.name: m.cm for m in finished_measures(band.assembly, rims)} for rims in ((), band.rims))
    # A stitch is 10 / 14 cm wide, and sc 0.88 of that high.
    assert edged["depth"] - bare["depth"] == pytest.approx(2 * 0.88 * 10 / 14, abs=1e-5)
    mitts = worked("deckhand-mitts").sizes[0]
    assert mitts.assembly is not None and sorted(rim.name for rim in mitts.rims) == ["cuff", "fingers"]
    bare, edged = ({m.name: m.cm for m in finished_measures(mitts.assembly, rims)} for rims in ((), mitts.rims))
    assert edged["flat height"] - bare["flat height"] == pytest.approx(sum(rim.depth_cm for rim in mitts.rims), abs=1e-5)


def test_schematics_say_which_size_they_show() -> None:
    from motifold.render.schematics import draw_schematics, drawn_size

    hat = worked("ferry-hat").pattern
    for asked, shown in ((None, "Adult"), ("Child", "Child")):
        made = work_pattern(hat, size_name=asked)
        size = drawn_size(made)
        assert size is not None and size.choice.name == shown
        for named in draw_schematics(made, size):
            words = [o.words for o in named.drawing.operations if isinstance(o, Text)]
            assert f"Size {shown}" in words and named.drawing.title.startswith(hat.title)


def test_a_motif_joined_as_it_is_worked_has_a_chart_of_each_way_to_join() -> None:
    """Squares of 4 rounds: 3 spaces and 2 corners along one side are 5 joining slip stitches, along two sides 9, as the words say."""
    from motifold.render.joining import draw_joins

    blanket = worked("pier-blanket")
    drawn = draw_joins(blanket, blanket.sizes[0])
    assert [named.name for named in drawn] == ["join-1", "join-2"]
    for named, sides, count in zip(drawn, ("one side", "two sides"), (5, 9), strict=True):
        assert f"Joined along {sides}" in named.drawing.description and f"{count} joining slip stitches" in named.drawing.description
        marks = [o for o in named.drawing.operations if isinstance(o, Group) and o.css_class == "join"]
        assert len(marks) == count and words_over_words(named.drawing) == []
    sewn = worked("ferry-hat")
    assert draw_joins(sewn, sewn.sizes[0]) == ()
