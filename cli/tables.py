"""Plain tables for the terminal: columns lined up, numbers to the right."""

from __future__ import annotations

from collections.abc import Sequence


def plain_table(header: Sequence[str], rows: Sequence[Sequence[str]], indent: str = "  ") -> str:
    """Rows under a header; the first column stands left, the others right.

    >>> print(plain_table(["size", "cm"], [["Small", "42"], ["Large", "9"]], indent=""))
    size   cm
    Small  42
    Large   9
    """
    widths = [max(len(row[i]) for row in [header, *rows]) for i in range(len(header))]
    lines = []
    for row in [header, *rows]:
        cells = [row[0].ljust(widths[0]), *(cell.rjust(width) for cell, width in zip(row[1:], widths[1:], strict=True))]
        lines.append((indent + "  ".join(cells)).rstrip())
    return "\n".join(lines)
