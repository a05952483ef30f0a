"""Prints how fast rounds are read and worked, beside a floor of the same run: splitting the same text into words.

Run: python tests/bench/notation_table.py [TIMES]
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from time import process_time
from typing import TypeVar

sys.path.insert(0, str(Path(__file__).parents[1] / "fabric"))

from test_bounds import doily

from motifold.render.fabric import Workshop, work_motif
from motifold.render.pattern import read_pattern

T = TypeVar("T")

SIZES = (2, 20, 200)
"""Rounds of a doily with a hundred stitches a round."""
HEAD = '[pattern]\ntitle = "Doily"\nterms = "US"\n\n[yarn.A]\nname = "White"\n\n[motif.doily]\nshape = "circle"\nrounds = """\n'


def best(times: int, do: Callable[[], T]) -> tuple[float, T]:
    """The shortest of several runs, in seconds of one processor, and what came of it."""
    runs = []
    for _ in range(times):
        started = process_time()
        made = do()
        runs.append(process_time() - started)
    return min(runs), made


def row(rounds: int, times: int, before: tuple[float, float] | None) -> tuple[str, tuple[float, float]]:
    """One line of the table, and its seconds for the next line's growth."""
    text = doily(rounds)
    floor, _ = best(times, lambda: [line.split() for line in text.split("\n")])
    data = f'{HEAD}{text}\n"""\n'.encode()
    reading, found_reading = best(times, lambda: read_pattern("doily.toml", data))
    pattern = found_reading.pattern
    assert pattern is not None and not found_reading.problems
    source = pattern.motifs[0]
    shop = Workshop({}, ("A",), None, 0, None, "US", None)
    working, (fabric, found) = best(times, lambda: work_motif(source, shop))
    stitches = len(fabric.stitches)
    growth = "" if before is None else f"{reading / before[0]:6.1f} {working / before[1]:6.1f}"
    told = "" if not found else f"   {found[0].code}"
    return (
        f"{rounds:6d} {stitches:8d} {floor * 1000:9.2f} {reading * 1000:9.1f} {working * 1000:9.1f} {rounds / reading:9.0f} "
        f"{rounds / working:9.0f} {stitches / working:9.0f} {growth}{told}"
    ), (reading, working)


def long_line(steps: int) -> bytes:
    """A file whose one row says every stitch by itself."""
    row = ", ".join(["sc in 2nd ch from hook", *["sc in next ch"] * (steps - 1)])
    head = HEAD.replace('shape = "circle"\nrounds', 'shape = "rectangle"\nrows')
    return f'{head}Chain: Ch {steps + 1}.\nRow 1: {row}.\n"""\n'.encode()


def main() -> None:
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 3
    print("rounds stitches  split ms   read ms   work ms  read r/s  work r/s    st/s   growth read, work")
    before = None
    for rounds in SIZES:
        line, before = row(rounds, times, before)
        print(line, flush=True)
    print("\nsteps in one line   read ms   us a step")
    for steps in (2_000, 20_000):
        data = long_line(steps)
        spent, _ = best(times, lambda data=data: read_pattern("long.toml", data))  # type: ignore[misc]
        print(f"{steps:17d} {spent * 1000:9.1f} {spent / steps * 1e6:11.1f}", flush=True)


if __name__ == "__main__":
    main()
