"""Which distances of later water are worth a line on the plan."""

from shapely import box

from optimizer.derived.futures.asked import Asked
from optimizer.derived.futures.distances import distances_of

WATER = box(0, 0, 10, 10)
"""Water of 10 by 10 ft; what stands to its right is as far off as its left side less 10."""


def wall(rule, name, off_ft, feet):
    """Something to the right of the water, so far off, that is asked to be farther or nearer."""
    return Asked(rule, name, box(10 + off_ft, 0, 20 + off_ft, 10), feet)


def test_every_thing_that_is_too_near_is_shown_once_and_of_what_is_kept_the_nearest_of_each_rule():
    """Two things miss one rule, one of them another too; two keep a third, and what is asked nothing of is not told."""
    asked = [
        wall("setback", "west", 3, 5),
        wall("setback", "rear", 4, 5),
        wall("roots", "west", 3, 4),
        wall("windows", "pane", 8, 6),
        wall("windows", "door", 9, 6),
        wall("lines", "gas", 1, 0),
    ]
    found = [(one.rule, one.name, one.found_ft, one.is_kept) for one in distances_of(asked, WATER)]
    assert found == [("setback", "west", 3, False), ("setback", "rear", 4, False), ("windows", "pane", 8, True)]
