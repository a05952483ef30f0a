"""Whatever is typed, reading and working it ends soon and with problems, not with a traceback.

Seeds are the samples and the library of good patterns; a mutation changes what writers and keyboards change: numbers, words, brackets,
lines, keys, quotes, and steps, places and stitches of the notation.
``MOTIFOLD_FUZZ`` says how many are tried in the slow tier (5,000 if it says nothing).

What bounds the time: a pattern makes at most 102,000 stitches, all pieces and sizes together (a size that would make more is not worked,
and said so), and twice as many steps; a round has at most 6,000 stitches; no body measures more than 5 m; a mistake is tried to be
mended in pieces of up to 30,000 stitches, and nothing more is worked after an error once 20,000 were made.
"""

from __future__ import annotations

import os
import random
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from good import GOOD, as_file
from more_good import MORE

from motifold.render.pattern import read_pattern
from motifold.render.worked import work_pattern

SAMPLES = [path.read_text(encoding="utf-8") for path in sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))]
LIBRARY = [as_file(name, pattern) for name, pattern in sorted((GOOD | MORE).items())]
LONGEST = 2.0
"""Seconds of one processor that any one file may take."""
SAMPLE = 150

SPARE = (
    "ch 3", "dc in next st", "sc2tog over last 2 sts", "turn", "join", "[", "]", "(", ")", "*", "**", "rep from * around", ";", ":", ",",
    "to last st", "around", "in next ch-2 sp", "of Rnd 1", "in corner", "evenly along side", "2 rnds below", "unused front lps of Rnd 1",
    "99999", "0", "-1", "5 (6, 7)", "Row 2:", "Rnd 9:", "do not join", "fasten off", "between next 2 dc", "in tch", "in same st", "skip",
    "working in other side of foundation ch", "petal in next st", "V-st in next V-st", "rep Rnds 1-3 twice", "picot",
    "until piece measures 9 cm", "\u00e9", "\u2013", "\U0001f9f6", "\t", "\"\"\"", "\\", "#", "[motif.x]", "= ", "'",
)  # fmt: skip


def _characters(text: str, pick: random.Random) -> str:
    at = pick.randrange(len(text))
    return text[:at] + pick.choice(("", text[at] * 2, chr(pick.randrange(32, 127)), pick.choice("0123456789"))) + text[at + 1 :]


def _numbers(text: str, pick: random.Random) -> str:
    spots = [at for at, sign in enumerate(text) if sign.isdigit()]
    if not spots:
        return text
    at = pick.choice(spots)
    return text[:at] + pick.choice(("0", "1", "2", "7", "13", "400")) + text[at + 1 :]


def _words(text: str, pick: random.Random) -> str:
    words = text.split(" ")
    one, other = pick.randrange(len(words)), pick.randrange(len(words))
    kind = pick.randrange(4)
    if kind == 0:
        words[one], words[other] = words[other], words[one]
    elif kind == 1:
        del words[one]
    elif kind == 2:
        words.insert(one, words[other])
    else:
        words.insert(one, pick.choice(SPARE))
    return " ".join(words)


def _lines(text: str, pick: random.Random) -> str:
    lines = text.split("\n")
    one, other = pick.randrange(len(lines)), pick.randrange(len(lines))
    kind = pick.randrange(4)
    if kind == 0:
        lines[one], lines[other] = lines[other], lines[one]
    elif kind == 1:
        del lines[one]
    elif kind == 2:
        lines.insert(one, lines[other])
    else:
        lines[one] = lines[one][: pick.randrange(len(lines[one]) + 1)]
    return "\n".join(lines)


def _steps(text: str, pick: random.Random) -> str:
    """Steps between commas change places, come twice or go: most of what this makes can be read."""
    parts = text.split(", ")
    if len(parts) < 3:
        return text
    one, other = pick.randrange(1, len(parts) - 1), pick.randrange(1, len(parts) - 1)
    kind = pick.randrange(4)
    if kind == 0:
        parts[one], parts[other] = parts[other], parts[one]
    elif kind == 1:
        del parts[one]
    elif kind == 2:
        parts.insert(one, parts[other])
    else:
        parts.insert(one, pick.choice(SPARE[:8] + SPARE[15:22]))
    return ", ".join(parts)


_SWAPS = (
    ("dc", "tr"), ("sc", "dc"), ("hdc", "dc"), ("tr", "dtr"), ("ch-2", "ch-3"), ("ch-1", "ch-2"), ("next", "same"), ("first", "last"),
    ("around", "twice"), ("times", "more times"), ("each", "next"), ("sk", "sc in"), ("turn", "join"), ("[", "("), ("]", ")"), ("3", "4"),
    ("to next ch-2 sp", "around"), ("; rep from * around", ""), ("sl st", "sc"), ("Rnd 2", "Rnd 3"), ("Row 2", "Rows 2-9"), ("\"", "'"),
)  # fmt: skip


def _swaps(text: str, pick: random.Random) -> str:
    """One word of the notation for another, at one place."""
    one, other = pick.choice(_SWAPS)
    spots = [at for at in range(len(text)) if text.startswith(one, at)]
    if not spots:
        return text
    at = pick.choice(spots)
    return text[:at] + other + text[at + len(one) :]


MUTATIONS: tuple[Callable[[str, random.Random], str], ...] = (
    _characters, _numbers, _numbers, _words, _words, _lines, _steps, _steps, _swaps, _swaps,
)  # fmt: skip


def mutated(number: int) -> str:
    """The file of this number: the same in every run."""
    pick = random.Random(number)
    text = pick.choice(pick.choice((SAMPLES, LIBRARY, LIBRARY)))
    for _ in range(pick.choice((1, 1, 1, 2, 3, 8))):
        text = pick.choice(MUTATIONS)(text, pick) or text
    return text


def tried(numbers: range) -> Iterator[tuple[int, int, float]]:
    """For each file: its number, how many stitches it makes (-1: it reaches no Fabric), and its seconds."""
    for number in numbers:
        data = mutated(number).encode("utf-8", "surrogatepass")
        started = time.process_time()
        reading = read_pattern("fuzz.toml", data)
        stitches = -1
        if reading.pattern is not None:
            worked = work_pattern(reading.pattern, reading_problems=reading.problems)
            fabrics = {id(fabric): fabric for size in worked.sizes for fabric in (*size.fabrics.values(), *size.edgings.values())}
            stitches = sum(len(fabric.stitches) for fabric in fabrics.values()) if fabrics else -1
        yield number, stitches, time.process_time() - started


def try_all(numbers: range) -> str:
    """Tries them; fails where one takes too long, and says what came of them."""
    worked, slowest = 0, (0.0, -1)
    for number, stitches, seconds in tried(numbers):
        worked += stitches >= 0
        slowest = max(slowest, (seconds, number))
        assert seconds <= LONGEST, f"file {number} takes {seconds:.1f} s for {stitches} stitches"
    share = 100 * worked / len(numbers)
    return f"{len(numbers)} files, {share:.0f} % reach the Fabric; the slowest, {slowest[1]}, takes {slowest[0]:.2f} s"


@pytest.mark.slow
@pytest.mark.sampled
def test_a_sample_of_mutated_files_ends_with_problems_and_in_time() -> None:
    print(try_all(range(SAMPLE)))


@pytest.mark.slow
def test_mutated_files_end_with_problems_and_in_time() -> None:
    print(try_all(range(SAMPLE, SAMPLE + int(os.environ.get("MOTIFOLD_FUZZ", "5000")))))


if __name__ == "__main__":
    print(mutated(int(sys.argv[1])), end="")
