"""What the charts of a pattern show, as the lines of its key."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import groupby

from motifold.render.fabric.model import Fabric, Stitch, StitchGroup
from motifold.render.motif.chart.draw import Prepared
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.starts import yarn_changes
from motifold.symbols.footprint import Foot, stitch_kind
from motifold.symbols.ink import moved
from motifold.symbols.key import MARK_PREFIX, KeyEntry, key_for
from motifold.symbols.own import read_symbol
from motifold.symbols.specimens import Part, group_specimen, specimen
from motifold.symbols.stitches import is_named, kind

_CLOSED = ("cluster", "bobble", "popcorn", "puff")
_SHORT = {"cluster": "cl", "bobble": "bobble", "popcorn": "pc", "puff": "puff"}
_MARK_OF = {
    "number": "arrow", "arrow": "arrow", "attach": "attach", "fasten off": "fasten off", "yarn": "yarn", "turn": "turn", "repeat": "repeat",
}
"""The line of the key that each kind of furniture has."""
_SPREAD = ("shell", "V-st")
_LONGEST = 7
"""A pattern's own stitch of more parts is only shown."""


def entries_used(fabrics: Iterable[Fabric], look: ChartLook, drawn: Prepared | None = None) -> tuple[KeyEntry, ...]:
    """Stitches, feet, working marks, and the pattern's own stitches with their whole picture or their own symbol.

    ``drawn``: the one chart that the key stands below, of which it lists what is drawn and nothing else.
    """
    shown = None if drawn is None else {symbol.number for symbol in drawn.symbols if not symbol.given}
    stitches: set[str] = set()
    feet: set[tuple[str, Foot]] = set()
    marks: set[str] = set()
    own: dict[str, KeyEntry] = {}
    for fabric in fabrics:
        whole = _whole_groups(fabric, look, own, shown)
        for stitch in fabric.stitches:
            if stitch.role in ("standing", "given") or (shown is not None and stitch.id not in shown):
                continue
            if stitch.role == "stitch" and stitch.kind not in ("sl st", "inv dec"):
                feet.update((_named_leg(stitch, leg.kind), leg.base.foot) for leg in stitch.legs)
            if stitch.group in whole:
                continue
            if stitch.kind in look.symbols:
                own.setdefault(stitch.kind, _own_symbol(stitch.kind, (stitch,), look))
            elif stitch.role == "stitch" and stitch.kind in look.names:
                own.setdefault(stitch.kind, _own_entry(stitch.kind, (_part(stitch),), look))
            elif stitch.gather in _CLOSED and stitch.legs and "tog" in stitch.kind:
                own.setdefault(stitch.kind, _together_entry(stitch))
            else:
                stitches.add(_trade_name(stitch))
        picots = (run for run in fabric.runs if run.role == "picot" and (shown is None or not shown.isdisjoint(run.stitches)))
        stitches.update("picot" if run.chains == 3 else f"ch-{run.chains} picot" for run in picots)
        marks.update(_marks_used(fabric) if drawn is None else _marks_drawn(drawn, look))
    found = key_for(stitches, feet, marks, [own[name] for name in look.names if name in own] + [own[n] for n in own if n not in look.names])
    return tuple(map(_mirrored, found)) if look.left_handed else found


def _mirrored(entry: KeyEntry) -> KeyEntry:
    """A stitch as a left-handed chart draws it; working marks are the same for either hand."""
    if entry.id.startswith(MARK_PREFIX):
        return entry
    return replace(entry, marks=tuple(moved(mark, -1, 0, 0, 1, 0, 0) for mark in entry.marks))


def _named_leg(stitch: Stitch, leg: str) -> str:
    """The stitch that a foot is shown with: the whole of a gathered one that the trade knows, else its leg."""
    plain = stitch.kind.removeprefix("beg ")
    return plain if len(stitch.legs) > 1 and stitch.gather in _CLOSED and plain in _SHORT.values() else leg


def _whole_groups(fabric: Fabric, look: ChartLook, own: dict[str, KeyEntry], shown: set[int] | None) -> set[int]:
    """Enters the groups that the pattern defines; gives those whose stitches need no line of their own: drawn by one symbol."""
    whole: set[int] = set()
    for group in fabric.groups:
        name = group.name
        if name is None or (shown is not None and shown.isdisjoint(group.stitches)):
            continue
        members = [fabric.stitches[i] for i in group.stitches]
        worked = bool(members) and all(stitch.role == "stitch" for stitch in members)
        if name in look.symbols:
            own.setdefault(name, _own_symbol(name, members, look))
            whole.add(group.id)
        elif name in look.names and worked:
            own.setdefault(name, _own_entry(name, _parts(fabric, group), look))
            if len(members) == 1:
                whole.add(group.id)
        elif worked and (name in _SPREAD or name.startswith("crossed ")):
            entry = _spread_entry(name, _parts(fabric, group))
            own.setdefault(entry.id, entry)
    return whole


def _spread_entry(name: str, parts: tuple[Part, ...]) -> KeyEntry:
    """A shell, a V or crossed stitches as they were worked; named with number and stitch where those are not the usual ones."""
    if name.startswith("crossed "):
        return KeyEntry(name, specimen(name), name)
    stems = [part.kind for part in parts if part.kind != "ch"]
    usual = kind(name)
    if len(stems) == usual.legs and set(stems) == {usual.stem}:
        return KeyEntry(name, group_specimen(parts), name)
    if name == "shell":
        named = f"{len(stems)}-{stems[0]} shell"
        return KeyEntry(named, group_specimen(parts), named)
    return KeyEntry(f"{stems[0]} {name}", group_specimen(parts), name)


def _together_entry(stitch: Stitch) -> KeyEntry:
    """Stitches that the text works together in one place: named as the text does, drawn as they are closed."""
    return KeyEntry(f"{stitch.kind} in one place", group_specimen((_part(stitch),)), stitch.kind, "{} in one place", gathered=True)


def _parts(fabric: Fabric, group: StitchGroup) -> tuple[Part, ...]:
    """The stitches and chains of a group in the order of work."""
    chains = [i for run in group.runs for i in fabric.runs[run].stitches]
    return tuple(_part(fabric.stitches[i]) for i in sorted({*group.stitches, *chains}))


def _part(stitch: Stitch) -> Part:
    stem = stitch.legs[0].kind if stitch.legs else stitch.kind
    return Part(stitch.kind, stem, max(len(stitch.legs), 1), stitch.gather)


def _own_entry(name: str, parts: tuple[Part, ...], look: ChartLook) -> KeyEntry:
    closed = len(parts) == 1 and parts[0].gather in _CLOSED
    return KeyEntry(name, group_specimen(parts), None, look.names.get(name, name), name, closed, _made_of(parts, closed))


def _made_of(parts: tuple[Part, ...], closed: bool) -> str:
    """What a pattern's own stitch is made of: "2 dc, ch 1, 2 dc", or "5 dc, closed into one"."""
    if closed:
        return f"{parts[0].legs} {{{parts[0].stem}}}, closed into one"
    runs = [(name, len(list(run))) for name, run in groupby(part.kind for part in parts)]
    if len(runs) > _LONGEST or not all(is_named(name) for name, _ in runs):
        return ""  # longer than anyone would read beside a picture of it, or of stitches that are the pattern's own too
    return ", ".join(f"ch {count}" if name == "ch" else f"{count} {{{name}}}" if count > 1 else f"{{{name}}}" for name, count in runs)


def _own_symbol(name: str, members: Sequence[Stitch], look: ChartLook) -> KeyEntry:
    """The pattern's own drawing, as tall as the tallest stitch that it stands for."""
    tall = max((stitch_kind(leg.kind).height for stitch in members for leg in stitch.legs), default=stitch_kind(name).height)
    return KeyEntry(name, read_symbol(look.symbols[name]).marks((0.0, 0.0), (0.0, tall)), None, look.names.get(name, name), name)


def _trade_name(stitch: Stitch) -> str:
    """The kind as a key lists it: a beginning cluster is a cluster, and one of another size or stitch than usual says so."""
    if stitch.gather not in _CLOSED or not stitch.legs:
        return stitch.kind
    plain = stitch.kind.removeprefix("beg ")
    legs = len(stitch.legs) + (1 if stitch.chains else 0)  # a beginning cluster's chains stand for its first leg
    usual = kind(plain) if plain in _SHORT.values() else None
    if usual is not None and (usual.legs, usual.stem, usual.gather) == (legs, stitch.legs[0].kind, stitch.gather):
        return plain
    return f"{legs}-{stitch.legs[0].kind} {_SHORT[str(stitch.gather)]}"


def _marks_drawn(drawn: Prepared, look: ChartLook) -> set[str]:
    """The working marks of one chart."""
    used: set[str] = {_MARK_OF[item.kind] for item in drawn.items if item.kind in _MARK_OF}
    if drawn.ring:
        used.add("ring")
    if drawn.linked:
        used.add("link")
    if any(item.leader is not None for item in drawn.items):
        used.add("leader")
    if look.once is not None and look.sector is not None:
        used.add("edge")
    return used


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
