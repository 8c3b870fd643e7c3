"""What a result says of budgets, told once more: nothing of it can be another without being named."""

import json
from copy import deepcopy
from dataclasses import replace
from decimal import Decimal
from functools import cache, reduce
from operator import getitem

import pytest

from optimizer.concepts.budgets import BudgetSet
from optimizer.concepts.budgets.possible import Possible
from optimizer.concepts.budgets.run import find_budgets, usual_range
from optimizer.concepts.budgets.search import BudgetAsked
from optimizer.concepts.budgets.told import points_again, steps_again, told_options
from optimizer.errors import ResultError
from optimizer.events import to_nobody
from optimizer.rechecking import recheck
from optimizer.results import to_text
from optimizer.results.budgets import budgets_document
from optimizer.results.schema import from_record
from tests.filled import places_of
from tests.optimizer.concepts.budgets.test_search import NEVER, case, in_levels


@cache
def found_in(of):
    """A short search in the tiny yard, with finish levels or without."""
    lowest, highest = usual_range(of())
    return find_budgets(
        BudgetAsked(of(), lowest, highest, 10, 3.0, 3, repeatable=True, processes=0), emit=to_nobody, stop=NEVER
    )


def document_of(of):
    """What the command writes of it."""
    return budgets_document(of().scenario, of().rooms, found_in(of), book=of().scenario.book)


def another(value):
    """A value that a file could have in the place of one; None where its form allows no other."""
    match value:
        case int() | float():
            return value + 1
        case None:
            return "x"
        case str() if value.replace(".", "").isdigit():
            return f"{Decimal(value) + 1:.2f}"
    return {"proven": "bounded", "bounded": "proven"}.get(value, f"{value}x")


def rechecked(document, folder):
    path = folder / "budgets.json"
    path.write_text(to_text(document))
    return recheck(path)


@pytest.mark.parametrize("of", [case, in_levels])
def test_a_search_is_borne_out(of, tmp_path):
    """All that it says, in one finish level and in three."""
    assert len(found_in(of).points) > 1
    assert rechecked(document_of(of), tmp_path) == ()


@pytest.mark.parametrize(
    ("place", "words"),
    [
        (("options", 1, "reason"), "budget-02: its reason is "),
        (("options", 1, "rank"), "budget-02: its rank is 3, found 2"),
        (("options", 1, "cost", "total"), "concept budget-02: cost.total is "),
        (("options", 1, "score"), "concept budget-02: score is "),
        (("points", 1, "ceiling"), "step 2: its ceiling of 38701.00 is no whole figure"),
        (("points", 0, "next", "amount"), "step 1: its next is "),
        (("search", "highest"), "step 1: its ceiling"),
        (("versions", "price_book", "date"), "the date of its prices is "),
    ],
)
def test_what_is_not_so_is_named(place, words, tmp_path):
    """Objectives, prices, reasons and steps; a range that does not hold its steps."""
    document = deepcopy(document_of(case))
    *inner, last = place
    inside = reduce(getitem, inner, document)
    inside[last] = "30000.00" if last == "highest" else another(inside[last])
    assert any(line.startswith(words) for line in rechecked(document, tmp_path))


@pytest.mark.parametrize("of", [case, in_levels])
def test_every_value_of_the_steps_is_counted_again(of):
    """Whatever is another in points and in what is possible is named, or refused as it is read."""
    document, found = json.loads(to_text(document_of(of))), found_in(of)
    fresh = told_options(of().built_at_once(), steps_again(found))
    possible = Possible.of(of().built_at_once(), found.highest)
    silent = set()
    for key in ("points", "possible"):
        for place in places_of(document[key]):
            told = deepcopy(document)
            inside = reduce(getitem, place[:-1], told[key])
            inside[place[-1]] = another(inside[place[-1]])
            if not is_noticed(possible, told, fresh):
                silent.add((key, *place))
    assert not silent


def is_noticed(possible, document, fresh):
    """Whether it is refused as it is read, or not borne out."""
    try:
        found = from_record(BudgetSet, document, "budgets")
    except ResultError:
        return True
    return any(points_again(possible, found, fresh))


def test_steps_that_do_not_rise_and_layouts_that_are_too_few():
    """More worth for more money, from as many layouts as are told of at the least."""
    found, of = found_in(case), case().built_at_once()
    fresh = told_options(of, steps_again(found))
    turned = replace(found, points=found.points[::-1], options=found.options[::-1])
    possible = Possible.of(of, found.highest)
    assert any("does not buy more" in words for words in points_again(possible, turned, fresh[::-1]))
    few = replace(found, layouts_found=1)
    assert list(points_again(possible, few, fresh)) == ["it has 2 layouts, and says that 1 were found"]
