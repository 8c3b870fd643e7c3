"""What owners ask of every concept, answered from its figures."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import PartyMeasures, PartyPhase, PartyRoom, outlooks, priced
from optimizer.catalogue import book_for
from tests.optimizer.derived.futures.yard import derived, yard
from tests.sample_run import sample_option, sample_scenario, sample_set
from ui.view_models import answers


def answered(question, option=None, scenario=None, **how):
    """The answer to the question that begins so."""
    told = answers(option or sample_option(), sample_set(3), scenario or sample_scenario(), **how)
    return next(each.answer for each in told if each.question.startswith(question))


def site_with(**changes):
    """The sample yard with other things on its site."""
    scenario = sample_scenario()
    return replace(scenario, site=replace(scenario.site, **changes))


def test_six_questions_are_answered_of_every_concept():
    told = answers(sample_option(), sample_set(3), sample_scenario())
    assert [each.question for each in told] == [
        "Is that all in?",
        "Where do we sit at a party?",
        "Who sees us?",
        "What is not known yet?",
        "Which would you build?",
        "How long does it take, and what does it ask of us each year?",
    ]
    assert all(each.answer.endswith(".") for each in told)


def test_all_in_says_now_later_the_limit_and_what_is_not_in_it():
    said = answered("Is that all in")
    assert said.startswith("What is built now costs $7,769, 15% for surprises included")
    assert "Your all-in limit is $130,000." in said
    assert "What comes later is another $16,100." in said
    assert "Only what has a line in the cost table is in it" in said
    assert "Your ceiling is $130,000." in answered("Is that all in", for_designer=True)


def test_seats_come_from_the_evening_that_was_walked_through():
    """24 people on 14 seats, 8 stand, and for 2 there is no ground; a phase in one place alone says nothing."""
    party = PartyMeasures(
        people=24,
        seats=14,
        standing_sqft=96.0,
        without=2,
        rooms=(PartyRoom("gathering area", 10, 60.0, 18), PartyRoom("quiet nook", 4, 36.0, 6)),
        phases=(
            PartyPhase("arrive", (("drive", 24),)),
            PartyPhase("fire", (("gathering area", 15), ("quiet nook", 9))),
            PartyPhase("gather", (("gathering area", 10), ("drive", 14))),
        ),
    )
    option = sample_option()
    option = replace(option, appraisal=replace(option.appraisal, party=party))
    assert answered("Where do", option) == (
        "For 24 people there are 14 seats: 10 at the gathering area and 4 at the quiet nook. 8 stand at a time, on 96 sq ft of clear "
        "paving. For 2 there is neither a seat nor ground to stand on. After the meal: 15 at the gathering area (5 standing) "
        "and 9 at the quiet nook (5 standing); gather: 10 at the gathering area and 14 at the drive."
    )


def test_who_sees_us_is_asked_of_every_eye_that_the_file_names():
    """The sample yard has a window in the east, 14 ft up: it sees the gathering area, and the tall fence is no help."""
    assert answered("Who sees us").startswith("From the neighbour window ")
    blind = tuple(thing for thing in sample_scenario().site.surroundings if thing.eye_z_ft is None)
    assert "Not known" in answered("Who sees us", scenario=site_with(surroundings=blind))


def test_what_the_file_lacks_is_said():
    """Without levels and lines both are named; with all of it the ground and the prices are left."""
    full = answered("What is not known")
    assert full.startswith("The soil and lines in the ground")
    assert "Prices may move the total by $" in full
    bare = answered("What is not known", scenario=site_with(levels=(), utilities=()))
    assert "no steps, walls or drains" in bare
    assert "where gas, electricity, water and drains begin" in bare


@pytest.mark.parametrize(
    ("rank", "said"),
    [(1, "By the figures, this one: shortest way"), (2, "By the figures, Concept 1. This one is in place 2")],
)
def test_the_advice_is_the_figures_and_says_so(rank, said):
    option = sample_option(f"a{rank}", rank=rank, score=30_000.0 + 500 * rank)
    assert answered("Which would you build", option).startswith(said)


def test_how_much_worse_is_said_in_money():
    option = sample_option("a3", rank=3, score=31_500.0)
    assert "counts $1,000 against it" in answered("Which would you build", option)


def test_a_sketch_is_not_ranked():
    option = replace(sample_option(), rank=None, sketch="mine")
    assert "not ranked" in answered("Which would you build", option)


def test_time_and_care_are_of_the_rooms_that_are_built_now():
    """Gathering and nook: 0.7 x (1 + 1 + 0.5) = 1.75 to 3 + 3 + 1 = 7 weeks, 5 to 14 hours: common practice, no source.
    The held reserve adds nothing before it is built."""
    said = answered("How long")
    assert said.startswith("About 1 to 7 weeks on the site")
    assert "Each year 5 to 14 hours" in said
    assert "Common practice, not a promise." in said
    assert Decimal(said.split()[1]) == 1


@pytest.mark.parametrize(
    ("setback", "said"),
    [
        (8, "with a pool. "),
        (
            30,
            "with a swim spa. Later on the water later: a swim spa is in the sum; a pool is not, since it does not fit",
        ),
        (40, " Later on the water later: nothing of water is in the sum, since no hot tub, swim spa or pool fits"),
    ],
)
def test_what_the_sum_of_later_phases_is_counted_with(setback, said):
    """The dearest of what may come later and fits is in the sum; an owner hears which, and what is not in it."""
    there = derived(yard(("water: 8", f"water: {setback}")))
    sample, found = sample_option(), outlooks(there, book_for("USD"))
    appraisal = replace(sample.appraisal, cost=priced(there, book_for("USD")))
    assert said in answered("Is that all in", replace(sample, futures=found, appraisal=appraisal))
