# ruff: noqa: E501 (texts keep their lines)
"""Long work is quick, and what nobody would work is told at once."""

from __future__ import annotations

import cProfile
import time
import tracemalloc

import pytest
from make import made, read

from motifold.render.fabric import Workshop, work_motif
from motifold.render.fabric.bench import MOST_STITCHES
from motifold.render.pattern import read_pattern
from motifold.render.pattern.model import MotifSource
from motifold.render.worked import Worked, work_pattern


def doily(rounds: int, stitches: int = 100) -> str:
    """Joined rounds of double crochet and of single crochet by turns."""
    lines = [
        "Ring: Ch 8; join with sl st in first ch to form a ring.",
        f"Rnd 1: Ch 3 (counts as dc here and throughout), {stitches - 1} dc in ring; join with sl st in top of beg ch-3. ({stitches} dc)",
    ]
    for number in range(2, rounds + 1):
        if number % 2 == 0:
            lines.append(
                f"Rnd {number}: Ch 1, sc in same st, [sc in next 3 sts, sc in next st] 10 times, sc in each st around; join. ({stitches} sc)"
            )
        else:
            lines.append(
                f"Rnd {number}: Ch 3, dc in next {stitches // 2 - 1} sts, [dc in next sc] {stitches // 2} times; join. ({stitches} dc)"
            )
    return "\n".join(lines)


def seconds_to_work(rounds: int) -> tuple[float, int]:
    instructions, definitions, problems = read(doily(rounds))
    assert not problems
    shop = Workshop(definitions, ("A",), None, 0, None, "US", None)
    source = MotifSource("doily", "circle", 0, "rounds", instructions)
    started = time.process_time()
    fabric, found = work_motif(source, shop)
    spent = time.process_time() - started
    assert not found
    return spent, len(fabric.stitches)


def test_a_doily_of_twenty_thousand_stitches_takes_less_than_a_second() -> None:
    runs = [seconds_to_work(200) for _ in range(3)]
    assert runs[0][1] > 20_000
    assert min(spent for spent, _ in runs) < 1.0


def calls_to_work(rounds: int) -> int:
    """How many functions are called: unlike seconds, the same on a busy machine."""
    instructions, definitions, _ = read(doily(rounds))
    shop = Workshop(definitions, ("A",), None, 0, None, "US", None)
    profile = cProfile.Profile()
    profile.enable()
    work_motif(MotifSource("doily", "circle", 0, "rounds", instructions), shop)
    profile.disable()
    return sum(entry.callcount for entry in profile.getstats())


def test_work_grows_in_proportion() -> None:
    assert calls_to_work(200) < 10.5 * calls_to_work(20)


def test_memory_grows_in_proportion() -> None:
    peaks = []
    for rounds in (20, 200):
        instructions, definitions, _ = read(doily(rounds))
        shop = Workshop(definitions, ("A",), None, 0, None, "US", None)
        tracemalloc.start()
        work_motif(MotifSource("doily", "circle", 0, "rounds", instructions), shop)
        peaks.append(tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
    assert peaks[1] < 13 * peaks[0]


TOO_MUCH = {
    "a repeat of 100000": "Ring: Magic ring.\nRnd 1: [2 sc in ring] 99999 times; join.\n",
    "repeats in repeats": "Ring: Magic ring.\nRnd 1: " + "[" * 30 + "sc in ring" + "] 9 times" * 30 + "; join.\n",
    "an empty repeat": "Ring: Magic ring.\nRnd 1: [[turn] 90000 times] 90000 times; join.\n",
    "a chain of 100000": "Chain: Ch 99999.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n",
    "rounds that double": "Ring: Magic ring.\nRnd 1: 6 sc in ring.\nRnds 2-60: 2 sc in each st around.\n",
    "rounds without end": "Ring: Magic ring.\nRnd 1: 6 sc in ring.\nRnds 2-90000: Sc in each st around.\n",
    "a repeat that goes nowhere": "Ring: Magic ring.\nRnd 1: 6 sc in ring; join.\nRnd 2: [ch 1] around; join.\n",
}


QUIET = 0.011
"""Seconds that ``calibration`` takes on a quiet machine of today; a busy one is granted as many times more as it takes there."""


def calibration() -> float:
    """Seconds of one processor for a fixed piece of arithmetic, now: the shortest of several."""

    def once() -> float:
        started = time.process_time()
        sum(number * number for number in range(200_000))
        return time.process_time() - started

    return min(once() for _ in range(5))


@pytest.mark.parametrize("name", sorted(TOO_MUCH))
def test_more_than_anyone_would_do_is_one_clear_problem(name: str) -> None:
    before = calibration()
    started = time.process_time()
    worked = made(TOO_MUCH[name], rows="Row" in TOO_MUCH[name])
    spent = time.process_time() - started
    slower = max(1.0, before / QUIET, calibration() / QUIET)
    assert spent < 1.5 * slower
    assert {"limit", "repeat"} & set(worked.codes)
    assert worked.fabric.stitches is not None


@pytest.mark.parametrize("name", sorted(TOO_MUCH))
def test_more_than_anyone_would_do_is_little_work(name: str) -> None:
    """How many functions are called: unlike seconds, the same on a busy machine."""
    profile = cProfile.Profile()
    profile.enable()
    made(TOO_MUCH[name], rows="Row" in TOO_MUCH[name])
    profile.disable()
    assert sum(entry.callcount for entry in profile.getstats()) < 1_000_000


def stitches_of(worked: Worked) -> int:
    """How many stitches all its pieces have, in all sizes, each piece counted once."""
    fabrics = {id(one): one for size in worked.sizes for one in (*size.fabrics.values(), *size.edgings.values())}
    return sum(len(fabric.stitches) for fabric in fabrics.values())


BLANKET = '''[pattern]
title = "A blanket of one piece"
terms = "US"
[yarn.A]
name = "Fog"
[motif.blanket]
shape = "rectangle"
rows = """
Chain: Ch 251.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (250 sc)
Rows 2-400: Ch 1 (does not count as a st), sc in each st across, turn. (250 sc)
"""
'''


def test_a_blanket_of_a_hundred_thousand_stitches_is_worked() -> None:
    reading = read_pattern("blanket.toml", BLANKET.encode())
    assert reading.pattern is not None
    worked = work_pattern(reading.pattern, reading_problems=reading.problems)
    assert not worked.problems
    assert stitches_of(worked) > 100_000


def garment(rows: int, last: str = "100 cm") -> Worked:
    """The same in five sizes of some 240 stitches a row; ``last``: what the largest measures."""
    text = BLANKET.replace("Rows 2-400", f"Rows 2-{rows}").replace("Ch 251", "Ch 231 (236, 241, 246, 251)")
    text = text.replace("(250 sc)", "(230 (235, 240, 245, 250) sc)")
    bodies = {"S": "92 cm", "M": "94 cm", "L": "96 cm", "XL": "98 cm", "2XL": last}
    text += '[gauge]\nmotif = "blanket"\nstitches = 10\nwidth = "4 cm"\n[size]\nmeasure = "width"\n[size.bodies]\n'
    text += "".join(f'{name} = "{body}"\n' for name, body in bodies.items())
    reading = read_pattern("garment.toml", text.encode())
    assert reading.pattern is not None
    return work_pattern(reading.pattern, reading_problems=reading.problems)


def test_five_sizes_of_twenty_thousand_stitches_are_worked() -> None:
    worked = garment(80)
    assert not [problem for problem in worked.problems if problem.severity == "error"]
    assert len(worked.sizes) == 5
    assert stitches_of(worked) > 90_000


def test_sizes_that_make_too_many_stitches_with_those_before_them_are_named_once() -> None:
    worked = garment(120)
    told = [problem for problem in worked.problems if problem.severity == "error"]
    assert [problem.code for problem in told] == ["limit"]
    assert f"sizes XL, 2XL are not worked: with the sizes before, the pattern makes more than {MOST_STITCHES:,} stitches" == told[0].message
    assert stitches_of(worked) <= MOST_STITCHES + 1


def test_nobody_measures_more_than_five_metres() -> None:
    worked = garment(10, last="9000 cm")
    told = [problem for problem in worked.problems if problem.severity == "error"]
    assert [problem.code for problem in told] == ["quantity"]
    assert "at most 5 m" in told[0].message


MANY = 10_000
NESTED = {
    "square brackets": "[" * MANY + "sc in next st" + "]" * MANY + " 3 times; join.",
    "round brackets": "(" * MANY + "sc in next st" + ")" * MANY + " x 3; join.",
    "braces": "{" * MANY + "sc in next st" + "}" * MANY,
    "stars": "*" * MANY + "sc in next st" + "; rep from * around" * MANY,
    "brackets never closed": "[" * MANY,
    "brackets by turns": "[(" * MANY + "sc in next st" + ")]" * MANY,
    "increases by the dozen": "inc *3, " * 2_500,
    "a repeat of a milliard": "[sc in next st] 1000000000 times; join.",
    "a milliard more times": "*sc in next st; rep from * 1000000000 more times; join.",
    "a number of five thousand digits": "sc in next " + "9" * 5000 + " sts; join.",
}


@pytest.mark.parametrize("name", sorted(NESTED))
def test_absurd_nesting_and_numbers_are_told_within_a_second(name: str) -> None:
    text = "Ring: Magic ring.\nRnd 1: Ch 1, 6 sc in ring; join with sl st in first sc.\nRnd 2: " + NESTED[name] + "\n"
    before = calibration()
    started = time.process_time()
    worked = made(text)
    spent = time.process_time() - started
    assert worked.read or worked.problems
    assert spent < max(1.0, before / QUIET, calibration() / QUIET)
