"""What a concept must be careful about where food is cooked over heat."""

from collections.abc import Iterator, Sequence
from typing import Final

from shapely import Point, Polygon

from optimizer.brief import Equipment
from optimizer.catalogue import SizedRoom, is_hot
from optimizer.circulation import outline
from optimizer.circulation.furniture import item_on_plan
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario

COOKING_CLEAR_FT: Final = 10.0
"""Open-flame cooking from construction that burns; IFC 308.1.4, which exempts one- and two-family houses."""
Placed = tuple[SizedRoom, Placement]


def cook_cautions(scenario: Scenario, rooms: Sequence[SizedRoom], layout: Layout) -> Iterator[str]:
    """Cautions about the hot pieces of every placed kitchen."""
    placed = [(room, place) for room in rooms if (place := layout.of(room.name))]
    for kitchen in (entry for entry in placed if entry[0].rules.kind == "kitchen"):
        hot = tuple(_hot(*kitchen))
        if hot:
            yield from _under_a_roof(scenario, kitchen, hot)
            yield from _near_what_burns(scenario, kitchen, hot)


def _hot(room: SizedRoom, place: Placement) -> Iterator[Polygon]:
    choice = room.choice(place.choice)
    if choice is not None:
        hot = (item for item in choice.furniture if is_hot(Equipment(item.role)))
        yield from (item_on_plan(place, choice, item) for item in hot)


def _under_a_roof(scenario: Scenario, kitchen: Placed, hot: Sequence[Polygon]) -> Iterator[str]:
    room, place = kitchen
    choice = room.choice(place.choice)
    roofs = [outline(structure.outline) for structure in scenario.site.structures]
    if (choice and choice.cover) or any(piece.intersects(roof) for piece in hot for roof in roofs):
        yield f"Heat under a roof, {room.name}: the maker's listing decides on a hood and on what may burn above it."


def _near_what_burns(scenario: Scenario, kitchen: Placed, hot: Sequence[Polygon]) -> Iterator[str]:
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
    yield f"Heat near a building, {kitchen[0].name}: {told}; {usual} (IFC 308.1.4); confirm with the local code."


def _least_ft(hot: Sequence[Polygon], shape: Point | Polygon) -> float:
    return min(float(piece.distance(shape)) for piece in hot)


def _length(scenario: Scenario, length_ft: float) -> str:
    return f"{length_ft / scenario.unit_ft:.1f} {scenario.units}"
