"""What an editor would ask about a finished piece: rounds that nothing closes, corners that nothing shows, sides that are not alike."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.model import Fabric
from motifold.render.fabric.sides import sides_of
from motifold.render.fabric.wording import key_of, label_span, listed, round_word
from motifold.render.pattern.doubts import parts
from motifold.render.pattern.instructions import Join, Place
from motifold.render.pattern.model import MotifSource
from motifold.render.pattern.problem import Problem

_SHAPES = {3: "triangle", 4: "square", 5: "pentagon", 6: "hexagon", 8: "octagon"}


def warn_of_the_whole(hook: Hook, shape: str) -> None:
    """Adds the warnings; ``shape``: the outline that the file gives. Silent where a mistake may be the cause."""
    rounds = [lap for lap in hook.laps if lap.kind == "round"]
    if hook.tainted or not rounds or any(problem.severity == "error" for problem in hook.problems):
        return
    _warn_of_the_ring(hook)
    _warn_of_rounds_not_joined(hook, rounds)
    regular = shape == _SHAPES.get(hook.polygon) or shape.startswith("polygon")
    if hook.polygon >= 3 and regular and hook.laps[-1].kind in ("round", "finish"):
        _warn_of_sides(hook, rounds[-1])


def _warn_of_the_ring(hook: Hook) -> None:
    """A chain that is worked into as a ring, and nothing says that it is joined."""
    if len(hook.laps) < 2 or hook.laps[0].kind != "ring" or hook.laps[0].end == "joined" or len(hook.laps[0].made) < 3:
        return
    ring, first = hook.laps[0], hook.laps[1]
    steps = first.line.steps if first.line is not None else ()
    into = any(leg.base.kind == "ring" for ident in first.stitches for leg in hook.stitches[ident].legs)
    if into and ring.line is not None and not any(isinstance(step, Join) and step.ring for step in steps):
        hook.complain(
            "unjoined",
            label_span(ring.line.span, ring.label),
            f"the chain of {len(ring.made)} is worked into as a ring, but nothing joins it",
            'add "join with sl st in first ch to form a ring"',
            severity="warning",
            key=2,
        )


def _warn_of_rounds_not_joined(hook: Hook, rounds: list[Lap]) -> None:
    """The last round, and one after which the yarn is cut, where others are joined: what the next round begins with does not show it."""
    if not any(lap.end == "joined" for lap in rounds):
        return
    slipped = any(lap.kind == "finish" and lap.stitches for lap in hook.laps)  # the finish closes the last round
    for lap in rounds:
        last = lap is rounds[-1]
        if lap.end != "spiral" or lap.unjoined or lap.line is None or lap.line.broken or not (last or lap.fastened) or (last and slipped):
            continue
        if lap.beginning is None and not lap.attached:
            continue  # it begins as the rounds of a spiral do
        if lap.stitches and hook.stitches[lap.stitches[-1]].kind == "sl st":
            continue  # its last slip stitch closes it
        hook.complain(
            "unjoined",
            label_span(lap.line.span, lap.label),
            f"{round_word(lap)} is not joined at its end, as others are",
            f'add "join with sl st in first st" at the end of {round_word(lap)}, or "do not join"',
            severity="warning",
            key=key_of(lap.line.span),
        )


def _warn_of_sides(hook: Hook, lap: Lap) -> None:
    if lap.line is None or lap.line.broken:
        return
    span = label_span(lap.line.span, lap.label)
    name = _SHAPES.get(hook.polygon, f"polygon of {hook.polygon} sides")
    corners = sum(1 for atom in lap.atoms if atom.corner)
    if corners != hook.polygon:
        hook.complain(
            "corners",
            span,
            f"nothing in {round_word(lap)} shows the {hook.polygon} corners of a {name}",
            "a corner is a space with stitches of one place on either side, or three or more stitches in one; or is the shape another?",
            severity="warning",
            key=key_of(lap.line.span),
        )
        return
    sides = [side.stitches for side in sides_of(hook, hook.polygon, "rounds")]
    if len(set(sides)) > 1:
        hook.complain(
            "corners",
            span,
            f"the sides of the {name} are not alike: {listed([str(number) for number in sides])} sts",
            "is something forgotten on one of them?",
            severity="warning",
            key=key_of(lap.line.span),
        )


def unmet_joins(motifs: Sequence[MotifSource], fabrics: Mapping[str, Fabric]) -> Iterator[Problem]:
    """Motifs that are joined into a "corresponding ch-2 sp" of another one, where no motif ends with such spaces."""
    spaces: set[int] = set()
    for fabric in fabrics.values():
        last = next((k for k in range(len(fabric.rounds) - 1, -1, -1) if fabric.rounds[k].number is not None), -1)
        spaces.update(run.chains for run in fabric.runs if run.role == "space" and run.round == last)
    told: set[int] = set()
    for part in parts(tuple(motif.instructions for motif in motifs)):
        if isinstance(part, Place) and part.which == "corresponding" and part.target.chains not in (None, *spaces, *told):
            told.add(part.target.chains or 0)
            there = listed([f"ch-{chains} sps" for chains in sorted(spaces)])
            message = f"no motif ends with a ch-{part.target.chains} sp to join into"
            yield Problem("place", "warning", part.span, message, f"the last round has {there}" if spaces else None)
