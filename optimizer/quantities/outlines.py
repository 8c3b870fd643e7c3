"""Edges and base of the paved ground of a layout: what is free, what meets, how far the base reaches."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import SITE
from optimizer.derived import Derived
from optimizer.fields import site_shapes
from optimizer.fields.existing_paving import standing_paving
from optimizer.layout import PlacedRoom
from optimizer.quantities.figures import BuildUp
from optimizer.quantities.paving import base_extension_ft

_MEETS_FT = 0.05  # edges so near are one


@dataclass(frozen=True, slots=True)
class PavedPiece:
    """A paved room, or all ways (`SITE`): its base [sq ft] with what reaches beyond free edges; its edges that nothing
    holds [ft]; and those that are the terrace's outline [ft].
    """

    room: str
    net_sqft: float
    base_sqft: float
    free_ft: float
    outline_ft: float


def paved_pieces(derived: Derived, up: BuildUp) -> tuple[PavedPiece, ...]:
    """Paved rooms of a layout and then its ways; ground where two bases meet belongs to the first of them."""
    grounds = [(room.name, _paved_ground(room)) for room in _paved(derived)]
    if not derived.paths.is_empty:
        grounds.append((SITE, derived.paths))
    return tuple(_pieces(derived, grounds, _beyond_ft(up)))


def dug_sqft(derived: Derived, up: BuildUp) -> float:
    """Ground that is dug for paving [sq ft], all pieces' bases together; none where a slab carries it."""
    rooms = [_paved_ground(room) for room in _paved(derived) if room.name not in derived.grading.overlaid]
    ground = shapely.union_all([*rooms, derived.paths]).buffer(_beyond_ft(up), join_style="mitre")
    laid = [room.shape for room in _paved(derived) if room.name in derived.grading.overlaid]
    return float(ground.difference(shapely.union_all([_held(derived), _water(derived), *laid])).area)


def _paved(derived: Derived) -> Iterator[PlacedRoom]:
    """Rooms with paving; a shed stands on a base of its own."""
    return (room for room in derived.placed.once if "paving" in room.rules.built_as and room.rules.paved)


def _paved_ground(room: PlacedRoom) -> BaseGeometry:
    return room.shape.difference(room.water) if room.rules.has_deck else room.shape


def _beyond_ft(up: BuildUp) -> float:
    return base_extension_ft(up.base_in) if up.base_in else 0.0


def _held(derived: Derived) -> BaseGeometry:
    """Ground of houses, landings and paving that stays: it holds the edges that meet it."""
    shapes = site_shapes(derived.site)
    standing = standing_paving(derived.site, derived.placed.shapes)
    return shapely.union_all([*shapes.buildings, *(zone for _, zone in shapes.door_zones), standing])


def _water(derived: Derived) -> BaseGeometry:
    return shapely.union_all([room.water for room in derived.placed if room.rules.has_deck])


def _pieces(derived: Derived, grounds: Sequence[tuple[str, BaseGeometry]], beyond_ft: float) -> Iterator[PavedPiece]:
    held, water = _held(derived), _water(derived)
    bases = shapely.union(held, water)
    for number, (name, ground) in enumerate(grounds):
        others = shapely.union_all([shape for place, (_, shape) in enumerate(grounds) if place != number])
        wide = shapely.difference(ground.buffer(beyond_ft, join_style="mitre"), shapely.union(others, bases))
        bases = shapely.union(bases, wide)
        edge = shapely.boundary(shapely.union(ground, water) if water.intersects(ground) else ground)
        met = others.buffer(_MEETS_FT)
        yield PavedPiece(
            room=name,
            net_sqft=float(ground.area),
            base_sqft=float(wide.area),
            free_ft=float(edge.difference(shapely.union(met, held.buffer(_MEETS_FT))).length),
            outline_ft=float(edge.difference(met).length),
        )
