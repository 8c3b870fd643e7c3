"""A sketch and the nearest layout to it that keeps the rules, as the document that improve.json holds."""

from typing import Any, Final

from optimizer.concepts import OptionSet, SearchRecord
from optimizer.concepts.improve.answer import Improvement
from optimizer.concepts.improve.measure import WORDS
from optimizer.results.revision import room_changes
from optimizer.results.schema import to_record

FORMAT: Final = "outdoor-rooms/improve/1"


def improvement_document(found: Improvement) -> dict[str, Any]:
    """Document of an improvement; distances in feet."""
    return {
        "format": FORMAT,
        "sketch": found.before.sketch,
        "status": found.found.status,
        "answer": found.words,
        "measure": WORDS,
        "changes": list(changes_of(found)),
        "distance_ft": found.found.distance_ft,
        "least_ft": found.found.least_ft,
        "improved": None if found.after is None else found.after.sketch,
        "plan": None if found.after is None else f"{found.after.id}.svg",
        "ways_out": [] if found.change is None else [to_record(found.change)],
    }


def changes_of(found: Improvement) -> tuple[str, ...]:
    """What the improved layout has other than the sketch, a sentence a room."""
    return () if found.after is None else room_changes(found.scenario, found.before, found.after)


def sketches_only(found: Improvement, *, seconds: float) -> OptionSet:
    """The sketches as a result of their own: nothing was searched."""
    seed = found.scenario.brief.options.seed
    record = SearchRecord(
        "undecided", None, None, (), seconds, seed, repeatable=False, stopped=False, arrangements_seen=0
    )
    return OptionSet(found.sketches, record)
