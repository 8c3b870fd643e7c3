"""New roofs of a layout as casters and as structures."""

from dataclasses import replace

import pytest

from optimizer.catalogue import Cover
from optimizer.fields import cover_casters, with_covers
from optimizer.layout import Layout, placed_of
from optimizer.site import SpotLevel
from tests.yards import PLAIN_SITE, plain_rooms, sized, stand

TABLE = sized("table", "gathering", 14, 12)
COVERED = replace(TABLE, choices=(replace(TABLE.choices[0], cover=Cover(9.0, 0.7)),))
LAYOUT = Layout((stand("table", 24, 16, 14, 12), stand("fire", 10, 22, 8, 8)))


def test_a_roof_stands_over_its_room_on_the_real_ground():
    """Nine feet over ground that lies at 2 ft under the middle of the room."""
    site = replace(PLAIN_SITE, levels=(SpotLevel((0, 22), 2.0), SpotLevel((60, 22), 2.0), SpotLevel((30, 40), -1.0)))
    (caster,) = cover_casters(site, placed_of(plain_rooms(COVERED), LAYOUT))
    assert caster.outline.bounds == (24, 16, 38, 28)
    assert caster.low_ft == caster.high_ft == pytest.approx(11.0)
    assert caster.share == 0.7


def test_the_site_once_the_roof_is_built():
    (old, new) = with_covers(PLAIN_SITE, placed_of(plain_rooms(COVERED), LAYOUT)).structures
    assert old == PLAIN_SITE.structures[0]
    assert (new.name, new.height_ft, new.shade) == ("roof over table", 9.0, 0.7)


def test_without_a_roof_nothing_is_added():
    assert cover_casters(PLAIN_SITE, placed_of(plain_rooms(), LAYOUT)) == ()
    assert with_covers(PLAIN_SITE, placed_of(plain_rooms(), LAYOUT)) == PLAIN_SITE
