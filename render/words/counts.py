"""Stitch counts in words: "(36 dc, 8 ch-1 sps)", as the line states them or as they were worked, for one size or several."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.instructions import Amount, CountClaim
from motifold.render.words.places import target_text
from motifold.render.words.voice import Voice

Counts = Mapping[str, int]


def claims_text(voice: Voice, claims: Sequence[CountClaim]) -> str:
    """What a line states about itself, in brackets; empty where it states nothing."""
    parts = []
    for claim in claims:
        noun = target_text(voice, claim.target, plural=not voice.is_one(claim.amount))
        side = " on each side" if claim.per_side else ""
        parts.append(voice.counted(voice.number(claim.amount), noun) + side)
    return f"({', '.join(parts)})" if parts else ""


def last_round(fabric: Fabric | None) -> int:
    """The number of the last round or row that was worked; 0 where none was."""
    return max((worked.number or 0 for worked in fabric.rounds), default=0) if fabric is not None else 0


def kind_text(voice: Voice, kind: str, plural: bool) -> str:
    """A key of a round's counts: a stitch, or a space as "ch-2 sp"."""
    if kind.startswith("ch-") and kind.endswith(" sp") and kind[3:-3].isdigit():
        return voice.chains(int(kind[3:-3]), "sps" if plural else "sp")
    return voice.stitch(kind, plural)


def worked_text(voice: Voice, by_size: Sequence[Counts]) -> str:
    """What was worked, in brackets: one count for each size that has the round; equal numbers are said once."""
    parts = []
    for kind in kinds_of(by_size):
        amount = amount_of(kind, by_size)
        parts.append(voice.counted(number_text(amount), kind_text(voice, kind, number_text(amount) != "1")))
    return f"({', '.join(parts)})" if parts else ""


def kinds_of(counts: Sequence[Counts]) -> tuple[str, ...]:
    """The kinds counted, stitches before spaces, each where it first stands."""
    kinds = dict.fromkeys(kind for count in counts for kind, number in count.items() if number)
    return tuple(sorted(kinds, key=lambda kind: kind.endswith(" sp")))


def amount_of(kind: str, by_size: Sequence[Counts]) -> Amount:
    """One number where the sizes agree, else one for each."""
    numbers = tuple(count.get(kind, 0) for count in by_size)
    return Amount(numbers[:1]) if len(set(numbers)) == 1 else Amount(numbers)



def number_text(amount: Amount) -> str:
    """"24", or "24 (28, 32)"."""
    return Voice().number(amount)
