"""The pieces of a kitchen."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from optimizer.brief import Choice, Equipment, RoomWish
from optimizer.catalogue import Item, SizedChoice
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sizing.frame import LEVELS
from optimizer.catalogue.sizing.run import known, legs_of, length_ft, too_long
from optimizer.catalogue.sizing.sized_rooms import sized_room

PIECES = st.builds(Equipment, st.sampled_from(list(data("equipment.yaml"))), st.floats(0.5, 6))
SIZES = st.builds(Choice, st.just("given"), st.floats(7, 40), st.floats(7, 40), st.integers(0, 12), st.just(1.0))


def runs_ft(choice: SizedChoice) -> tuple[float, float]:
    """Lengths of counter along the front and along the left, the corner counted in both."""
    counters = [item for item in choice.furniture if item.role not in {"ledge", "stool"}]
    front = max(item.y_ft + item.depth_ft for item in counters)
    along = (item.width_ft for item in counters if item.y_ft + item.depth_ft == pytest.approx(front))
    aside: list[Item] = [item for item in counters if item.x_ft == 0]
    return sum(along), sum(item.depth_ft for item in aside)


def test_widths_are_the_briefs_or_the_catalogues() -> None:
    """A width in the brief counts; without one the catalogue's does: a sink 24 in."""
    legs = legs_of((Equipment("sink"), Equipment("refrigerator", 2.5)), "modest")
    assert [(piece.role, piece.width_ft) for piece in legs.bar] == [("sink", 2.0), ("refrigerator", 2.5)]


def test_a_grill_has_landings_of_24_and_12_in() -> None:
    """Beside a grill are 24 and 12 in of counter (trade articles, common practice), away from the stools."""
    legs = legs_of((Equipment("grill", 3.0),), "comfortable")
    assert [piece.width_ft for piece in legs.side] == [1.0, 3.0, 2.0]
    assert legs.bar == ()


def test_the_modest_level_lets_the_corner_be_the_wider_landing() -> None:
    """At the modest level the grill stands next to the corner's 24 in of counter."""
    legs = legs_of((Equipment("grill", 3.0),), "modest")
    assert [piece.role for piece in legs.side] == ["counter", "grill"]


def test_no_run_is_longer_than_16_ft() -> None:
    """What would make the bar's run longer than 16 ft with its corner goes to the side leg."""
    legs = legs_of(tuple(Equipment(f"thing {i}", 4.0) for i in range(5)), "modest")
    assert length_ft(legs.bar) == pytest.approx(12.0)
    assert length_ft(legs.side) == pytest.approx(8.0)


def test_pieces_of_one_size_are_not_lost() -> None:
    """Ten like pieces are ten pieces on the two legs."""
    legs = legs_of((Equipment("storage", 2.0),) * 10, "modest")
    assert len(legs.bar) + len(legs.side) == 10


def test_unknown_equipment_counts_as_any_other() -> None:
    """A name that the catalogue does not know takes a cabinet's width and the price of another appliance."""
    assert known(Equipment("waffle iron"))["item"] == "other appliance"
    assert known(Equipment(" Sink "))["item"] == "sink"


@given(
    equipment=st.lists(PIECES, max_size=12),
    bar_seats=st.integers(0, 12),
    choices=st.one_of(st.just(()), SIZES.map(lambda size: (size,))),
)
def test_no_drawn_run_is_longer_than_16_ft(equipment, bar_seats, choices):
    """Whatever is wished for, in any size and at every level; layout rule 18, common practice."""
    assume(not too_long(tuple(equipment)))
    wish = RoomWish("cooker", "kitchen", equipment=tuple(equipment), bar_seats=bar_seats, choices=choices)
    assert max(run for choice in sized_room(wish).choices for run in runs_ft(choice)) <= 16 + 1e-6


def test_what_two_runs_cannot_hold():
    """With the corner's 2 ft, 14 ft of grills with 1 ft of landing are 1 ft too long; 13 ft are not."""
    assert too_long((Equipment("grill", 7.0), Equipment("griddle", 7.0)))
    assert not too_long((Equipment("grill", 7.0), Equipment("griddle", 6.0)))


def test_landings_that_make_a_run_too_long_are_left_out():
    """12 1/2 ft of hot pieces and 1 ft of landing are the most beside a corner; two landings of 2 ft more are not."""
    hot = tuple(Equipment(name) for name in ("grill", "griddle", "pizza oven", "smoker"))
    assert [length_ft(legs_of(hot, level).side) for level in LEVELS] == pytest.approx([12.5, 12.5, 12.5])


def test_one_cooks_along_the_bar_as_one_works():
    """Preparation beside the corner and so beside the grill, then sink, the drawer for trash, and what is cold."""
    names = ("refrigerator", "trash drawer", "sink", "preparation", "grill")
    roles = [piece.role for piece in legs_of(tuple(map(Equipment, names)), "comfortable").bar]
    assert roles == ["preparation", "sink", "trash drawer", "refrigerator"]


def test_a_sink_has_18_in_of_counter_on_its_far_side():
    """LSU AgCenter: 24 and 18 in. A drawer for trash of 18 in has them on it; else the generous level adds them."""
    dry = [
        (piece.role, piece.width_ft)
        for piece in legs_of((Equipment("sink"), Equipment("refrigerator")), "generous").bar
    ]
    assert dry == [("sink", 2.0), ("counter", 1.5), ("refrigerator", 2.0)]
    drawn = legs_of((Equipment("sink"), Equipment("trash drawer", 1.5)), "generous").bar
    assert [piece.role for piece in drawn] == ["sink", "trash drawer"]
