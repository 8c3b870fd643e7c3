"""Where each value of a frozen type stands in its record, and the way of values from one to the other and back."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import MISSING, fields, is_dataclass
from functools import cache, reduce
from types import NoneType
from typing import Any, NamedTuple, get_args, get_origin, get_type_hints

from optimizer.results.forms import EXTRAS, NULL_IF_EMPTY


class Member(NamedTuple):
    """A field of a type, or a part of a tuple by its number."""

    owner: Any
    name: str
    hint: Any
    is_needed: bool


class Part(NamedTuple):
    """A value of a record: the way to it through the types, and the way to it through the keys of the file."""

    path: tuple[str, ...]
    keys: tuple[str, ...]
    member: Member

    def written(self, value: object) -> object:
        """Find it in a frozen value; None where the way ends before."""
        found = reduce(_member_of, self.path, value)
        return None if self.member[:2] in NULL_IF_EMPTY and not found else found

    def is_given(self, found: object) -> bool:
        """Whether the file has a value, not the lack of one."""
        return found is not MISSING and (found is not None or NoneType in get_args(self.member.hint))


Group = Mapping[str, Any]
"""Parts by their keys in the file; a group in place of a part is an object, or a list where its keys are numbers."""


def parts_of(kind: Any, places: Mapping[str, str], at: tuple[str, ...] = (), key: str = "") -> Iterator[Part]:
    """Parts of a type; those of a field whose inside has places of its own stand beside the others."""
    for member in members(kind):
        path = (*at, member.name)
        name = ".".join(path)
        place = places.get(name, f"{key}{member.name}")
        if any(known.startswith(f"{name}.") for known in places):
            yield from parts_of(member.hint, places, path, f"{place}.")
        else:
            yield Part(path, tuple(place.split(".")), member)


def extras_of(kind: Any) -> Iterator[Part]:
    """What is written of a type beside its parts."""
    for place, path in EXTRAS.get(kind, {}).items():
        yield Part(tuple(path.split(".")), tuple(place.split(".")), Member(kind, place, object, is_needed=False))


@cache
def members(kind: Any) -> tuple[Member, ...]:
    """Fields of a frozen dataclass or named tuple, or parts of a tuple."""
    if get_origin(kind) is tuple:
        return tuple(Member(kind, str(i), hint, hint is not object) for i, hint in enumerate(get_args(kind)))
    defaults = _defaults(kind)
    return tuple(Member(kind, name, hint, name not in defaults) for name, hint in get_type_hints(kind).items())


def grouped(parts: Iterable[Part], depth: int = 0) -> Group:
    """Parts by their keys, and by the keys inside those."""
    alike: dict[str, list[Part]] = {}
    for part in parts:
        alike.setdefault(part.keys[depth], []).append(part)
    return {
        key: found[0] if len(found[0].keys) == depth + 1 else grouped(found, depth + 1) for key, found in alike.items()
    }


def is_list(group: Group) -> bool:
    """Whether a group is a list in the file."""
    return all(key.isdigit() for key in group)


def written(group: Part | Group, value: object) -> Any:
    """Values of a frozen value, grouped as in the file; each is still as its type has it."""
    if isinstance(group, Part):
        return group.written(value)
    inside = {key: written(one, value) for key, one in group.items()}
    return tuple(inside.values()) if is_list(group) else inside


def read(kind: Any, parts: Sequence[Part], record: Mapping[str, Any]) -> Any:
    """Value of a type from values grouped as in the file; each is already as its type has it."""
    found = ((part, reduce(_at_key, part.keys, record)) for part in parts)
    return _made(kind, {part.path: value for part, value in found if part.is_given(value)})


def _made(kind: Any, values: Mapping[tuple[str, ...], Any], at: tuple[str, ...] = ()) -> Any:
    given = {}
    for member in members(kind):
        path = (*at, member.name)
        if path in values:
            given[member.name] = values[path]
        elif any(known[: len(path)] == path for known in values):
            given[member.name] = _made(member.hint, values, path)
    if get_origin(kind) is tuple:
        return tuple(given.get(member.name) for member in members(kind))
    return kind(**given)


def _defaults(kind: Any) -> Iterable[str]:
    if is_dataclass(kind):
        return {f.name for f in fields(kind) if f.default is not MISSING or f.default_factory is not MISSING}
    defaults: Iterable[str] = kind._field_defaults
    return defaults


def _member_of(value: Any, name: str) -> Any:
    return value[int(name)] if name.isdigit() else getattr(value, name, None)


def _at_key(record: Any, key: str) -> Any:
    if isinstance(record, tuple):
        return record[int(key)]
    return record.get(key, MISSING) if isinstance(record, dict) else MISSING
