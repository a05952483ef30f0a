"""Lets these tests use the helper that makes a Fabric from a few lines of text."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "fabric"))
