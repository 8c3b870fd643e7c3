"""From layouts to the steps of a stair that rises."""

from dataclasses import replace
from decimal import Decimal
from functools import partial
from math import ceil

from hypothesis import given
from hypothesis import strategies as st

from optimizer.catalogue import SizedChoice, SizedRoom
from optimizer.catalogue.kinds import kind_rules
from optimizer.concepts.budgets.points import Bought, NextThing, Step, points_of, steps_of
from optimizer.concepts.budgets.thinning import thinned
from optimizer.concepts.budgets.words import step_words
from optimizer.layout import Layout, Placement


def layout(*things):
    """Rooms with these choices, somewhere."""
    return Layout(tuple(Placement(room, choice, 0.0, 0.0, 4.0, 4.0, "+y") for room, choice in things))


def bought(cost, worth, score=1.0, *things):
    return Bought(layout(*things), Decimal(cost), worth, score)


FOUND = st.lists(
    st.builds(bought, st.integers(1_000, 9_000), st.integers(0, 12).map(float), st.floats(0, 100)), max_size=25
)


@given(FOUND, st.integers(0, 5_000), st.integers(5_000, 9_500), st.integers(1, 30))
def test_no_step_is_beaten_by_any_layout(found, lowest, highest, most):
    """Ceilings and worth rise; each step is the most worth within its ceiling, and at the ceiling one unit lower there
    is less; all lie within the range, and the last is the best of all within it.
    """
    unit = Decimal(100)
    steps = steps_of(found, lowest=Decimal(lowest), highest=Decimal(highest), most=most, unit=unit)
    assert len(steps) <= most
    for step in steps:
        assert step.bought.cost <= step.ceiling <= highest
        assert step.bought.worth == max(one.worth for one in found if one.cost <= step.ceiling)
        cheaper = [one.worth for one in found if one.cost <= step.ceiling - unit]
        assert step.ceiling == lowest or not cheaper or max(cheaper) < step.bought.worth
    worths = [step.bought.worth for step in steps]
    assert worths == sorted(set(worths))
    within = [one.worth for one in found if ceil(one.cost / unit) * unit <= highest]
    if within and highest >= lowest:
        assert worths[-1] == max(within)


def test_of_the_same_worth_the_best_score_is_taken():
    """As long as it lies within the same ceiling; cheaper alone is not better."""
    found = [bought(1010, 5.0, 9.0, ("a", "x")), bought(1090, 5.0, 4.0, ("b", "x")), bought(1150, 5.0, 1.0, ("c", "x"))]
    (step,) = steps_of(found, lowest=Decimal(0), highest=Decimal(5000), most=9, unit=Decimal(100))
    assert (step.ceiling, step.bought.score) == (1100, 4.0)


def test_rooms_stay_where_that_costs_little():
    """Of two layouts of the same worth the one with the table where the step before has it, at a score that is worse by
    3 % of the ceiling at the most.
    """

    def standing(cost, worth, score, x_ft, *more):
        table = Placement("table", "six", x_ft, 0.0, 4.0, 4.0, "+y")
        return Bought(Layout((table, *layout(*more).placements)), Decimal(cost), worth, score)

    fire = ("fire", "six")
    first, moved = standing(1000, 5.0, 1.0, 20.0), standing(2000, 9.0, 1.0, 40.0, fire)
    for score, x_ft, stays in ((60.0, 22.9, True), (62.0, 22.9, False), (60.0, 23.1, False)):
        kept = standing(2000, 9.0, score, x_ft, fire)
        steps = steps_of([first, moved, kept], lowest=Decimal(0), highest=Decimal(5000), most=9, unit=Decimal(100))
        assert [step.bought for step in steps] == [first, kept if stays else moved]


def test_what_enters_and_leaves():
    """Against the step before, with what the next step adds and costs; proven where the bound is met."""
    steps = [
        Step(Decimal(1000), bought(990, 5.0, 1.0, ("table", "six"), ("shed", "one"))),
        Step(Decimal(3000), bought(2900, 9.0, 1.0, ("table", "eight"), ("fire", "six"))),
    ]
    one, other = points_of(steps, {Decimal(1000): 5.0, Decimal(3000): 10.0}.__getitem__, ["b1", "b2"])
    assert (one.status, other.status, other.bound) == ("proven", "bounded", 10.0)
    assert one.next == NextThing("table", "eight", Decimal(2000))
    assert other.next is None
    assert other.enters == (("table", "eight"), ("fire", "six"))
    assert other.leaves == (("table", "six"), ("shed", "one"))


def test_a_level_that_changes_is_told():
    """What enters and leaves are rooms; the level stands beside them, and in what comes next."""
    table, fire = ("table", "six"), ("fire", "six")
    steps = [
        Step(Decimal(1000), replace(bought(990, 4.5, 1.0, table), level="plain")),
        Step(Decimal(1200), replace(bought(1190, 5.0, 1.0, table), level="good")),
        Step(Decimal(2000), replace(bought(1990, 9.0, 1.0, table, fire), level="plain")),
        Step(Decimal(2500), replace(bought(2490, 9.9, 1.0, ("table", "eight"), fire), level="plain")),
    ]
    first, second, third, last = points_of(steps, lambda _: 9.0, ["b1", "b2", "b3", "b4"])
    assert [point.level for point in (first, second, third, last)] == ["plain", "good", "plain", "plain"]
    assert [point.level_before for point in (first, second, third, last)] == [None, "plain", "good", None]
    assert (second.enters, second.leaves) == ((), ())
    assert first.next == NextThing(None, None, Decimal(200), "good")
    assert second.next == NextThing("fire", "six", Decimal(800), "plain")
    assert third.next == NextThing("table", "eight", Decimal(500))


def test_what_a_step_adds_in_words():
    """Rooms, sizes and materials; where materials alone change it says what stays."""
    table, eight, moved = layout(("table", "six")), layout(("table", "eight")), layout(("table", "six"))
    moved = replace(moved, placements=tuple(replace(place, x_ft=9.0) for place in moved.placements))
    choices = tuple(SizedChoice(label, 4, 4, 0, 1.0) for label in ("six", "eight"))
    room = SizedRoom("table", kind_rules("gathering"), required=True, phase=1, choices=choices)
    say = partial(step_words, rooms=[room], currency="USD")
    plain, good = (Bought(table, Decimal(1), 1.0, 1.0, level) for level in ("plain", "good"))
    assert say(plain, None, Decimal(9)) == "The least that was found to work, in plain materials: table (six)."
    more = "For about 9,000 USD more: "
    assert say(good, plain, Decimal(9000)) == f"{more}the same plan, in good materials instead of plain."
    assert say(replace(good, layout=moved), plain, Decimal(9000)).startswith(f"{more}the same rooms, in good")
    assert say(replace(good, layout=eight), good, Decimal(9000)).endswith("eight.")
    assert say(replace(good, layout=eight), plain, Decimal(9000)).endswith("eight, in good materials instead of plain.")


def test_the_step_that_tells_least_goes_first():
    """Little worth for a short way; the ends stay."""
    money, worth = [10, 20, 21, 40, 60], [1.0, 5.0, 5.1, 9.0, 10.0]
    assert thinned(money, worth, 5) == [0, 1, 2, 3, 4]
    assert thinned(money, worth, 4) == [0, 1, 3, 4]
    assert thinned(money, worth, 2) == [0, 4]
    assert thinned(money, worth, 1) == [4]
    assert thinned([], [], 3) == []
