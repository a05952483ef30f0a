"""Where stitches go, in words: "in next ch-2 sp", "around the next single crochet of Round 2"."""

from __future__ import annotations

from motifold.render.pattern.instructions import Amount, Extent, Place, Target
from motifold.render.words.voice import NBSP, Voice

_PREPOSITIONS = {
    "in": "in", "around": "around", "between": "between", "before": "in", "behind": "behind", "over": "over", "in front": "in front of",
}  # fmt: skip
_BARE = ("ring", "tch", "side", "missed")
_EDGES = ("foundation", "unused loop", "row end")
"""Kinds of place of which there are many, each with a name of several words."""


def place_text(voice: Voice, place: Place) -> str:
    """A place with its preposition.

    >>> from motifold.render.pattern.problem import NOWHERE
    >>> place_text(Voice("US"), Place(NOWHERE, "next", Target("sp", chains=2)))
    'in next ch-2 sp'
    """
    preposition = _PREPOSITIONS[place.manner]
    if place.which == "evenly":
        return _evenly(voice, place)
    if place.manner == "before":
        return f"in{_space(voice, 'sp')} before {_beside(voice, place)}"
    if place.target.kind == "between" and place.manner != "between":
        return f"in{_space(voice, 'sp')} between {_between(voice, place)}"
    loop = _loop(voice, place)
    if loop and place.target.kind != "unused loop":
        return f"in {loop} of {noun_text(voice, place)}"
    if place.manner == "between":
        return f"between {_between(voice, place)}"
    return f"{preposition} {noun_text(voice, place)}"


def _space(voice: Voice, noun: str) -> str:
    return f" {voice.the}{voice.craft(noun)}"


def _loop(voice: Voice, place: Place) -> str:
    if place.loop is None:
        return ""
    if voice.plain:
        return f"the {place.loop} loop only"
    return "BLO" if place.loop == "back" else "FLO"


def _evenly(voice: Voice, place: Place) -> str:
    if place.extent is not None:
        return " ".join(part for part in ("evenly", extent_text(voice, place.extent), place.words) if part)
    if place.target.kind in _BARE:
        noun = _bare(voice, place)
    else:
        edges = {"row end": "row ends", "foundation": f"{voice.the}other side of {voice.the}foundation {_ch(voice)}"}
        noun = edges.get(place.target.kind) or target_text(voice, place.target)
    said = voice.said(place.words) if place.words else None
    words = (said, noun) if said and " " not in said else (noun, said)  # "left side", "side of heel flap"
    along = " ".join(part for part in words if part)
    return f"evenly along {along}"


def _beside(voice: Voice, place: Place) -> str:
    """"next dc", "next group": what lies after the gap."""
    name = place.target.name
    nouns = {"st": voice.craft("st"), "group": "group", "sp": voice.craft("sp")}
    noun = nouns.get(name or "st") or voice.stitch(name or "st")
    corner = "corner " if place.target.corner else ""
    return _with_tail(voice, place, f"{voice.the}{_which_word(voice, place)} {corner}{noun}")


def _between(voice: Voice, place: Place) -> str:
    """"next 2 dc", "next 2 groups", "first and second dc" as written."""
    target = place.target
    name = target.name
    if name in (None, "st", "group", "sp", "row end"):
        noun = {"group": "groups", "sp": voice.craft("sps"), "row end": "row ends"}.get(name or "st", voice.craft("sts"))
    else:
        noun = voice.stitch(name, plural=True)
    noun = f"corner {noun}" if target.corner else noun
    count = place.count if place.count.varies or place.count.at(0) > 1 else Amount((2,))
    each = "each of " if place.each and place.which != "each" else ""
    text = f"{each}{voice.the}{_which_word(voice, place)} {voice.counted(voice.number(count), noun)}"
    return _with_tail(voice, place, text)


def noun_text(voice: Voice, place: Place, each: bool = True) -> str:
    """A place without its preposition: "each of next 2 sts", "top of beg ch-3"; ``each`` false: "next 2 sts", as what is skipped."""
    target = place.target
    if target.kind in _BARE:
        return _with_tail(voice, place, _bare(voice, place))
    if place.which == "each":
        if place.of is not None and place.of.which == "each" and not place.also:  # "in ch-1 sp of each V-st"
            return _with_tail(voice, place, f"{voice.the}{_noun(voice, place)}")
        return _with_tail(voice, place, _each(voice, place))
    if target.kind in _EDGES and place.which in ("current", "evenly"):
        return _with_tail(voice, place, f"{voice.the}{_noun(voice, place, plural=True)}")
    if place.which == "nth":
        return _with_tail(voice, place, f"{voice.the}{ordinal(place.ordinal or 1)}{NBSP}{_noun(voice, place)}{_from_hook(voice, place)}")
    if place.which == "current":
        return _with_tail(voice, place, f"{voice.the}{_noun(voice, place)}")
    if place.which == "top" and place.of is not None:
        return _with_tail(voice, place, f"{voice.the}top")
    if place.which == "center" and place.of is not None and target.kind in ("st", "ch") and target.chains is None:
        middle = f"{voice.the}{voice.term('center')}"
        return _with_tail(voice, place, middle if _says_where(place) else f"{middle} {target_text(voice, target)}")
    if place.which == "made":
        return _with_tail(voice, place, _made(voice, place, each))
    text = _counted(voice, place, each)
    return _with_tail(voice, place, " and ".join((text, *(noun_text(voice, further) for further in place.then))))


def _says_where(place: Place) -> bool:
    """Whether more is said of the middle itself than of what it is the middle of."""
    return place.of_round is not None or place.below > 0 or place.words is not None


def _from_hook(voice: Voice, place: Place) -> str:
    return f" from {voice.the}hook" if place.from_hook else ""


def _made(voice: Voice, place: Place, each: bool) -> str:
    """"dc just made", "3rd dc just made", "each of 2 ch just made": the words follow."""
    if not voice.is_one(place.count):
        counted = f"{voice.the}{voice.counted(voice.number(place.count), _noun(voice, place, plural=True))}"
        return f"each of {counted}" if place.each and each else counted
    nth = f"{ordinal(place.ordinal)}{NBSP}" if place.ordinal is not None else ""
    return f"{voice.the}{nth}{_noun(voice, place)}"


def _counted(voice: Voice, place: Place, each: bool) -> str:
    """"next st", "next 3 sts", "each of next 3 sts"."""
    which = _which_word(voice, place)
    ordinal_first = f"{ordinal(place.ordinal)} " if place.ordinal is not None and place.which != "nth" else ""
    if voice.is_one(place.count):
        article = "" if place.which in ("any", "corresponding") and not voice.plain else voice.the if place.which != "any" else ""
        return f"{article}{which} {ordinal_first}{_noun(voice, place)}{_from_hook(voice, place)}"
    noun = " and ".join((_noun(voice, place, plural=True), *(target_text(voice, target, True) for target in place.also)))
    counted = f"{voice.the}{which} {voice.counted(voice.number(place.count), noun)}{_from_hook(voice, place)}"
    return f"each of {counted}" if place.each and each else counted


def _noun(voice: Voice, place: Place, plural: bool = False) -> str:
    """What is counted: "st", "row end", "unused front lp"; of a foundation its chains, and along which side they are met."""
    kind = place.target.kind
    if kind == "row end":
        return "row ends" if plural else "row end"
    if kind == "unused loop":
        side = f"{place.loop} " if place.loop else ""
        return f"unused {side}{voice.craft('lps' if plural else 'lp')}"
    if kind == "foundation":
        along = "" if voice.other_side else f" along {voice.the}other side of {voice.the}foundation {_ch(voice)}"
        return f"{_ch(voice, plural)}{along}"
    return target_text(voice, place.target, plural)


def _which_word(voice: Voice, place: Place) -> str:
    words = {"center": voice.term("center"), "beg": voice.craft("beg"), "top": "top of", "nth": ordinal(place.ordinal or 1)}
    return words.get(place.which, place.which)


def _each(voice: Voice, place: Place) -> str:
    nouns = [_noun(voice, place), *(target_text(voice, target) for target in place.also)]
    return " and ".join(f"each {noun}" for noun in nouns)


def _bare(voice: Voice, place: Place) -> str:
    target = place.target
    same = "same " if place.which == "same" and target.kind != "missed" else ""
    if target.kind == "ring":
        return f"{voice.the}{same}ring"
    if target.kind == "tch":
        top = f"{voice.the}top of " if place.which == "top" else ""
        return f"{top}{voice.the}{same}{voice.craft('tch')}"
    if target.kind == "missed" and place.which != "top" and (place.which != "same" or not voice.is_one(place.count)):
        return _skipped(voice, place)
    if target.kind == "missed":
        missed = voice.term("skipped")
        if target.chains is not None:
            return f"{voice.the}top of {voice.the}{voice.counted(str(target.chains), f'{missed} {_ch(voice, target.chains != 1)}')}"
        return f"{voice.the}top of {voice.the}{missed} {_ch(voice)}" if place.which == "top" else f"{voice.the}{missed} {voice.craft('st')}"
    return f"{same}side"


def _skipped(voice: Voice, place: Place) -> str:
    """"each of 2 skipped sts", "first skipped st", "2nd skipped st"."""
    missed = voice.term("skipped")
    if place.which == "same":
        noun = f"{missed} {voice.craft('sts')}"
        return f"each of {voice.the}{voice.counted(voice.number(place.count), noun)}"
    return f"{voice.the}{_which_word(voice, place)} {missed} {voice.craft('st')}"


def _ch(voice: Voice, plural: bool = False) -> str:
    return voice.stitch("ch", plural and voice.plain)


def _with_tail(voice: Voice, place: Place, text: str) -> str:
    """What says more about a place: the place that it lies in, an earlier round, how far, and words of the designer's own."""
    if place.of is not None:
        text += f" of {noun_text(voice, place.of)}"
    if place.below:
        rows = ("row" if voice.rows else voice.craft("rnd")) + ("" if place.below == 1 else "s")
        text += f" {voice.counted(str(place.below), rows)} below"
    if place.of_round is not None:
        text += f" of {round_name(voice, str(place.of_round), rows=voice.rows)}"
    more = f" {voice.said(place.words)}" if place.words and place.which != "evenly" else ""
    far = f" {extent_text(voice, place.extent)}" if place.extent is not None else ""
    # Other free words run on to the comma.
    text += more + far if more.startswith(" of ") else far + more
    return text


def round_name(voice: Voice, numbers: str, several: bool = False, rows: bool = False) -> str:
    """"Rnd 3", "Rnds 3–5", "Row 2"; in full in plain words."""
    kind = ("Rows" if several else "Row") if rows else voice.craft("rnds" if several else "rnd").capitalize()
    return f"{kind}{NBSP}{numbers}"


def target_text(voice: Voice, target: Target, plural: bool = False) -> str:
    """What kind of thing a place names: "ch-2 sp", "corner sps", "petals"."""
    corner = "corner " if target.corner else ""
    if target.kind == "st":
        return corner + voice.craft("sts" if plural else "st")
    if target.kind == "stitch":
        sized = target.name == "picot" and target.chains is not None
        return corner + voice.stitch(f"ch-{target.chains} picot" if sized else target.name or "st", plural)
    if target.kind == "sp":
        noun = ("lp" if target.loop else "sp") + ("s" if plural else "")
        return corner + (voice.chains(target.chains, noun) if target.chains is not None else voice.craft(noun))
    if target.kind == "ch":
        return corner + (voice.chains(target.chains) if target.chains is not None else _ch(voice, plural))
    if target.kind == "group":
        return f"{corner}group{'s' if plural else ''}"
    if target.kind == "tch":
        return voice.craft("tch")
    if target.kind == "marker":
        if target.name == "sp":
            noun = ("lp" if target.loop else "sp") + ("s" if plural else "")
            return "marked " + (voice.chains(target.chains, noun) if target.chains is not None else voice.craft(noun))
        return f"marked {voice.craft('sts' if plural else 'st')}"
    if target.kind == "corner":
        return f"corner{'s' if plural else ''}"
    return corner + target.kind + ("s" if plural else "")


def extent_text(voice: Voice, extent: Extent) -> str:
    """"around", "across", "to end", "to next ch-2 sp", "to last 2 sts"."""
    if extent.kind == "to" and extent.place is not None and extent.count is not None:
        noun = target_text(voice, extent.target or Target("st"), not voice.is_one(extent.count))
        return f"to {voice.counted(voice.number(extent.count), noun)} before {noun_text(voice, extent.place)}"
    if extent.kind == "to" and extent.place is not None:
        return f"to {noun_text(voice, extent.place)}"
    if extent.kind == "last":
        count = extent.count or Amount((1,))
        target = extent.target or Target("st")
        if voice.is_one(count):
            return f"to {voice.the}last {target_text(voice, target)}"
        return f"to {voice.the}last {voice.counted(voice.number(count), target_text(voice, target, True))}"
    return {"around": "around", "across": "across", "end": f"to {voice.the}end"}[extent.kind]


def ordinal(number: int) -> str:
    """"1st", "2nd", "3rd", "11th"."""
    ending = "th" if 10 <= number % 100 <= 13 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"

