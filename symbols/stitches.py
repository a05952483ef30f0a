"""What each stitch is: its yarn overs, its height, and how it is made. Names are the trade's US abbreviations.

Nothing is listed that a rule can give: any height, any number worked together, posts, extended, linked and foundation stitches
are read off the name. Lengths are in u, the pitch of chains in a straight run.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache
from typing import Literal

from motifold.symbols.record import dataclass

Family = Literal["chain", "slip", "basic", "extended", "linked", "foundation", "special"]
Post = Literal["front", "back"]
Gather = Literal["together", "cluster", "bobble", "popcorn", "puff", "crossed"]

MAX_YARN_OVERS = 24
"""The tallest stitch read. Nobody's hook holds more loops, and it bounds what a typing slip can cost."""
MAX_TOGETHER = 24
"""The most legs that one head can gather, for the same reason."""

_FOLDS = ("", "d", "tr", "quad", "quin", "sex", "sep", "oct", "non", "dec")
"""Prefix of the k-fold treble, k from 1: tr, dtr, trtr, quadtr ... Beyond ten: "11-fold tr"."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of stitch.

    ``yarn_overs`` made before the hook goes in; ``half``: the last loops come off all at once (hdc); ``height`` in u;
    ``stem`` names the stitch of each leg ("dc" of "dc3tog", "FPdc" and "5-dc cl"); ``legs`` how many stems share the head (or, for a
    "shell" or "V-st", the foot); ``gather`` how they are closed; ``chains`` of a picot's ring or between the arms of a V.
    """

    name: str
    yarn_overs: int
    half: bool
    height: float
    family: Family
    stem: str
    post: Post | None = None
    legs: int = 1
    gather: Gather | None = None
    chains: int = 0
    reverse: bool = False
    invisible: bool = False


def fold_name(fold: int) -> str:
    """The US name of the k-fold treble: ``fold_name(1)`` is "tr", ``fold_name(2)`` "dtr"."""
    return f"{_FOLDS[fold - 1]}tr" if fold <= len(_FOLDS) else f"{fold}-fold tr"


def height_of(yarn_overs: int, half: bool = False) -> float:
    """Height in u of a stitch with so many yarn overs: sc 1, hdc 1.5, dc 2.2, tr 3, and 0.8 for each one more."""
    if half:
        return 1.5 + 0.8 * (yarn_overs - 1)
    return 1.0 if yarn_overs == 0 else round(2.2 + 0.8 * (yarn_overs - 1), 6)


def stitch_name(yarn_overs: int, half: bool = False) -> str:
    """The US abbreviation of the basic stitch with so many yarn overs: 0 "sc", 1 "dc" (half: "hdc"), 2 "tr", 3 "dtr" ..."""
    if half:
        return "hdc"
    return ("sc", "dc")[yarn_overs] if yarn_overs < 2 else fold_name(yarn_overs - 1)


def _basics() -> dict[str, Kind]:
    kinds = {
        "ch": Kind("ch", 0, False, 0.0, "chain", "ch"),
        "sl st": Kind("sl st", 0, False, 0.3, "slip", "sl st"),
        "hdc": Kind("hdc", 1, True, height_of(1, True), "basic", "hdc"),
        "rev sc": Kind("rev sc", 0, False, height_of(0), "basic", "sc", reverse=True),
    }
    for yarn_overs in range(MAX_YARN_OVERS + 1):
        name = stitch_name(yarn_overs)
        kinds[name] = Kind(name, yarn_overs, False, height_of(yarn_overs), "basic", name)
    return kinds


_BASIC = _basics()

_SPECIAL: dict[str, tuple[str, int, Gather | None]] = {
    "cl": ("dc", 3, "cluster"),
    "bobble": ("dc", 5, "bobble"),
    "pc": ("dc", 5, "popcorn"),
    "puff": ("hdc", 4, "puff"),
    "shell": ("dc", 5, None),
}
"""What a special stitch is where the pattern does not say: stem, legs, how it is closed."""

BOBBLE_LEGS = 5
"""From so many legs in one place on, tall stitches worked together are a bobble, fewer a cluster, where no name says which."""

_POST = re.compile(r"(FP|BP)(.+)")
_TOGETHER = re.compile(r"(.+?)(\d+)tog")
_GATHERED = re.compile(r"(?:beg )?(\d+)-(.+) (cl|bobble|pc|puff|shell)")
_PICOT = re.compile(r"ch-(\d+) picot")
_VARIANTS: dict[str, tuple[Family, float]] = {"e": ("extended", 0.4), "l": ("linked", 0.0), "f": ("foundation", 0.0)}
"""Letter before the name: family, and what it adds to the height (an extended stitch has one chain more below its head)."""


@lru_cache(maxsize=1024)
def kind(name: str) -> Kind:
    """The kind with this US name: "dc", "FPdc", "dc3tog", "edc", "fsc", "inv dec", "picot", "5-dc cl" ...

    KeyError for a name that is not a stitch of the trade (a pattern's own stitches are not known here).

    >>> kind("dtr").height, kind("BPtr").post, kind("dc3tog").legs
    (3.8, 'back', 3)
    """
    if name in _BASIC:
        return _BASIC[name]
    found = _special(name) or _composed(name)
    if found is None:
        raise KeyError(name)
    return found


def is_named(name: str) -> bool:
    """Whether the trade has a stitch of this name."""
    try:
        kind(name)
    except KeyError:
        return False
    return True


def closing(stem: Kind, called: Gather | None = None, legs: int = 2) -> Gather:
    """How stitches worked together in one place are closed: by their construction, and as they are ``called`` where that leaves a choice.

    Short ones and those round a post only lean together. Half doubles are drawn out as loops: a puff. Cluster and bobble are made alike;
    the name tells them apart, or the number of legs. A popcorn is none of these (its stitches are finished one by one).

    >>> closing(kind("dc"), legs=5), closing(kind("dc"), "cluster", 5), closing(kind("hdc"), legs=3), closing(kind("sc"))
    ('bobble', 'cluster', 'puff', 'together')
    """
    if stem.post is not None or not (stem.yarn_overs or stem.half):
        return "together"
    if called in ("cluster", "bobble", "puff"):
        return called
    return "puff" if stem.half else "bobble" if legs >= BOBBLE_LEGS else "cluster"


def _stem(name: str) -> Kind | None:
    """A kind that can be the leg of another: basic, extended, linked."""
    if name in _BASIC:
        found = _BASIC[name]
        return None if found.family == "chain" or found.reverse else found
    return _variant(name)


def _variant(name: str) -> Kind | None:
    letter, rest = name[:1], name[1:]
    base = _BASIC.get(rest)
    if letter not in _VARIANTS or base is None or base.family != "basic" or base.reverse:
        return None
    if letter == "l" and base.yarn_overs == 0:
        return None  # nothing to link: a single crochet has no loop to draw through its neighbour
    family, more = _VARIANTS[letter]
    return replace(base, name=name, family=family, height=round(base.height + more, 6), stem=name)


def _special(name: str) -> Kind | None:
    plain = name.removeprefix("beg ")
    if name == "inv dec":
        return replace(_BASIC["sc"], name=name, legs=2, gather="together", invisible=True)
    if plain in _SPECIAL:
        stem, legs, gather = _SPECIAL[plain]
        return replace(_BASIC[stem], name=name, family="special", legs=legs, gather=gather)
    if name == "V-st":
        return replace(_BASIC["dc"], name=name, family="special", legs=2, chains=1)
    picot = _PICOT.fullmatch(name)
    if name == "picot" or picot:
        chains = min(int(picot.group(1)), 99) if picot else 3
        return Kind(name, 0, False, round(0.3 + 0.35 * max(chains, 2), 6), "special", "ch", chains=chains)
    gathered = _GATHERED.fullmatch(name)
    if gathered:
        base, count = _stem(gathered.group(2)), int(gathered.group(1))
        if base is None or not 1 <= count <= MAX_TOGETHER:
            return None
        return replace(base, name=name, family="special", legs=count, gather=_SPECIAL[gathered.group(3)][2])
    return None


def _composed(name: str) -> Kind | None:
    if name.startswith("crossed "):
        base = _stem(name.removeprefix("crossed "))
        return base and replace(base, name=name, family="special", legs=2, gather="crossed")
    together = _TOGETHER.fullmatch(name)
    if together:
        base, count = _post(together.group(1)) or _stem(together.group(1)), int(together.group(2))
        return replace(base, name=name, legs=count, gather="together") if base and 2 <= count <= MAX_TOGETHER else None
    return _post(name) or _variant(name)


def _post(name: str) -> Kind | None:
    post = _POST.fullmatch(name)
    base = _stem(post.group(2)) if post else None
    if post is None or base is None:
        return None
    return replace(base, name=name, post="front" if post.group(1) == "FP" else "back")
