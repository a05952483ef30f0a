"""The parts of a Pattern that are measured and joined: gauge, sizes and assembly."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

from motifold.render.pattern.colours import build_placing
from motifold.render.pattern.locator import LocatedText
from motifold.render.pattern.model import (
    AssemblySource,
    Gauge,
    GaugePoint,
    JoinSource,
    MotifSource,
    NetCell,
    SidePiece,
    SizePlan,
)
from motifold.render.pattern.net import MOST_PANELS, join_words, read_join, read_join_table, read_net, read_side
from motifold.render.pattern.problem import NOWHERE, Problem
from motifold.render.pattern.scan import Path
from motifold.render.pattern.seams import build_seam
from motifold.render.pattern.values import Reader, Table, centimetres, ease, number, quantity, reference, share, text, texts, truth, whole

MOST_SIZES = 40
MOST_JOINS = 2000
LARGEST_BODY_CM = 500


def only(names: Sequence[str]) -> str | None:
    return names[0] if len(names) == 1 else None


def build_gauge(
    reader: Reader, tables: Table, motifs: tuple[MotifSource, ...], at: Path = ("gauge",), measured: str | None = None
) -> Gauge | None:
    """The gauge whose table is ``tables["gauge"]`` and stands in the file at ``at``; ``measured``: its motif where it names none."""
    if "gauge" not in tables:
        return None
    table: Table = tables["gauge"]
    names = tuple(motif.name for motif in motifs)
    motif = reference(reader, table, (*at, "motif"), names, "motif")
    rounds = whole(table, "rounds")
    width = centimetres(reader, table, (*at, "width"))
    points = [GaugePoint(rounds, width)] if rounds and width else []
    points += _points(reader, table)
    motif = motif or measured or only(names)
    if points and motif is None and "motif" not in table:
        message = "the gauge does not say which motif was measured"
        reader.add("missing", reader.locator.value(at), message, f'for example motif = "{(*names, "square")[0]}"')
    _gauge_agrees(reader, points, at)
    wash = share(reader, table, (*at, "after_wash"))
    return Gauge(
        motif=motif,
        points=tuple(points),
        grams=number(table, "grams"),
        grams_rounds=rounds,
        stitches=number(table, "stitches"),
        width_cm=width,
        rows=number(table, "rows"),
        height_cm=centimetres(reader, table, (*at, "height")),
        after_wash=float(1 + wash) if wash is not None else None,
        estimate=truth(table, "estimate") or False,
    )


def _points(reader: Reader, table: Table) -> list[GaugePoint]:
    points = []
    for index, item in enumerate(table.get("points", ())):
        rounds = whole(item, "rounds")
        width = centimetres(reader, item, ("gauge", "points", index, "width"))
        if rounds and width:
            points.append(GaugePoint(rounds, width))
    return points


def _gauge_agrees(reader: Reader, points: list[GaugePoint], at: Path) -> None:
    """Numbers that mean nothing without each other, and swatches that shrink as they grow."""
    here = reader.locator.value
    given = {name for name in ("rounds", "width", "grams", "points", "stitches", "rows", "height") if reader.has(*at, name)}
    if "rounds" in given and not given & {"width", "points"}:
        reader.add("missing", here((*at, "rounds")), "the gauge has rounds and no width", 'for example width = "12.8 cm"')
    if "width" in given and not given & {"rounds", "stitches", "points"}:
        hint = "for example rounds = 8, or stitches = 16"
        reader.add("missing", here((*at, "width")), "the gauge has a width and does not say of what", hint)
    elif "grams" in given and not given & {"rounds", "stitches", "points"}:
        message = "the gauge has grams and does not say of how many rounds"
        reader.add("missing", here((*at, "grams")), message, "for example rounds = 8")
    for counted, measured in (("stitches", "width"), ("rows", "height"), ("height", "rows")):
        if counted in given and measured not in given:
            message = f"the gauge has {counted} and no {measured}"
            reader.add("missing", here((*at, counted)), message, f"both are measured: add {measured}")
    path: Path = (*at, "points") if "points" in given else (*at, "rounds")
    in_order = sorted(points, key=lambda point: (point.rounds, point.width_cm))
    for before, after in pairwise(in_order):
        if before.rounds == after.rounds:
            reader.add("gauge", here(path), f"{after.rounds} rounds are measured twice", "keep the better one, or their mean")
        elif before.width_cm >= after.width_cm and len(points) > 2:
            message = f"{after.rounds} rounds measure no more than {before.rounds} rounds do"
            reader.add("gauge", here(path), message, "is one of the numbers mistyped?", "warning")


def build_size(reader: Reader, tables: Table, motif_names: tuple[str, ...]) -> SizePlan | None:
    if "size" not in tables:
        return None
    table: Table = tables["size"]
    motif = reference(reader, table, ("size", "motif"), motif_names, "motif")
    bodies: list[tuple[str, float | str]] = []
    seen: dict[str, str] = {}
    for name in table.get("bodies", {}):
        path: Path = ("size", "bodies", name)
        folded = " ".join(name.casefold().split())
        if not folded or len(name) > 60:
            reader.add("name", reader.locator.key(path), "a size needs a short name", 'for example Small = "42 cm"')
        elif folded in seen:
            reader.add("name", reader.locator.key(path), f'size "{name}" is "{seen[folded]}" again', "give one of them another name")
        if len(bodies) >= MOST_SIZES:
            reader.add("value", reader.locator.key(path), f"a pattern has at most {MOST_SIZES} sizes")
            break
        seen.setdefault(folded, name)
        body = _body(reader, table["bodies"], path)
        if body is not None:
            bodies.append((name, body))
    if "bodies" in table and not table["bodies"] and not reader.found("type"):
        reader.add("missing", reader.locator.value(("size", "bodies")), "no sizes are given", 'for example Small = "42 cm"')
    return SizePlan(
        measure=text(table, "measure") or "girth",
        motif=motif or only(motif_names),
        across=number(table, "across"),
        ease=ease(reader, table, ("size", "ease")),
        bodies=tuple(bodies),
    )


def _body(reader: Reader, bodies: Table, path: Path) -> float | str | None:
    """Centimetres, or the entry of a table, which is looked up when sizes are worked."""
    words = str(bodies[str(path[-1])]).strip()
    if not words.lower().startswith("table:"):
        found = quantity(reader, bodies, path, "length")
        if found is not None and found.cm > LARGEST_BODY_CM:
            reader.add("quantity", reader.locator.value(path), f"{found} is more than any size measures: at most 5 m", "is the unit right?")
            return None
        return float(found.cm) if found is not None else None
    entry = words[len("table:") :].strip()
    if not entry:
        reader.add("value", reader.locator.value(path), "the table's entry is missing", 'for example "table: head, 2 years"')
        return None
    return f"table: {entry}"


def build_assembly(
    reader: Reader, tables: Table, motifs: tuple[MotifSource, ...], yarns: tuple[str, ...], at: Path = ("assembly",)
) -> AssemblySource | None:
    """The assembly whose table is ``tables["assembly"]`` and stands in the file at ``at``."""
    if "assembly" not in tables:
        return None
    table: Table = tables["assembly"]
    names = tuple(motif.name for motif in motifs)
    motif = reference(reader, table, (*at, "motif"), names, "motif")
    differing = {
        name: found
        for name in table.get("panels", {})
        if (found := reference(reader, table["panels"], (*at, "panels", name), names, "motif")) is not None
    }
    net: tuple[NetCell, ...] = ()
    if "net" in table:
        net, problems = read_net(reader.locator.text((*at, "net")))
        reader.problems += problems
    panels = _panel_names(table, net)
    joins = _joins(reader, table, panels, at)
    motif = motif or only(names)
    stays_open = _open(reader, table, panels, at)
    if len(joins) < len(table.get("join", ())) or reader.found("net"):
        stays_open = None  # where a join could not be read, what is left open means nothing, and telling of it would only confuse
    return AssemblySource(
        motif=motif,
        panels=differing,
        net=net,
        join=joins,
        open=stays_open,
        seam=build_seam(reader, table, yarns),
        copies=whole(table, "copies") or 1,
        fold=texts(table, "fold"),
        form=text(table, "form"),
        span=reader.locator.value(at) if table else NOWHERE,
        open_span=reader.locator.value((*at, "open")) if "open" in table else None,
        colourways=build_placing(reader, table, motifs, net, at),
    )


def panel_names(assembly: AssemblySource) -> list[str]:
    """Every panel that an assembly names, those of the net first."""
    joined = [side.panel for join in assembly.join for side in (join.a, join.b) if side]
    return list(dict.fromkeys([*(cell.panel for cell in assembly.net), *assembly.panels, *joined]))


def _panel_names(table: Table, net: tuple[NetCell, ...]) -> list[str]:
    """The panels that there are: those of the net and of ``panels``; without a net, those that the joins name."""
    names = dict.fromkeys(cell.panel for cell in net)
    names.update(dict.fromkeys(table.get("panels", {})))
    if not net:
        for entry in table.get("join", ()):
            for side in join_words(entry)[1].partition(",")[0].replace("~", "+").split("+"):
                if "." in side:
                    names.setdefault(side.partition(".")[0].strip())
    return list(names)[: 2 * MOST_PANELS]


def _joins(reader: Reader, table: Table, panels: list[str], at: Path) -> tuple[JoinSource, ...]:
    known = dict.fromkeys(panels)
    if len(table.get("join", ())) > MOST_JOINS:
        reader.add("value", reader.locator.value((*at, "join", MOST_JOINS)), f"an assembly has at most {MOST_JOINS} joins")
        return ()
    joins = []
    for index in range(len(table.get("join", ()))):
        if reader.flooded:
            break
        join, problems = _join(reader, table["join"][index], index, known, at)
        tell_of_panels(reader, problems)
        if join:
            joins.append(join)
    return tuple(joins)


def _join(
    reader: Reader, entry: str | Table, index: int, panels: Collection[str], at: Path
) -> tuple[JoinSource | None, list[Problem]]:
    key, words = join_words(entry)
    if isinstance(entry, str) or key is None:
        return read_join(_item_text(reader, at, "join", index), panels)
    here: Path = (*at, "join", index)
    if not words:
        hint = 'for example { sides = "A.1 + B.2", ease = true }'
        return None, [Problem("panel-join", "error", reader.locator.value(here), "a join needs its two sides", hint)]
    manner = reader.locator.text((*here, "sides")) if key == "join" and "sides" in entry else None
    return read_join_table(entry, reader.locator.text((*here, key)), manner, panels)


def _open(reader: Reader, table: Table, panels: list[str], at: Path) -> tuple[SidePiece, ...] | None:
    if "open" not in table:
        return None
    known = dict.fromkeys(panels)
    sides = []
    for index in range(len(table["open"])):
        if reader.flooded:
            break
        located = _item_text(reader, at, "open", index)
        side, problem = read_side(located, 0, len(located.text), known)
        if problem:
            tell_of_panels(reader, [problem])
        if side:
            sides.append(side)
    return tuple(sides)


def tell_of_panels(reader: Reader, problems: list[Problem]) -> None:
    """Adds problems; that a panel does not exist is not worth telling where the net itself could not be read whole."""
    reader.problems += [problem for problem in problems if problem.code != "reference" or not reader.found("net")]


def _item_text(reader: Reader, at: Path, name: str, index: int) -> LocatedText:
    """Item of a list of texts in [assembly], which may be written as one text alone."""
    path: Path = (*at, name, index)
    return reader.locator.text(path if path in reader.locator.texts else (*at, name))
