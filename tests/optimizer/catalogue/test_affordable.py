"""Which wishes the ceiling cannot hold together, on least prices alone."""

from dataclasses import replace
from decimal import Decimal

from optimizer.brief import Allowances, Brief, Guests, RoomWish
from optimizer.catalogue import affordable, book_for, fixed_price, room_price, sized_rooms
from optimizer.scenario import load_scenario

YARD = load_scenario("scenarios/fernhollow-court.yaml")
BOOK = book_for("USD")


def under(ceiling):
    """What is told of the example under another ceiling."""
    budget = replace(YARD.brief.budget, ceiling=None if ceiling is None else Decimal(ceiling))
    brief = replace(YARD.brief, budget=budget)
    return affordable(brief, sized_rooms(brief), BOOK)


def test_all_wishes_fit_under_a_high_ceiling():
    """Nothing has to wait, and the least price is that without a ceiling."""
    found = under("200000")
    assert (found.over, found.without) == (0, ())
    assert found.least == under(None).least
    assert under(None).over == 0


def test_the_smallest_sets_that_have_to_wait():
    """A few dollars too few: each room that costs more than that, alone; the required terrace never waits."""
    least = under(None).least
    found = under(least - 5)
    assert found.over == 5
    assert {names for names, _ in found.without} >= {("outdoor kitchen",), ("fire feature",)}
    assert all(len(names) == 1 and price <= least - 5 for names, price in found.without)
    assert ("gathering area",) not in [names for names, _ in found.without]


def test_two_have_to_wait_where_one_is_not_enough():
    """Each set that is told is enough, and none of fewer rooms would be."""
    everything, without_one = under(None).least, min(price for _, price in under(under(None).least - 5).without)
    found = under(without_one - 5)
    assert {len(names) for names, _ in found.without} == {2}
    assert all(price <= without_one - 5 < everything for _, price in found.without)


def test_nothing_helps_where_the_required_rooms_pass_it():
    """No set of rooms is told."""
    assert under("1000").without == ()


def test_many_wishes_are_looked_through_at_once():
    """Forty rooms, half of which have to wait: some of the sets, the dearest rooms first, and none that is not enough."""
    rooms = tuple(RoomWish(f"room {n}", ("fire", "nook")[n % 2]) for n in range(40))
    brief = Brief(Guests(4, 8), rooms)
    least = affordable(brief, sized_rooms(brief), BOOK).least
    half = replace(brief, budget=replace(brief.budget, ceiling=least / 2))
    found = affordable(half, sized_rooms(half), BOOK)
    assert 1 <= len(found.without) <= 5
    assert all(price <= least / 2 for _, price in found.without)
    fires = {f"room {n}" for n in range(0, 40, 2)}  # a fire costs more than a nook
    assert all(set(names) <= fires for names, _ in found.without)


def test_the_least_is_the_floor_of_the_budget():
    """The owner's sum for furniture is in it, and the cents that rounding of steps may take off are not."""
    rooms = sized_rooms(YARD.brief)
    lines = fixed_price(YARD.brief, BOOK) + sum(min(room_price(c, r, BOOK) for c in r.sizes) for r in rooms)
    budget = replace(YARD.brief.budget, allowances=Allowances(furniture=Decimal(8000)))
    found = affordable(replace(YARD.brief, budget=budget), rooms, BOOK)
    assert found.least == budget.least(lines) == under(None).least + 8000
