"""Counts of a round, and the line's own counts held against them."""

from __future__ import annotations

from collections.abc import Mapping

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Atom, family, matcher
from motifold.render.fabric.model import Base
from motifold.render.fabric.special import known
from motifold.render.fabric.wording import counted_word, key_of, round_word, target_word
from motifold.render.pattern.instructions import CountClaim, Target


def atoms_of(hook: Hook, lap: Lap) -> list[Atom]:
    """The finished edge of a round, in the order of its work, with its named groups and its runs of stitches into one place."""
    atoms: list[Atom] = []
    previous: Base | None = None
    cluster = -1
    stitches = hook.stitches
    for space, ident in lap.made:
        if space:
            run = hook.runs[ident]
            atom = Atom(True, ident, "", run.chains)
            group = run.group
            previous = None
        else:
            stitch = stitches[ident]
            atom = Atom(False, ident, stitch.kind)
            if stitch.role == "standing":
                atom.standing = True
                if len(stitch.chains) in hook.entered:
                    atom.chains = len(stitch.chains)
            group = stitch.group
            base = stitch.legs[0].base if stitch.legs and stitch.kind != "sl st" else None
            if base is not None and previous is not None and base.id == previous.id and base.kind == previous.kind:
                if atoms[-1].cluster < 0:
                    cluster += 1
                    atoms[-1].cluster = cluster
                atom.cluster = cluster
            previous = base
        if group is not None and hook.groups[group].name is not None:
            atom.group = group
            atom.group_name = hook.groups[group].name or ""
        atoms.append(atom)
    if not lap.linear and len(atoms) > 1:
        _close_cluster(hook, atoms)
    if previous is not None and previous.kind == "ring" and not any(atom.space for atom in atoms):
        for atom in atoms:
            atom.cluster = -1  # a ring full of stitches is no group
    return atoms


def _close_cluster(hook: Hook, atoms: list[Atom]) -> None:
    """A group may straddle the start of the round."""
    first, last = atoms[0], atoms[-1]
    if first.space or last.space:
        return
    one, other = hook.stitches[first.id].legs, hook.stitches[last.id].legs
    if not one or not other or (one[0].base.kind, one[0].base.id) != (other[0].base.kind, other[0].base.id):
        return
    if first.cluster >= 0 and last.cluster >= 0 and first.cluster != last.cluster:
        gone = last.cluster
        for atom in reversed(atoms):
            if atom.cluster != gone:
                break
            atom.cluster = first.cluster
    else:
        joined = first.cluster if first.cluster >= 0 else last.cluster if last.cluster >= 0 else len(atoms)
        first.cluster = last.cluster = joined


def count(hook: Hook, lap: Lap) -> None:
    """Fills in ``counts``, ``parts`` and ``met`` of a finished round."""
    counts: dict[str, int] = {}
    parts: dict[str, int] = {}
    groups: set[int] = set()
    met = 0
    for atom in lap.atoms:
        if atom.space:
            key = f"ch-{atom.chains} sp"
        else:
            key = atom.name
            met += 1
        parts[key] = parts.get(key, 0) + 1
        if atom.group >= 0:
            if atom.group not in groups:
                groups.add(atom.group)
                counts[atom.group_name] = counts.get(atom.group_name, 0) + 1
        else:
            counts[key] = counts.get(key, 0) + 1
    picots = sum(1 for ident in lap.stitches if hook.stitches[ident].role == "picot")
    if picots:
        counts["picot"] = parts["picot"] = picots
    lap.counts = _in_order(counts)
    lap.parts = _in_order(parts)
    lap.met = met


def _in_order(counts: Mapping[str, int]) -> dict[str, int]:
    """Stitches first, in the order of work; spaces after them, the shortest first."""
    stitches = {key: number for key, number in counts.items() if not key.startswith("ch-") or not key.endswith(" sp")}
    spaces = sorted((key for key in counts if key not in stitches), key=lambda key: int(key[3:-3]))
    return stitches | {key: counts[key] for key in spaces}


def found_for(hook: Hook, lap: Lap, target: Target) -> tuple[int, ...]:
    """The numbers that may be meant by a count: the first is the one to report."""
    kind = target.kind
    if kind == "stitch":
        name = target.name or ""
        if name == "picot" and target.chains is not None:
            return (sum(run.role == "picot" and run.round == lap.index and run.chains == target.chains for run in hook.runs),)
        own = lap.counts.get(name, 0)
        whole = sum(n for key, n in lap.counts.items() if key == name or family(key) == name)
        parts = sum(n for key, n in lap.parts.items() if key == name or family(key) == name)
        best = own or whole or parts
        if target.corner:
            best = sum(1 for atom in lap.atoms if atom.corner and atom.name == name)
            return (best,)
        if not best and known(name) is None:
            return _groups(hook, lap, False)  # "6 petals" of a petal that is written out
        return (best, own, whole, parts, lap.parts.get(name, 0))
    if kind == "sp":
        if target.corner:
            spaces = sum(1 for atom in lap.atoms if atom.corner and atom.space)
            return (spaces, hook.polygon) if spaces else (sum(1 for atom in lap.atoms if atom.corner),)
        if target.chains is None:
            return (sum(1 for atom in lap.atoms if atom.space),)
        key = f"ch-{target.chains} sp"
        return (lap.parts.get(key, 0), lap.counts.get(key, 0))  # with or without those inside shells
    if kind == "ch":
        free = sum(hook.runs[atom.id].chains for atom in lap.atoms if atom.space) + sum(1 for atom in lap.atoms if atom.name == "ch")
        return (free, sum(1 for ident in lap.stitches if hook.stitches[ident].kind == "ch"))
    if kind == "group":
        return _groups(hook, lap, target.corner)
    if target.corner or kind == "corner":
        return (sum(1 for atom in lap.atoms if atom.corner),)
    shut = sum(1 for key in lap.counts for _ in range(lap.counts[key]) if not (key.startswith("ch-") and key.endswith(" sp")))
    return (lap.met, shut)


def _groups(hook: Hook, lap: Lap, corner: bool) -> tuple[int, ...]:
    """Stitches worked into one place: told by what they share, or by what one instruction made."""
    clusters = {atom.cluster for atom in lap.atoms if atom.cluster >= 0}
    named = {atom.group for atom in lap.atoms if atom.group >= 0}
    shared = len(clusters) + sum(1 for atom in lap.atoms if not atom.space and atom.name in ("cl", "pc", "bobble", "puff"))
    made = [group for group in hook.groups if group.round == lap.index and group.name != "picot"]
    if corner:
        return (len([atom for atom in lap.atoms if atom.corner]),)
    blocks = sum(1 for atom in lap.atoms if atom.chains in hook.entered)
    if blocks:
        return (blocks,)
    bases = {(group.base.kind, group.base.id) for group in made if group.base is not None}
    return (shared, len(named) or shared, len(made), len(bases))


def wrong_claim(hook: Hook, lap: Lap, claims: tuple[CountClaim, ...]) -> tuple[CountClaim, int] | None:
    """The first count of the line that the work does not bear out, and the number that it makes."""
    for claim in claims:
        found = _on_each_side(hook, lap, claim) if claim.per_side else found_for(hook, lap, claim.target)
        if claim.amount.at(hook.shop.size) not in found:
            return claim, found[0]
    return None


def _on_each_side(hook: Hook, lap: Lap, claim: CountClaim) -> tuple[int, ...]:
    """What lies between two corners, where every side has the same; a corner stitch may be counted with one of its sides."""
    match = matcher(claim.target)
    sides: list[int] = []
    corners = [index for index, atom in enumerate(lap.atoms) if atom.corner]
    for number, start in enumerate(corners):
        end = corners[(number + 1) % len(corners)]
        length = (end - start) % len(lap.atoms) or len(lap.atoms)
        sides.append(sum(1 for step in range(1, length) if match(lap.atoms[(start + step) % len(lap.atoms)])))
    if not sides:
        return found_for(hook, lap, claim.target)
    unequal = next((side for side in sides if side != claim.amount.at(hook.shop.size)), sides[0])
    if len(set(sides)) > 1:
        return (unequal,)
    return (sides[0], sides[0] + 1) if not lap.atoms[corners[0]].space else (sides[0],)


def uncounted(lap: Lap, claims: tuple[CountClaim, ...]) -> int:
    """How many kinds of stitch a line makes that its counts, which name other kinds, leave out."""
    named = {claim.target.name or "" for claim in claims if claim.target.kind == "stitch"}
    if not named or any(claim.target.kind in ("st", "group") for claim in claims):
        return 0
    plain = [key for key in lap.counts if _chains(key) is None and key not in ("sl st", "picot")]
    return sum(1 for key in plain if key not in named and family(key) not in named)


def warn_unstated(hook: Hook, lap: Lap, claims: tuple[CountClaim, ...]) -> None:
    """Warns where a line that counts spaces, or several kinds of stitch, leaves one of them out."""
    targets = [claim.target for claim in claims]
    spaces = [target for target in targets if target.kind == "sp"]
    named = [target.name or "" for target in targets if target.kind == "stitch"]
    every = any(target.kind in ("st", "group") for target in targets)
    for key, number in lap.counts.items():
        if key.startswith("ch-") and key.endswith(" sp"):
            chains = int(key[3:-3])
            corner = sum(1 for atom in lap.atoms if atom.space and atom.corner and atom.chains == chains)
            stated = any(t.chains in (None, chains) or t.corner for t in spaces) or (
                number == corner and any(t.kind == "corner" for t in targets)
            )
            missing = bool(spaces) and not stated
        else:
            missing = len(named) >= 2 and not every and key not in named and family(key) not in named and key not in ("sl st", "picot")
            missing = missing and not any(atom.group_name == key for atom in lap.atoms)
        if missing:
            hook.complain(
                "unstated",
                claims[-1].span,
                f"{round_word(lap)} does not state its {counted_word(key, number, hook.shop.terms)}",
                "state them too, so that readers can check themselves",
                severity="warning",
                key=key_of(claims[-1].span),
                follows=True,
            )
            return


def check_claims(hook: Hook, lap: Lap, claims: tuple[CountClaim, ...], hint: str | None) -> None:
    """Complains of the first count that is wrong: one mistake makes several numbers wrong at once."""
    wrong = wrong_claim(hook, lap, claims)
    if wrong is None:
        return
    claim, made = wrong
    stated = claim.amount.at(hook.shop.size)
    said = target_word(claim.target, hook.shop.terms, stated) + (" on each side" if claim.per_side else "")
    lap.faulty = True
    makes = _makes(hook, lap, claims, claim, made)
    hint = hint or (f"if the work is right, the count is {makes}" if lap.made else "write what is worked in it")
    hook.complain("count", claim.span, f"{round_word(lap)} says {stated} {said}, but working it makes {makes}", hint, follows=True)


def _chains(key: str) -> int | None:
    """The 2 of "ch-2 sp"; None for what is no space."""
    return int(key[3:-3]) if key.startswith("ch-") and key.endswith(" sp") else None


def _makes(hook: Hook, lap: Lap, claims: tuple[CountClaim, ...], claim: CountClaim, made: int) -> str:
    """What is made of a kind: "33", or, where another kind that nothing counts took its place, "26 tr and 2 dtr"."""
    named = {other.target.name for other in claims}
    others = [kind for kind in lap.counts if kind not in named and family(kind) not in named and not kind.startswith("ch-")]
    short = claim.amount.at(hook.shop.size) - made
    if claim.target.kind == "sp" and claim.target.chains is not None and not made:
        stated = {other.target.chains for other in claims if other.target.kind == "sp"}
        alike = [key for key, number in lap.counts.items() if _chains(key) not in (None, *stated) and number == short]
        return counted_word(alike[0], short, hook.shop.terms) if len(alike) == 1 else str(made)
    if claim.target.kind != "stitch" or len(others) != 1 or lap.counts[others[0]] != short:
        return str(made)
    other = counted_word(others[0], short, hook.shop.terms)
    return f"{made} {target_word(claim.target, hook.shop.terms, made)} and {other}" if made else other
