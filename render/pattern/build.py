"""Checked tables -> Pattern: what each table means, and what its values must agree on."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import replace
from typing import Literal

from motifold.render.pattern import notation
from motifold.render.pattern.build_edition import build_edition, build_pictures
from motifold.render.pattern.build_own import build_edging_gauge, with_own
from motifold.render.pattern.build_parts import build_assembly, build_gauge, build_size, panel_names, tell_of_panels
from motifold.render.pattern.build_symbol import own_symbol
from motifold.render.pattern.colours import with_colourways
from motifold.render.pattern.instructions import Group, Instructions, Join, Repeat, Step
from motifold.render.pattern.model import EdgingSource, Materials, MotifSource, Pattern, SidePiece, SpecialStitch, Terms, Yarn
from motifold.render.pattern.net import read_side
from motifold.render.pattern.notation import NotationContext
from motifold.render.pattern.quantity import Quantity
from motifold.render.pattern.scan import Path
from motifold.render.pattern.shapes import INSTEAD, corners, nearest_shape
from motifold.render.pattern.values import Reader, Table, per_length, quantity, reference, text, texts, truth, whole

Worked = Literal["rounds", "rows"]

_HEX = re.compile(r"#(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})")
_YARN_NAME = re.compile(r"\w[\w-]*")
_STITCH_NAME = re.compile(r"[^\W\d_][\w \-/+]*")
_LANGUAGE = re.compile(r"[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*")


def build_pattern(path: str, source: str, tables: Table, reader: Reader) -> Pattern | None:
    """The Pattern of a file whose keys are checked.

    None where there are no terms to read the instructions in, or no motif at all.
    """
    head = tables.get("pattern", {})
    terms = _terms(head)
    yarns = _yarns(reader, tables.get("yarn", {}))
    motif_tables = tables.get("motif", {})
    if "motif" in tables and not motif_tables and not reader.found("type"):
        reader.add("missing", reader.locator.value(("motif",)), "[motif] has no motif", "for example [motif.square]")
    reader.terms_known, reader.terms = terms is not None, terms or "US"
    size = build_size(reader, tables, tuple(motif_tables))
    context = NotationContext(terms or "US", tuple(yarn.key for yarn in yarns), sizes=max(1, reader.count("size", "bodies")))
    stitches, context = _stitches(reader, tables.get("stitch", {}), context, path)
    motifs, context = _motifs(reader, motif_tables, context)
    motifs = with_colourways(reader, motif_tables, motifs, tuple(yarn.key for yarn in yarns))
    assembly = build_assembly(reader, tables, motifs, tuple(yarn.key for yarn in yarns))
    edgings = _edgings(reader, tables.get("edging", {}), context, motifs, panel_names(assembly) if assembly else None)
    gauge = build_gauge(reader, tables, motifs)
    size = with_own(reader, tables, size, motifs, yarns, (gauge, assembly), tuple(edging.name for edging in edgings))
    notes = tables.get("notes", {})
    materials = tables.get("materials", {})
    hook = _hook(reader, materials)
    title, language = _title(reader, head), _language(reader, head)
    edition = build_edition(reader, head)
    pictures = build_pictures(reader, tables.get("picture", {}), [*motif_tables, *tables.get("edging", {})])
    if terms is None or not motifs:
        return None
    return Pattern(
        path=path,
        source=source,
        title=title,
        terms=terms,
        summary=text(head, "summary") or "",
        format=whole(head, "format") or 1,
        level=text(head, "level"),
        author=text(head, "author") or None,
        language=language,
        materials=Materials(hook, texts(materials, "notions"), _margin(reader, materials)),
        yarns=yarns,
        gauge=gauge,
        stitches=stitches,
        motifs=motifs,
        size=size,
        assembly=assembly,
        edgings=edgings,
        notes_before=texts(notes, "before"),
        notes_after=texts(notes, "after"),
        edition=edition,
        pictures=pictures,
        places=reader.locator.places(),
    )


def _hook(reader: Reader, materials: Table) -> Quantity | None:
    """The hook's size; other names for it ("G-6") are added where it is printed."""
    hook = quantity(reader, materials, ("materials", "hook"), "length", hint='its size in millimetres: hook = "4 mm"')
    if hook and not 3 <= 100 * hook.cm <= 600:
        reader.add("value", reader.locator.value(("materials", "hook")), f"no hook is {hook} thick", "is the unit right?")
        return None
    return hook


def _margin(reader: Reader, materials: Table) -> float | None:
    """Yarn to spare, as a share of what is worked."""
    found = quantity(reader, materials, ("materials", "margin"), "share", positive=False)
    if found is not None and not 0 <= found.value <= 100:
        hint = 'for example margin = "10 %"'
        reader.add("value", reader.locator.value(("materials", "margin")), f"{found} is no amount of yarn to spare", hint)
        return None
    return None if found is None else float(found.fraction)


def _terms(head: Table) -> Terms | None:
    terms = head.get("terms")
    return "US" if terms == "US" else "UK" if terms == "UK" else None


def _title(reader: Reader, head: Table) -> str:
    title = text(head, "title")
    if title == "":
        reader.add("value", reader.locator.value(("pattern", "title")), "the title is empty", 'for example title = "Harbour Mat"')
    return title or "Untitled"


def _language(reader: Reader, head: Table) -> str:
    language = text(head, "language")
    if language is None or _LANGUAGE.fullmatch(language):
        return language or "en"
    message = f'"{language[:40]}" is no language tag'
    reader.add("value", reader.locator.value(("pattern", "language")), message, 'for example language = "en" or "en-GB"')
    return "en"


def _yarns(reader: Reader, tables: Table) -> tuple[Yarn, ...]:
    yarns = []
    for key, table in tables.items():
        path: Path = ("yarn", key)
        if not _YARN_NAME.fullmatch(key) or len(key) > 30:
            reader.add(
                "name",
                reader.locator.key(path),
                "a yarn's name in the text is one short word",
                "for example [yarn.A]; its colour goes into name",
            )
        colour = text(table, "hex")
        if colour is not None and not _HEX.fullmatch(colour):
            hint = 'a # and six digits or letters A to F, two each for red, green and blue: hex = "#8c9aa5"'
            reader.add("colour", reader.locator.value((*path, "hex")), f'"{colour[:20]}" is no hex colour', hint)
            colour = None
        if colour and len(colour) == 4:
            colour = "#" + "".join(digit * 2 for digit in colour[1:])
        yarns.append(
            Yarn(
                key=key,
                name=text(table, "name") or key,
                hex=colour.lower() if colour else None,
                weight=whole(table, "weight"),
                length=per_length(reader, table, (*path, "length")),
                ball=quantity(reader, table, (*path, "ball"), "mass"),
                substitute=per_length(reader, table, (*path, "substitute")),
            )
        )
    return tuple(yarns)


def _stitches(
    reader: Reader, tables: Table, context: NotationContext, file: str
) -> tuple[tuple[SpecialStitch, ...], NotationContext]:
    """The special stitches, and the context in which everything after them is read. ``file``: where the pattern itself lies."""
    names = {key: text(table, "name") or key for key, table in tables.items()}
    context = replace(context, defined=names)
    stitches = []
    for key, table in tables.items():
        path: Path = ("stitch", key)
        _check_stitch_name(reader, path, context)
        definition = None
        if "means" in table and reader.terms_known:
            definition, problems = notation.parse_definition(key, reader.locator.text((*path, "means")), context)
            taken = any(problem.code == "name" and problem.span == reader.locator.key(path) for problem in reader.problems)
            reader.problems += [problem for problem in problems if not (taken and problem.code == "definition")]
            if definition:
                context = replace(context, first_id=_after(definition.steps, context.first_id))
        symbol = own_symbol(reader, path, text(table, "symbol"), file)
        stitches.append(SpecialStitch(key, names[key], text(table, "means") or "", definition, symbol))
    return tuple(stitches), context


def _check_stitch_name(reader: Reader, path: Path, context: NotationContext) -> None:
    from motifold.symbols.stitches import kind
    from motifold.symbols.terms import canonical

    key = str(path[1])
    span = reader.locator.key(path)
    if not _STITCH_NAME.fullmatch(key) or len(key) > 40:
        reader.add(
            "name", span, "a stitch's name begins with a letter and has letters, digits, spaces and hyphens", "for example [stitch.petal]"
        )
        return
    if key in context.yarns:
        reader.add("name", span, f"{key} is a yarn and a stitch", "give one of them another name")
    if not reader.terms_known:
        return
    for name in dict.fromkeys((key, context.defined[key])):
        known = canonical(name, context.terms)
        if name.lower() in _CRAFT_WORDS or (known is not None and kind(known).family != "special"):
            hint = "give yours a name of its own: what everyone reads one way is not read another way here"
            reader.add("name", span, f"{name} already means something in {context.terms} terms", hint)
            return


_CRAFT_WORDS = frozenset(
    (
        *(
            "st",
            "sts",
            "stitch",
            "stitches",
            "sp",
            "sps",
            "space",
            "lp",
            "loop",
            "loops",
            "ring",
            "rnd",
            "rnds",
            "round",
            "rounds",
            "row",
            "rows",
        ),
        *("rep", "repeat", "turn", "join", "sk", "skip", "miss", "yo", "yrh", "inc", "dec", "next", "same", "first", "last", "each", "any"),
        *(
            "around",
            "across",
            "end",
            "beg",
            "rs",
            "ws",
            "in",
            "of",
            "with",
            "change",
            "fo",
            "blo",
            "flo",
            "side",
            "corner",
            "pm",
            "sm",
            "tch",
        ),
    )
)
"""Words of the notation: a stitch of this name could not be told from them."""


_SHAPES = "circle, triangle, square, hexagon, half square, half hexagon, polygon: 7, rectangle ..."


def _motifs(reader: Reader, tables: Table, context: NotationContext) -> tuple[tuple[MotifSource, ...], NotationContext]:
    motifs = []
    for name, table in tables.items():
        path: Path = ("motif", name)
        if not name.strip() or len(name) > 60:
            reader.add("name", reader.locator.key(path), "a motif's name is a word or two", "for example [motif.square]")
        instructions, worked, context = _instructions(reader, path, table, context)
        shape = text(table, "shape") or ("rectangle" if worked == "rows" else "circle")
        sides = corners(shape)
        if sides is None:
            near = nearest_shape(shape)
            hint = INSTEAD.get((shape.lower().split() or [""])[-1]) or (f"did you mean {near}?" if near else _SHAPES)
            reader.add("shape", reader.locator.value((*path, "shape")), f'"{shape[:40]}" is no shape that is known here', hint)
            shape = near or "circle"
            sides = corners(shape) or 0
        motifs.append(MotifSource(name, shape, sides, worked, instructions, whole(table, "last_round"), truth(table, "counts_as")))
    return tuple(motifs), context


def _instructions(reader: Reader, path: Path, table: Table, context: NotationContext) -> tuple[Instructions, Worked, NotationContext]:
    """The text of a motif or an edging, and the context for the next one."""
    if "rounds" in table and "rows" in table:
        hint = "keep one; a piece that changes is two motifs, or one text whose lines say Rnd and Row"
        reader.add("value", reader.locator.key((*path, "rows")), f"{path[1]} has both rounds and rows", hint)
    worked: Worked = "rows" if "rows" in table and "rounds" not in table else "rounds"
    if worked not in table:
        return Instructions(()), worked, context
    located = reader.locator.text((*path, worked))
    if not located.text.strip():
        reader.add(
            "value",
            reader.locator.value((*path, worked)),
            f"no {worked} are written here",
            "for example Rnd 1: Ch 3, 11 dc in ring; join. (12 dc)",
        )
        return Instructions(()), worked, context
    if not reader.terms_known:
        return Instructions(()), worked, context
    instructions, problems = notation.parse_instructions(located, replace(context, worked=worked))
    reader.problems += problems
    last = context.first_id
    for line in instructions.lines:
        last = max(last, line.id + 1, _after(line.steps, last))
    return instructions, worked, replace(context, first_id=last)


def _edgings(
    reader: Reader, tables: Table, context: NotationContext, motifs: tuple[MotifSource, ...], panels: Collection[str] | None
) -> tuple[EdgingSource, ...]:
    """``panels``: the assembly's; None where there is no assembly."""
    edgings = []
    names = tuple(motif.name for motif in motifs)
    for name, table in tables.items():
        path: Path = ("edging", name)
        motif = reference(reader, table, (*path, "motif"), names, "motif")
        opening: SidePiece | None = None
        if "opening" in table:
            opening = _opening(reader, path, panels)
        elif "motif" not in table and panels is None and len(names) == 1:
            motif = names[0]
        elif "motif" not in table:
            wanted = "opening" if panels is not None else "motif"
            example = "north.top" if panels is not None else (*names, "square")[0]
            message = f"[edging.{name}] does not say where it goes"
            reader.add("missing", reader.locator.value(path), message, f'for example {wanted} = "{example}"')
        instructions, _, context = _instructions(reader, path, table, context)
        edgings.append(EdgingSource(name, opening, motif, instructions, build_edging_gauge(reader, table, path)))
    return tuple(edgings)


def _opening(reader: Reader, path: Path, panels: Collection[str] | None) -> SidePiece | None:
    located = reader.locator.text((*path, "opening"))
    if panels is None:
        message = "an opening lies on an assembly, and this file has none"
        reader.add("reference", reader.locator.value((*path, "opening")), message, 'an edging around a motif says motif = "NAME"')
        return None
    side, problem = read_side(located, 0, len(located.text), panels)
    if problem:
        tell_of_panels(reader, [problem])
    return side


def _after(steps: tuple[Step, ...], least: int) -> int:
    """One more than the highest id among steps and what they hold, and at least ``least``."""
    return max((step.id + 1 for step in _all_steps(steps)), default=least)


def _all_steps(steps: tuple[Step, ...]) -> Iterator[Step]:
    for step in steps:
        yield step
        if isinstance(step, Group | Repeat | Join):
            yield from _all_steps(step.steps)
