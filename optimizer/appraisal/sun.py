"""Hours of sun that each room gets in its window, and what it misses of its wish."""

from optimizer.derived import Derived


def sun_of(derived: Derived) -> tuple[tuple[str, float, float], ...]:
    """(room, mean hours of direct sun, hours missed) for every placed room with a wish [h]."""
    result = []
    for room in derived.placed:
        sun, hours = room.room.sun, derived.sun_h(room)
        if sun is not None and hours is not None:
            missed = sun.wished_h - sun.given_h(hours)
            result.append((room.name, round(hours, 3), round(max(0.0, missed), 3)))
    return tuple(result)
