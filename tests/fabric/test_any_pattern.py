"""Whatever the number of sides, rounds and stitches: the closed formulas hold, and a number changed anywhere shows."""

from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st
from make import Made, read

from motifold.render.fabric import Workshop, work_motif
from motifold.render.pattern.model import MotifSource

SIDES = st.integers(3, 9)
ROUNDS = st.integers(1, 6)


def worked(text: str, sides: int, rows: bool = False) -> Made:
    instructions, definitions, problems = read(text, rows=rows)
    source = MotifSource("m", "polygon", 4 if rows else sides, "rows" if rows else "rounds", instructions)
    fabric, found = work_motif(source, Workshop(definitions, ("A",), None, 0, None, "US", None))
    return Made(fabric, problems, found)


def solid(sides: int, rounds: int, first: int, stated: bool = True) -> str:
    """Solid polygons: ``first`` dc a side, and (2 dc, ch 2, 2 dc) in each corner."""
    lines = [
        "Ring: Make a magic ring.",
        f"Rnd 1: Ch 3 (counts as dc here and throughout), {first - 1} dc in ring, ch 2, [{first} dc in ring, ch 2] {sides - 1} times; "
        f"join with sl st in top of beg ch-3. ({first * sides} dc, {sides} ch-2 sps)",
    ]
    for number in range(2, rounds + 1):
        here = sides * (first + 4 * (number - 1))
        side = first + 4 * (number - 2)
        lead = first - 1 if number == 2 else first + 2 * (number - 2) - 1
        lead = f"dc in next {lead} dc, " if lead else ""
        rest = side - (first + 2 * (number - 2)) if number > 2 else 0
        tail = f", dc in each of last {rest} dc" if rest else ""
        lines.append(
            f"Rnd {number}: Ch 3, {lead}*(2 dc, ch 2, 2 dc) in next ch-2 sp**, dc in next {side} dc; rep from * around, "
            f"ending last rep at **"
            f"{tail}; join with sl st in top of beg ch-3. ({here} dc, {sides} ch-2 sps)"
        )
    return "\n".join(lines) + "\n"


def granny(sides: int, rounds: int) -> str:
    """Groups of three: two groups in each corner, one in each space of a side."""
    lines = [
        "Ring: Ch 4; join with sl st in first ch to form a ring.",
        f"Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] {sides - 1} times; "
        f"join with sl st in top of beg ch-3. ({3 * sides} dc, {sides} ch-2 sps)",
    ]
    for number in range(2, rounds + 1):
        side = f"[3 dc in next ch-1 sp, ch 1] {number - 2} times, " if number > 2 else ""
        counts = f"({3 * sides * number} dc, {sides * (number - 1)} ch-1 sps, {sides} ch-2 sps)"
        lines.append(
            f"Rnd {number}: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, "
            f"[{side}(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] {sides - 1} times{', ' + side.removesuffix(', ') if side else ''}; "
            f"join with sl st in top of beg ch-3. {counts}"
        )
    return "\n".join(lines) + "\n"


def rows(count: int, number: int, stitch: str) -> str:
    """A piece of so many stitches and rows."""
    missed, turning = {"sc": (1, "Ch 1"), "dc": (3, "Ch 3 (counts as dc)")}[stitch]
    counted = ", dc in 4th ch from hook (missed 3 ch count as dc)" if stitch == "dc" else f", {stitch} in 2nd ch from hook"
    chains = count + missed - (1 if stitch == "dc" else 0)
    lines = [f"Chain: Ch {chains}.", f"Row 1 (RS): {counted[2:].capitalize()}, {stitch} in each ch across; turn. ({count} {stitch})"]
    side = ["RS", "WS"]
    for row in range(2, number + 1):
        lines.append(f"Row {row} ({side[(row + 1) % 2]}): {turning}, {stitch} in each st across; turn. ({count} {stitch})")
    return "\n".join(lines) + "\n"


@settings(max_examples=40, deadline=None)
@given(SIDES, ROUNDS, st.integers(2, 5))
def test_solid_polygons_follow_their_formula(sides: int, rounds: int, first: int) -> None:
    made = worked(solid(sides, rounds, first), sides)
    assert [p for p in (*made.read, *made.problems) if p.severity == "error"] == []
    assert {side.counts["dc"] for side in made.fabric.sides} == {first + 4 * (rounds - 1)}
    assert len(made.fabric.sides) == sides


@settings(max_examples=40, deadline=None)
@given(SIDES, ROUNDS)
def test_polygons_of_groups_follow_their_formula(sides: int, rounds: int) -> None:
    made = worked(granny(sides, rounds), sides)
    assert [p for p in (*made.read, *made.problems) if p.severity == "error"] == []
    assert {(side.counts["dc"], side.stitches) for side in made.fabric.sides} == {(3 * rounds, 4 * rounds + 1)}


@settings(max_examples=40, deadline=None)
@given(st.integers(3, 60), st.integers(1, 12), st.sampled_from(["sc", "dc"]))
def test_rows_keep_their_count(count: int, number: int, stitch: str) -> None:
    made = worked(rows(count, number, stitch), 4, rows=True)
    assert [p for p in (*made.read, *made.problems) if p.severity == "error"] == []
    assert all(one.met == count for one in made.fabric.rounds[1:])


WORKED_NUMBER = re.compile(r"(?<![-\w])\d+(?= (?:dc|sc|ch\b|times|ch-2 sps|ch-1 sps))|(?<=ch )\d+|(?<=next )\d+")


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_a_number_changed_anywhere_is_told_or_counted(data: st.DataObject) -> None:
    sides, rounds = data.draw(SIDES), data.draw(st.integers(2, 4))
    text = data.draw(st.sampled_from([granny(sides, rounds), solid(sides, rounds, 3)]))
    spots = [found for found in WORKED_NUMBER.finditer(text) if not text[: found.start()].endswith(("Rnd ", "Ring: Ch ", "Sl st in next "))]
    spot = data.draw(st.sampled_from(spots))
    number = int(spot.group()) + data.draw(st.sampled_from([1, 2, 5]))
    changed = text[: spot.start()] + str(number) + text[spot.end() :]
    before, after = worked(text, sides), worked(changed, sides)
    assert after.read or after.problems or [one.counts for one in before.fabric.rounds] != [one.counts for one in after.fabric.rounds]
