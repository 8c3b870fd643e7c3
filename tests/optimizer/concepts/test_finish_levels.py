"""What a layout costs in each finish level: as if its yard knew no other finish."""

import json
from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import priced
from optimizer.brief import Finish, FinishLevel, FinishWish
from optimizer.catalogue import book_for, sized_rooms, usual_level
from optimizer.concepts import level_words
from optimizer.concepts.case import Case
from optimizer.concepts.finish_levels import at_levels, book_of
from optimizer.derived import Derived
from optimizer.drawing.concept_plan import draw_concept
from optimizer.errors import ResultError
from optimizer.layout import Layout, Placement, placed_of
from optimizer.results import differences, option_record, to_document
from optimizer.results.read import result_of
from optimizer.scenario import read_scenario
from tests.sample_run import sample_option, sample_scenario, sample_set
from tests.small_yard import changed

LEVELS = (
    *(usual_level(name) for name in ("plain", "good", "fine")),
    FinishLevel("loose", FinishWish(Finish("gravel")), 0.8),
    FinishLevel("boards", FinishWish(Finish("timber deck")), 1.2),
)
PLACES = {"table": (24.0, 24.0, "+y"), "chairs": (44.0, 26.0, "+y")}


@pytest.fixture(scope="module")
def case():
    """The small yard, with five levels, concepts in good."""
    brief = "brief:\n  guests: {everyday: 4, party: 4}\n"
    scenario = read_scenario(changed("brief:\n", "budget: {ceiling: 90000}\n" + brief), "yard.yaml")
    offered = replace(scenario.brief, finish_levels=LEVELS).at_level("good")
    return Case.of(replace(scenario, brief=offered))


@pytest.fixture(scope="module")
def layout(case):
    sizes = {room.name: room.choices[0] for room in case.rooms}
    return Layout(
        tuple(
            Placement(name, sizes[name].label, x, y, sizes[name].width_ft, sizes[name].depth_ft, front)
            for name, (x, y, front) in PLACES.items()
        )
    )


def test_as_if_the_yard_knew_no_other_finish(case, layout):
    """To the cent, with spoil and all else that goes by the material; what was worked out before goes along."""
    derived = Derived(case.scenario, placed_of(case.rooms, layout))
    assert derived.paths.area > 0
    found = {at.level: at for at in at_levels(derived)}
    assert [*found] == [level.name for level in LEVELS]
    for level in LEVELS:
        alone = replace(case.scenario.brief, finish=level.finish, finish_levels=(), finish_level=None)
        fresh = Derived(replace(case.scenario, brief=alone), placed_of(case.rooms, layout))
        cost = priced(fresh, book_of(fresh.scenario))
        assert (found[level.name].total, found[level.name].phase_1) == (cost.total, cost.phase(1))
    assert len({at.total for at in found.values()}) == len(LEVELS)
    spoil = {
        level.name: [
            line.quantity for line in priced(at, book_of(at.scenario)).lines if line.item == "spoil carted away"
        ]
        for level in LEVELS
        for at in [derived.at_level(level.name)]
    }
    assert spoil["boards"] == []
    assert spoil["good"] != spoil["plain"]


def test_worth_goes_by_the_factor(case, layout):
    """What was chosen is worth 5 and 0.85 of 3; each level has its share or more of it."""
    derived = Derived(case.scenario, placed_of(case.rooms, layout))
    assert [at.worth for at in at_levels(derived)] == [6.795, 7.55, 8.305, 6.04, 9.06]


def test_ceilings_that_a_level_passes(case, layout):
    derived = Derived(case.scenario, placed_of(case.rooms, layout))
    cost = {at.level: at.phase_1 for at in at_levels(derived)}
    budget = replace(case.scenario.brief.budget, ceiling=cost["good"])
    brief = replace(case.scenario.brief, budget=budget)
    tight = Derived(replace(case.scenario, brief=brief), derived.placed)
    assert {at.level for at in at_levels(tight) if at.over == (1,)} == {"fine", "boards"}
    assert {at.level for at in at_levels(tight) if at.over == ()} == {"plain", "good", "loose"}


def test_the_judge_prices_levels_where_it_is_asked_to_and_only_there(case, layout):
    assert case.in_full(layout).at_levels == ()
    asked = replace(case, prices_levels=True).in_full(layout)
    assert asked.at_levels == at_levels(Derived(case.scenario, placed_of(case.rooms, layout)))
    good = next(at for at in asked.at_levels if at.level == "good")
    assert good.total == asked.measured.cost.total


def test_a_falsified_level_is_found_again(case, layout):
    """Shown concepts say what they cost in each level, and of which they are; a recheck counts both again."""
    option = replace(case.advised(case.described(layout, case.in_full(layout))), id="a1", rank=1)
    assert (option.level, len(option.at_levels)) == ("good", 5)
    fresh = option_record(case.rooms, option)
    assert [entry["level"] for entry in fresh["at_levels"]] == [level.name for level in LEVELS]
    for key, value in (("total", "1.00"), ("worth", 99.0), ("level", "gold"), ("over", [1])):
        entries = [dict(entry) for entry in fresh["at_levels"]]
        entries[2][key] = value
        (said,) = differences({**fresh, "at_levels": entries}, fresh)
        assert said.startswith("concept a1: at_levels")
    (said,) = differences({**fresh, "finish_level": "plain"}, fresh)
    assert "finish_level is plain, found good" in said


def test_a_concept_is_drawn_in_the_level_that_it_is_measured_in(case, layout):
    """Whatever level the yard's own concepts are made in."""
    fine = case.at_level("fine")
    option = replace(fine.described(layout, fine.in_full(layout)), id="a1", rank=1, at_levels=())
    told = " ".join(text.text for text in draw_concept(case.scenario, option).texts)
    assert "Finish, fine: " in told
    assert "random flag" in told
    assert "Finish, good: " in " ".join(t.text for t in draw_concept(case.scenario, replace(option, level=None)).texts)


def test_a_result_of_a_level_that_the_yard_does_not_have_is_refused():
    document = to_document(sample_scenario(), sized_rooms(sample_scenario().brief), sample_set(), book=book_for("USD"))
    document["options"][1]["finish_level"] = "fine"
    assert result_of(json.dumps(document).encode(), "o.json").option("a2").level == "fine"
    document["options"][1]["finish_level"] = "gold"
    with pytest.raises(ResultError, match=r"options\[1\].finish_level: expected a finish level of the scenario"):
        result_of(json.dumps(document).encode(), "o.json")


def test_without_levels_nothing_is_said():
    record = option_record(sized_rooms(sample_scenario().brief), sample_option())
    assert (record["at_levels"], record["finish_level"]) == (None, None)
    assert level_words(sample_option(), "USD") == ""


def test_in_words(case, layout):
    """Against the concept's own level, in hundreds; where a level passes the ceiling it says so."""
    option = case.advised(case.described(layout, case.in_full(layout)))
    first = option.appraisal.cost.phase(1)
    plain, good, fine = (
        replace(at, phase_1=first + more, over=over)
        for at, more, over in zip(
            option.at_levels[:3], (Decimal(-9_240), Decimal(0), Decimal(14_080)), ((), (), (1,)), strict=True
        )
    )
    told = level_words(replace(option, at_levels=(plain, good, fine)), "USD")
    assert told == "In plain materials about 9,200 USD less, in fine about 14,100 USD more, which passes the ceiling."
    assert level_words(replace(option, at_levels=(good,)), "USD") == ""
    both_over = replace(option, at_levels=(replace(good, over=(1,)), fine))
    assert level_words(both_over, "USD") == "In fine materials about 14,100 USD more."
    same = replace(option, at_levels=(good, replace(plain, phase_1=first + 20)))
    assert level_words(same, "USD") == "In plain materials about the same."
