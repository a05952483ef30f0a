"""The inks of charts, plates and sheets that belong to no yarn: one table."""

from __future__ import annotations

from typing import Final

INK: Final = "#1c2430"
"""A blue black: words, and stitches whose yarn has no colour."""
QUIET: Final = "#5b6673"
"""What is said about a drawing."""
HAIR: Final = "#9aa3ad"
"""Light lines that lead to something or lie over something."""
GIVEN: Final = "#c3c9cf"
"""Pale: stitches that later work goes into, there to hang on and not to be worked."""
PAPER: Final = "#ffffff"
