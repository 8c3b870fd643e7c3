"""An open yard on a plane, for tests of grading: no house unless one is added."""

from dataclasses import replace

from optimizer.grading import grade
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, Door, Site, SpotLevel
from tests.yards import PLAIN_SITE, plain_rooms, sized

CORNERS = ((-50, -50), (150, -50), (150, 150), (-50, 150))
OPEN_SITE = replace(
    PLAIN_SITE, boundary=((-40, -40), (140, -40), (140, 140), (-40, 140)), buildings=(), structures=(), keep_outs=()
)
ROOMS = plain_rooms(sized("grass", "lawn", 20, 20), sized("seat", "nook", 4, 12))


def on_plane(z_ft: float = 0.0, *, east: float = 0.0, north: float = 0.0, house_floor: float | None = None) -> Site:
    """Open ground that is `z_ft` high at the origin and rises so much per foot; perhaps a house with a door at (20, 0).

    The house lies south of y = 0, from x = 10 to 50.
    """
    levels = tuple(SpotLevel((x, y), z_ft + east * x + north * y) for x, y in CORNERS)
    door = Door("back door", (20, 0), 3, (0, 1))
    house = Building("house", ((10, -20), (50, -20), (50, 0), (10, 0)), floor_z_ft=house_floor, doors=(door,))
    return replace(OPEN_SITE, levels=levels, buildings=() if house_floor is None else (house,))


def graded(site: Site, *placements, ways=()):
    """Grading of these placements."""
    return grade(site, placed_of(ROOMS, Layout(placements)), ways)
