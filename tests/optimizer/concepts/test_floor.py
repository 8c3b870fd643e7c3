"""The least that phase 1 can cost, against every set of choices tried one by one."""

from dataclasses import replace
from itertools import product

import pytest

from optimizer.brief import Guests
from optimizer.catalogue import asked_by, fixed_price, held, holds, party_is_held, room_price
from optimizer.concepts.case import Case
from optimizer.concepts.floor import floor_price
from optimizer.scenario import load_scenario


def case_of(name, party):
    """A demonstration yard for so large a party, without covered and screened choices."""
    yard = load_scenario(f"scenarios/{name}.yaml")
    case = Case.of(replace(yard, brief=replace(yard.brief, guests=Guests(yard.brief.guests.everyday, party))))
    plain = (replace(room, choices=tuple(c for c in room.choices if "," not in c.label)) for room in case.rooms)
    return replace(case, rooms=tuple(plain))


def cheapest(case):
    """Least price over all sets of choices that seat the guests."""
    guests, prices = case.scenario.brief.guests, []
    asked = asked_by(guests)
    for choices in product(*((*room.choices, *(() if room.required else (None,))) for room in case.rooms)):
        taken = [(room, choice) for room, choice in zip(case.rooms, choices, strict=True) if choice]
        there = held(holds(room, choice) for room, choice in taken)
        if there.table >= guests.everyday and (
            asked.is_held(*there[1:]) or not party_is_held(case.rooms, case.scenario.brief.guests)
        ):
            prices.append(sum(room_price(choice, room, case.book) for room, choice in taken))
    return min(prices)


@pytest.mark.parametrize(
    ("name", "party"),
    [("fernhollow-court", 24), ("fernhollow-court", 30), ("fernhollow-court", 99), ("thimble-yard", 10)],
)
def test_no_set_of_choices_is_cheaper(name, party):
    """The floor is the least price itself but for ground, which is rounded up to whole feet."""
    case = case_of(name, party)
    brief = case.scenario.brief
    least = brief.budget.least(fixed_price(brief, case.book) + cheapest(case))
    assert floor_price(case) == least


def test_a_larger_party_costs_no_less():
    """Seats are money: 30 people ask for dearer choices than four."""
    floors = [floor_price(case_of("fernhollow-court", party)) for party in (4, 12, 20, 24, 30)]
    assert floors == sorted(floors)
    assert floors[0] < floors[-1]
