"""Hours of sun that each room gets in its window, and what it misses of its wish."""

from optimizer.fields import cover_casters, room_sun_hours
from optimizer.layout import Placed
from optimizer.scenario import Scenario


def sun_of(scenario: Scenario, placed: Placed) -> tuple[tuple[str, float, float], ...]:
    """(room, mean hours of direct sun, hours missed) for every placed room with a wish [h]."""
    covers, result = cover_casters(scenario.site, placed), []
    for room in placed:
        sun = room.room.sun
        if sun is not None:
            left, low, right, top = room.shape.bounds
            hours = room_sun_hours(scenario.site, sun, low=(left, low), high=(right, top), extra=covers)
            missed = sun.wished_h - sun.given_h(hours)
            result.append((room.name, round(hours, 3), round(max(0.0, missed), 3)))
    return tuple(result)
