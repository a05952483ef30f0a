"""What is said by the way: counts, what a chain counts as, "(corner made)", "You should have 24 dc"."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from motifold.render.pattern.instructions import Chain, CountsAs, Group, Step, Words, Work
from motifold.render.pattern.notation.amounts import at_times
from motifold.render.pattern.notation.beginnings import read_counts_as
from motifold.render.pattern.notation.counts import try_bracket, try_sentence
from motifold.render.pattern.notation.lexicon import END, Lexeme
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.notation.stitches import GATHERED

Body = Callable[[Reader], tuple[Step, ...]]


def counts_as_after(r: Reader, before: list[Step]) -> list[Step]:
    """Such as "Ch 3, (counts as dc)": what is said after a comma belongs to the chain before."""
    last = before[-1]
    if (
        isinstance(last, Group) and last.steps and isinstance(last.steps[-1], Work) and not last.place.each
    ):  # "(ch 3, dc2tog) in same sp (counts as cl)"
        inner = list(last.steps)
        counts_as_after(r, inner)
        before[-1] = replace(last, steps=tuple(inner))
        return []
    if not isinstance(last, (Chain, Work)):
        raise r.reject("word", "nothing stands before this that could count as a stitch", '"ch 3 (counts as dc)"')
    counts = read_counts_as(r, last.count.values[0] if isinstance(last, Chain) else 0)
    if counts is None:
        raise r.reject(
            "word",
            f'"{r.written()}" does not say as what it counts',
            '"(counts as dc)", "(counts as dc and ch 1)", "(does not count as a st)"',
        )
    before[-1] = replace(last, counts_as=counts)
    return []


def cluster_made(r: Reader, before: list[Step]) -> bool:
    """Such as "ch 3, dc2tog in same sp (beg cl made)": the chain and what is worked together are the first cluster. Takes the bracket."""
    closer = r.closers[r.pos]
    inside = r.items[r.pos + 1 : closer]
    last = before[-1] if before else None
    if not isinstance(last, Work) or last.stitch.together < 2 or last.counts_as is not None or len(before) < 2:
        return False
    names = [lexeme.value.removeprefix("beg ") for lexeme in inside if lexeme.kind == "stitch"]
    others = {lexeme.value for lexeme in inside if lexeme.kind != "stitch"}
    known = len(names) == 1 and (names[0] in GATHERED or names[0] in r.context.defined)
    if not known or not isinstance(before[-2], Chain) or inside[-1].value != "made" or not others <= {"made", "beg", "first"}:
        return False
    before[-1] = replace(last, counts_as=CountsAs((names[0],)))
    r.pos = closer + 1
    return True


def counts_in_bracket(r: Reader) -> bool:
    """Takes the bracket that comes next as counts, if by its place and by its words it is."""
    closer = r.closers[r.pos]
    following = r.items[closer + 1 :][:3]
    after = closer + 1
    while after < r.end and r.items[after].kind in ("sep", "brace"):
        after += 1
    last = after >= r.end
    if not last and not _may_follow_counts(following):
        return False
    claims = try_bracket(r, last)
    if claims is None:
        return False
    r.claims.extend(claims)
    return True


def you_should_have(r: Reader) -> bool:
    """Such as "You should have 24 dc." is a count."""
    at = r.pos
    while r.at_kind("word") and not r.at_kind("num"):
        r.take()
    if r.at_kind("num") and try_sentence(r):
        return True
    r.pos = at
    return False


def _may_follow_counts(following: list[Lexeme]) -> bool:
    if not following:
        return True
    first = following[0]
    if first.kind == "sep" and first.value == ",":
        return len(following) > 1 and following[1].value in _AFTER_COUNTS
    if first.value == "rep" and len(following) > 1 and following[1].value in ("rnd", "row", "last", "prev"):
        return True
    if first.first and first.kind == "word" and not (first.value in _AFTER_REPEATS or first.raw in ("twice", "thrice")):
        return True
    return first.kind in ("sep", "dash", "open", "brace", "end") or (first.kind == "word" and first.value in _AFTER_COUNTS)


_AFTER_REPEATS = frozenset({"in", "on", "around", "across", "to", "all", "until", "x", "along", "for", "total", "over", "between"})
_AFTER_COUNTS = frozenset({"join", "turn", "fasten off", "change", "with", "not", "cut", "invisible join", "drop", "close"})


def remark_in_brackets(r: Reader, body: Body) -> list[Step] | None:
    """Such as "(RS)", "(corner made)", "(working in back loops only)": said by the way; None and nothing taken for other brackets."""
    start, closer = r.pos, r.closers[r.pos]
    inside = r.items[start + 1 : closer]
    if not inside:
        return None
    if inside[0].value in ("rs", "ws") and len(inside) <= 2:
        r.facing = "RS" if inside[0].value == "rs" else "WS"
        r.pos = closer + 1
        return []
    if (inside[-1].value == "made" and inside[-1].kind == "word") or _only_talk(r, inside, closer):
        number = r.new_id()
        r.pos = closer + 1
        text = r.text.text[inside[0].start - 1 : r.items[closer].end]
        return [Words(number, r.span(start), " ".join(text.split()))]
    said = inside[0].kind == "word" and inside[0].value in ("working", "not", "leave", "place marker", "change")
    if said and not _is_repeated(r, closer):
        r.take()
        with r.inside(closer):
            steps = body(r)
        r.pos = closer + 1
        return list(steps)
    return None


def _is_repeated(r: Reader, closer: int) -> bool:
    """Whether a bracket that closes here is worked several times: "(pm, sc in next st) twice"."""
    at, r.pos = r.pos, closer + 1
    repeated = at_times(r) or r.at("around", "across", "to")
    r.pos = at
    return repeated


_TALK = frozenset(
    {
        "see",
        "note",
        "optional",
        "picture",
        "photo",
        "same",
        "or",
        "loosely",
        "tightly",
        "corner",
        "center",
        "top",
        "bottom",
        "left",
        "right",
    }
)


def _only_talk(r: Reader, inside: list[Lexeme], closer: int) -> bool:
    """Whether a bracket only explains: "(corner)", "(same st as join)", "(see Notes)", with nothing to repeat or to place behind it."""
    if inside[0].raw not in _TALK or any(lexeme.kind not in ("word", "sep", "stitch") for lexeme in inside):
        return False
    following = r.items[closer + 1] if closer + 1 < r.end else END
    return following.kind in ("sep", "end", "close", "open", "mark", "dash")
