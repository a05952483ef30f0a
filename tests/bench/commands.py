"""Whole commands against the floor of what they are built on. Run as a program; prints medians and ratios, asserts nothing.

The floor is ``python -c 'import click'`` in the same run: an interpreter that has loaded the command-line library and done nothing.
"""

from __future__ import annotations

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SAMPLES = Path(__file__).parents[2] / "samples"
RUNS = 9


def seconds(command: list[str], runs: int = RUNS) -> float:
    """Median wall time of ``command``, after one warm-up."""
    times = []
    for i in range(runs + 1):
        start = time.perf_counter()
        subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=True)
        if i:
            times.append(time.perf_counter() - start)
    return statistics.median(times)


def main() -> None:
    motifold = shutil.which("motifold", path=str(Path(sys.executable).parent)) or "motifold"
    basket = str(SAMPLES / "lighthouse-basket.toml")
    with tempfile.TemporaryDirectory() as folder:
        commands = {
            "motifold --help": [motifold, "--help"],
            "motifold check": [motifold, "check", basket],
            "motifold size": [motifold, "size", basket],
            "motifold yarn": [motifold, "yarn", basket],
            "motifold words": [motifold, "words", basket],
            "motifold chart (svg)": [motifold, "chart", basket, "-o", f"{folder}/c.svg"],
            "motifold schematic (svg)": [motifold, "schematic", basket, "-o", f"{folder}/s.svg"],
            "motifold booklet": [motifold, "booklet", basket, "-o", f"{folder}/b.pdf"],
        }
        floor = seconds([sys.executable, "-c", "import click"])
        print(f"{'command, on the basket':28} {'median':>9} {'over the floor':>15}")
        print(f"{'import click (the floor)':28} {floor:8.3f}s {1:14.1f}x")
        for name, command in commands.items():
            taken = seconds(command)
            print(f"{name:28} {taken:8.3f}s {taken / floor:14.1f}x")


if __name__ == "__main__":
    main()
