"""What a result says of rooms left out, and of with and without, told again by the concepts that it shows."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.concepts import LeftOut
from optimizer.concepts.retold import left_out_again, with_without_again
from optimizer.concepts.whys.left_out import NOT_FOUND, explained
from optimizer.concepts.with_without import with_and_without
from optimizer.engine.problem import build_problem
from tests.optimizer.concepts.whys.tiny_yard import tiny

CASE = tiny()
PROBLEM = build_problem(CASE.scenario, CASE.rooms, CASE.book)


@pytest.fixture(scope="module")
def shown(having, without):
    """A concept with the nook and one without, as a run tells them."""
    return explained(CASE, PROBLEM, (having[0], without), ())


def retold(shown, why, case=CASE):
    """What is not so of a reason why the last concept leaves the nook out."""
    (left,) = shown[-1].left_out
    told = replace(shown[-1], left_out=(replace(left, why=why),))
    return list(left_out_again(case, PROBLEM, (*shown[:-1], told)))


def test_a_run_is_borne_out(shown):
    """Nothing is named of what it says itself."""
    assert list(left_out_again(CASE, PROBLEM, shown)) == []
    assert list(with_without_again(CASE, shown, with_and_without(CASE, shown, ()))) == []


def test_another_cost_or_concept(shown):
    """Of a concept that has the room the cost is its own, and nothing else is said instead."""
    (left,) = shown[-1].left_out
    cost = f"{shown[0].appraisal.cost.phase(1):,.0f} USD"
    for why in (left.why.replace(cost, "1 USD", 1), left.why.replace("concept 1", "concept 9"), NOT_FOUND):
        assert why != left.why
        assert len(retold(shown, why)) == 1


def test_a_least_cost(shown):
    """What it costs at least is counted again, and what could not be afforded does not fit."""
    alone, brief = explained(CASE, PROBLEM, shown[-1:], ()), CASE.scenario.brief
    low = replace(brief, budget=replace(brief.budget, ceiling=Decimal(26_000)))
    case = replace(CASE, scenario=replace(CASE.scenario, brief=low))
    ((left,),) = (option.left_out for option in explained(case, PROBLEM, alone, ()))
    assert "costs at least" in left.why
    assert retold(alone, left.why, case) == []
    assert len(retold(alone, left.why.replace("at least ", "at least 1"), case)) == 1
    assert len(retold(alone, "it fits, for 99 USD: a plan that is not shown", case)) == 1
    assert retold(alone, "it fits, for 30,000 USD: a plan that is not shown") == []


def test_a_room_that_is_not_left_out(shown):
    """Said of a concept that has it."""
    told = replace(shown[0], left_out=(LeftOut("nook", "it is too dear"),))
    assert len(list(left_out_again(CASE, PROBLEM, (told, shown[1])))) == 1


def test_sides(shown):
    """None empty or worse where a shown concept is better, and each with the figures of the concept that it names; better
    ones that are not shown are let be.
    """
    pair, *others = with_and_without(CASE, shown, ())
    side, name = pair.with_it, shown[0].id
    for told, words in (
        (side, None),
        (None, f"is empty, and {name} would fill it"),
        (replace(side, concept=None, score=side.score + 1), f"is worse than {name}"),
        (replace(side, concept=None, score=side.score - 1), None),
        (replace(side, concept="concept-09"), "is not concept-09"),
        (replace(side, concept="concept-77"), "is not concept-77"),
        (replace(side, cost=side.cost + Decimal("0.01")), f"is not as {name}"),
        (replace(side, worth=side.worth + 1), f"is not as {name}"),
        (replace(side, walking_ft=side.walking_ft - 1), f"is not as {name}"),
        (replace(side, score=side.score - 1), f"is not as {name}"),
    ):
        found = list(with_without_again(CASE, shown, (replace(pair, with_it=told), *others)))
        assert found == ([f"with_without of nook: with_it {words}"] if words else []), told


def test_pairs(shown):
    """Each once, with its own changes; an older result has none."""
    pairs = with_and_without(CASE, shown, ())
    assert list(with_without_again(CASE, shown, ())) == []
    assert len(list(with_without_again(CASE, shown, pairs[1:]))) == 1
    assert len(list(with_without_again(CASE, shown, (*pairs, pairs[0])))) == 1
    for told in (
        replace(pairs[0], changes="all of it"),
        replace(pairs[0], more_walking_ft=pairs[0].more_walking_ft + 1),
        replace(pairs[0], trips_only_with=("door to pond",)),
        replace(pairs[0], trips_only_without=("door to pond",)),
    ):
        assert len(list(with_without_again(CASE, shown, (told, *pairs[1:])))) == 1, told


def test_pairs_of_an_older_result(shown):
    """Walking on trips that both have was not told of: that is no claim."""
    pair, *others = with_and_without(CASE, shown, ())
    older = replace(pair, more_walking_ft=None, trips_only_with=(), trips_only_without=())
    assert list(with_without_again(CASE, shown, (older, *others))) == []
