"""Buildable ground by room."""

from dataclasses import replace

from optimizer.engine.problem import buildable_sqft
from tests.yards import plain_rooms, plain_yard, sized


def test_less_setback_is_never_less_ground():
    """Without setbacks a room may stand on at least as much ground; a room larger than the yard on none."""
    yard = plain_yard()
    free = replace(yard, site=replace(yard.site, setbacks=tuple(type(s)() for s in yard.site.setbacks)))
    rooms = plain_rooms(sized("nook", "nook", 80, 60))
    bound, wider = dict(buildable_sqft(yard, rooms)), dict(buildable_sqft(free, rooms))
    assert all(wider[name] >= area for name, area in bound.items())
    assert wider["table"] > bound["table"] > 0
    assert bound["nook"] == 0
