"""Colourways as the file has them: which yarns each works, and which panel has which."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from motifold.render.pattern.model import Colourway, MotifSource, NetCell
from motifold.render.pattern.scan import Path
from motifold.render.pattern.values import Reader, Table, reference

MOST_COLOURWAYS = 100


def with_colourways(
    reader: Reader, tables: Table, motifs: tuple[MotifSource, ...], yarns: tuple[str, ...]
) -> tuple[MotifSource, ...]:
    """The motifs with the colourways that their tables give."""
    return tuple(replace(m, colourways=_colourways(reader, tables.get(m.name, {}), ("motif", m.name), yarns)) for m in motifs)


def _colourways(reader: Reader, table: Table, at: Path, yarns: tuple[str, ...]) -> tuple[Colourway, ...]:
    found: list[Colourway] = []
    for name, changes in table.get("colourway", {}).items():
        here: Path = (*at, "colourway", name)
        if not name.strip() or len(name) > 60 or re.search(r"\s|^\.$", name):
            reader.add("name", reader.locator.key(here), "a colourway's name is one short word", "for example dawn")
            continue
        if len(found) >= MOST_COLOURWAYS:
            reader.add("value", reader.locator.key(here), f"a motif has at most {MOST_COLOURWAYS} colourways")
            break
        worked: dict[str, str] = {}
        for key in changes:
            if key not in yarns:
                near = reader.nearest(key, yarns)
                hint = f"did you mean {near}?" if near else f"the file's yarns are {', '.join(yarns[:12])}"
                reader.add("reference", reader.locator.key((*here, key)), f'there is no yarn "{key[:40]}"', hint)
            elif (yarn := reference(reader, changes, (*here, key), yarns, "yarn")) is not None:
                worked[key] = yarn
        found.append(Colourway(name, worked))
    return tuple(found)


def build_placing(
    reader: Reader, table: Table, motifs: tuple[MotifSource, ...], net: tuple[NetCell, ...], at: Path
) -> Mapping[str, str]:
    """The colourway of each panel by the plan, whose words stand where the net's do; what has a dot has none.

    Empty where no plan is given.
    """
    if "colourways" not in table:
        return {}
    located = reader.locator.text((*at, "colourways"))
    known = list(dict.fromkeys(way.name for motif in motifs for way in motif.colourways))
    panels = {(cell.row, cell.column): cell.panel for cell in net}
    placed: dict[str, str] = {}
    unknown: set[str] = set()  # each of them is told once
    rows, offset = 0, 0
    for line in located.text.split("\n"):
        words = list(re.finditer(r"\S+", line.split("#")[0]))
        for column, match in enumerate(words):
            word, span = match.group(), located.span(offset + match.start(), offset + match.end())
            panel = panels.get((rows, column))
            if word == ".":
                continue
            if panel is None:
                if net:
                    reader.add("colourway", span, f'"{word[:40]}" stands where the net has no panel', "lay the plan out as the net is")
            elif word in unknown:
                continue
            elif word not in known:
                unknown.add(word)
                near = reader.nearest(word, known)
                hint = f"did you mean {near}?" if near else "a colourway stands in its motif: [motif.NAME.colourway]"
                reader.add("colourway", span, f'there is no colourway "{word[:40]}"', hint)
            else:
                placed[panel] = word
            if reader.flooded:
                return placed
        rows += bool(words or rows)
        offset += len(line) + 1
    missing = [cell.panel for cell in net if cell.panel not in placed]
    if placed and missing and not reader.found("colourway"):
        message = f"the plan gives no colourway to {', '.join(missing[:6])}{' and others' if len(missing) > 6 else ''}"
        reader.add("colourway", reader.locator.value((*at, "colourways")), message, "they are worked as the text says", "warning")
    return placed
