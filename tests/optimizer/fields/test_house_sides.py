"""Beside the house: past one of its ends, seen from a door, and neither before nor behind it."""

import numpy as np
import pytest

from optimizer.fields import beside_house
from optimizer.site import Building, Door
from tests.yards import PLAIN_SITE, on_site, plain_yard

# An L: its long wing stands out to y 30 on the left.
L_SHAPED = ((10, 0), (50, 0), (50, 12), (22, 12), (22, 30), (10, 30))
UP, RIGHT = (0, 1), (1, 0)


def beside(at, *, out=UP, door=(40, 12)):
    """Whether a point lies beside the L, seen from a door."""
    house = Building("house", L_SHAPED, doors=(Door("door", door, 3, out),))
    site = on_site(plain_yard(), buildings=(*PLAIN_SITE.buildings[1:], house)).site
    return bool(beside_house(site, house.doors[0], np.array(at[0]), np.array(at[1])))


@pytest.mark.parametrize(
    ("at", "is_beside"),
    [
        ((50.1, 5.0), True),
        ((50.0, 5.0), False),
        ((9.9, 5.0), True),
        # As far out as the farther wing, no farther; in the notch of the L it is before the door.
        ((50.1, 30.0), True),
        ((50.1, 30.1), False),
        ((30.0, 20.0), False),
        ((50.1, 0.0), True),
        ((50.1, -0.1), False),
    ],
)
def test_past_an_end_between_front_and_back(at, is_beside):
    assert beside(at) == is_beside


def test_the_door_decides_what_is_the_front():
    """Seen from a door in the right end, what lies past that end is before the house."""
    assert not beside((55, 5), out=RIGHT, door=(50, 6))
    assert beside((30, 40), out=RIGHT, door=(50, 6))


def test_many_points_at_once():
    """One answer a point, in the same shape."""
    house = PLAIN_SITE.buildings[0]
    found = beside_house(PLAIN_SITE, house.doors[0], np.array([[5.0, 30.0], [55.0, 30.0]]), np.full((2, 2), 6.0))
    assert found.tolist() == [[True, False], [True, False]]
