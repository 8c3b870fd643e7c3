"""New roofs of a layout: as things that throw shadows, and as structures of the site once it is built."""

from collections.abc import Iterator
from dataclasses import replace

from optimizer.catalogue import Cover
from optimizer.fields.ground import ground_at_ft
from optimizer.fields.sun import Caster, cover_caster
from optimizer.layout import Placed, Placement
from optimizer.site import Ring, Site, Structure


def cover_casters(site: Site, placed: Placed) -> tuple[Caster, ...]:
    """Roofs over all rooms whose choice has one, each at its height above the ground at the room's middle."""
    return tuple(
        cover_caster(_ring(place), ground_at_ft(site, place.centre) + cover.height_ft, cover.share)
        for place, cover in _covered(placed)
    )


def with_covers(site: Site, placed: Placed) -> Site:
    """The site with the layout's new roofs among its structures, for pictures."""
    new = (
        Structure(f"roof over {place.room}", _ring(place), cover.height_ft, cover.share)
        for place, cover in _covered(placed)
    )
    return replace(site, structures=(*site.structures, *new))


def _covered(placed: Placed) -> Iterator[tuple[Placement, Cover]]:
    yield from ((room.placement, choice.cover) for room, choice in placed.chosen if choice.cover)


def _ring(place: Placement) -> Ring:
    left, low, right, top = place.x_ft, place.y_ft, place.right_ft, place.top_ft
    return ((left, low), (right, low), (right, top), (left, top))
