"""Sheets of paper, in mm: one table for charts, keys and booklets."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

Sheet = Literal["A4", "Letter", "A5", "Half Letter"]

# ISO 216 (A4, A5) and ANSI/ASME Y14.1 size A, whole and folded.
SHEETS_MM: Mapping[Sheet, tuple[float, float]] = {
    "A4": (210.0, 297.0), "Letter": (215.9, 279.4), "A5": (148.0, 210.0), "Half Letter": (139.7, 215.9),
}  # fmt: skip
