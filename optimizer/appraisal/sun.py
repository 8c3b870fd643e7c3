"""Hours of sun that each room gets in its window, and what it misses of its wish."""

from collections.abc import Sequence

from optimizer.catalogue import SizedRoom
from optimizer.fields import cover_casters, room_sun_hours
from optimizer.layout import Layout
from optimizer.scenario import Scenario


def sun_of(scenario: Scenario, rooms: Sequence[SizedRoom], layout: Layout) -> tuple[tuple[str, float, float], ...]:
    """(room, mean hours of direct sun, hours missed) for every placed room with a wish [h]."""
    covers, result = cover_casters(scenario.site, rooms, layout), []
    for room in rooms:
        placed = layout.of(room.name)
        if room.sun is not None and placed is not None:
            high = (placed.right_ft, placed.top_ft)
            hours = room_sun_hours(scenario.site, room.sun, low=(placed.x_ft, placed.y_ft), high=high, extra=covers)
            missed = room.sun.wished_h - room.sun.given_h(hours)
            result.append((room.name, round(hours, 3), round(max(0.0, missed), 3)))
    return tuple(result)
