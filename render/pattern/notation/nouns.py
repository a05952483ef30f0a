"""What a place or a count names: stitches, spaces, chains, groups, corners, the ring, edges."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import Target
from motifold.render.pattern.notation.lexicon import MAY_BE_GROUPS
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.notation.stitches import GATHERED
from motifold.render.pattern.notation.suggestions import suggestion

PLACE_HINT = 'a place is a stitch, a space, a chain, a group or the ring: "in next ch-2 sp"'
NOUNS = frozenset({
    "st", "sp", "lp", "ch", "corner", "group", "ring", "magic ring", "tch", "foundation", "row end", "side", "other side", "marker"
})  # fmt: skip


def at_noun(r: Reader) -> bool:
    return (
        r.at(*NOUNS)
        or r.peek().raw == "marked"
        or (r.at("row") and r.peek(1).kind != "num")
        or r.at_kind("stitch")
        or (r.at_kind("num") and r.peek(1).value == "ch" and r.peek(1).kind == "word")
    )


def read_noun(r: Reader) -> Target:
    """The thing named here. A number before ``ch`` is its length ("2-ch sp"); what comes before that has been read."""
    corner = r.accept("corner") is not None
    lexeme = r.peek()
    if lexeme.kind == "num" and r.peek(1).value == "ch":
        r.take(), r.take()
        return _space(r, lexeme.number, corner)
    if lexeme.kind == "stitch":
        return _stitch(r, corner)
    if lexeme.kind == "num" and r.peek(1).kind == "stitch" and r.peek(2).value in ("group", "corner", *GATHERED):
        r.take()
        return _stitch(r, corner)
    if r.accept("ch"):
        if r.at_kind("num") and r.peek(1).value not in ("times", "more", "x"):
            return _space(r, r.take().number, corner)
        if r.at("sp", "lp", "corner"):
            return _space(r, None, corner)
        return Target("ch", corner=corner)
    if r.at("sp", "lp"):
        return _space(r, None, corner)
    if r.peek().raw == "marked":
        r.take()
        r.accept("corner")
        if r.at("sp", "lp", "ch") or (r.at_kind("num") and r.peek(1).value == "ch"):
            found = read_noun(r)
            return replace(found, kind="marker", name="sp")
        r.accept("st", "corner") or r.accept_kind("stitch")
        return Target("marker")
    if r.accept("marker"):
        return Target("marker")
    if r.accept("st"):
        if r.follows("with", "marker") or r.peek().raw == "marked":
            r.pos += 1 if r.peek().raw == "marked" else 2
            return Target("marker")
        return Target("st", corner=corner)
    if r.accept("group"):
        return Target("group", corner=corner)
    if r.at("ring", "magic ring"):
        if r.take().value == "magic ring" and not r.memory.ring_made:
            r.memory.ring_made = r.memory.ring_wanted = True
        return Target("ring")
    if r.accept("tch"):
        if r.at_kind("num") and r.peek(1).value not in ("rnd", "row"):  # "tch 3", but "tch 2 rnds below"
            return Target("tch", chains=r.take().number)
        return Target("tch")
    if r.accept("foundation"):
        return Target("foundation")
    if r.accept("other side"):
        if r.accept("of"):
            r.accept("beg")
            r.accept("foundation", "ch", "ring")
            r.accept_kind("num")
        return Target("foundation")
    if r.accept("row end"):
        return Target("row end")
    if r.at("row") and r.peek(1).kind != "num":
        r.take()
        return Target("row end")
    if r.accept("side"):
        return Target("side")
    if corner:
        return Target("corner", corner=True)
    if r.at_kind("unworked"):
        raise r.reject("not-worked", f'"{r.written()}" is known, but not worked here as a place', PLACE_HINT)
    raise r.reject("word", _cannot(r, "a place"), suggestion(r.peek(), r.context) or PLACE_HINT)


def _cannot(r: Reader, wanted: str) -> str:
    lexeme = r.peek()
    return f'"{r.written()}" cannot be read as {wanted}' if lexeme.kind not in ("sep", "end", "close") else f"{wanted} is missing here"


def _space(r: Reader, chains: int | None, corner: bool) -> Target:
    """A space of so many chains; "ch 3" alone is a space too: whoever names its length means all of it."""
    if chains is not None and r.at_kind("stitch") and r.peek().value == "picot":  # "ch-3 picot"
        return replace(_stitch(r, corner), chains=chains)
    corner = r.accept("corner") is not None or corner
    lexeme = r.accept("sp", "lp")
    if lexeme is None and r.accept("ring"):
        return Target("ring")
    corner = r.accept("corner") is not None or corner
    if lexeme is None and chains is not None:
        return Target("ch", chains=chains, corner=corner)
    return Target("sp", chains=chains, corner=corner, loop=lexeme is not None and lexeme.value == "lp")


def _stitch(r: Reader, corner: bool) -> Target:
    """Such as "dc", "3-dc group", "next petal", "V-st"; "cluster" is a group of stitches where nobody works a cluster."""
    lexeme = r.take()
    name = lexeme.value
    if r.at("group") or (r.at_kind("stitch") and r.peek().value in GATHERED and name not in GATHERED and not r.peek().first):
        following = r.take()
        if following.value != "group" and not _means_group(r, following.value):
            return Target("stitch", name=following.value, corner=corner)
        return Target("group", corner=corner)
    if r.at_kind("num") and r.peek(1).value == "tog":
        name = f"{name}{r.take().number}tog"
        r.take()
    elif (r.at("st") and r.peek().tight) or (r.at("st") and name in GATHERED):
        r.take()
    corner = r.accept("corner") is not None or corner
    if r.at("sp", "lp"):  # "corner sp" is a space, and so is "V-st sp": the one in it, read by the place
        return Target("stitch", name=name, corner=corner)
    if _means_group(r, name):
        return Target("group", corner=corner)
    return Target("stitch", name=name, corner=corner)


def _means_group(r: Reader, name: str) -> bool:
    """Whether "cluster" or "shell" is said of plain stitches in one place, since nobody works one by that name."""
    name = name.removeprefix("beg ")
    return name in MAY_BE_GROUPS and name not in r.worked and name not in r.context.defined and not r.in_definition
