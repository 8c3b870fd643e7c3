"""New roofs of a layout: as things that throw shadows, and as structures of the site once it is built."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from optimizer.catalogue import Cover, SizedRoom
from optimizer.fields.ground import ground_at_ft
from optimizer.fields.sun import Caster, cover_caster
from optimizer.layout import Layout, Placement
from optimizer.site import Ring, Site, Structure


def cover_casters(site: Site, rooms: Sequence[SizedRoom], layout: Layout) -> tuple[Caster, ...]:
    """Roofs over all rooms whose choice has one, each at its height above the ground at the room's middle."""
    return tuple(
        cover_caster(_ring(place), ground_at_ft(site, place.centre) + cover.height_ft, cover.share)
        for place, cover in _covered(rooms, layout)
    )


def with_covers(site: Site, rooms: Sequence[SizedRoom], layout: Layout) -> Site:
    """The site with the layout's new roofs among its structures, for pictures."""
    new = (
        Structure(f"roof over {place.room}", _ring(place), cover.height_ft, cover.share)
        for place, cover in _covered(rooms, layout)
    )
    return replace(site, structures=(*site.structures, *new))


def _covered(rooms: Sequence[SizedRoom], layout: Layout) -> Iterator[tuple[Placement, Cover]]:
    by_name = {room.name: room for room in rooms}
    for place in layout.placements:
        room = by_name.get(place.room)
        choice = room.choice(place.choice) if room else None
        if choice and choice.cover:
            yield place, choice.cover


def _ring(place: Placement) -> Ring:
    left, low, right, top = place.x_ft, place.y_ft, place.right_ft, place.top_ft
    return ((left, low), (right, low), (right, top), (left, top))
