"""How a seam is made: the stitches and stitchings that the trade knows, by whatever words a pattern names them."""

from __future__ import annotations

import re
from typing import Literal

from motifold.render.pattern.model import SeamSource
from motifold.render.pattern.spelling import nearest
from motifold.render.pattern.values import Reader, Table, centimetres, reference, text
from motifold.symbols.terms import canonical, full_name

_NO_STITCHES = {"whipstitch": "whip stitch", "overcast": "whip stitch", "mattress": "mattress stitch", "whip": "whip stitch"}
_LISTED = ("slip stitch", "single crochet", "half double crochet", "double crochet", "whip stitch", "mattress stitch", "join as you go")
_LISTED_UK = ("slip stitch", "double crochet", "half treble", "treble", "whip stitch", "mattress stitch", "join as you go")
_AS_YOU_GO = re.compile(r"(?:join(?:ed|ing)?[- ]as[- ](?:you|i|we)(?:[- ]go)?|jayg)\b.*")
_SEWN = re.compile(
    r"\b(?:slip|ladder|invisible|back|running|whip|overcast|blanket|mattress|woven|weav\w+|graft\w*|kitchener|oversew\w*|overhand|"
    r"zip\w*|braid\w*|zig-?zag|flat|baseball|cross|crochet|treble|sc|ss|hdc|htr|dc|tr|picot|chain|cable|surface|sew\w*|stitch\w*)(?:\b|stitch)"
)
_ENDINGS = re.compile(r"\b(?:seams?|joins?|sts?|stitch(?:es)?)$")


def build_seam(reader: Reader, table: Table, yarns: tuple[str, ...]) -> SeamSource:
    """The seam of an assembly; a method that nobody sews or crochets with is a problem."""
    seam: Table = table.get("seam", {})
    yarn = reference(reader, seam, ("assembly", "seam", "yarn"), yarns, "yarn")
    method = text(seam, "method") or "slip stitch"
    if canonical(method.lower(), reader.terms) is None:
        _tell_of_unknown(reader, method)
    return SeamSource(
        method=_method(method, reader.terms),
        yarn=yarn,
        passes=tuple(tuple(name.strip() for name in one) for one in seam.get("passes", ())),
        adds_cm=centimetres(reader, seam, ("assembly", "seam", "adds"), positive=False) or 0.0,
    )


def _method(written: str, terms: Literal["US", "UK"]) -> str:
    """A seam's stitch by its full US name, whatever the terms of the file: "dc" in UK terms is "single crochet"; other words as they are.

    >>> _method("double crochet", "UK"), _method("sl st", "US"), _method("mattress stitch seam", "UK")
    ('single crochet', 'slip stitch', 'mattress stitch')
    >>> _method("join as you go along", "US")
    'join as you go'
    """
    words = " ".join(written.lower().split()).removesuffix(" seam")
    stitch = canonical(words, terms)
    if stitch in ("sl st", "sc", "hdc", "dc", "tr"):
        return full_name(stitch, "US")
    if _AS_YOU_GO.fullmatch(words):
        return "join as you go"
    return _NO_STITCHES.get(words, words if words != written.lower() else written)


def _tell_of_unknown(reader: Reader, written: str) -> None:
    """Complains of what is all but a known way to sew, and of what is none: "ladder stitch" is one, "glue" is not."""
    words = " ".join(written.lower().split()).removesuffix(" seam")
    if _AS_YOU_GO.fullmatch(words):
        return
    listed = _LISTED if reader.terms == "US" else _LISTED_UK
    guess = nearest(words, listed)
    bare = _ENDINGS.sub("", words).strip()
    if guess is not None and (words.removesuffix("es") == guess or words.replace(" ", "") == guess.replace(" ", "")):
        return
    if guess is None and _SEWN.search(bare):
        return
    hint = f'did you mean "{guess}"?' if guess is not None else f"known are {', '.join(listed)}; others by their usual name: ladder stitch"
    reader.add("value", reader.locator.value(("assembly", "seam", "method")), f'"{written}" is no way to sew that is known', hint)
