"""Kerning read straight from a font's bytes: the pair adjustments of its GPOS table (OpenType specification, GPOS lookup type 2).

Decoding the whole table into objects takes longer than all the rest of measuring a page; only numbers that are asked for are read here.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

_X_PLACEMENT_Y_PLACEMENT, _X_ADVANCE = 0x3, 0x4  # bits of a ValueFormat


@dataclass(frozen=True, slots=True)
class PairTable:
    """One subtable. ``coverage``: first glyphs and their index. Format 1 lists pairs, format 2 a matrix of classes."""

    data: bytes
    start: int
    format: int
    coverage: Mapping[int, int]
    record_size: int
    advance_at: int
    first_classes: Mapping[int, int]
    second_classes: Mapping[int, int]
    second_count: int


def _numbers(data: bytes, at: int, count: int) -> tuple[int, ...]:
    return struct.unpack_from(f">{count}H", data, at)


def _ranges(data: bytes, at: int) -> Iterator[tuple[int, int, int]]:
    """(first glyph, last glyph, value) of a range list; coverage and classes share its form."""
    (count,) = _numbers(data, at, 1)
    for index in range(count):
        first, last, value = _numbers(data, at + 2 + 6 * index, 3)
        yield first, last, value


def _coverage(data: bytes, at: int) -> dict[int, int]:
    form, count = _numbers(data, at, 2)
    if form == 1:
        return {glyph: index for index, glyph in enumerate(_numbers(data, at + 4, count))}
    return {glyph: value + glyph - first for first, last, value in _ranges(data, at + 2) for glyph in range(first, last + 1)}


def _classes(data: bytes, at: int) -> dict[int, int]:
    form, first, count = _numbers(data, at, 3)
    if form == 1:
        return {first + index: value for index, value in enumerate(_numbers(data, at + 6, count))}
    return {glyph: value for start, last, value in _ranges(data, at + 2) for glyph in range(start, last + 1)}


def pair_tables(gpos: bytes) -> tuple[PairTable, ...]:
    """The subtables of the "kern" feature's pair lookups, in the order they are tried."""
    _, features, lookups = _numbers(gpos, 4, 3)
    (count,) = _numbers(gpos, features, 1)
    wanted: set[int] = set()
    for index in range(count):
        tag, offset = struct.unpack_from(">4sH", gpos, features + 2 + 6 * index)
        if tag == b"kern":
            (indices,) = _numbers(gpos, features + offset + 2, 1)
            wanted.update(_numbers(gpos, features + offset + 4, indices))
    tables: list[PairTable] = []
    for index in sorted(wanted):
        lookup = lookups + _numbers(gpos, lookups + 2 + 2 * index, 1)[0]
        kind, _, subtables = _numbers(gpos, lookup, 3)
        if kind == 2:
            tables += [_pair_table(gpos, lookup + offset) for offset in _numbers(gpos, lookup + 6, subtables)]
    return tuple(tables)


def _pair_table(data: bytes, at: int) -> PairTable:
    form, coverage, value1, value2 = _numbers(data, at, 4)
    values = 2 * ((value1 & 0xFF).bit_count() + (value2 & 0xFF).bit_count())
    advance_at = 2 * (value1 & _X_PLACEMENT_Y_PLACEMENT).bit_count() if value1 & _X_ADVANCE else -1
    covered = _coverage(data, at + coverage)
    if form == 1:
        return PairTable(data, at, 1, covered, values + 2, advance_at, {}, {}, 0)
    classes1, classes2, _, count2 = _numbers(data, at + 8, 4)
    return PairTable(data, at, 2, covered, values, advance_at, _classes(data, at + classes1), _classes(data, at + classes2), count2)


def adjustment(tables: tuple[PairTable, ...], left: int, right: int) -> int:
    """How much is added to the advance of glyph ``left`` before glyph ``right``, in font units."""
    for table in tables:
        if left not in table.coverage:
            continue
        if table.format == 1:
            at = _listed_pair(table, table.coverage[left], right)
            if at is None:
                continue
        else:
            cell = table.first_classes.get(left, 0) * table.second_count + table.second_classes.get(right, 0)
            at = table.start + 16 + cell * table.record_size
        return int(struct.unpack_from(">h", table.data, at + table.advance_at)[0]) if table.advance_at >= 0 else 0
    return 0


def _listed_pair(table: PairTable, index: int, right: int) -> int | None:
    """Where the values of a listed pair stand."""
    pair_set = table.start + _numbers(table.data, table.start + 10 + 2 * index, 1)[0]
    (count,) = _numbers(table.data, pair_set, 1)
    for place in range(count):
        record = pair_set + 2 + place * table.record_size
        if _numbers(table.data, record, 1)[0] == right:
            return record + 2
    return None
