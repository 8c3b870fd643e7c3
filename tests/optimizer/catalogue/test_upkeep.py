"""Time to build and yearly upkeep: every kind has both, ranges are ranges, and rooms add up."""

from typing import get_args

import pytest

from optimizer.brief import RoomKind
from optimizer.catalogue.data_files import data
from optimizer.catalogue.upkeep import SIDE_BY_SIDE, upkeep_of


@pytest.mark.parametrize("kind", [*get_args(RoomKind), "site"])
def test_every_kind_has_ranges(kind):
    record = data("upkeep.yaml")[kind]
    for key in ("weeks", "hours"):
        low, high = record[key]
        assert 0 <= low <= high


def test_rooms_add_up_and_work_overlaps_at_the_best():
    """Two nooks and the site itself: 1 + 2 x 0.5 weeks at the least, shortened; 3 + 2 x 1 at the most. Hours double."""
    one, two = upkeep_of(["nook"]), upkeep_of(["nook", "nook"])
    assert two.weeks == pytest.approx((SIDE_BY_SIDE * (1 + 2 * 0.5), 3 + 2 * 1))
    assert two.hours == tuple(2 * hours for hours in one.hours)
    assert two.tasks == one.tasks


def test_a_pool_asks_for_more_than_all_else_and_is_serviced():
    """Common practice, no source: of all kinds the pool takes longest and asks for most hours."""
    pool = upkeep_of(["pool"])
    others = [upkeep_of([kind]) for kind in get_args(RoomKind) if kind != "pool"]
    assert all(pool.weeks[0] > other.weeks[0] and pool.hours[0] > other.hours[0] for other in others)
    assert any("barrier" in service for service in pool.service)
    assert upkeep_of(["nook"]).service == ()
