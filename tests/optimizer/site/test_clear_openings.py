"""The clear width of an entrance and its middle, by hand."""

from dataclasses import replace

import pytest

from optimizer.site import Site, Wall, WallOpening, clear_middle, clear_width_ft, walls_at
from tests.optimizer.quantities.conftest import SITE

DRIVE = replace(SITE.entrances[0], name="drive", at=(50.0, 0.0), width_ft=12.0, inward=(0.0, 1.0))


def behind(*openings: WallOpening, y_ft: float = 0.0) -> Site:
    """The site with a fence along y = `y_ft`, these openings in it."""
    line = ((0.0, y_ft), (100.0, y_ft))
    return replace(SITE, walls=(Wall("fence", line, "fence", openings=openings),))


@pytest.mark.parametrize(
    ("openings", "width_ft", "middle"),
    [
        ((), 12.0, (50.0, 0.0)),
        ((WallOpening((50.0, 0.0), 5.0),), 5.0, (50.0, 0.0)),
        ((WallOpening((52.0, 0.0), 5.0),), 5.0, (52.0, 0.0)),
        # A wider opening leaves the drive as it is, and one that the drive does not lead through is another's.
        ((WallOpening((50.0, 0.0), 20.0),), 12.0, (50.0, 0.0)),
        ((WallOpening((60.0, 0.0), 5.0),), 12.0, (50.0, 0.0)),
        ((WallOpening((51.0, 0.0), 8.0), WallOpening((49.0, 0.0), 4.0)), 4.0, (49.0, 0.0)),
    ],
)
def test_the_narrowest_counts(openings, width_ft, middle):
    """A 12 ft drive along a fence."""
    site = behind(*openings)
    assert clear_width_ft(site, DRIVE) == width_ft
    assert clear_middle(site, DRIVE) == pytest.approx(middle)


def test_a_fence_farther_in_is_another_fence():
    """Half a foot from the entrance it is the one that the drive leads through, at one foot no longer."""
    opening = WallOpening((50.0, 0.0), 5.0)
    assert [clear_width_ft(behind(opening, y_ft=y), DRIVE) for y in (0.0, 0.5, 1.0)] == [5.0, 5.0, 12.0]


def test_a_wall_without_an_opening_there_is_told_by_itself():
    """The fence that the drive lies on, with what it leads through; none where the fence stands farther in."""
    near, far = WallOpening((50.0, 0.0), 5.0), WallOpening((80.0, 0.0), 5.0)
    assert [openings for _, openings in walls_at(behind(near, far), DRIVE)] == [[near]]
    assert [openings for _, openings in walls_at(behind(far), DRIVE)] == [[]]
    assert walls_at(behind(near, y_ft=1.0), DRIVE) == []
