"""The key: every symbol with its names, in groups of how they are made. Data only; a drawing of it is made elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterable

from motifold.symbols import marks as working
from motifold.symbols.footprint import Foot
from motifold.symbols.glyphs import chain_oval
from motifold.symbols.ink import Fill, Mark, Stroke, circle
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import HAIR_WIDTH
from motifold.symbols.specimens import increase, specimen, spike_specimen
from motifold.symbols.stitches import is_named, kind
from motifold.symbols.terms import Terms, abbreviation, full_name


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """One line of a key. ``id`` names it once and for all ("dc", "dc in back loop", "mark: turn"); ``stitch`` is its canonical name.

    ``note``: how it is made, stitches in braces by their US abbreviation. ``words`` say what it is where it is no stitch by name (a foot,
    a working mark, a pattern's own stitch); ``label`` is what a pattern's own stitch is called in its text; ``gathered``: it is closed
    into one shape.
    """

    id: str
    marks: tuple[Mark, ...]
    stitch: str | None = None
    words: str | None = None
    label: str = ""
    gathered: bool = False
    note: str = ""

    def short(self, terms: Terms) -> str:
        if self.label:
            return self.label
        return abbreviation(self.stitch, terms) if self.stitch else ""

    def full(self, terms: Terms) -> str:
        if self.words is not None:
            return self.words.format(abbreviation(self.stitch, terms)) if self.stitch else self.words
        return full_name(self.stitch, terms) if self.stitch else self.id

    def made(self, terms: Iterable[Terms]) -> str:
        """The note with its stitches in these terms: both where they differ."""
        return in_terms(self.note, tuple(terms))


def in_terms(words: str, terms: tuple[Terms, ...]) -> str:
    """Words with every stitch in braces (its US abbreviation) as these terms write it: "dc (UK tr)" where two of them differ."""

    def said(match: re.Match[str]) -> str:
        first, *others = (abbreviation(match[1], one) for one in terms)
        return first + "".join(f" ({terms[1]} {other})" for other in others if other != first)

    return re.sub(r"\{([^}]+)\}", said, words)


@dataclass(frozen=True, slots=True)
class KeySection:
    """A group of the key, and the one thing to know about it."""

    title: str
    note: str
    entries: tuple[KeyEntry, ...]


_FEET: dict[Foot, str] = {
    "space": "{} into a space: one small ring for all that are worked there",
    "back loop": "{} in back loop only: a cup, open to the back",
    "front loop": "{} in front loop only: a bridge, open to the front",
}
FOOT_SHORT: dict[str, str] = {"space": "in sp", "back loop": "BLO", "front loop": "FLO"}
MARK_PREFIX = "mark: "
"""What the ids of working marks begin with."""
MARKS: dict[str, tuple[str, tuple[Mark, ...]]] = {
    "start": ("a round or row starts, and runs this way", working.start((-0.3, 0.5), (1.0, 0.0))),
    "ring": ("magic ring", working.magic_ring((0.0, 0.6), 0.55)),
    "arrow": ("number of a round or row, and direction of work", working.arrow((0.0, 0.5), (1.0, 0.0))),
    "join": ("joined with a slip stitch", working.join((0.0, 0.35), (0.0, 1.0))),
    "turn": ("turn", working.turn((0.05, 0.5), (1.0, 0.0))),
    "right side": ("right side (RS)", working.right_side((0.0, 0.5))),
    "wrong side": ("wrong side (WS)", working.wrong_side((0.0, 0.5))),
    "attach": ("join yarn", working.attach((0.19, 0.5), (1.0, 0.0))),
    "yarn": ("change of yarn, with its letter", working.tag((0.0, 0.5))),
    "fasten off": ("fasten off", working.fasten_off((0.19, 0.5), (1.0, 0.0))),
    "repeat": ("worked this many times", (
        Stroke(((-1.3, 0.25), (-1.3, 0.65), (-0.5, 0.65)), HAIR_WIDTH), Stroke(((0.5, 0.65), (1.3, 0.65), (1.3, 0.25)), HAIR_WIDTH))),
    "edge": ("where one repeat begins and ends", tuple(Stroke(((x, 0.5), (x + 0.42, 0.5)), HAIR_WIDTH) for x in (-1.1, -0.4, 0.3))),
    "link": ("chains of one run, drawn apart", (
        chain_oval((-1.4, 0.5), (-0.6, 0.5)), Stroke(((-0.6, 0.5), (0.6, 0.5)), HAIR_WIDTH), chain_oval((0.6, 0.5), (1.4, 0.5)))),
    "leader": ("from a number or mark to its place", (
        Stroke(((-0.9, 0.5), (0.7, 0.5)), HAIR_WIDTH), Fill(circle((0.8, 0.5), 0.11), smooth=True))),
    "marker": ("place marker", working.place_marker((0.0, 0.4))),
    "seam start": ("a pass of seaming begins", working.seam_start((-0.45, 0.5), (1.0, 0.0))),
    "pass": ("a pass of seaming, with its number", working.pass_disc((0.0, 0.5))),
    "seam end": ("a pass ends: fasten off", working.seam_end((0.5, 0.5), (1.0, 0.0))),
    "gap": ("a gap to close, where seams meet", (*working.gap((0.0, 0.6), 0.42), *working.corner((0.0, 0.6), 0.42))),
    "fold": ("fold", working.fold((-1.1, 0.5), (1.1, 0.5))),
    "open": ("an edge that stays open", working.open_edge((-1.1, 0.5), (1.1, 0.5))),
}
"""Working marks: what they mean, and one of each."""


@dataclass(frozen=True, slots=True)
class Letter:
    """A figure or letter beside a mark: how far left of its middle, in u; ``white`` on a disc."""

    words: str
    left: float = 0.0
    white: bool = False


MARK_LETTERS = {
    "mark: yarn": Letter("A"), "mark: pass": Letter("1", white=True), "mark: arrow": Letter("3", left=0.75), "mark: repeat": Letter("×4"),
}
"""What stands in or beside the marks of a key's examples."""


_NOTES = {
    "picot": "3 {ch}, closed with {sl st}",
    "inv dec": "through the front loops",
    "crossed dc": "the second place is worked first",
    "shell": "5 {dc} in one place",
    "V-st": "{dc}, {ch}, {dc} in one place",
    "cl": "3 {dc} worked together in one place",
    "bobble": "5 {dc} worked together in one place",
    "pc": "5 {dc} finished, then drawn shut",
    "puff": "4 {hdc} drawn out long, closed together",
    "rev sc": "worked backwards, its top twisted",
}
"""How stitches are made whose name does not say so."""


def whole_key() -> tuple[KeySection, ...]:
    """The whole set."""
    feet = tuple(foot_entry("dc", foot) for foot in _FEET)
    spike = KeyEntry("sc rows below", spike_specimen("sc"), "sc", "{} into a stitch rows below: its stem reaches down to it")
    return (
        KeySection(
            "Chains and joins",
            "An open oval is a chain; a filled dot is a slip stitch. Chains that count as a stitch are drawn as chains.",
            _stitches("ch", "sl st", "picot"),
        ),
        KeySection(
            "Stems",
            "A cross or a T, and one slanted bar for each yarn over. Taller stitches go on in the same way.",
            _stitches("sc", "hdc", "dc", "tr", "dtr", "trtr"),
        ),
        KeySection(
            "Feet",
            "The foot says what the hook went into; both loops of a stitch: no sign.",
            (*feet, *_stitches("FPdc", "BPdc"), spike),
        ),
        KeySection(
            "One head",
            "Legs that lean together are worked together: many become one.",
            _stitches("sc2tog", "sc3tog", "inv dec", "hdc2tog", "dc2tog", "dc3tog", "crossed dc"),
        ),
        KeySection(
            "One foot",
            "Stems that spread from one foot are worked into one place: one becomes many.",
            (
                KeyEntry("dc inc", increase("dc"), "dc", "{} twice in one stitch: an increase"),
                *_stitches("shell", "V-st"),
            ),
        ),
        KeySection(
            "One head and one foot",
            "Closed shapes are many stitches made into one: a line for each, and long bars for the yarn overs of all.",
            _stitches("cl", "bobble", "pc", "puff"),
        ),
        KeySection(
            "Made differently",
            "A bead is a chain more, a side loop is taken from the neighbour, a lying oval is a chain of its own.",
            _stitches("esc", "edc", "ldc", "ltr", "fsc", "fdc", "rev sc"),
        ),
        KeySection("Working marks", "Where the yarn comes and goes, which way the work runs.", tuple(mark_entry(name) for name in MARKS)),
    )


def key_for(
    stitches: Iterable[str], feet: Iterable[tuple[str, Foot]], marks: Iterable[str], own: Iterable[KeyEntry] = ()
) -> tuple[KeyEntry, ...]:
    """The lines that one pattern needs, in the order of the whole key: kinds of stitches, (kind, foot) pairs, names of working marks.

    A kind that the trade does not have is left out here (its parts are drawn); ``own`` are a pattern's own stitches.
    """
    known = sorted({name for name in stitches if is_named(name)}, key=_order)
    best: dict[Foot, str] = {}
    for name, foot in sorted(set(feet), key=lambda pair: _order(pair[0])):
        if foot in _FEET and is_named(name):
            best.setdefault(foot, name)
    found = [(_section(name), KeyEntry(name, specimen(name), name, note=_NOTES.get(name, ""))) for name in known]
    found += [(_FOOT_SECTION, foot_entry(best[foot], foot)) for foot in _FEET if foot in best]
    found += [(_CLOSED_SECTION if entry.gathered else _SPREAD_SECTION, entry) for entry in own]
    wanted = set(marks)
    in_order = [entry for _, entry in sorted(found, key=lambda pair: pair[0])]
    return (*in_order, *(mark_entry(name) for name in MARKS if name in wanted))


_FOOT_SECTION, _SPREAD_SECTION, _CLOSED_SECTION = 2, 4, 5
"""The place of feet, of what spreads from one foot, and of what is closed at head and foot, in the order of the whole key."""


def _section(name: str) -> int:
    """The section of the whole key that a stitch belongs to."""
    found = kind(name)
    if found.family in ("chain", "slip") or found.stem == "ch":
        return 0
    if found.gather in ("together", "crossed"):
        return 3
    if found.gather is not None:
        return _CLOSED_SECTION
    if found.family == "special":
        return _SPREAD_SECTION
    if found.post is not None:
        return _FOOT_SECTION
    return 1 if found.family == "basic" and not found.reverse else 6


def foot_entry(stitch: str, foot: Foot) -> KeyEntry:
    """A stitch worked into something else than both loops."""
    return KeyEntry(f"{stitch} in {foot}", specimen(stitch, foot), stitch, _FEET[foot])


def mark_entry(name: str) -> KeyEntry:
    words, marks = MARKS[name]
    return KeyEntry(f"{MARK_PREFIX}{name}", marks, None, words)


def _stitches(*names: str) -> tuple[KeyEntry, ...]:
    return tuple(KeyEntry(name, specimen(name), name, note=_NOTES.get(name, "")) for name in names)


_FAMILIES = ("chain", "slip", "basic", "extended", "linked", "foundation", "special")


def _order(name: str) -> tuple[int, int, bool, float, str]:
    if not is_named(name):
        return (9, 0, False, 0.0, name)
    found = kind(name)
    return (_FAMILIES.index(found.family), 1 if found.legs > 1 else 0, found.post is not None, found.height, name)
