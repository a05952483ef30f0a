"""What is printed: the worked sizes that were asked for, the voice, and the small phrases that several sections share."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from motifold.render.pattern.instructions import Instructions
from motifold.render.pattern.model import Pattern, Yarn
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.reading import in_inches
from motifold.render.sizing.units import length_text
from motifold.render.words.voice import NBSP, Voice, WordsLook
from motifold.render.worked import Worked, WorkedSize
from motifold.symbols.record import dataclass
from motifold.symbols.terms import plural_of


@dataclass(frozen=True, slots=True)
class Printed:
    """A worked pattern as it is printed: its sizes (all, or the one asked for), what each needs, and the voice."""

    pattern: Pattern
    worked: Worked
    sizes: tuple[WorkedSize, ...]
    needs: Mapping[str, tuple[YarnNeed, ...]]
    voice: Voice

    @property
    def several(self) -> bool:
        return len(self.sizes) > 1

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(size.choice.name for size in self.sizes)

    def each_size(self, number: Callable[[WorkedSize], float | int | None], text: Callable[[float], str] = str) -> str:
        """One number for every printed size, the trade's way: "5", "5 (6, 7)"; said once where they agree, "–" where one is missing."""
        shown = ["–" if (value := number(size)) is None else text(value) for size in self.sizes]
        if len(set(shown)) < 2:
            return shown[0] if shown else "–"
        return f"{shown[0]}{NBSP}({', '.join(shown[1:])})"

    def both_units(self, cm: float) -> str:
        """"44.8 cm (17⅝ in)"; inches first where the pattern is written in them."""
        return length_text(cm, in_inches(self.pattern))

    def need(self, size: str, yarn: Yarn) -> YarnNeed | None:
        """What a size takes of a yarn; None where it takes none, or nothing was measured."""
        return next((need for need in self.needs.get(size, ()) if need.yarn == yarn.key), None)

    def texts(self) -> tuple[Instructions, ...]:
        return (*(m.instructions for m in self.pattern.motifs), *(e.instructions for e in self.pattern.edgings))


def printed(worked: Worked, needs: Mapping[str, tuple[YarnNeed, ...]], look: WordsLook) -> Printed:
    """The sizes and the voice that a look asks for. A size that isn't there prints all of them."""
    sizes = tuple(s for s in worked.sizes if look.size is None or s.choice.name.casefold() == look.size.casefold()) or worked.sizes
    index = sizes[0].choice.index if len(sizes) == 1 else None
    names = {stitch.key: stitch.name for stitch in worked.pattern.stitches}
    defined = {**{name: name for name in names.values()}, **names}
    voice = Voice(look.terms, look.plain, index, look.left_handed, defined, source=worked.pattern.terms, imperial=in_inches(worked.pattern))
    return Printed(worked.pattern, worked, sizes, needs, voice)


def titled(name: str) -> str:
    """A motif's or edging's name as a heading: "star_hexagon" is "Star hexagon", "left-cuff" is "Left cuff"."""
    text = _spoken(name)
    return text[:1].upper() + text[1:]


def _spoken(name: str) -> str:
    """A key as it is said: its words parted, unless a hyphen belongs to a short one ("T-shirt")."""
    return re.sub(r"(?<=[^\W\d_]{3})-(?=[^\W\d_]{3})", " ", name.replace("_", " ").strip())


_NOUNS = frozenset({
    "square", "hexagon", "triangle", "circle", "octagon", "pentagon", "rectangle", "diamond", "heart", "star", "disc", "oval",
    "tile", "flower", "rose", "daisy", "leaf", "petal", "block", "patch", "panel", "strip", "medallion", "mandala", "motif", "half",
    "wedge", "front", "back", "sleeve", "body", "hat", "cap", "beret", "beanie", "ball", "scarf", "shawl", "cowl", "cushion",
    "cover", "coaster", "doily", "mat", "rug", "basket", "bag", "base", "bottom", "top", "wall", "lid", "crown", "brim", "sole",
    "head", "ear", "arm", "leg", "tail", "wing", "yoke", "cuff", "collar", "mitt", "mitten", "thumb", "sock", "heel", "toe",
    "snowflake", "wreath", "pocket", "flap", "strap", "handle", "belt", "swatch", "cloth", "washcloth", "dishcloth", "blanket",
    "runner", "flag", "pennant", "face", "granny", "potholder", "gusset", "bib", "bonnet", "vest", "jacket", "tray", "pouch",
    "purse", "case", "sheet", "gable", "roof", "fan", "shell", "clover",
})  # fmt: skip
"""Last words of a motif's key that are plain nouns, so that it can be said of several: "star hexagons"."""


def motif_words(name: str, number: int | str | None = None, alone: bool = False) -> str:
    """A motif in a sentence: "the square", "5 squares"; a key that is no plain noun stays a name: "motif tri", "12 of motif tri".

    ``alone``: the pattern has no other, so that a name that is no noun need not be said: "the motif", "12 motifs".

    >>> motif_words("star_hexagon", 3), motif_words("cis", 13), motif_words("mixed")
    ('3\\xa0star hexagons', '13\\xa0of motif cis', 'motif mixed')
    """
    noun = _spoken(name)
    if alone and not is_noun(name):
        noun = name = "motif"
    if not is_noun(name):
        return f"motif {noun}" if number is None else f"{number}{NBSP}of motif {noun}"
    if number is None:
        return f"the {noun.lower()}"
    return f"{number}{NBSP}{noun.lower() if str(number) == '1' else plural_of(noun.lower())}"


def is_noun(name: str) -> bool:
    """Whether a motif's key is a plain noun of a shape, or ends with one."""
    return re.split(r"[-_ ]", name.strip().lower())[-1] in _NOUNS


def yarn_words(yarn: Yarn) -> str:
    """A yarn by its key and its name, "A (Fog)"; the key alone where it has no other."""
    return f"{yarn.key} ({yarn.name})" if yarn.name != yarn.key else yarn.key


def plural(number: int, noun: str) -> str:
    """"1 end", "4 ends"."""
    return f"{number}{NBSP}{noun}{'' if number == 1 else 's'}"
