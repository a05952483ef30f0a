"""An elliptical arc of path data as cubics: SVG 1.1, appendix F.6 (from end points to centre, radii too small made larger)."""

from __future__ import annotations

from math import atan2, ceil, cos, hypot, pi, radians, sin, sqrt, tan

Point = tuple[float, float]


def arc_cubics(here: Point, radii: Point, tilt_deg: float, large: bool, sweep: bool, end: Point) -> list[Point]:
    """Handles and ends, three points for each quarter turn at most; a straight line where a radius is 0."""
    rx, ry = abs(radii[0]), abs(radii[1])
    if here == end:
        return []
    if rx < 1e-12 or ry < 1e-12:
        return [here, end, end]
    c, s = cos(radians(tilt_deg)), sin(radians(tilt_deg))
    hx, hy = (here[0] - end[0]) / 2, (here[1] - end[1]) / 2
    x, y = (c * hx + s * hy) / rx, (c * hy - s * hx) / ry  # in the frame where the ellipse is a unit circle
    reach = hypot(x, y)
    if reach > 1:
        rx, ry, x, y = rx * reach, ry * reach, x / reach, y / reach
        reach = 1.0
    off = sqrt(max(0.0, 1 / (reach * reach) - 1)) * (-1 if large == sweep else 1)
    cx, cy = off * y, -off * x
    start = atan2(y - cy, x - cx)
    turn = atan2(-y - cy, -x - cx) - start
    if sweep and turn < 0:
        turn += 2 * pi
    elif not sweep and turn > 0:
        turn -= 2 * pi
    middle = ((here[0] + end[0]) / 2, (here[1] + end[1]) / 2)

    def back(u: float, v: float) -> Point:
        px, py = (u + cx) * rx, (v + cy) * ry
        return (middle[0] + c * px - s * py, middle[1] + s * px + c * py)

    pieces = max(1, ceil(abs(turn) / (pi / 2) - 1e-9))
    step = turn / pieces
    handle = 4 / 3 * tan(step / 4)
    out: list[Point] = []
    for i in range(pieces):
        a, b = start + i * step, start + (i + 1) * step
        out += [
            back(cos(a) - handle * sin(a), sin(a) + handle * cos(a)),
            back(cos(b) + handle * sin(b), sin(b) - handle * cos(b)),
            back(cos(b), sin(b)),
        ]
    return [*out[:-1], end]
