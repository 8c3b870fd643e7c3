"""What a concept must be careful about where food is cooked over heat."""

from collections.abc import Iterator, Sequence
from typing import Final

from shapely import Point, Polygon

from optimizer.brief import Equipment
from optimizer.catalogue import is_hot
from optimizer.layout import Placed, PlacedRoom, outline
from optimizer.scenario import Scenario

COOKING_CLEAR_FT: Final = 10.0
"""Open-flame cooking from construction that burns; IFC 308.1.4, which exempts one- and two-family houses."""


def cook_cautions(scenario: Scenario, placed: Placed) -> Iterator[str]:
    """Cautions about the hot pieces of every placed kitchen."""
    for kitchen in placed.of_kind("kitchen"):
        hot = tuple(ground for item, ground in kitchen.furniture if is_hot(Equipment(item.role)))
        if hot:
            yield from _under_a_roof(scenario, kitchen, hot)
            yield from _near_what_burns(scenario, kitchen, hot)


def _under_a_roof(scenario: Scenario, kitchen: PlacedRoom, hot: Sequence[Polygon]) -> Iterator[str]:
    roofs = [outline(structure.outline) for structure in scenario.site.structures]
    if (kitchen.choice and kitchen.choice.cover) or any(piece.intersects(roof) for piece in hot for roof in roofs):
        yield f"Heat under a roof, {kitchen.name}: the maker's listing decides on a hood and on what may burn above it."


def _near_what_burns(scenario: Scenario, kitchen: PlacedRoom, hot: Sequence[Polygon]) -> Iterator[str]:
    """Buildings that the heat is nearer to than is usual, with the nearest door or window as near."""
    site = scenario.site
    nearest = min(((_least_ft(hot, outline(b.outline)), b.name) for b in site.buildings), default=None)
    if nearest is None or nearest[0] >= COOKING_CLEAR_FT:
        return
    ends = [*((door.at, door.name) for door in site.doors), *((window.at, window.name) for window in site.windows)]
    openings = ((_least_ft(hot, Point(at)), name) for at, name in ends)
    near = min((entry for entry in openings if entry[0] < COOKING_CLEAR_FT), default=None)
    told = " and ".join(f"{_length(scenario, ft)} from {name}" for ft, name in filter(None, (nearest, near)))
    usual = f"{_length(scenario, COOKING_CLEAR_FT)} from what burns is usual but at one- and two-family houses"
    yield f"Heat near a building, {kitchen.name}: {told}; {usual} (IFC 308.1.4); confirm with the local code."


def _least_ft(hot: Sequence[Polygon], shape: Point | Polygon) -> float:
    return min(float(piece.distance(shape)) for piece in hot)


def _length(scenario: Scenario, length_ft: float) -> str:
    return f"{length_ft / scenario.unit_ft:.1f} {scenario.units}"
