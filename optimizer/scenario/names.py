"""What the names of a scenario stand for."""

from collections.abc import Iterator
from typing import Final

from optimizer.scenario.document import Path
from optimizer.scenario.schema import ScenarioPart
from optimizer.scenario.site_schema import SitePart

_LISTS: Final = ("entrances", "trees", "structures", "paving", "walls", "keep_outs", "surroundings")


def named_things(scenario: ScenarioPart) -> Iterator[tuple[str, Path]]:
    """Every name that a relation may use, with the path where it is given."""
    yield from _site_names(scenario.site)
    for index, room in enumerate(scenario.brief.rooms):
        yield room.name, ("brief", "rooms", index, "name")


def room_names(scenario: ScenarioPart) -> frozenset[str]:
    """Names of the wished rooms."""
    return frozenset(room.name for room in scenario.brief.rooms)


def walkable_names(scenario: ScenarioPart) -> frozenset[str]:
    """Names between which a trip may go: rooms, doors and entrances."""
    site = scenario.site
    doors = frozenset(door.name for building in site.buildings for door in building.doors)
    return room_names(scenario) | doors | frozenset(entrance.name for entrance in site.entrances)


def point_names(site: SitePart) -> frozenset[str]:
    """Names of what no room can share an edge with: doors, windows, entrances, walls, trees and eyes."""
    doors = (door.name for building in site.buildings for door in building.doors)
    windows = (window.name for building in site.buildings for window in building.windows)
    eyes = (part.name for part in site.surroundings if part.at is not None)
    entrances = (entrance.name for entrance in site.entrances)
    walls = (wall.name for wall in site.walls)
    return frozenset((*doors, *windows, *eyes, *entrances, *walls, *(tree.name for tree in site.trees)))


def _site_names(site: SitePart) -> Iterator[tuple[str, Path]]:
    """Names of what is there, building by building and list by list."""
    for index, building in enumerate(site.buildings):
        path: Path = ("site", "buildings", index)
        yield building.name, (*path, "name")
        for key in ("doors", "windows"):
            for place, opening in enumerate(getattr(building, key)):
                yield opening.name, (*path, key, place, "name")
    for key in _LISTS:
        for index, part in enumerate(getattr(site, key)):
            yield part.name, ("site", key, index, "name")
