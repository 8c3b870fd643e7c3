"""JSON Schema of the scenario format, for editors, with the words that stand under each field in the source."""

import ast
import inspect
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

from optimizer.scenario.part import Part
from optimizer.scenario.schema import ScenarioPart


def scenario_schema() -> dict[str, Any]:
    """JSON Schema of a scenario file."""
    schema = ScenarioPart.model_json_schema(by_alias=True)
    shown = {**schema["$defs"], ScenarioPart.__name__: schema}
    for part in _parts(Part):
        keys = shown.get(part.__name__, {}).get("properties", {})
        for name, words in _words(part):
            key = part.model_fields[name].alias or name
            if key in keys:
                keys[key]["description"] = words
    return schema


def _parts(part: type[Part]) -> Iterator[type[Part]]:
    for inner in part.__subclasses__():
        yield inner
        yield from _parts(inner)


def _words(part: type[Part]) -> Iterator[tuple[str, str]]:
    """Fields of a class and the text under each: read only here, since it takes as long as all else at the start."""
    (body,) = ast.parse(inspect.getsource(part)).body
    for field, below in pairwise(getattr(body, "body", ())):
        match field, below:
            case ast.AnnAssign(target=ast.Name(id=name)), ast.Expr(value=ast.Constant(value=str(words))):
                yield name, inspect.cleandoc(words)
