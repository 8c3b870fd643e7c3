"""A whole run as the document that options.json holds."""

from collections.abc import Sequence
from typing import Any, Final

from optimizer.catalogue import PriceBook, SizedRoom
from optimizer.concepts import Conflict, OptionSet, SearchRecord
from optimizer.results.option_record import option_record
from optimizer.results.versions import versions
from optimizer.scenario import Scenario

FORMAT: Final = "outdoor-rooms/options/1"


def to_document(
    scenario: Scenario, rooms: Sequence[SizedRoom], option_set: OptionSet, *, book: PriceBook
) -> dict[str, Any]:
    """Document of a run, with the scenario's own text, so that a result stands alone."""
    return {
        "format": FORMAT,
        "scenario": {
            "name": scenario.name,
            "digest": scenario.digest,
            "units": scenario.units,
            "currency": scenario.currency,
            "text": scenario.text,
        },
        "versions": versions(book),
        "search": _search(option_set.search),
        "conflict": option_set.conflict and _conflict(option_set.conflict),
        "options": [option_record(rooms, option) for option in option_set.options],
    }


def _search(search: SearchRecord) -> dict[str, Any]:
    return {
        "status": search.status,
        "objective": search.objective,
        "bound": search.bound,
        "gap": search.gap,
        "terms": dict(search.terms),
        "seconds": search.seconds,
        "seed": search.seed,
        "repeatable": search.repeatable,
        "stopped": search.stopped,
        "arrangements_seen": search.arrangements_seen,
        "refused": list(search.refused),
    }


def _conflict(conflict: Conflict) -> dict[str, Any]:
    return {
        "rules": [{"id": rule, "sentence": sentence, "rooms": list(rooms)} for rule, sentence, rooms in conflict.rules],
        "words": conflict.words,
        "ways_out": [
            {"text": way.text, "patch": [_operation(*operation) for operation in way.patch]}
            for way in conflict.ways_out
        ],
    }


def _operation(op: str, path: str, value: object) -> dict[str, Any]:
    """One operation of RFC 6902; `remove` has no value."""
    return {"op": op, "path": path} if op == "remove" else {"op": op, "path": path, "value": value}
