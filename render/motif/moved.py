"""What was pushed, written down again: stems, ovals, picots, the bows of chains and their hairlines."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.motif.arc import Arc, arc_of
from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground
from motifold.render.motif.pushed import State, body_moves


def write_back(ground: Ground, course: Course, state: State) -> None:
    """Move everything in the ground by as much as its body was moved."""
    low, high = (moves.tolist() for moves in body_moves(state))
    moved: dict[int, tuple[complex, complex]] = {}
    for body, first, second in zip(state.given.bodies, low, high, strict=False):
        span = body.second - body.first
        turned = (span + second - first) / span if abs(span) > 1e-9 else 1 + 0j
        turned /= abs(turned)
        for number in body.ink:
            if number in ground.tips:
                tips = tuple(_carried(tip, body.first, span, first, second) for tip in ground.tips[number])
                moved[number] = (tips[0] - ground.tips[number][0], tips[1] - ground.tips[number][1])
                ground.tips[number] = (tips[0], tips[1])
                ground.normals[number] *= turned
            elif number in ground.heads:
                ground.heads[number] += second
                ground.feet[number] = tuple(foot + first for foot in ground.feet[number])
                ground.bends[number] = tuple(_carried(p, body.first, span, first, second) for p in ground.bends.get(number, ()))
                moved[number] = (second, second)
                if not state.given.level:
                    ground.normals[number] *= turned
                elif state.given.round:
                    ground.normals[number] *= (body.second + second) / body.second / abs((body.second + second) / body.second)
    _bows(ground, course, moved)


def _carried(p: complex, start: complex, span: complex, first: complex, second: complex) -> complex:
    at = (p - start) / span if abs(span) > 1e-9 else 0j
    return p + (1 - at) * first + at * second


def _bows(ground: Ground, course: Course, moved: dict[int, tuple[complex, complex]]) -> None:
    """The arc of each run, and the hairlines in it, follow its ovals."""
    arcs: dict[int, tuple[Arc, list[float], list[complex]]] = {}
    for gap in course.gaps:
        for run, first, last in gap.runs:
            parts = [part for part in gap.parts[first:last] if part in moved and part in ground.tips]
            if run not in ground.arcs or not parts:
                continue
            arc = ground.arcs[run]
            old = [tip - move for part in parts for tip, move in zip(ground.tips[part], moved[part], strict=True)]
            moves = [move for part in parts for move in moved[part]]
            if max(map(abs, moves)) < 1e-9:
                continue
            arcs[run] = (arc, arc.nearest(old), moves)
            ground.arcs[run] = arc_of([p + _between(mark, *arcs[run][1:]) for p, mark in zip(arc.points, arc.marks, strict=True)])
    for run, (arc, marks, moves) in arcs.items():
        for k, line in enumerate(ground.links.get(run, ())):
            ground.links[run][k] = tuple(p + _between(s, marks, moves) for p, s in zip(line, arc.nearest(line), strict=True))


def _between(at: float, marks: Sequence[float], moves: Sequence[complex]) -> complex:
    """The move of a place on an arc, between those of the tips beside it."""
    if at <= marks[0]:
        return moves[0]
    for k in range(1, len(marks)):
        if at <= marks[k]:
            wide = marks[k] - marks[k - 1]
            return moves[k - 1] + (moves[k] - moves[k - 1]) * ((at - marks[k - 1]) / wide if wide > 1e-9 else 1.0)
    return moves[-1]
