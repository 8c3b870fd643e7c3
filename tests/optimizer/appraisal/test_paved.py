"""Paved ground."""

import pytest
from shapely import box

from optimizer.appraisal import paved_share
from optimizer.brief import RoomWish
from optimizer.catalogue import sized_room
from optimizer.layout import Layout, Placement, placed_of
from optimizer.site import Site

OPEN_SQFT = 2400 - 400


def room(x: float, y: float, width: float, depth: float, name: str = "table") -> Placement:
    """A placed room."""
    return Placement(name, "c", x, y, width, depth, "+y")


def test_paved_is_paved_rooms_and_paths_once(site: Site) -> None:
    """A terrace and a path that runs 2 x 5 ft into it count once; a lawn does not count."""
    rooms = (sized_room(RoomWish("table", "gathering", seats=6)), sized_room(RoomWish("green", "lawn")))
    layout = Layout((room(5, 20, 14, 12), room(25, 20, 15, 12, "green")))
    path = box(17, 20, 29, 25)
    assert paved_share(site, placed_of(rooms, layout), path) == pytest.approx((14 * 12 + 12 * 5 - 2 * 5) / OPEN_SQFT)
