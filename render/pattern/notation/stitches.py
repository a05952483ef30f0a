"""The name of a stitch, with the numbers in it: ``dc3tog``, ``5-dc cl``, ``ch-3 picot``, ``FPtr``, ``sc inc``, ``inv dec``."""

from __future__ import annotations

import re
from functools import lru_cache

from motifold.render.pattern.instructions import StitchSpec
from motifold.render.pattern.notation.reader import Reader
from motifold.symbols.stitches import MAX_TOGETHER

_TOGETHER = re.compile(r"(.+?)(\d+)tog")
_GATHERED = re.compile(r"(\d+)-(.+) (cl|bobble|pc|puff|shell)")
_PICOT = re.compile(r"ch-(\d+) picot")
GATHERED = frozenset({"cl", "bobble", "pc", "puff", "shell", "picot", "V-st"})
"""Special stitches whose name may carry a number and a stitch: "5-dc cl", "3-tr bobble"."""
_NEVER_IN_HAND = frozenset({"ch", "sl st", "picot"})


@lru_cache(maxsize=512)
def spec_of(name: str) -> StitchSpec:
    """The parts of a canonical name: "FPdc3tog" is three dc together round front posts."""
    if name == "inv dec":
        return StitchSpec("sc", together=2, invisible=True)
    if name.startswith("beg "):
        inner = spec_of(name.removeprefix("beg "))
        return StitchSpec(inner.name, inner.together, inner.post, inner.size, inner.of, beginning=True)
    if name[:2] in ("FP", "BP"):
        inner = spec_of(name[2:])
        return StitchSpec(inner.name, inner.together, "front" if name[0] == "F" else "back")
    picot = _PICOT.fullmatch(name)
    if picot:
        return StitchSpec("picot", size=int(picot.group(1)))
    gathered = _GATHERED.fullmatch(name)
    if gathered:
        return StitchSpec(gathered.group(3), size=int(gathered.group(1)), of=gathered.group(2))
    together = _TOGETHER.fullmatch(name)
    if together:
        return StitchSpec(together.group(1), together=int(together.group(2)))
    return StitchSpec(name)


def at_stitch(r: Reader) -> bool:
    """Whether the name of a stitch begins here (numbers before it not counted)."""
    lexeme = r.peek()
    if lexeme.kind == "stitch" or (lexeme.kind == "word" and lexeme.value in ("inc", "dec")) or at_several_in_one(r):
        return True
    if lexeme.kind == "word" and lexeme.value in ("standing", "beg", "invisible"):
        if r.peek(1).kind == "num":  # "beg 3-dc cl"; in "start 6 sc" no stitch has that name
            return r.peek(2).kind == "stitch" and _closes(r, 3)
        return r.peek(1).kind == "stitch" or r.peek(1).value in ("inc", "dec")
    return lexeme.kind == "word" and lexeme.value == "ch" and r.peek(1).kind == "num" and r.peek(2).value == "picot"


def read_stitch(r: Reader) -> StitchSpec:
    """The stitch that begins here, with the number that belongs to its name ("5-dc cl", "3 dc tog")."""
    standing = r.accept("standing") is not None
    beginning = r.accept("beg") is not None
    sized = read_sized(r) if may_be_sized(r) else None
    if sized is not None:
        spec = sized
    elif at_several_in_one(r):
        spec = _several_in_one(r, r.memory.hand)
    elif r.at("inc", "dec"):
        spec = _change(r, r.memory.hand)
    else:
        lexeme = r.take()
        spec = StitchSpec(lexeme.value) if lexeme.value in r.context.defined else spec_of(lexeme.value)
        spec = _suffixes(r, spec)
    if r.accept("standing"):
        standing = True
    if standing or beginning:
        spec = StitchSpec(
            spec.name, spec.together, spec.post, spec.size, spec.of, spec.increase, standing, spec.invisible, beginning or spec.beginning
        )
    if spec.name not in _NEVER_IN_HAND and spec.name not in GATHERED and spec.name not in r.context.defined:
        r.memory.hand = spec.name
    return spec


def _suffixes(r: Reader, spec: StitchSpec) -> StitchSpec:
    """What may follow a name: "st", "2 tog", "inc", "dec", "standing st"."""
    if r.at("st") and r.peek().raw in ("st", "stitch", "sts", "stitches") and spec.together == 1:
        r.take()
    number = r.peek()
    if number.kind == "num" and (r.peek(1).value == "tog" or (r.peek(1).value == "st" and r.peek(2).value == "tog")):
        r.pos += 2 if r.peek(1).value == "tog" else 3
        return _together(r, spec, number.number)
    if spec.together == 1 and at_several_in_one(r):
        return _several_in_one(r, spec.name)
    if spec.together == 1 and r.at("inc", "dec") and spec.name not in ("ch", "sl st"):
        return _change(r, spec.name)
    if spec.invisible:
        return StitchSpec(r.memory.hand, together=2, invisible=True)
    if spec.size is None and spec.name == "V-st":
        r.accept("st")
    return spec


def _together(r: Reader, spec: StitchSpec, legs: int) -> StitchSpec:
    if not 2 <= legs <= MAX_TOGETHER:
        raise r.reject("number", f"{legs} stitches cannot be worked together: from 2 to {MAX_TOGETHER} can", lexeme=r.before())
    return StitchSpec(spec.name, together=legs, post=spec.post)


def _change(r: Reader, name: str) -> StitchSpec:
    """Such as "inc" and "dec" of the stitch named, or of the stitch in hand."""
    if r.take().value == "dec":
        return StitchSpec(name, together=2)
    return StitchSpec(name, increase=2)


def at_several_in_one(r: Reader) -> bool:
    """Whether "3-in-1 inc" comes next: an increase of any size."""
    return r.at_kind("num") and r.peek(1).value == "in" and r.peek(2).number == 1 and r.peek(3).kind == "word" and r.peek(3).value == "inc"


def _several_in_one(r: Reader, name: str) -> StitchSpec:
    number = r.peek()
    if not 2 <= number.number <= MAX_TOGETHER:
        raise r.reject("number", f"{number.number} stitches in one are no increase: from 2 to {MAX_TOGETHER} are", lexeme=number)
    r.pos += 4
    return StitchSpec(name, increase=number.number)


def may_be_sized(r: Reader) -> bool:
    """Whether two words stand here that a name with a number begins with; most stitches are told apart by this alone."""
    first, second = r.peek().kind, r.peek(1)
    if first == "stitch":
        return second.kind == "stitch"
    if first == "num":
        return second.kind == "stitch" or second.value == "ch"
    return first == "word" and second.kind == "num" and r.peek(2).kind == "stitch"


def read_sized(r: Reader) -> StitchSpec | None:
    """Such as "5-dc cl", "ch-3 picot", "3-ch picot", "dc cl": the name with its number, if one begins here; else nothing is taken."""
    first, second, third = r.peek(), r.peek(1), r.peek(2)
    if first.value == "ch" and second.kind == "num" and third.value == "picot" and third.kind == "stitch":
        r.pos += 3
        return StitchSpec("picot", size=second.number)
    if first.kind == "num" and second.value == "ch" and third.value == "picot" and third.kind == "stitch":
        r.pos += 3
        return StitchSpec("picot", size=first.number)
    if first.kind == "num" and second.kind == "stitch" and second.tight and third.kind == "stitch" and third.value in r.context.defined:
        r.pos += 3  # "5-dc shell", where the file says itself what a shell is
        return StitchSpec(third.value)
    if first.kind == "num" and second.kind == "stitch" and _closes(r, 2) and second.value not in GATHERED:
        r.pos += 3
        r.accept("st")
        return StitchSpec(third.value, size=first.number, of=second.value)
    if (
        first.kind == "stitch"
        and _closes(r, 1)
        and first.value not in GATHERED
        and first.value not in r.context.defined
        and first.value not in ("ch", "sl st")
    ):
        r.pos += 2
        r.accept("st")
        return StitchSpec(second.value, of=first.value)
    if first.kind == "num" and second.kind == "stitch" and r.peek(2).value == "tog" and second.value not in r.context.defined:
        r.pos += 3
        return _together(r, spec_of(second.value), first.number)
    return None


def _closes(r: Reader, ahead: int) -> bool:
    lexeme = r.peek(ahead)
    return (
        lexeme.kind == "stitch"
        and lexeme.value in GATHERED
        and lexeme.value not in ("picot", "V-st")
        and lexeme.value not in r.context.defined
    )
