"""What a schema found wrong, said in plain words: expected, found, what to do."""

from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches
from typing import Any, Final, get_args

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.part import Part
from optimizer.scenario.schema import ScenarioPart

_NAMES_COMPARED: Final = 500
_TYPES: Final[Mapping[str, tuple[str, str]]] = {
    "bool_type": ("true or false", "write true or false, without quotes"),
    "int_type": ("a whole number", "write digits only"),
    "float_type": ("a number", "write digits, without quotes or unit"),
    "string_type": ("text", "put quotes round it if it looks like a number"),
    "string_unicode": ("characters that can be printed", "take half characters out"),
    "tuple_type": ("a list", "write it as [a, b] or with a dash before each item"),
    "dict_type": ("keys with values", "write it as {key: value} or one key a line"),
    "model_type": ("keys with values", "write it as {key: value} or one key a line"),
    "finite_number": ("a finite number", "write digits"),
    "string_pattern_mismatch": ("a currency of three capitals", "write a code such as USD"),
}
_OF_ONE_VALUE: Final = ("bool_type", "int_type", "float_type")
_BARE: Final = "give one value, without brackets"
_BOUNDS: Final[Mapping[str, tuple[str, str]]] = {
    "greater_than_equal": ("ge", "a number of at least {}"),
    "greater_than": ("gt", "a number above {}"),
    "less_than_equal": ("le", "a number of at most {}"),
    "too_short": ("min_length", "a list of at least {}"),
    "too_long": ("max_length", "a list of at most {}"),
}


def complaints_of(error: ValidationError) -> tuple[Complaint, ...]:
    """All complaints of a validation, in the order of the schema."""
    details = error.errors(include_url=False)
    places = [detail["loc"] for detail in details]
    said = (_complaint(detail) for detail in details if not _is_echo(detail, places))
    # Both values that an empty pair lacks are one complaint.
    return tuple(dict.fromkeys(said))


def is_unknown_key(detail: ErrorDetails) -> bool:
    """Whether a schema error is only a key too many."""
    return detail["type"] == "extra_forbidden"


def found_text(value: Any) -> str:
    """Say what was found: a value as written where it is short, else what it is."""
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Mapping):
        return "keys with values"
    if isinstance(value, tuple):
        return f"a list of {len(value)}"
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:56]}...{text[0] if isinstance(value, str) else ''}"


def did_you_mean(name: str, known: Iterable[str], otherwise: str) -> str:
    """Advice that lists the known names near to one that is not known."""
    # A slip is looked for among the first names only: thousands of each would take minutes.
    near = get_close_matches(name[:200], sorted(set(known))[:_NAMES_COMPARED], n=3)
    return f"did you mean {' or '.join(near)}?" if near else otherwise


def _is_echo(detail: ErrorDetails, places: list[tuple[int | str, ...]]) -> bool:
    """Whether a list is called too short only because items in it are wrong themselves."""
    loc = detail["loc"]
    return detail["type"] == "too_short" and any(len(place) > len(loc) and place[: len(loc)] == loc for place in places)


def _complaint(detail: ErrorDetails) -> Complaint:
    """Say one schema error in plain words."""
    path = tuple(step for step in detail["loc"] if step != "[key]")
    expected, advice = _expected(detail, path)
    if detail["type"] == "missing":
        where = path[:-1] if isinstance(path[-1], int) else path
        return Complaint(where, expected, "nothing", advice)
    found = detail.get("ctx", {}).get("found") or found_text(path[-1] if is_unknown_key(detail) else detail["input"])
    return Complaint(path, expected, found, advice, at_key=is_unknown_key(detail) or "[key]" in detail["loc"])


def _expected(detail: ErrorDetails, path: Path) -> tuple[str, str]:
    """Say what was expected and what to do, for one schema error."""
    kind, context = detail["type"], detail.get("ctx", {})
    if kind == "unexpected":
        return context["expected"], context["advice"]
    if kind == "extra_forbidden":
        keys = _keys_at(path[:-1])
        return f"one of the keys {', '.join(keys)}", did_you_mean(str(path[-1]), keys, "take it away or correct it")
    if kind == "missing":
        return _missing(path)
    if kind == "literal_error":
        return _words(context["expected"].replace("'", ""), detail["input"])
    if kind in _BOUNDS:
        name, words = _BOUNDS[kind]
        return words.format(_number(context[name])), "change it to fit"
    expected, advice = _TYPES.get(kind, ("another value", f"correct it: {detail['msg']}"))
    is_list = isinstance(detail["input"], tuple) and kind in _OF_ONE_VALUE
    return expected, _BARE if is_list else advice


def _words(words: str, found: Any) -> tuple[str, str]:
    """Say which words were expected, and which of them may be meant."""
    known = words.replace(" or ", ", ").split(", ")
    return words, _BARE if isinstance(found, tuple) else did_you_mean(str(found), known, "write one of these")


def _missing(path: Path) -> tuple[str, str]:
    """Say what lacks: a key, or the second of two values."""
    if isinstance(path[-1], int):
        return "two values, as in [a, b]", "write both"
    return f"the key `{path[-1]}`", "add it"


def _number(value: float) -> str:
    """Write a bound without a needless .0."""
    return f"{value:,.10g}"


def _keys_at(path: Path) -> tuple[str, ...]:
    """Keys that the schema knows at a path."""
    part: type[Part] = ScenarioPart
    for step in path:
        field = _fields(part).get(str(step)) if isinstance(step, str) else None
        part = next(_parts_in(field), part) if field else part
    return tuple(_fields(part))


def _fields(part: type[Part]) -> dict[str, Any]:
    """Keys of a mapping as written in the file, each with its annotation."""
    return {field.alias or name: field.annotation for name, field in part.model_fields.items()}


def _parts_in(annotation: Any) -> Iterator[type[Part]]:
    """Find the mappings that an annotation speaks of, at any depth."""
    if isinstance(annotation, type) and issubclass(annotation, Part):
        yield annotation
    for inner in get_args(annotation):
        yield from _parts_in(inner)
