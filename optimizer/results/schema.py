"""One schema of all that a result holds, derived from the frozen types: it writes them and reads them back.

A field of a type is a key of its record, whatever is added later; where the file differs, `forms.py` says so.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, is_dataclass
from decimal import Decimal
from functools import cache
from types import UnionType
from typing import Any, Union, get_args, get_origin

from pydantic import AfterValidator, Field, GetCoreSchemaHandler, TypeAdapter, ValidationError, WrapSerializer
from pydantic_core import CoreSchema
from pydantic_core import core_schema as core

from optimizer.results.forms import ANNOTATED, DICT, FORMS, LEAVES, LIMITS, MOST, PARTS, PLACES, TUPLE, UNION
from optimizer.results.parts import Group, Part, extras_of, grouped, is_list, parts_of, read, written
from optimizer.results.untrusted import refusal


def to_record(value: Any) -> dict[str, Any]:
    """Plain record of a frozen value; ValueError for a number that is not finite, which JSON cannot say."""
    kind: Any = type(value)
    record: dict[str, Any] = _adapter(kind).dump_python(value, mode="json")
    return record


def from_record(kind: Any, record: object, where: str) -> Any:
    """Value of a type from a plain record; ResultError with its place for what is not as the type asks.

    Keys that are not known are ignored. A field that has a default takes it where its key lacks or is null.
    """
    try:
        return _adapter(kind).validate_python(record)
    except ValidationError as error:
        raise refusal(error, where) from None


@cache
def _adapter(kind: Any) -> TypeAdapter[Any]:
    return TypeAdapter(_form(kind))


@dataclass(frozen=True, eq=False)
class _Record:
    """Tells pydantic how a type whose parts have names stands in the file."""

    kind: Any
    places: Mapping[str, str]

    def __get_pydantic_core_schema__(self, _: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        parts = tuple(parts_of(self.kind, self.places))
        groups = grouped((*parts, *extras_of(self.kind)))
        inside = _schema(groups, handler)
        writing = core.wrap_serializer_function_ser_schema(
            lambda value, inner: inner(written(groups, value)), schema=inside
        )
        reading = core.no_info_after_validator_function(lambda record: read(self.kind, parts, record), inside)
        return {**reading, "serialization": writing}


def _schema(group: Part | Group, handler: GetCoreSchemaHandler) -> CoreSchema:
    if isinstance(group, Part):
        form = _form_of(group)
        return handler.generate_schema(form if group.member.is_needed else form | None)
    inside = {key: _schema(one, handler) for key, one in group.items()}
    if is_list(group):
        return core.tuple_schema(list(inside.values()))
    keys = {key: core.typed_dict_field(schema, required=_is_needed(group[key])) for key, schema in inside.items()}
    record = core.typed_dict_schema(keys)
    return record if _is_needed(group) else core.nullable_schema(record)


def _is_needed(group: Part | Group) -> bool:
    return group.member.is_needed if isinstance(group, Part) else any(map(_is_needed, group.values()))


def _form_of(part: Part) -> Any:
    field = part.member[:2]
    return FORMS.get(field) or _form(part.member.hint, PARTS.get(field), LIMITS.get(field, MOST))


def _form(hint: Any, parts: Mapping[str, str] | None = None, most: int = MOST) -> Any:
    """What stands in the file for a type; `parts` are the names of what is in a tuple inside it."""
    if hint in LEAVES and not parts:
        return LEAVES[hint]
    if is_dataclass(hint) or hasattr(hint, "_field_defaults"):
        return ANNOTATED[hint, _Record(hint, PLACES.get(hint, {}))]
    inside = get_args(hint)
    if get_origin(hint) in {Union, UnionType}:
        return UNION[tuple(_form(one, parts, most) for one in inside)]
    return _tuple_form(hint, inside, parts, most) if get_origin(hint) is tuple else hint


def _tuple_form(hint: Any, inside: tuple[Any, ...], parts: Mapping[str, str] | None, most: int) -> Any:
    if inside[-1] is not ...:
        return ANNOTATED[hint, _Record(hint, parts)] if parts else TUPLE[tuple(map(_form, inside))]
    match get_args(inside[0]):
        case (name, figure) if not parts and name in {str, int} and _stands_by_name(name, figure):
            key = LEAVES[str] if name is str else ANNOTATED[int, Field(ge=0, le=999)]
            return _by_name(ANNOTATED[DICT[key, _form(figure)], Field(max_length=most)])
    return ANNOTATED[TUPLE[_form(inside[0], parts), ...], Field(max_length=most, fail_fast=True)]


def _stands_by_name(name: Any, figure: Any) -> bool:
    """Whether pairs are an object in the file: figures by name, and whatever there is by number."""
    return figure in {int, float, Decimal} or (name is int and is_dataclass(figure))


def _by_name(form: Any) -> Any:
    """Object for pairs of a name and a figure."""
    return ANNOTATED[
        form,
        AfterValidator(lambda by_name: tuple(by_name.items())),
        WrapSerializer(lambda pairs, inner: inner(_without_loss(pairs))),
    ]


def _without_loss(pairs: Sequence[tuple[Any, Any]]) -> dict[Any, Any]:
    by_name = dict(pairs)
    if len(by_name) < len(pairs):
        raise ValueError("two figures of one name would be one in an object")
    return by_name
