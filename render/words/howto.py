"""How the trade's special stitches are made, in one sentence each: from their legs and families, not stitch by stitch."""

from __future__ import annotations

from motifold.render.words.voice import NBSP, Voice, handed, with_article
from motifold.symbols.stitches import Kind, kind


def how_to_make(voice: Voice, name: str) -> str | None:
    """A sentence for a stitch by its canonical name; None for the basic ones, which everyone knows, and for names of a pattern's own.

    >>> how_to_make(Voice("US"), "dc")
    >>> how_to_make(Voice("US"), "V-st")
    '(Dc, ch\\xa01, dc) in the same place.'
    """
    try:
        found = kind(name)
    except KeyError:
        return None
    if name.startswith("beg "):
        return how_to_begin(voice, name.removeprefix("beg "), found.stem, chained=False)
    if found.invisible:
        return _invisible(voice)
    if found.gather is not None:
        return _gathered(voice, found)
    if found.family == "special":
        return _placed(voice, found)
    if found.post is not None:
        return _post(voice, found)
    if found.reverse:
        side = handed("left to right") if voice.left_handed else "left to right"
        return f"Work {voice.stitch('sc', True)} from {side}, against the usual direction."
    return {"extended": _extended, "linked": _linked, "foundation": _foundation}.get(found.family, _nothing)(voice, found)


def _nothing(voice: Voice, found: Kind) -> str | None:
    return None


def _legs(voice: Voice, found: Kind) -> str:
    return f"{found.legs}{NBSP}{voice.stitch(found.stem, True)}"


def _gathered(voice: Voice, found: Kind) -> str:
    yo, loops = voice.term("yo"), voice.craft("lps")
    if found.gather == "together":
        return (
            f"Work {_legs(voice, found)}, one in each of the next {found.legs}{NBSP}{voice.craft('sts')} or as told, each up to its "
            f"last {yo}; {yo} and draw through all {found.legs + 1}{NBSP}{loops} on the hook."
        )
    if found.gather == "popcorn":
        return (
            f"Work {_legs(voice, found)} in the same place; take the hook out of the loop, insert it in the top of the first of them, "
            "and draw the loop through."
        )
    if found.gather == "puff":
        return (
            f"({_capital(yo)}, insert the hook, draw up a long loop) {found.legs}{NBSP}times in the same place; {yo} and draw through all "
            f"{2 * found.legs + 1}{NBSP}{loops} on the hook."
        )
    if found.gather == "crossed":
        stitch, skip = voice.stitch(found.stem), voice.term("sk")
        st = voice.craft("st")
        return f"{_capital(skip)} next {st}, {stitch} in next {st}, then {stitch} in the {st} just passed over."
    push = "; push it out to the right side" if found.gather == "bobble" else ""
    return (
        f"Work {_legs(voice, found)} in the same place, each up to its last {yo}; "
        f"{yo} and draw through all {found.legs + 1}{NBSP}{loops} on the hook{push}."
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def stem_of(name: str) -> str | None:
    """The stitch that a special stitch is made of: "dc" of a "5-dc cl"; None for a name of nobody's."""
    try:
        return kind(name).stem
    except KeyError:
        return None


def how_to_begin(voice: Voice, rest: str, first: str | None, chained: bool) -> str:
    """A "beg cl": so many chains in place of its first stitch, as high as that stitch. ``chained``: the lines themselves say the chain."""
    stitch, ch = voice.stitch(rest), "chain" if voice.plain else "ch"
    try:
        made_of = kind(first or "")
    except KeyError:
        return f"Work {with_article(stitch)} with the beginning chain as its first stitch."
    if chained:
        return f"The {ch} before it is the first {voice.stitch(made_of.name)} of the {stitch}; work the rest of it as usual."
    high = 1 if made_of.yarn_overs == 0 else made_of.yarn_overs + (1 if made_of.half else 2)
    first_of = f"the first {voice.stitch(made_of.name)} of the {stitch}"
    return f"{_capital(ch)}{NBSP}{high} in place of {first_of}, then work the rest of it as usual."


def _invisible(voice: Voice) -> str:
    yo = voice.term("yo")
    return (
        f"Insert the hook in the front loop of each of the next 2{NBSP}{voice.craft('sts')}, {yo} and draw through both front loops, "
        f"{yo} and draw through both loops on the hook."
    )


def _placed(voice: Voice, found: Kind) -> str | None:
    ch = "chain" if voice.plain else "ch"
    if found.stem == "ch":
        nth = {2: "2nd", 3: "3rd"}.get(found.chains, f"{found.chains}th")
        return f"{_capital(ch)}{NBSP}{found.chains}, {voice.stitch('sl st')} in the {nth}{NBSP}{ch} from the hook."
    stem = voice.stitch(found.stem)
    if found.chains:
        return f"({_capital(stem)}, {ch}{NBSP}{found.chains}, {stem}) in the same place."
    return f"{found.legs}{NBSP}{voice.stitch(found.stem, True)} in the same place."


def _post(voice: Voice, found: Kind) -> str:
    plain = voice.stitch(found.stem[2:] if found.stem[:2] in ("FP", "BP") else found.stem)
    side = "front, round the back of the post and out to the front" if found.post == "front" else (
        "back, round the front of the post and out to the back"
    )
    return f"Work {with_article(plain)} around the post of the stitch: insert the hook from the {side} again."


def _extended(voice: Voice, found: Kind) -> str:
    base = voice.stitch(found.name[1:])
    yo = voice.term("yo")
    return f"Work {with_article(base)}, but once the loop is drawn up, {yo} and draw through 1 loop before you go on."


def _linked(voice: Voice, found: Kind) -> str:
    base = voice.stitch(found.name[1:])
    return (
        f"Work {with_article(base)}, but instead of making yarn overs draw up its first loops through the bars on the side of the stitch "
        "before."
    )


def _foundation(voice: Voice, found: Kind) -> str:
    base = voice.stitch(found.name[1:])
    yo = voice.term("yo")
    return (
        "Insert the hook in the chain at the foot of the stitch before (for the first, in the first of the chains made to begin), "
        f"draw up a loop, {yo} and draw through 1 loop: this is the new chain; go on as for {with_article(base)}."
    )


def magic_ring(voice: Voice) -> str:
    return (
        "Lay the yarn in a ring, insert the hook and draw up a loop; work the first round over both strands, then pull the tail to close "
        "the ring."
    )


def standing_stitch(voice: Voice) -> str:
    return "With a slip knot on the hook, work the stitch where you are told, without joining the yarn first."
