"""A whole run as the document that options.json holds. What is not computed is null."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from optimizer.catalogue import PriceBook, SizedRoom
from optimizer.concepts import Option, OptionSet
from optimizer.layout import Placement
from optimizer.results.schema import to_record
from optimizer.results.versions import versions
from optimizer.scenario import Scenario

FORMAT: Final = "outdoor-rooms/options/1"
CARRIED: Final = ("name", "digest", "units", "currency", "text")
"""Of the scenario: with its own text a result stands alone."""


def to_document(
    scenario: Scenario, rooms: Sequence[SizedRoom], option_set: OptionSet, *, book: PriceBook
) -> dict[str, Any]:
    """Document of a run. Lengths in feet, money as text with two decimals."""
    record = to_record(option_set)
    for option, written in zip(option_set.options, record["options"], strict=True):
        _add_facts(written, rooms, option)
    carried = {name: getattr(scenario, name) for name in CARRIED}
    return {"format": FORMAT, "scenario": carried, "versions": versions(book), "prices": to_record(book), **record}


def option_record(rooms: Sequence[SizedRoom], option: Option) -> dict[str, Any]:
    """Record of an option, as it stands in the document of its run."""
    record = to_record(option)
    _add_facts(record, rooms, option)
    return record


def _add_facts(record: dict[str, Any], rooms: Sequence[SizedRoom], option: Option) -> None:
    """Add what catalogue and ground know of the rooms, for whoever reads the record alone."""
    by_name = {room.name: room for room in rooms}
    ground = option.appraisal.site.ground
    levels = dict(ground.levels) if ground else {}
    for placed, place in zip(record["rooms"], option.layout.placements, strict=True):
        placed.update(_room_facts(by_name[place.room], place, levels))


def _room_facts(room: SizedRoom, place: Placement, levels: Mapping[str, float]) -> dict[str, Any]:
    choice = room.choice(place.choice)
    return {
        "kind": room.rules.kind,
        "phase": room.phase_of(choice),
        "seats": choice and choice.seats,
        "level_ft": levels.get(place.room),
    }
