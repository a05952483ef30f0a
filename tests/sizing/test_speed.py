"""Proving a pattern must not pay for printing it."""

from __future__ import annotations

import subprocess
import sys


def test_sizing_does_not_load_the_unit_library() -> None:
    code = "import sys, motifold.render.sizing; print('pint' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"
