"""What a pattern's text uses: its stitches, a magic ring, a standing stitch. Read from the instructions, never from print."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from motifold.render.pattern.instructions import CountClaim, CountsAs, Join, MagicRing, StitchSpec, Target, Work
from motifold.render.words.voice import canonical_name
from motifold.symbols.stitches import kind


def nodes(node: object) -> Iterator[object]:
    """Every part of a tree of instructions, in reading order."""
    if isinstance(node, tuple):
        for part in node:
            yield from nodes(part)
        return
    fields = getattr(node, "__dataclass_fields__", None)
    if fields is None:
        return
    yield node
    for name in fields:
        yield from nodes(getattr(node, name))


def stitches_used(texts: Iterable[object]) -> tuple[str, ...]:
    """Canonical names of all stitches that the texts work, name as a place, or count; each where it first stands."""
    found: dict[str, None] = {}
    for node in nodes(tuple(texts)):
        for name in _named(node):
            found.setdefault(name)
    return tuple(found)


def _named(node: object) -> tuple[str, ...]:
    if isinstance(node, Work):
        return (canonical_name(node.stitch),)
    if isinstance(node, CountsAs):
        return (*node.stitches, *(("ch",) if node.chains or node.space else ()))
    if isinstance(node, Target | CountClaim):
        target = node.target if isinstance(node, CountClaim) else node
        if target.kind in ("stitch", "between") and target.name and target.name not in ("group", "st"):
            return (target.name,)
        return ("ch",) if target.kind == "ch" or target.chains is not None else ()
    if isinstance(node, Join):
        return (node.method,) if node.method in ("sl st", "sc") else ()
    return ("ch",) if type(node).__name__ == "Chain" else ()


def with_stems(names: Iterable[str]) -> tuple[str, ...]:
    """The names, and before each composed one the plain stitch that it is made of: "dc" before "dc3tog"."""
    found: dict[str, None] = {}
    for name in names:
        try:
            stem = kind(name).stem
        except KeyError:
            stem = name
        plain = stem[2:] if stem[:2] in ("FP", "BP") else stem
        found.setdefault(plain)
        found.setdefault(name)
    return tuple(found)


def makes_magic_ring(texts: Iterable[object]) -> bool:
    return any(isinstance(node, MagicRing) for node in nodes(tuple(texts)))


def has_standing(texts: Iterable[object]) -> bool:
    return any(isinstance(node, StitchSpec) and node.standing for node in nodes(tuple(texts)))
