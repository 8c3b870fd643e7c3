"""Shapes of a site: right, made once, and forgotten in time."""

from dataclasses import replace

from optimizer.fields import SITES, open_yard, site_shapes
from optimizer.site import KeepOut
from tests.yards import PLAIN_SITE

MEADOW = KeepOut("meadow", ((0, 0), (10, 0), (10, 10), (0, 10)), allow=("bed",))
WELL = KeepOut("well", ((8, 0), (12, 0), (12, 10), (8, 10)))
SITE = replace(PLAIN_SITE, keep_outs=(MEADOW, WELL))


def test_what_forbids_a_use():
    """Kept-out ground that does not allow it, overlaps counted once."""
    shapes = site_shapes(SITE)
    assert shapes.forbidding("bed").area == 4 * 10
    assert shapes.forbidding("lawn").area == 12 * 10


def test_edges_and_landings():
    """An edge for each corner, the last back to the first; a landing for each door."""
    shapes = site_shapes(PLAIN_SITE)
    assert [edge.length for edge in shapes.edges] == [60, 40, 60, 40]
    assert [(door.name, zone.bounds[1]) for door, zone in shapes.door_zones] == [("kitchen door", 12)]
    assert open_yard(PLAIN_SITE).area == 60 * 40 - 40 * 12


def test_made_once_and_not_kept_for_ever():
    """An equal site has the same shapes; after as many others as are kept they are made anew."""
    first = site_shapes(SITE)
    assert site_shapes(replace(SITE)) is first
    for number in range(SITES):
        site_shapes(replace(SITE, edge_names=(str(number), "east", "rear", "west")))
    assert site_shapes(SITE) is not first
