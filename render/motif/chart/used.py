"""What the charts of a pattern show, as the lines of its key."""

from __future__ import annotations

from collections.abc import Iterable

from motifold.render.fabric.model import Fabric, Stitch, StitchGroup
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.starts import yarn_changes
from motifold.symbols.footprint import Foot
from motifold.symbols.key import KeyEntry, key_for
from motifold.symbols.own import read_symbol
from motifold.symbols.specimens import Part, group_specimen

_CLOSED = ("cluster", "bobble", "popcorn", "puff")
_SHORT = {"cluster": "cl", "bobble": "bobble", "popcorn": "pc", "puff": "puff"}


def entries_used(fabrics: Iterable[Fabric], look: ChartLook) -> tuple[KeyEntry, ...]:
    """Stitches, feet, working marks, and the pattern's own stitches with their whole picture or their own symbol."""
    stitches: set[str] = set()
    feet: set[tuple[str, Foot]] = set()
    marks: set[str] = set()
    own: dict[str, KeyEntry] = {}
    for fabric in fabrics:
        whole = _whole_groups(fabric, look, own)
        for stitch in fabric.stitches:
            if stitch.role in ("standing", "given"):
                continue
            feet.update((leg.kind, leg.base.foot) for leg in stitch.legs if stitch.role == "stitch" and stitch.kind != "sl st")
            if stitch.group in whole:
                continue
            if stitch.kind in look.symbols:
                own.setdefault(stitch.kind, _own_symbol(stitch.kind, look))
            elif stitch.role == "stitch" and stitch.kind in look.names:
                own.setdefault(stitch.kind, _own_entry(stitch.kind, (_part(stitch),), look))
            else:
                stitches.add(_trade_name(stitch))
        stitches.update("picot" if run.chains == 3 else f"ch-{run.chains} picot" for run in fabric.runs if run.role == "picot")
        marks.update(_marks_used(fabric))
    return key_for(stitches, feet, marks, [own[name] for name in look.names if name in own] + [own[n] for n in own if n not in look.names])


def _whole_groups(fabric: Fabric, look: ChartLook, own: dict[str, KeyEntry]) -> set[int]:
    """Enters the groups that the pattern defines; gives those whose stitches need no line of their own: drawn by one symbol."""
    whole: set[int] = set()
    for group in fabric.groups:
        name = group.name
        if name is None or name not in look.names:
            continue
        members = [fabric.stitches[i] for i in group.stitches]
        if name in look.symbols:
            own.setdefault(name, _own_symbol(name, look))
            whole.add(group.id)
        elif members and all(stitch.role == "stitch" for stitch in members):
            own.setdefault(name, _own_entry(name, _parts(fabric, group), look))
            if len(members) == 1:
                whole.add(group.id)
    return whole


def _parts(fabric: Fabric, group: StitchGroup) -> tuple[Part, ...]:
    """The stitches and chains of a group in the order of work."""
    chains = [i for run in group.runs for i in fabric.runs[run].stitches]
    return tuple(_part(fabric.stitches[i]) for i in sorted({*group.stitches, *chains}))


def _part(stitch: Stitch) -> Part:
    stem = stitch.legs[0].kind if stitch.legs else stitch.kind
    return Part(stitch.kind, stem, max(len(stitch.legs), 1), stitch.gather)


def _own_entry(name: str, parts: tuple[Part, ...], look: ChartLook) -> KeyEntry:
    closed = len(parts) == 1 and parts[0].gather in _CLOSED
    return KeyEntry(name, group_specimen(parts), None, look.names.get(name, name), name, closed)


def _own_symbol(name: str, look: ChartLook) -> KeyEntry:
    return KeyEntry(name, read_symbol(look.symbols[name]).marks((0.0, 0.0), (0.0, 2.0)), None, look.names.get(name, name), name)


def _trade_name(stitch: Stitch) -> str:
    if stitch.gather not in _CLOSED or not stitch.legs:
        return stitch.kind
    legs = len(stitch.legs) + (1 if stitch.chains else 0)  # a beginning cluster's chains stand for its first leg
    return f"{legs}-{stitch.legs[0].kind} {_SHORT[str(stitch.gather)]}"


def _marks_used(fabric: Fabric) -> set[str]:
    used = {"arrow"}
    rounds = fabric.rounds
    if any(leg.base.kind == "ring" for s in fabric.stitches for leg in s.legs) and not any(r.kind == "ring" and r.stitches for r in rounds):
        used.add("ring")
    if any(r.attached for r in rounds):
        used.add("attach")
    if any(r.fastened for r in rounds):
        used.add("fasten off")
    if yarn_changes(fabric):
        used.add("yarn")
    return used
