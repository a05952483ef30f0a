"""``dataclass`` as the standard library has it, for slotted classes, at a quarter of its cost when a program starts.

Before Python 3.13 the standard decorator compiles six functions apart for each class; with two hundred classes of data that was more
than half of what ``check`` took to load. This one compiles ``__init__`` alone; comparison, hash and representation are closures over
the field names. To a type checker it is the standard decorator; ``dataclasses.replace`` and ``dataclasses.fields`` work on its
classes. What it leaves out (class variables, ``__post_init__``, ordering) it refuses.
"""

from __future__ import annotations

import dataclasses
import sys
from collections.abc import Callable
from operator import attrgetter
from typing import TYPE_CHECKING, Any, TypeVar

__all__ = ["dataclass"]

Class = TypeVar("Class", bound=type)
_MISSING = dataclasses.MISSING
_set = object.__setattr__


def _light_dataclass(*, slots: bool, frozen: bool = False) -> Callable[[Class], Class]:
    """The decorator; only slotted classes are made here. TypeError for what it does not know."""
    if not slots:
        raise TypeError("only slotted classes are made here")
    return lambda cls: _made(cls, frozen)


def _made(cls: Any, frozen: bool) -> Any:
    inherited: dict[str, dataclasses.Field[Any]] = {}
    for base in reversed(cls.__mro__[1:]):
        inherited.update(base.__dict__.get("__dataclass_fields__", {}))
    if hasattr(cls, "__post_init__"):
        raise TypeError(f"{cls.__name__}: __post_init__ is not known here")
    own = {name: _field(cls, name, kind) for name, kind in cls.__dict__.get("__annotations__", {}).items()}  # noqa: RUF063
    fields = {**inherited, **own}
    names = tuple(fields)
    body = {key: value for key, value in cls.__dict__.items() if key not in own and key not in ("__dict__", "__weakref__")}
    body |= _methods(cls, names, frozen)
    body["__slots__"] = tuple(name for name in own if name not in inherited)
    body["__dataclass_fields__"] = fields
    body["__match_args__"] = names
    made = type(cls)(cls.__name__, cls.__bases__, body)
    made.__qualname__ = cls.__qualname__
    made.__init__ = _first_init(made, fields, frozen)
    return made


def _first_init(cls: Any, fields: dict[str, dataclasses.Field[Any]], frozen: bool) -> Any:
    """``__init__`` until it is first called, when it is compiled and takes this one's place: of two hundred classes a run makes half."""

    def __init__(self: Any, *values: Any, **named: Any) -> None:
        cls.__init__ = _init(cls, fields, frozen)
        self.__init__(*values, **named)

    return __init__


def _field(cls: Any, name: str, kind: Any) -> dataclasses.Field[Any]:
    if "ClassVar" in str(kind) or "InitVar" in str(kind):
        raise TypeError(f"{cls.__name__}.{name}: {kind} is not known here")
    value = cls.__dict__.get(name, _MISSING)
    found: Any = value if isinstance(value, dataclasses.Field) else dataclasses.field(default=value)
    found.name, found.type = name, kind
    found._field_type = dataclasses._FIELD  # type: ignore[attr-defined]  # what dataclasses.fields looks for
    return found  # type: ignore[no-any-return]


def _init(cls: Any, fields: dict[str, dataclasses.Field[Any]], frozen: bool) -> Any:
    """``__init__(self, a, b=default, ...)``, compiled in one piece; what is frozen is set through its slots, which is twice as quick."""
    names: dict[str, Any] = {}
    arguments, lines = ["self"], []
    for name, one in fields.items():
        value = name
        if one.default is not _MISSING:
            names[f"_d_{name}"] = one.default
            arguments.append(f"{name}=_d_{name}")
        elif one.default_factory is not _MISSING:
            names[f"_f_{name}"] = one.default_factory
            names["_missing"] = _MISSING
            arguments.append(f"{name}=_missing")
            value = f"_f_{name}() if {name} is _missing else {name}"
        else:
            arguments.append(name)
        if frozen:
            names[f"_s_{name}"] = getattr(cls, name).__set__
        lines.append(f" _s_{name}(self, {value})" if frozen else f" self.{name} = {value}")
    source = f"def __init__({', '.join(arguments)}):\n" + "\n".join(lines or [" pass"])
    exec(source, names)
    made = names["__init__"]
    made.__qualname__ = f"{cls.__qualname__}.__init__"
    return made


def _methods(cls: Any, names: tuple[str, ...], frozen: bool) -> dict[str, Any]:
    values = _values_of(names)

    def __eq__(self: Any, other: Any) -> Any:
        return values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented

    def __hash__(self: Any) -> int:
        return hash(values(self))

    def __repr__(self: Any) -> str:
        return f"{type(self).__qualname__}({', '.join(f'{name}={getattr(self, name)!r}' for name in names)})"

    def __getstate__(self: Any) -> list[Any]:
        return [getattr(self, name) for name in names]

    def __setstate__(self: Any, state: list[Any]) -> None:
        for name, value in zip(names, state, strict=True):
            _set(self, name, value)

    methods: dict[str, Any] = {"__getstate__": __getstate__, "__setstate__": __setstate__}
    given = cls.__dict__
    methods |= {} if "__eq__" in given else {"__eq__": __eq__}
    methods |= {} if "__repr__" in given else {"__repr__": __repr__}
    methods["__hash__"] = given["__hash__"] if given.get("__hash__") is not None else __hash__ if frozen else None
    return methods | ({"__setattr__": _refuse, "__delattr__": _refuse} if frozen else {})


def _values_of(names: tuple[str, ...]) -> Callable[[Any], tuple[Any, ...]]:
    if not names:
        return lambda one: ()
    if len(names) == 1:
        [only] = names
        return lambda one: (getattr(one, only),)
    return attrgetter(*names)


def _refuse(self: Any, name: str, *value: Any) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot {'assign to' if value else 'delete'} field {name!r}")


if TYPE_CHECKING or sys.version_info >= (3, 13):
    from dataclasses import dataclass
else:
    dataclass = _light_dataclass
