"""The usual cautions. They name what can hurt and who can judge; they certify nothing."""

from __future__ import annotations

import re

from motifold.render.pattern.model import Pattern
from motifold.render.words.model import Paragraph, Section


def _any_of(words: str) -> re.Pattern[str]:
    """Any of these words, singular or plural."""
    return re.compile(rf"\b(?:{'|'.join(words.split())})(?:s|es)?\b", re.IGNORECASE)


_CHILDREN = _any_of(
    "baby babies infant newborn preemie toddler child children kid nursery month year yr teen lovey comforter pram cot crib toy amigurumi "
    "rattle teether bootee bib doll teddy"
)
_CORDS = _any_of("cord tie drawstring string ribbon elastic strap lace")
_SMALL = _any_of("button bead sequin eye snap bell brooch pin magnet charm pompom pom-pom")
_STITCH_MARKERS = re.compile(r"\bstitch markers?\b", re.IGNORECASE)

_TOOLS = "Hooks, needles, pins and scissors are sharp: keep them, and loose ends of yarn, away from small children."
_FOR_CHILDREN = (
    "For babies and children: weave in every end firmly, check the work for loose parts before each use, and never leave a child "
    "alone or asleep with it."
)
_FOR_CORDS = (
    "Cords, ties and ribbons can catch and strangle: leave them off what is made for children, or keep to the rules for their length."
)
_FOR_SMALL_PARTS = (
    "Buttons, beads and other small parts can be swallowed and choke: sew them on securely, and leave them off what is made for small "
    "children."
)
_RULES = (
    "Rules for what children wear, use and play with differ from place to place and change: ask your local authority or a qualified "
    "person which apply, before you give it away or sell it. Nothing in this pattern has been tested or certified."
)


def cautions_section(pattern: Pattern) -> Section:
    """Always the tools; children, cords and small parts where the pattern speaks of them."""
    bodies = pattern.size.bodies if pattern.size else ()
    words = " ".join((pattern.title, pattern.summary, *(name for name, _ in bodies), *(b for _, b in bodies if isinstance(b, str))))
    notions = _STITCH_MARKERS.sub("", " ".join(pattern.materials.notions))
    children, cords, small = bool(_CHILDREN.search(words)), bool(_CORDS.search(notions)), bool(_SMALL.search(notions))
    texts = [_TOOLS]
    texts += [text for text, needed in ((_FOR_CHILDREN, children), (_FOR_CORDS, cords), (_FOR_SMALL_PARTS, small)) if needed]
    if children or cords or small:
        texts.append(_RULES)
    return Section("cautions", "Cautions", tuple(Paragraph(text, "caution") for text in texts))
