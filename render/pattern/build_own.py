"""What single sizes, and single edgings, have of their own."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.build_parts import build_assembly, build_gauge
from motifold.render.pattern.model import AssemblySource, Gauge, MotifSource, OwnOfSize, SizePlan, Yarn
from motifold.render.pattern.scan import Path
from motifold.render.pattern.values import Reader, Table, number, quantity, whole

_OF_A_NET = ("net", "join", "open", "panels")


def with_own(
    reader: Reader, tables: Table, plan: SizePlan | None, motifs: tuple[MotifSource, ...], yarns: tuple[Yarn, ...],
    common: tuple[Gauge | None, AssemblySource | None], edgings: tuple[str, ...],
) -> SizePlan | None:  # fmt: skip
    """The size plan with ``[size.own]``; ``common``: the gauge and the assembly of all other sizes."""
    own = tables.get("size", {}).get("own", {})
    if plan is None:
        return plan
    names = tuple(name for name, _ in plan.bodies)
    found: dict[str, OwnOfSize] = {}
    for name, table in own.items():
        at: Path = ("size", "own", name)
        if name not in names:
            near = reader.nearest(name, names)
            hint = f"did you mean {near}?" if near else f"the sizes are {', '.join(names[:12])}"
            reader.add("reference", reader.locator.key(at), f'there is no size "{name[:40]}"', hint)
            continue
        gauge, assembly = common
        found[name] = OwnOfSize(
            rounds=whole(table, "rounds"),
            across=number(table, "across"),
            hook=quantity(reader, table, (*at, "hook"), "length"),
            gauge=_gauge(reader, table, motifs, at, gauge),
            assembly=_assembly(reader, table, motifs, yarns, at, assembly),
            edgings=_edgings(reader, table, at, edgings),
        )
    for name, rounds in _as_labelled(reader, plan, motifs, names):
        had = found.get(name, OwnOfSize())
        found[name] = had if had.rounds is not None else replace(had, rounds=rounds)
    return replace(plan, own=found) if found else plan


def _as_labelled(reader: Reader, plan: SizePlan, motifs: tuple[MotifSource, ...], names: tuple[str, ...]) -> list[tuple[str, int]]:
    """The rounds of each size where the label of the last line says them: "Rnds 3-7 (8, 9)"."""
    motif = next((m for m in motifs if plan.motif in (m.name, None)), None)
    numbered = [line for line in motif.instructions.lines if line.label.first is not None] if motif is not None else []
    if not numbered or not numbered[-1].label.ends:
        return []
    ends = numbered[-1].label.ends
    if len(ends) != len(names):
        message = f"{len(names)} numbers were expected, one for each size, and here are {len(ends)}"
        reader.add("sizes", numbered[-1].span, message, "say the last round of every size, in the file's order")
        return []
    return list(zip(names, ends, strict=True))


def _gauge(reader: Reader, table: Table, motifs: tuple[MotifSource, ...], at: Path, common: Gauge | None) -> Gauge | None:
    """A swatch with this size's own hook; washed as the others are."""
    gauge = build_gauge(reader, table, motifs, (*at, "gauge"), common.motif if common else None)
    return gauge if gauge is None or common is None else replace(gauge, after_wash=common.after_wash)


def _assembly(
    reader: Reader, table: Table, motifs: tuple[MotifSource, ...], yarns: tuple[Yarn, ...], at: Path, common: AssemblySource | None
) -> AssemblySource | None:
    """This size's own net, with the seams, copies and form of the others; None where it has none."""
    given = {name: table[name] for name in _OF_A_NET if name in table}
    if not given:
        return None
    if "net" not in given and "join" not in given:
        message = "a size with panels or openings of its own needs its own net or joins"
        reader.add("missing", reader.locator.value(at), message, "for example net = " + '"F1 F2 F3"')
        return None
    found = build_assembly(reader, {"assembly": given}, motifs, tuple(yarn.key for yarn in yarns), at)
    if found is None or common is None:
        return found
    return replace(found, motif=common.motif or found.motif, seam=common.seam, copies=common.copies, fold=common.fold, form=common.form)


def _edgings(reader: Reader, table: Table, at: Path, known: tuple[str, ...]) -> dict[str, int]:
    found = {}
    for name, rounds in table.get("edgings", {}).items():
        if name in known:
            found[name] = rounds
        else:
            near = reader.nearest(name, known)
            hint = f"did you mean {near}?" if near else "an edging stands in its own table: [edging.NAME]"
            reader.add("reference", reader.locator.key((*at, "edgings", name)), f'there is no edging "{name[:40]}"', hint)
    return found


def build_edging_gauge(reader: Reader, table: Table, path: Path) -> Gauge | None:
    """An edging's own gauge, stitches over a width and rounds over a height."""
    return build_gauge(reader, table, (), (*path, "gauge")) if "gauge" in table else None
