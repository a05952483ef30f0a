"""The proof as data and as a short summary: what each round holds, the sides, the surface, in the pattern's own terms."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from motifold.render.assembly import corner_name, side_text
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.shapes import is_half
from motifold.render.assembly.sides import corner_names
from motifold.render.fabric.model import Fabric, Round
from motifold.render.fabric.wording import counted_word
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.rounding import tenths
from motifold.render.sizing.own import reckoned_by_hook
from motifold.render.sizing.reading import in_inches, sized_motif
from motifold.render.sizing.units import one_length
from motifold.render.worked import Worked, WorkedSize
from motifold.symbols.terms import plural_of


def proof_json(worked: Worked | None) -> dict[str, Any]:
    """Title, terms and, for each size, motifs, assembly and edgings; what could not be worked is left out.

    Stitches go by their US abbreviations, lengths are cm, rounds count from 1.
    """
    if worked is None:
        return {"title": None, "terms": None, "sizes": {}}
    pattern = worked.pattern
    return {
        "title": pattern.title,
        "terms": pattern.terms,
        "sizes": {size.choice.name: _size_json(size) for size in worked.sizes},
    }


def _size_json(size: WorkedSize) -> dict[str, Any]:
    content: dict[str, Any] = {"motifs": {name: _motif_json(size, fabric) for name, fabric in size.fabrics.items()}}
    if size.assembly is not None:
        content["assembly"] = _assembly_json(size.assembly)
    if size.edgings:
        content["edgings"] = {name: {"rounds": _rounds_json(fabric)} for name, fabric in size.edgings.items()}
    return content


def _motif_json(size: WorkedSize, fabric: Fabric) -> dict[str, Any]:
    sides = [{"name": side.name, "stitches": side.stitches, "counts": dict(side.counts)} for side in fabric.sides]
    return {
        "shape": fabric.shape,
        "rounds": _rounds_json(fabric),
        "sides": sides,
        "width_cm": _cm(size.widths_cm.get(fabric.name)),
        "length_cm": _cm(size.heights_cm.get(fabric.name)),
    }


def _rounds_json(fabric: Fabric) -> list[dict[str, Any]]:
    return [
        {
            "label": worked.label,
            "number": worked.number,
            "side": worked.side,
            "yarns": list(worked.yarns),
            "stitches": worked.met,
            "counts": dict(worked.counts),
            "parts": dict(worked.parts),
        }
        for worked in fabric.rounds
        if worked.kind != "edge"
    ]


def _assembly_json(assembly: Assembly) -> dict[str, Any]:
    return {
        "panels": len(assembly.panels),
        "seams": len(assembly.seams),
        "pieces": assembly.pieces,
        "orientable": assembly.orientable,
        "openings": [{"sides": [side_text(side) for side in o.sides], "girth_cm": _cm(o.girth_cm)} for o in assembly.openings],
        "corners": [
            {"at": list(corner_names(assembly, i)), "degrees": round(corner.degrees, 6), "on_opening": corner.on_opening}
            for i, corner in enumerate(assembly.corners)
        ],
        "passes": [
            {"seams": [assembly.seams[step.seam].name for step in seam_pass.steps], "stitches": seam_pass.stitches}
            for seam_pass in assembly.passes
        ],
        "gaps": [{"at": [corner_name(assembly, at) for at in gap.at]} for gap in assembly.gaps],
    }


def _cm(value: float | None) -> float | None:
    return None if value is None else round(value, 4)


def proof_summary(worked: Worked) -> str:
    """A few lines for each motif, the assembly and the edgings; sizes that work the same rounds share theirs."""
    pattern = worked.pattern
    lines = [f"{pattern.title} ({pattern.terms} terms)"]
    for name, sizes in _alike(worked).items():
        fabric = sizes[0].fabrics[name]
        lines += ["", f"{name}: {fabric.shape}{_who(sizes, worked)}", *_rounds_summary(fabric, pattern)]
        if fabric.sides:
            lines.append("  sides: " + ", ".join(f"{side.name} {side.stitches} sts" for side in fabric.sides))
        lines += _measured(pattern, fabric, [size for size in worked.sizes if size in sizes])
    for size in worked.sizes:
        lines += _size_summary(size, pattern, len(worked.sizes) > 1)
    return "\n".join(lines)


def _measured(pattern: Pattern, fabric: Fabric, sizes: list[WorkedSize]) -> list[str]:
    """How wide the gauge makes a motif, and how long one worked in rows, for each size that differs; nothing where it does not tell."""
    name, imperial = fabric.name, in_inches(pattern)
    half = is_half(fabric)
    found = []
    for size in sizes:
        width, length = size.widths_cm.get(name), size.heights_cm.get(name)
        if width is not None:
            said = [f"{one_length(width, imperial)} {'along its cut' if half and length else 'across'}"]
            said += [f"{one_length(length, imperial)} {'deep' if half else 'long'}"] if length else []
            estimate = " (estimated: no swatch with its hook)" if reckoned_by_hook(pattern, size.choice.name) else ""
            found.append((size.choice.name, " and ".join(said) + estimate))
    if not found:
        return []
    if len({said for _, said in found}) == 1:
        return [f"  measures {found[0][1]}"]
    return ["  measures " + "; ".join(f"{size} {said}" for size, said in found)]


def _alike(worked: Worked) -> Mapping[str, list[WorkedSize]]:
    """For each motif the sizes; the longest work stands first, since it holds what the shorter ones have."""
    names = [motif.name for motif in worked.pattern.motifs]
    return {
        name: sorted((s for s in worked.sizes if name in s.fabrics), key=lambda s: -len(s.fabrics[name].stitches))
        for name in names
        if any(name in s.fabrics for s in worked.sizes)
    }


def _sewn(assembly: Assembly) -> str:
    """How the seams are sewn, and what it costs that flat work goes first."""
    if not assembly.passes:
        return "joined as the motifs are worked" if assembly.seams else "in no pass"
    more = len(assembly.passes) - assembly.least_passes
    why = f" ({more} more because flat work goes first)" if more > 0 and not assembly.own_passes else ""
    return f"in {_counted(len(assembly.passes), 'pass')}{why}"


def _who(sizes: list[WorkedSize], worked: Worked) -> str:
    if len(worked.sizes) < 2:
        return ""
    name = next(iter(sizes[0].fabrics))
    in_order = [size for size in worked.sizes if size in sizes]
    motif = sized_motif(worked.pattern)
    return ", " + ", ".join(
        f"{size.choice.name} {_last_round(size.fabrics[name])} {size.fabrics[name].worked}"
        f"{' (outside the ease)' if motif is not None and motif.name == name and _unfit(worked, size) else ''}"
        for size in in_order
    )


def _unfit(worked: Worked, size: WorkedSize) -> bool:
    """Whether no number of rounds brings a size within the ease, so that the nearest one, or the file's own, was taken."""
    bodies = worked.table.bodies if worked.table is not None else ()
    return any(body.name == size.choice.name and body.chosen is None for body in bodies)


def _last_round(fabric: Fabric) -> int:
    return max((worked.number or 0 for worked in fabric.rounds), default=0)


def _rounds_summary(fabric: Fabric, pattern: Pattern) -> list[str]:
    """A line for each round; three or more alike that follow each other share one."""
    shown = [worked for worked in fabric.rounds if worked.kind != "edge" and worked.counts]
    lines = []
    for alike in _runs(shown):
        first, last = alike[0], alike[-1]
        if len(alike) < 3:
            lines += [(worked.label, _side(worked), _counts(worked, pattern)) for worked in alike]
            continue
        name = "Rows" if first.kind == "row" else "Rnds"
        in_turn = "" if len({worked.side for worked in alike}) == 1 else ", RS and WS in turn"
        lines.append((f"{name} {first.number}-{last.number}", _side(first), f"{_counts(first, pattern)} each{in_turn}"))
    width = max((len(label) for label, _, _ in lines), default=0)
    return [f"  {label:<{width}}  {side}  {counts}" for label, side, counts in lines]


def _runs(rounds: list[Round]) -> list[list[Round]]:
    """The rounds in runs that follow each other with equal counts, on one side throughout or on the sides in turn."""
    runs: list[list[Round]] = []
    for worked in rounds:
        run = runs[-1] if runs else []
        if run and _follows(run[-1], worked) and (len(run) == 1 or (run[-1].side == run[-2].side) == (worked.side == run[-1].side)):
            run.append(worked)
        else:
            runs.append([worked])
    return runs


def _follows(before: Round, after: Round) -> bool:
    return (
        before.kind == after.kind
        and before.kind in ("round", "row")
        and before.number is not None
        and after.number == before.number + 1
        and dict(before.counts) == dict(after.counts)
    )


def _side(worked: Round) -> str:
    return worked.side if worked.kind in ("round", "row") else "  "


def _counts(worked: Round, pattern: Pattern) -> str:
    """Counts in words; a stitch that the pattern defines goes by the name that it is given there."""
    names = {stitch.key: stitch.name for stitch in pattern.stitches}
    return ", ".join(
        f"{number} {names[kind] if number == 1 else plural_of(names[kind])}" if kind in names else counted_word(kind, number, pattern.terms)
        for kind, number in worked.counts.items()
    )


def _size_summary(size: WorkedSize, pattern: Pattern, several: bool) -> list[str]:
    head = f"{size.choice.name}: " if several else ""
    lines = []
    assembly = size.assembly
    if assembly is not None:
        openings = ", ".join(f"{tenths(o.girth_cm)} cm" if o.girth_cm is not None else f"{len(o.sides)} sides" for o in assembly.openings)
        form = "" if assembly.orientable else ", a surface with one side"
        lines += [
            "",
            f"{head}{_counted(len(assembly.panels), 'panel')}, {_counted(len(assembly.seams), 'seam')} {_sewn(assembly)}, "
            f"{_counted(assembly.pieces, 'piece')}{form}, {_openings(len(assembly.openings))}{': ' + openings if openings else ''}",
        ]
    for name, fabric in size.edgings.items():
        lines += ["", f"{head}edging {name}", *_rounds_summary(fabric, pattern)]
    return lines


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun if number == 1 else plural_of(noun)}"


def _openings(number: int) -> str:
    return _counted(number, "opening") if number else "no opening"
