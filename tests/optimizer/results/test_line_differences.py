"""Two concepts line by line, and what moved between them."""

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from optimizer.appraisal import cost_of
from optimizer.brief import Allowances, Budget, Trip
from optimizer.catalogue import Charge, demo_price_book, with_allowances
from optimizer.layout import Layout
from optimizer.results.line_differences import line_differences
from optimizer.results.revision import figure_changes, revision_note, room_changes
from tests.sample_run import sample_option, sample_scenario

BOOK = demo_price_book()


def concept(*charges, book=BOOK, budget=None, layout=None):
    """A concept with the estimate of charges (room, item, quantity) in phase 1."""
    made = sample_option()
    lines = [Charge(1, room, item, Decimal(str(quantity))) for room, item, quantity in charges]
    cost = cost_of(lines, book, budget or Budget(contingency=Decimal(0)))
    return replace(made, appraisal=replace(made.appraisal, cost=cost), layout=layout or made.layout)


def moved(**changes):
    """The sample's layout with its first room changed."""
    first, *others = sample_option().layout.placements
    return Layout((replace(first, **changes), *others))


TABLE = "gathering area"


@pytest.mark.parametrize(
    ("before", "after", "cause", "words", "more"),
    [
        ((TABLE, "light", 2), (TABLE, "light", 5), "quantity", "5 instead of 2", "900.00"),
        (("site", "path paving", 100), ("site", "path paving", 80.5), "quantity", "80.5 sq ft instead of 100 sq ft", "-351.00"),
        ((TABLE, "gas run", 10), (TABLE, "gas run", 40), "place", "40 ft instead of 10 ft", "720.00"),
        (
            (TABLE, "kitchen counter, plain", 10),
            (TABLE, "kitchen counter, stone", 12),
            "finish",
            "12 ft of kitchen counter, stone instead of 10 ft of kitchen counter, plain",
            "12600.00",
        ),
        ((TABLE, "light", 2), (TABLE, "light", 0), "gone", "without 2", "-600.00"),
        ((TABLE, "lawn", 0), (TABLE, "lawn", 50), "new", "50 sq ft more", "150.00"),
    ],
)  # fmt: skip
def test_why_a_line_is_dearer(before, after, cause, words, more):
    """Each cause with its words and its amount."""
    (found,) = [one for one in line_differences(concept(before), concept(after)) if one.cause != "steps"]
    assert (found.cause, found.words, found.more) == (cause, words, Decimal(more))


def test_a_larger_room_is_why_its_paving_is_dearer():
    """Size where the room itself has another area, quantity where it has not."""
    before, after = (
        concept((TABLE, "unit paving", 168)),
        concept((TABLE, "unit paving", 200), layout=moved(width_ft=20)),
    )
    (found,) = line_differences(before, after)
    assert found.cause == "size"


def test_the_size_of_a_circle_is_its_discs():
    """A circle in the square of the room that it was has pi / 4 of its ground, so its paving is less by size."""
    before = concept((TABLE, "unit paving", 256), layout=moved(width_ft=16, depth_ft=16))
    after = concept((TABLE, "unit paving", 201), layout=moved(width_ft=16, depth_ft=16, shape="circle"))
    (found,) = line_differences(before, after)
    assert found.cause == "size"


def test_another_book_is_why_a_line_is_dearer():
    """The same amount at another price, and steps that another budget states."""
    prices = tuple(replace(p, price=p.price + 1, high=p.high + 1) if p.item == "lawn" else p for p in BOOK.prices)
    before = concept((TABLE, "lawn", 100))
    (found,) = line_differences(before, concept((TABLE, "lawn", 100), book=replace(BOOK, prices=prices)))
    assert (found.cause, found.words, found.more) == ("price", "4.00 instead of 3.00 a sq ft", Decimal(100))
    (found,) = line_differences(before, concept((TABLE, "lawn", 100), budget=Budget(contingency=Decimal("0.1"))))
    assert (found.item, found.cause, found.more) == ("contingency", "steps", Decimal("30.00"))


CHARGES = st.lists(
    st.tuples(
        st.sampled_from(["a", "b", "site"]),
        st.sampled_from(["lawn", "light", "steps", "unit paving", "plain paving", "kitchen counter, plain"]),
        st.decimals(0, 300, places=2),
    ),
    max_size=8,
)


@given(ours=CHARGES, theirs=CHARGES, shares=st.tuples(st.decimals(0, 1, places=2), st.decimals(0, 1, places=2)))
def test_differences_add_up_to_the_cent(ours, theirs, shares):
    """Whatever the two hold: the lines make the difference of the totals, and none of them says nothing."""
    before, after = (
        concept(*lines, budget=Budget(contingency=share)) for lines, share in zip((ours, theirs), shares, strict=True)
    )
    found = line_differences(before, after)
    assert sum(one.more for one in found) == after.appraisal.cost.total - before.appraisal.cost.total
    assert all(one.more for one in found)
    assert [abs(one.more) for one in found] == sorted((abs(one.more) for one in found), reverse=True)


def changes(before, after):
    """Sentences of the rooms of the demonstration yard, whose plan's up is 25 degrees east of north."""
    made = sample_option()
    return room_changes(sample_scenario(), replace(made, layout=before), replace(made, layout=after))


def test_what_moved_grew_and_shrank():
    """Feet and compass point of its middle, sizes before and after, fronts; nothing of a room that stands as it stood."""
    here = sample_option().layout
    first = here.placements[0]
    assert changes(here, here) == ()
    assert changes(here, moved(y_ft=first.y_ft + 10)) == (f"{TABLE} moved 10.0 ft to the north-east",)
    assert changes(here, moved(x_ft=first.x_ft - 10)) == (f"{TABLE} moved 10.0 ft to the north-west",)
    assert changes(here, moved(y_ft=first.y_ft + 0.4)) == ()
    assert changes(here, moved(front="-y")) == (f"{TABLE} opens to another side",)
    sizes = (f"{first.width_ft:g} x {first.depth_ft:g} ft", f"{first.width_ft + 2:g} x {first.depth_ft:g} ft")
    (grown,) = changes(here, moved(width_ft=first.width_ft + 2, x_ft=first.x_ft - 1))
    assert grown == f"{TABLE} grew from {sizes[0]} to {sizes[1]}"
    (shrunk,) = changes(moved(width_ft=first.width_ft + 2, x_ft=first.x_ft - 1), here)
    assert shrunk == f"{TABLE} shrank from {sizes[1]} to {sizes[0]}"


def test_a_circle_is_told_by_what_it_is_across():
    """Where it grew, where it came and went; and a square in its place is another room, as large as the square is."""
    small, large = (moved(x_ft=60, y_ft=70, width_ft=side, depth_ft=side, shape="circle") for side in (14, 16))
    square = moved(x_ft=60, y_ft=70, width_ft=16, depth_ft=16)
    elsewhere = moved(x_ft=60, y_ft=80, width_ft=14, depth_ft=14, shape="circle")
    (grown,), (squared,), (rounded,) = changes(small, large), changes(large, square), changes(square, large)
    assert grown == f"{TABLE} moved 1.4 ft to the east, grew from 14 ft across to 16 ft across"
    assert squared == f"{TABLE} changed from a circle 16 ft across to a rectangle 16 x 16 ft"
    assert rounded == f"{TABLE} changed from a rectangle 16 x 16 ft to a circle 16 ft across"
    assert changes(small, elsewhere) == (f"{TABLE} moved 10.0 ft to the north-east",)
    assert changes(small, Layout(small.placements[1:])) == (f"{TABLE} (14 ft across) is left out",)


def test_what_came_and_went():
    """With its size."""
    here = sample_option().layout
    without = Layout(here.placements[1:])
    (went,), (came,) = changes(here, without), changes(without, here)
    assert (went.startswith(f"{TABLE} ("), went.endswith("is left out")) == (True, True)
    assert (came.startswith(f"{TABLE} ("), came.endswith("is new")) == (True, True)


def test_what_it_does_to_the_figures():
    """Cost, walking and sun, each with both figures and the difference; what is alike is not said."""
    before, after = concept((TABLE, "lawn", 100)), concept((TABLE, "lawn", 200))
    measures = replace(after.appraisal, walking_ft=1000.0, sun_h=(("quiet nook", 3.0, 0.0),))
    found = figure_changes(sample_scenario(), before, replace(after, appraisal=measures))
    assert [(one.name, one.before, one.after, one.more) for one in found] == [
        ("cost of phase 1", "300", "600", "+300"),
        ("cost of all phases", "300", "600", "+300"),
        ("walking ft", "1,234", "1,000", "-234"),
        ("sun on quiet nook, h", "1.8", "3.0", "+1.2"),
    ]


def test_a_trip_that_one_of_them_lacks_is_no_saving():
    """Both walk to the table, 20 times 30 ft or 25; that one of them never walks to the nook is not counted."""
    scenario, option = sample_scenario(), sample_option()
    trips = (Trip("gate", TABLE, 20), Trip("gate", "quiet nook", 10))
    scenario = replace(scenario, brief=replace(scenario.brief, trips=trips))
    measures = option.appraisal
    more = replace(measures, walking_ft=1600, trips_ft=(("gate", TABLE, 30.0), ("gate", "quiet nook", 100.0)))
    less = replace(measures, walking_ft=500, trips_ft=(("gate", TABLE, 25.0),))
    (found,) = figure_changes(scenario, replace(option, appraisal=more), replace(option, appraisal=less))
    assert (found.name, found.before, found.after) == ("walking on trips that both have, ft", "600", "500")
    note = revision_note(scenario, replace(option, appraisal=more), replace(option, appraisal=less))
    assert f"  trips only in {option.title}: gate to quiet nook\n" in note


def test_a_share_of_lines_reads_as_one():
    """Work by hand on more paving, or at another share: money is no quantity of it."""
    less, more = (concept(("site", "poor access", base)) for base in ("10000", "14178.97"))
    assert less.appraisal.cost.lines[0].how == "20 % of 10,000.00"
    (found,) = line_differences(less, more)
    assert (found.cause, found.words) == ("quantity", "20 % of 14,178.97 instead of 20 % of 10,000.00")
    dearer = replace(BOOK.of("poor access"), price=Decimal("0.2250"))
    other = replace(BOOK, prices=tuple(dearer if p.item == "poor access" else p for p in BOOK.prices))
    (found,) = line_differences(less, concept(("site", "poor access", "10000"), book=other))
    assert (found.cause, found.words, found.more) == ("price", "22.5 % of 10,000.00 instead of 20 % of 10,000.00", 250)


def test_what_an_owner_buys_is_no_other_price():
    """An allowance takes a line out of the sums, or puts it back: nobody's price has changed."""
    own = with_allowances(BOOK, Allowances(appliances=False))
    priced, left = (concept((TABLE, "grill", 1), book=book) for book in (BOOK, own))
    told = [(one.cause, one.words) for pair in ((priced, left), (left, priced)) for one in line_differences(*pair)]
    assert told == [("owner's", "left to the owner"), ("owner's", "no longer left to the owner")]
