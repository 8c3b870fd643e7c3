"""Plain words for why a concept is worth a look, and how concepts differ."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.brief import Trip
from optimizer.concepts.option import Idea, LeftOut
from optimizer.concepts.reasons import ALIKE, Teller
from optimizer.layout import Layout, Placement
from optimizer.site import Structure, Tree
from tests.sample_run import sample_option
from tests.yards import on_site, plain_yard

# House along the bottom with its door, an old roof, a tree in the upper left; a plain 60 x 40 yard.
YARD = on_site(
    plain_yard(ceiling=None),
    structures=(Structure("old roof", ((40, 20), (50, 20), (50, 30), (40, 30)), 9, 0.5),),
    trees=(Tree("red oak", (5, 36), 1, 6),),
)
TELLER = Teller(YARD, "USD")


def nook(x, y=0.0, *, choice="one"):
    """A layout of one nook."""
    return Layout((Placement("nook", choice, x, y, 8, 7, "+y"),))


def costing(option, money, *, lacks=(), trips=()):
    """A concept with another cost, rooms that it does without and trips."""
    cost = replace(option.appraisal.cost, phases=((1, Decimal(money)),))
    left_out = tuple(LeftOut(room, "") for room in lacks)
    return replace(option, left_out=left_out, appraisal=replace(option.appraisal, cost=cost, trips_ft=trips))


@pytest.mark.parametrize(
    ("now", "before", "words"),
    [
        (nook(41, 21), nook(20, 20), "nook under the old roof"),
        (nook(2, 30), nook(20, 20), "nook by the red oak"),
        (nook(0, 20, choice="two"), nook(0, 20), "nook: two"),
        (nook(0, 20, choice="one, screened"), nook(0, 20), "nook with a screen"),
        (nook(0, 20), nook(0, 20, choice="one, covered"), "nook without a roof of its own"),
        (Layout(()), nook(0, 20), "without the nook"),
        (nook(0, 20), Layout(()), "with the nook"),
        (nook(2, 20), nook(0, 20), ALIKE),
    ],
)
def test_what_moved_and_what_is_missing(now, before, words):
    """Places by what is there, sizes, and rooms that are only in one."""
    assert TELLER.difference(now, before) == words


def test_the_first_says_what_it_has_and_costs():
    """All wishes, or all but those left out; money rounded as on the sheet; where its first rooms stand."""
    option = replace(costing(sample_option(), "123877.13"), layout=nook(41, 21))
    assert TELLER.reason(option, None) == "All that you wished for, for about 125,000 USD: nook under the old roof."
    lacking = replace(costing(sample_option(), "90000", lacks=("fire",)), layout=nook(41, 21))
    assert TELLER.reason(lacking, None).startswith("All that you wished for but the fire, for about 90,000 USD")


def test_others_say_what_they_cost_more_or_less():
    """Seen from the first; a few hundred are not told."""
    first = replace(costing(sample_option(), "100000"), layout=nook(0, 20))
    told = [TELLER.reason(costing(first, money), first) for money in ("104200", "95000", "100300")]
    assert told == ["Costs about 4,200 USD more.", "Costs about 5,000 USD less.", f"M{ALIKE[1:]}."]


def test_walking_is_compared_on_trips_that_both_have():
    """The first walks 300 ft more to the nook, which both have; that it alone walks to the fire is no saving."""
    trips = (Trip("gate", "nook", 10), Trip("gate", "fire", 20))
    teller = Teller(replace(YARD, brief=replace(YARD.brief, trips=trips)), "USD")
    first = costing(sample_option(), "1", trips=(("gate", "nook", 50.0), ("gate", "fire", 40.0)))
    shorter = costing(first, "1", trips=(("gate", "nook", 20.0),))
    same = costing(first, "1", trips=(("gate", "nook", 50.0),))
    assert teller.reason(shorter, first) == "Saves 300 ft of walking at each gathering."
    assert "walking" not in teller.reason(same, first)


def following(option, name):
    """A concept that follows an idea."""
    return replace(option, idea=Idea(name, f"the nook in the {name} way"))


def test_an_idea_is_told_first():
    """What the plan is like, then what it costs; places of rooms are in the idea's own words."""
    first = following(replace(costing(sample_option(), "100000"), layout=nook(0, 20)), "court")
    assert TELLER.reason(first, None) == "The nook in the court way. All that you wished for, for about 100,000 USD."
    other = following(costing(first, "104200", lacks=("fire",)), "garden")
    other = replace(other, layout=nook(41, 21))
    assert TELLER.reason(other, first) == "The nook in the garden way. Costs about 4,200 USD more."
    alike = following(costing(first, "100100"), "garden")
    assert TELLER.reason(alike, first) == "The nook in the garden way."


def test_the_same_idea_is_said_to_be_the_same():
    """With what is elsewhere in it; a concept without an idea does not claim to have the first's."""
    first = following(replace(costing(sample_option(), "100000"), layout=nook(0, 20)), "court")
    again = replace(following(costing(first, "104200"), "court"), layout=nook(41, 21))
    told = "The same idea as the first; costs about 4,200 USD more; nook under the old roof."
    assert TELLER.reason(again, first) == told
    none = replace(again, idea=None)
    assert TELLER.reason(none, first) == "Costs about 4,200 USD more; nook under the old roof."
    assert "idea" not in TELLER.reason(replace(first, idea=None), replace(first, idea=None))
