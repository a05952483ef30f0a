"""The nearest known word to one that is misspelt, as people misspell: a letter more, a letter less, another letter, two letters swapped."""

from __future__ import annotations

from collections.abc import Collection, Iterable

MOST_COMPARED = 2_000
LONGEST = 40


def slips(one: str, other: str, most: int) -> int:
    """How many slips of the pen lead from one word to the other, two neighbours swapped being one; ``most + 1`` where they are more.

    The optimal string alignment distance of Damerau ("A technique for computer detection and correction of spelling errors", 1964).

    >>> slips("icn", "inc", 2), slips("icn", "in", 2), slips("folowing", "following", 2), slips("knot", "picot", 1)
    (1, 1, 1, 2)
    """
    if abs(len(one) - len(other)) > most:
        return most + 1
    before: list[int] = []
    last = list(range(len(other) + 1))
    for i, a in enumerate(one, 1):
        now = [i]
        for j, b in enumerate(other, 1):
            cost = min(last[j] + 1, now[j - 1] + 1, last[j - 1] + (a != b))
            if i > 1 and j > 1 and a == other[j - 2] and one[i - 2] == b:
                cost = min(cost, before[j - 2] + 1)
            now.append(cost)
        if min(now) > most:
            return most + 1
        before, last = last, now
    return min(last[-1], most + 1)


def nearest(word: str, known: Iterable[str], wanted: Collection[str] = (), *, few: bool = False) -> str | None:
    """The known word that this one may be a slip for, in the order given where two are as near; None where none comes near.

    ``wanted``: those that this place asks for; they go before others that are as near. Capitals do not count. Of two letters one other
    makes another word, unless only ``few`` are possible.

    >>> nearest("icn", ["in", "inc"]), nearest("Rdn", ["rd", "rnd"]), nearest("xyzzy", ["sc", "dc"])
    ('inc', 'rnd', None)
    >>> nearest("knto", ["knot", "onto", "not"], wanted=["knot"]), nearest("ds", ["dc", "dec"])
    ('knot', None)
    >>> nearest("cn", ["cm", "mm"]), nearest("cn", ["cm", "mm"], few=True)
    (None, 'cm')
    """
    if not 1 <= len(word) <= LONGEST:
        return None
    plain = word.lower()
    best: tuple[int, bool, bool] | None = None
    found: str | None = None
    for other in [*wanted, *list(known)[:MOST_COMPARED]]:
        against = other.lower()
        most = _most(min(len(plain), len(against)))
        away = slips(plain, against, most)
        swapped = sorted(plain) == sorted(against)
        if away > most or len(against) < 2 or (len(plain) < 3 and not few and not swapped and plain != against):
            continue
        rank = (away, other not in wanted, not swapped)
        if best is None or rank < best:
            best, found = rank, other
    return found


def _most(length: int) -> int:
    """How many slips a word of this length may have and still be known for what it is."""
    return 1 if length < 5 else 2 if length < 9 else 3
