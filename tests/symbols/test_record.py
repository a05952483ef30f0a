"""Light data classes behave as the standard ones do."""

from __future__ import annotations

import copy
import dataclasses
import pickle
from collections.abc import Callable
from typing import Any

import pytest

from motifold.symbols.record import _light_dataclass


@_light_dataclass(frozen=True, slots=True)
class Light:
    a: int
    b: str = "x"
    c: tuple[int, ...] = dataclasses.field(default_factory=tuple)

    @property
    def twice(self) -> int:
        return 2 * self.a


@_light_dataclass(frozen=True, slots=True)
class LightChild(Light):
    d: float = 0.5


@dataclasses.dataclass(frozen=True, slots=True)
class Standard:
    a: int
    b: str = "x"
    c: tuple[int, ...] = dataclasses.field(default_factory=tuple)

    @property
    def twice(self) -> int:
        return 2 * self.a


@dataclasses.dataclass(frozen=True, slots=True)
class StandardChild(Standard):
    d: float = 0.5


@_light_dataclass(slots=True)
class Changing:
    items: list[int] = dataclasses.field(default_factory=list)


PAIRS: list[tuple[Callable[..., Any], Callable[..., Any]]] = [(Light, Standard), (LightChild, StandardChild)]


@pytest.mark.parametrize(("light", "standard"), PAIRS)
def test_they_hold_show_compare_and_hash_the_same(light: Callable[..., Any], standard: Callable[..., Any]) -> None:
    for arguments in ((1,), (1, "y"), (1, "y", (2, 3))):
        one, other = light(*arguments), standard(*arguments)
        assert dataclasses.astuple(one) == dataclasses.astuple(other)
        assert repr(one).replace("Light", "Standard") == repr(other)
        assert hash(one) == hash(other)
        assert one == light(*arguments) and one != light(9)
        assert one != other
        assert one.twice == other.twice


@pytest.mark.parametrize(("light", "standard"), PAIRS)
def test_fields_replace_match_copy_and_pickle_work(light: Callable[..., Any], standard: Callable[..., Any]) -> None:
    one = light(1, c=(4,))
    assert [field.name for field in dataclasses.fields(one)] == [field.name for field in dataclasses.fields(standard(1))]
    assert dataclasses.replace(one, b="z") == light(1, "z", (4,))
    assert copy.deepcopy(one) == one == pickle.loads(pickle.dumps(one))
    assert type(one).__match_args__ == type(standard(1)).__match_args__
    with pytest.raises(TypeError):
        light()
    with pytest.raises(TypeError):
        light(1, wrong=2)


def test_what_is_frozen_stays_and_has_no_room_for_more() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError, match="'a'"):
        Light(1).a = 2  # type: ignore[misc]
    with pytest.raises(dataclasses.FrozenInstanceError, match="'a'"):
        del Light(1).a
    assert not hasattr(LightChild(1), "__dict__")


def test_what_is_not_frozen_changes_and_has_its_own_list() -> None:
    one, other = Changing(), Changing()
    one.items.append(1)
    assert other.items == [] and one != other
    one.items = [7]
    assert one.items == [7]
    with pytest.raises(TypeError, match="unhashable"):
        hash(one)


def test_what_it_does_not_know_it_refuses() -> None:
    with pytest.raises(TypeError, match="slotted"):
        _light_dataclass(slots=False)
    with pytest.raises(TypeError, match="ClassVar"):

        @_light_dataclass(slots=True)
        class _Wrong:
            a: ClassVar[int] = 1  # type: ignore[name-defined]  # noqa: F821
