"""How a file that may hold anything is refused: by one report of the place, what belongs there, and what to do."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final, NoReturn

from pydantic import ValidationError

from optimizer.errors import Problem, ResultError

_ADVICE: Final = "make the result again with the options command"
_EXPECTED: Final[Mapping[str, Callable[[dict[str, Any]], str]]] = {
    "unexpected": lambda context: str(context["expected"]),
    "missing": lambda _: "a value",
    "dict_type": lambda _: "an object",
    "tuple_type": lambda _: "a list",
    "bool_type": lambda _: "true or false",
    "int_type": lambda _: "a whole number",
    "int_parsing": lambda _: "a whole number",
    "float_type": lambda _: "a number",
    "string_type": lambda _: "text",
    "string_too_long": lambda context: f"text of at most {context['max_length']} characters",
    "too_long": lambda context: f"at most {context['max_length']} entries",
    "greater_than": lambda context: f"a size above {context['gt']:g}",
    "greater_than_equal": lambda context: f"a number from {context['ge']:g} on",
    "less_than_equal": lambda context: f"a number of at most {context['le']:g}",
    "literal_error": lambda context: context["expected"].replace("'", "").replace(" or ", ", ").replace(", ", " | "),
}


def refuse(expected: str, found: object, where: str, *, advice: str = _ADVICE) -> NoReturn:
    """Raise the ResultError of one problem."""
    raise ResultError((Problem(expected, shown(found), advice, where=where),))


def refusal(error: ValidationError, where: str) -> ResultError:
    """Report of the first thing that a schema found wrong; the rest mostly follows from it."""
    first = error.errors(include_url=False)[0]
    words = _EXPECTED.get(first["type"])
    expected = words(first.get("ctx", {})) if words else first["msg"]
    found = None if first["type"] == "missing" else first["input"]
    return ResultError((Problem(expected, shown(found), _ADVICE, where=where + _place(first["loc"])),))


def shown(value: object) -> str:
    """Word a value for a message: short, on one line."""
    match value:
        case None:
            return "nothing"
        case dict():
            return "an object"
        case list():
            return f"a list of {len(value)}"
        case _:
            text = repr(value)
            return text if len(text) <= 60 else f"{text[:57]}..."


def _place(steps: Sequence[int | str]) -> str:
    """Place inside a document, as in options[0].rooms[1].x_ft."""
    # Of a key that is wrong itself the schema says so by a further step.
    return "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in steps if step != "[key]")
