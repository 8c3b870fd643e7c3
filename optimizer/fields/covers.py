"""New roofs of a layout, as things that throw shadows."""

from collections.abc import Sequence

from optimizer.catalogue import SizedRoom
from optimizer.fields.ground import ground_of
from optimizer.fields.sun import Caster, cover_caster
from optimizer.layout import Layout
from optimizer.site import Site


def cover_casters(site: Site, rooms: Sequence[SizedRoom], layout: Layout) -> tuple[Caster, ...]:
    """Roofs over all rooms whose choice has one, each at its height above the ground at the room's middle."""
    by_name = {room.name: room for room in rooms}
    result = []
    for place in layout.placements:
        room = by_name.get(place.room)
        choice = room.choice(place.choice) if room else None
        if choice and choice.cover:
            left, low, right, top = place.x_ft, place.y_ft, place.right_ft, place.top_ft
            z_ft = float(ground_of(site).z_ft([place.centre])[0]) + choice.cover.height_ft
            result.append(
                cover_caster(((left, low), (right, low), (right, top), (left, top)), z_ft, choice.cover.share)
            )
    return tuple(result)
