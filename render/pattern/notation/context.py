"""What the reader of instructions must know about the rest of the file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class NotationContext:
    """The file around one text.

    ``terms``: the words that stitch names are read in. ``yarns``: the keys of the ``[yarn.X]`` tables. ``defined``: the key of
    each ``[stitch.X]`` table -> its printed name; both are read in the text. ``sizes``: how many sizes the file has (at
    least 1): a list of numbers in brackets must be that long. ``worked``: whether unnumbered words like "next row" and the
    ends of lines are those of rounds or rows. ``first_id``: the id of the first node; the next text goes on from the highest.
    """

    terms: Literal["US", "UK"]
    yarns: tuple[str, ...] = ()
    defined: Mapping[str, str] = field(default_factory=dict)
    sizes: int = 1
    worked: Literal["rounds", "rows"] = "rounds"
    first_id: int = 1
