"""Ground that rooms take of the yard."""

from optimizer.appraisal.grounds import ground_of
from optimizer.fields import open_yard
from optimizer.layout import Placement
from optimizer.site import Site


def test_open_yard_is_boundary_less_buildings(site: Site) -> None:
    """2,400 sq ft with a house of 400 leave 2,000; a roof on posts takes nothing."""
    assert open_yard(site).area == 2000


def test_rooms_take_their_ground_once() -> None:
    """Two rooms with 6 sq ft in common take 12 + 12 - 6."""
    rooms = (Placement("a", "c", 0, 0, 4, 3, "+y"), Placement("b", "c", 2, 0, 4, 3, "+y"))
    assert ground_of(rooms).area == 18
