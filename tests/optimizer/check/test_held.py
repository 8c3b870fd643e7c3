"""Each thing that can be held, against a layout of which every figure is known."""

import pytest

from optimizer.brief import Hold
from optimizer.catalogue import sized_rooms
from optimizer.check import CHECKS, CheckCase
from optimizer.derived import Derived
from optimizer.layout import placed_of
from tests.yards import holding, plain_layout, plain_rooms, plain_yard

NOOK = (28, 31, 36, 38)
"""The nook of the plain layout: left, low, right, top. It opens to +y."""


def area(left, low, right, top):
    """Outline of a rectangle."""
    return ((left, low), (right, low), (right, top), (left, top))


def findings(hold, **layout):
    """Amounts and units that the rule finds."""
    placed = placed_of(plain_rooms(), plain_layout(**layout))
    found = CHECKS["held"](CheckCase(Derived(holding(plain_yard(), hold), placed)))
    return [(finding.rooms, pytest.approx(finding.amount, abs=1e-6), finding.unit) for finding in found]


@pytest.mark.parametrize(
    "hold",
    [
        Hold("nook", at_ft=(28, 31)),
        Hold("nook", at_ft=(28.015, 31)),
        Hold("nook", within=area(*NOOK)),
        Hold("nook", not_in=area(36, 31, 40, 38)),
        Hold("nook", front="+y"),
        Hold("nook", choice="plain"),
        Hold("nook", within=area(20, 30, 40, 40), not_in=area(0, 0, 28, 40), front="+y"),
    ],
)
def test_what_is_kept(hold):
    """A hold that the layout keeps, some of them just so, is nothing to speak of."""
    assert findings(hold) == []


@pytest.mark.parametrize(
    ("hold", "amount", "unit"),
    [
        (Hold("nook", at_ft=(31, 35)), 5, "ft"),  # 3, 4, 5
        (Hold("nook", at_ft=(28, 31.03)), 0.03, "ft"),
        (Hold("nook", within=area(28, 31, 35, 38)), 7, "sq ft"),
        (Hold("nook", within=area(0, 0, 20, 20)), 56, "sq ft"),
        (Hold("nook", not_in=area(35, 36, 60, 60)), 2, "sq ft"),
        (Hold("nook", front="-y"), 1, "side"),
        (Hold("nook", choice="two chairs"), 1, "choice"),
    ],
)
def test_what_is_not_kept(hold, amount, unit):
    """By how much a hold is not kept: feet from the place, square feet out of an area or in it."""
    assert findings(hold) == [(("nook",), amount, unit)]


def test_a_room_that_is_left_out():
    """No hold speaks of a room that is not there; a place or a choice makes it required, an area or a front does not."""
    assert findings(Hold("nook", at_ft=(0, 0)), without=("nook",)) == []
    for hold, required in (
        (Hold("nook", at_ft=(28, 31)), True),
        (Hold("nook", choice="one size"), True),
        (Hold("nook", within=area(*NOOK), front="+y"), False),
    ):
        rooms = {room.name: room for room in sized_rooms(holding(plain_yard(), hold).brief)}
        assert (rooms["nook"].required, rooms["fire"].required) == (required, False)
