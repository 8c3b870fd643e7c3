"""A changed scenario: RFC 6902 operations on its text, read anew like any other."""

import json
from collections.abc import Sequence
from typing import Any

from optimizer.scenario.document import read_document
from optimizer.scenario.reader import read_scenario
from optimizer.scenario.scenario import Scenario

Patch = Sequence[tuple[str, str, object]]
"""Operations (op, path, value): add, replace or remove."""


def patched(scenario: Scenario, patch: Patch) -> Scenario:
    """The scenario whose text is that of this one with the operations applied in order, priced by the same book.

    Raises
    ------
    ScenarioError
        Where the changed text is no scenario.
    LookupError
        Where an operation is not known, or a path leads nowhere in the text.
    """
    data = _plain(read_document(scenario.text, scenario.name).data)
    for operation, path, value in patch:
        try:
            _apply(data, operation, path, _plain(value))
        except (TypeError, ValueError) as error:  # a step into what holds nothing, a list's place that is no number
            raise LookupError(f"{path} leads nowhere") from error
    return read_scenario(json.dumps(data, ensure_ascii=False), scenario.name, scenario.prices)


def with_seed(scenario: Scenario, seed: int) -> Scenario:
    """The scenario with another seed in its text, so that every further change of it keeps that seed."""
    try:
        return patched(scenario, (("add", "/options/seed", seed),))
    except LookupError:  # a file that says nothing of options
        return patched(scenario, (("add", "/options", {"seed": seed}),))


def _apply(data: Any, operation: str, path: str, value: object) -> None:
    *way, last = (step.replace("~1", "/").replace("~0", "~") for step in path.split("/")[1:])
    for step in way:
        data = data[int(step)] if isinstance(data, list) else data[step]
    if isinstance(data, list) and operation == "add":
        data.insert(len(data) if last == "-" else int(last), value)
        return
    key: Any = int(last) if isinstance(data, list) else last
    if operation == "add":
        data[key] = value
    elif operation == "replace":
        data[key]  # what is replaced must be there
        data[key] = value
    elif operation == "remove":
        del data[key]
    else:
        raise KeyError(f"no operation of RFC 6902 that is known here: {operation}")


def _plain(value: Any) -> Any:
    """The value with lists that can be changed."""
    if isinstance(value, dict):
        return {key: _plain(inner) for key, inner in value.items()}
    return [_plain(inner) for inner in value] if isinstance(value, tuple | list) else value
