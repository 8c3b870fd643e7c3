"""Which rooms, in which sizes, at which cost."""

from decimal import Decimal

import pytest

from optimizer.check import check_layout
from optimizer.layout import Layout, placed_of
from tests.yards import KEPT, plain_layout, plain_rooms, plain_yard, sized, stand


def rules(layout: Layout, rooms=None, **facts) -> set[str]:
    return {finding.rule for finding in check_layout(plain_yard(**facts), placed_of(rooms or plain_rooms(), layout))}


@pytest.mark.parametrize(
    ("width_ft", "depth_ft", "known"),
    [(8, 7, True), (7, 8, True), (8.99, 7.99, True), (9, 7, False), (7.9, 7, False), (8, 6.99, False)],
)
def test_sizes_that_a_choice_may_take(width_ft, depth_ft, known):
    """A size is rounded up by less than a grid step and never down; a room without a front lies either way."""
    layout = plain_layout(stand("nook", 28, 31, width_ft, depth_ft), without=("cooker", "fire"))
    assert ("known_choice" not in rules(layout)) is known


@pytest.mark.parametrize(("front", "known"), [("+x", True), ("-x", True), ("+y", False), ("-y", False)])
def test_a_room_with_a_front_turns_with_it(front, known):
    """A kitchen's width lies along its front, whichever way that looks."""
    assert ("known_choice" not in rules(plain_layout(stand("cooker", 38, 18, 6, 8, front)))) is known


def test_unknown_names():
    """A room that nobody wished for, and a choice that its room does not have, are found by name."""
    layout = plain_layout(stand("tower", 2, 2, 8, 7), stand("nook", 28, 31, 8, 7, choice="grand"))
    found = [
        finding
        for finding in check_layout(plain_yard(), placed_of(plain_rooms(), layout))
        if finding.rule == "known_choice"
    ]
    assert [finding.rooms for finding in found] == [("tower",), ("nook",)]


def test_a_room_that_stands_twice():
    """No room stands twice, required or not."""
    layout = Layout((*KEPT.values(), stand("nook", 46, 20, 8, 7)))
    assert "required_rooms" in rules(layout)


def test_the_least_room():
    """What has less than 40 sq ft is no room."""
    rooms = plain_rooms(sized("nook", "nook", 6, 6.5))
    assert "proportion" in rules(plain_layout(stand("nook", 28, 31, 6, 6.5)), rooms)
    rooms = plain_rooms(sized("nook", "nook", 6.25, 6.4))
    assert "proportion" not in rules(plain_layout(stand("nook", 28, 31, 6.25, 6.4)), rooms)


def test_no_ceiling_is_never_passed():
    """Without a ceiling, or without a cost, the budget is not broken."""
    many = Decimal(10**9)
    assert check_layout(plain_yard(ceiling=None), placed_of(plain_rooms(), plain_layout()), phase_1_cost=many) == ()
    assert check_layout(plain_yard(), placed_of(plain_rooms(), plain_layout())) == ()
