"""A folder of patterns on one core and on all of them: what working side by side saves. Run as a program; asserts nothing.

The floor is the same call tied to one core in the same run, which then works with one process.
"""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
PATTERNS = 20
RUNS = 3


def seconds(command: list[str], cores: set[int]) -> float:
    """Median wall time of ``command`` when it may use ``cores``."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        subprocess.run(
            command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=True, preexec_fn=lambda: os.sched_setaffinity(0, cores)
        )
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def main() -> None:
    motifold = shutil.which("motifold", path=str(Path(sys.executable).parent)) or "motifold"
    cores = os.sched_getaffinity(0)
    with tempfile.TemporaryDirectory() as folder:
        patterns = Path(folder) / "patterns"
        patterns.mkdir()
        for i in range(PATTERNS):
            shutil.copy(SAMPLES[i % len(SAMPLES)], patterns / f"{i:02d}-{SAMPLES[i % len(SAMPLES)].name}")
        print(f"{f'a folder of {PATTERNS} patterns':24} {'one core':>9} {f'{len(cores)} cores':>9} {'of it':>7}")
        for name, options in {"check": [], "words": ["-o", f"{folder}/w/"], "booklet": ["-o", f"{folder}/b/"]}.items():
            command = [motifold, name, str(patterns), *options]
            one, all_of_them = seconds(command, {min(cores)}), seconds(command, cores)
            print(f"{f'motifold {name}':24} {one:8.2f}s {all_of_them:8.2f}s {all_of_them / one:6.2f}x")


if __name__ == "__main__":
    main()
