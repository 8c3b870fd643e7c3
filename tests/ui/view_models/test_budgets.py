"""From budgets.json to the few steps that are shown."""

from decimal import Decimal
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from ui.view_models import Words, budget_steps, limit_words

USD = Words("USD", "ft")


def point(ceiling, worth, *rooms):
    return {
        "ceiling": f"{ceiling}.00",
        "cost": f"{ceiling - 150}.00",
        "worth": worth,
        "concept": f"at-{ceiling}",
        "rooms": [{"name": name, "choice": choice} for name, choice in rooms],
    }


def test_what_is_said_of_a_step():
    """What it buys, what it adds to the step before that is shown, and what comes next."""
    points = [
        point(60_000, 10.0, ("table", "six"), ("shed", "small")),
        point(61_000, 10.2, ("table", "eight"), ("shed", "small")),
        point(90_000, 15.0, ("table", "eight"), ("fire", "six seats")),
    ]
    first, last = budget_steps({"points": points}, USD)
    assert (first.ceiling, first.cost, first.adds) == ("$60,000", "$59,800", "")
    assert first.next == "For $30,000 more: table (eight), fire (six seats), without the shed"
    assert last.adds == "$30,000 more than the step before: table (eight), fire (six seats), without the shed"
    assert (last.rooms, last.next, last.concept) == (("table (eight)", "fire (six seats)"), "", "at-90000")


def test_materials_that_change():
    """Beside the rooms, and alone where the rooms stay; files of before have none."""
    rooms = ("table", "six"), ("shed", "small")
    levels = {60_000: "plain", 70_000: "good", 90_000: "plain"}
    points = [point(60_000, 9.0, *rooms), point(70_000, 10.0, *rooms), point(90_000, 15.0, *rooms, ("fire", "six"))]
    steps = budget_steps({"points": [{**p, "level": levels[int(p["ceiling"][:-3])]} for p in points]}, USD)
    assert [step.level for step in steps] == ["plain", "good", "plain"]
    assert steps[0].next == "For $10,000 more: the same rooms in good materials instead of plain"
    assert steps[2].adds.endswith(": fire (six), in plain materials instead of good")
    assert [step.level for step in budget_steps({"points": points}, USD)] == [None] * 3


@given(
    st.lists(st.tuples(st.integers(1_000, 90_000), st.floats(0.1, 9)), max_size=15, unique_by=lambda one: one[0]),
    st.none() | st.integers(500, 99_000).map(Decimal),
)
def test_few_steps_clearly_apart(found, limit):
    """Four at most, a tenth apart, the dearest among them, whatever the yard's own limit is."""
    points, worth = [], 0.0
    for ceiling, gain in sorted(found):
        worth += gain
        points.append(point(ceiling, worth))
    shown = [int(step.concept.removeprefix("at-")) for step in budget_steps({"points": points}, USD, limit)]
    assert len(shown) <= 4
    assert all(after >= 1.1 * before for before, after in pairwise(shown))
    assert shown[-1:] == [ceiling for ceiling, _ in sorted(found)][-1:]


def test_the_only_size_is_not_named():
    """A room with one size is said by its name."""
    (step,) = budget_steps({"points": [point(60_000, 10.0, ("table", "six"), ("corner", "one size"))]}, USD)
    assert step.rooms == ("table (six)", "corner")


POINTS = [
    point(ceiling, worth, ("table", "six"))
    for ceiling, worth in ((60_000, 10), (78_000, 20), (91_000, 20.1), (150_000, 30))
]


def test_the_step_that_the_own_limit_buys_is_shown_and_marked():
    """The dearest point within it stays, though others add more; and how far it is to the next step is said."""
    limit = Decimal(92_000)
    steps = budget_steps({"points": [*POINTS[:3], point(96_000, 25), point(110_000, 28), POINTS[3]]}, USD, limit)
    (own,) = (step for step in steps if step.is_own)
    assert (own.concept, own.label) == ("at-91000", "$91,000 (your limit buys this)")
    assert limit_words(steps, limit, USD) == (
        "Your all-in limit is $92,000; the next step shown needs $18,000 more than that."
    )
    assert [step.concept for step in steps] == ["at-60000", "at-91000", "at-110000", "at-150000"]
    assert not [step for step in budget_steps({"points": POINTS}, USD) if step.is_own]


def test_a_limit_below_or_above_all_steps():
    low, high = Decimal(50_000), Decimal(200_000)
    steps = budget_steps({"points": POINTS}, USD, low)
    assert not [step for step in steps if step.is_own]
    assert limit_words(steps, low, USD).endswith("$50,000: $10,000 less than the least that was found to work.")
    steps = budget_steps({"points": POINTS}, USD, high)
    assert [step.is_own for step in steps][-1]
    assert limit_words(steps, high, USD).endswith("It buys all that was found.")
    assert limit_words(steps, None, USD) == ""
