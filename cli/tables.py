"""Plain tables for the terminal: columns lined up, numbers to the right."""

from __future__ import annotations

from collections.abc import Sequence


def plain_table(header: Sequence[str], rows: Sequence[Sequence[str]], indent: str = "  ", left: int = 1) -> str:
    """Rows under a header; the first columns (``left`` of them) stand left, the others right.

    >>> print(plain_table(["size", "cm"], [["Small", "42"], ["Large", "9"]], indent=""))
    size   cm
    Small  42
    Large   9
    """
    widths = [max(len(row[i]) for row in [header, *rows]) for i in range(len(header))]
    lines = []
    for row in [header, *rows]:
        cells = [cell.ljust(width) if i < left else cell.rjust(width) for i, (cell, width) in enumerate(zip(row, widths, strict=True))]
        lines.append((indent + "  ".join(cells)).rstrip())
    return "\n".join(lines)
