"""A room where it stands: the room of the brief, its choice and its place as one, joined once for a layout."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import get_args

from shapely import Point as Spot
from shapely import Polygon, box, hausdorff_distance, union_all

from optimizer.brief import RoomKind
from optimizer.catalogue import IN_WATER, Item, KindRules, LocalSide, SizedChoice, SizedRoom, grown
from optimizer.catalogue.chair_space import kept_from_paths
from optimizer.layout.furniture import items_on_plan
from optimizer.layout.placement import Front, Layout, Placement
from optimizer.layout.shapes import SIDES, around, footprint, middle, side_ends, side_on_plan
from optimizer.site import BuiltClass, Point


@dataclass(frozen=True)
class PlacedRoom:
    """A room with its choice where it stands, grown as the room has; None where the catalogue does not know it."""

    room: SizedRoom
    choice: SizedChoice | None
    placement: Placement

    @property
    def name(self) -> str:
        """Name of the room."""
        return self.room.name

    @property
    def rules(self) -> KindRules:
        """What holds for every room of its kind."""
        return self.room.rules

    @property
    def kind(self) -> RoomKind:
        """Kind of the room."""
        return self.room.rules.kind

    @property
    def front(self) -> Front:
        """Side of the plan that it opens or serves to."""
        return self.placement.front

    @property
    def is_later(self) -> bool:
        """Whether nothing of it, or only its pad, is built in phase 1; rules of places treat it as what comes later."""
        return self.choice is not None and self.choice.is_later

    @property
    def waits(self) -> bool:
        """Whether all of it waits for a later phase, because its own is open."""
        return self.choice is not None and self.choice.phase is not None

    @property
    def phase(self) -> int:
        """Phase in which it is built; of what only has its pad in phase 1 that of the pad."""
        return self.room.phase_of(self.choice)

    @property
    def phases(self) -> frozenset[int]:
        """Phases in which something of it is built."""
        own = self.choice.quantities if self.choice else ()
        return frozenset({self.phase, *(quantity.phase for quantity in own if quantity.phase)})

    @property
    def heart(self) -> Point:
        """What a line of sight aims at [ft]: the middle of a pool's water, else what was the room's before it grew."""
        if self.rules.has_deck:
            middle = self.water.centroid
            return (middle.x, middle.y)
        return self.placement.base.centre

    @property
    def centre(self) -> Point:
        """Centre [ft]."""
        return self.placement.centre

    @property
    def anchor(self) -> Point:
        """Where ways to it begin or end: the middle of its front, or of the room where it has none [ft]."""
        return middle(side_ends(self.placement, self.front)) if self.rules.has_front else self.centre

    @cached_property
    def shape(self) -> Polygon:
        """Ground that it takes [ft]."""
        return footprint(self.placement)

    @cached_property
    def furniture(self) -> tuple[tuple[Item, Polygon], ...]:
        """Each piece of furniture with its ground on the plan [ft]; none without a known choice."""
        items = self.choice.furniture if self.choice else ()
        return tuple(zip(items, self.on_plan(items), strict=True))

    @cached_property
    def kept_from_paths(self) -> tuple[Polygon, ...]:
        """Ground that no way crosses [ft]: furniture and the chairs' space; all that lies between them where ways only
        pass, and the whole room where nobody knows what stands in it.
        """
        if self.rules.passed:
            return (self._all_that_stands if self.furniture else self.shape,)
        return self.on_plan(kept_from_paths(self.choice)) if self.choice else ()

    @property
    def _all_that_stands(self) -> Polygon:
        """Round all furniture: a rectangle, in a circle eight sides, since ways run in steps of 45 degrees. Coping of
        a pool is walked on.
        """
        standing = union_all([ground for item, ground in self.furniture if item.role != "coping"])
        if not self.placement.is_circle:
            return standing.envelope
        reach_ft = hausdorff_distance(standing, Spot(self.centre))
        return around(self.centre, float(reach_ft), 8)

    def ground_of(self, built: BuiltClass) -> Polygon:
        """Ground that is built as this [ft]: the water alone where it is drawn within its deck, else the whole room."""
        return self.water if built == "water" else self.shape

    @cached_property
    def water(self) -> Polygon:
        """Ground of the water that is drawn [ft]; the whole room where none is."""
        parts = [ground for item, ground in self.furniture if item.role in IN_WATER]
        return box(*union_all(parts).bounds) if parts else self.shape

    def items(self, role: str) -> tuple[Polygon, ...]:
        """Ground of the furniture of one role [ft]."""
        return tuple(ground for item, ground in self.furniture if item.role == role)

    def on_plan(self, items: Sequence[Item]) -> tuple[Polygon, ...]:
        """Ground of items in the axes of the room's choice [ft]; none without a known choice."""
        return items_on_plan(self.placement, self.choice, items) if self.choice else ()

    def sides_in_use(self, use: str) -> tuple[Front, ...]:
        """Sides of the plan that have a use, such as `open`; where the choice says nothing a side is open."""
        uses = dict(self.choice.sides) if self.choice else {}
        return tuple(side_on_plan(side, self.front) for side in get_args(LocalSide) if uses.get(side, "open") == use)

    @property
    def carries_ways(self) -> bool:
        """Whether ways lead over its paving, round what is kept from them."""
        return self.rules.paved and (self.rules.walkable or self.rules.passed)

    @property
    def open_sides(self) -> tuple[Front, ...]:
        """Sides of the plan over which one steps in."""
        if self.rules.has_front:
            return (self.front,)
        return SIDES if self.choice is None else self.sides_in_use("open")


@dataclass(frozen=True)
class Placed:
    """A layout with what the catalogue knows of its rooms: `rooms` in the layout's order, `wished` as in the brief.

    A placed room that nobody wished is in `layout` alone.
    """

    wished: tuple[SizedRoom, ...]
    layout: Layout
    rooms: tuple[PlacedRoom, ...]

    def __iter__(self) -> Iterator[PlacedRoom]:
        return iter(self.rooms)

    def __len__(self) -> int:
        return len(self.rooms)

    def of(self, name: str) -> PlacedRoom | None:
        """Room of that name, or None if it is left out."""
        return self._by_name.get(name)

    def of_kind(self, *kinds: RoomKind) -> tuple[PlacedRoom, ...]:
        """Rooms of these kinds."""
        return tuple(room for room in self.rooms if room.kind in kinds)

    def without(self, *names: str) -> "Placed":
        """The same with rooms left out."""
        layout = Layout(tuple(placement for placement in self.layout.placements if placement.room not in names))
        return Placed(self.wished, layout, tuple(room for room in self.rooms if room.name not in names))

    @cached_property
    def once(self) -> "Placed":
        """The same with each room only where it stands last."""
        last = {placement.room: placement for placement in self.layout.placements}
        if len(last) == len(self.layout.placements):
            return self
        return placed_of(self.wished, Layout(tuple(last.values())))

    @cached_property
    def left_out(self) -> frozenset[str]:
        """Names of the wished rooms that the layout does without in phase 1, those that come later among them."""
        return frozenset(r.name for r in self.wished if (there := self.of(r.name)) is None or there.is_later)

    @cached_property
    def unwalked(self) -> frozenset[str]:
        """Names of the wished rooms to which no way leads, not later either: those without a place, and pads."""
        pads = {room.name for room, choice in self.chosen if choice.is_pad}
        return self.absent | pads

    @cached_property
    def absent(self) -> frozenset[str]:
        """Names of the wished rooms that have no place."""
        return frozenset(room.name for room in self.wished if room.name not in self._by_name)

    @cached_property
    def paved(self) -> tuple[PlacedRoom, ...]:
        """Paved rooms."""
        return tuple(room for room in self.rooms if room.rules.paved)

    @cached_property
    def chosen(self) -> tuple[tuple[PlacedRoom, SizedChoice], ...]:
        """Rooms whose choice is known, with it."""
        return tuple((room, room.choice) for room in self.rooms if room.choice)

    @cached_property
    def shapes(self) -> tuple[Polygon, ...]:
        """Ground of everything that is placed, wished or not [ft]."""
        return tuple(footprint(placement) for placement in self.layout.placements)

    @cached_property
    def _by_name(self) -> dict[str, PlacedRoom]:
        return {room.name: room for room in reversed(self.rooms)}


def placed_of(rooms: Sequence[SizedRoom], layout: Layout) -> Placed:
    """Join a layout with the sized rooms of its brief."""
    by_name = {room.name: room for room in rooms}
    found = ((by_name[p.room], p) for p in layout.placements if p.room in by_name)
    return Placed(tuple(rooms), layout, tuple(PlacedRoom(room, _choice_of(room, p), p) for room, p in found))


def _choice_of(room: SizedRoom, placement: Placement) -> SizedChoice | None:
    """A room's choice as it is built: where the room has grown, with its ground and its furniture where it was."""
    choice = room.choice(placement.choice)
    if choice is None or not placement.has_grown:
        return choice
    out_ft = placement.moved_out_ft
    return grown(choice, {side: out_ft[side_on_plan(side, placement.front)] for side in get_args(LocalSide)})
