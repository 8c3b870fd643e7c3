"""A yard with prices of its own: read with them, kept with them, and searched with them."""

import json
from pathlib import Path

import pytest

from optimizer.catalogue import book_for
from optimizer.errors import ScenarioError
from optimizer.results import result_of
from optimizer.results.price_table import price_table
from optimizer.scenario import load_scenario
from tests.sample_run import sample_scenario
from tests.small_yard import SMALL
from tests.ui.test_jobs import wait_until
from ui.searches import Searching
from ui.store import open_store
from ui.yards import named_prices, price_file, prices_of, read_with_prices, scenario_of

NAMED = f"prices: firm.yaml\n{SMALL}"
FIRM = """
name: Our prices
date: 2026-10
region: here
currency: USD
based_on: demonstration prices
prices:
  - {item: lawn, unit: sq ft, price: 7.00, low: 6.00, high: 8.00}
"""


@pytest.fixture
def store(tmp_path):
    return open_store(str(tmp_path / "kept"))


@pytest.fixture
def priced(store):
    """A version that is kept with its own prices."""
    scenario = read_with_prices(NAMED, "small.yaml", FIRM, "firm.yaml")
    return store.revisions.open(scenario.name, scenario.text, prices_of(scenario))


def test_a_version_is_read_with_its_prices(priced, store):
    """The same book as was read; also for a version that follows, and for a text that may follow it."""
    book = read_with_prices(NAMED, "small.yaml", FIRM, "firm.yaml").prices
    assert scenario_of(priced).prices == book
    assert scenario_of(store.revisions.save(priced, NAMED + "\n", "x").revision).prices == book
    assert scenario_of(priced, NAMED + "\n", "your answers").prices == book


def test_the_command_gets_the_same_book(priced, store, searches, tmp_path, monkeypatch):
    """What is written beside the scenario of a search is read by the command as the book that was given."""
    from ui import jobs

    seen = []
    fake = jobs.search_command

    def noted(kind, scenario, out, seconds, start=None, further=()):
        assert further[0] == "--prices"
        seen.append(load_scenario(scenario, Path(further[1])).prices)
        return fake(kind, scenario, out, seconds, start, further)

    monkeypatch.setattr(jobs, "search_command", noted)
    here = Searching(store, tmp_path / "searches")
    search = here.start(priced, seconds=5)
    assert wait_until(lambda: not here.get(search.id).is_running)
    (book,) = seen
    given = scenario_of(priced).prices
    assert (book.name, book.prices, book.invented) == (given.name, given.prices, given.invented)


def test_demonstration_prices_are_not_kept():
    """Every program has them, and a file of them would be refused; so with a result that carries them."""
    assert prices_of(sample_scenario()) is None


def test_a_result_is_opened_with_the_prices_that_it_carries(ready):
    """The demonstration prices stay what they are; a firm's are kept."""
    document = json.loads((ready / "options.json").read_text())
    assert prices_of(result_of(json.dumps(document).encode(), "r").scenario) is None
    document["prices"] |= {"name": "Our prices", "invented": []}
    scenario = result_of(json.dumps(document).encode(), "r").scenario
    assert json.loads(prices_of(scenario))["name"] == "Our prices"


def test_what_is_wrong_in_either_file_is_told():
    with pytest.raises(ScenarioError, match=r"firm\.yaml:8"):
        read_with_prices(NAMED, "small.yaml", FIRM.replace("price: 7.00", "price: -7"), "firm.yaml")
    with pytest.raises(ScenarioError, match=r"own"):
        read_with_prices(NAMED, "small.yaml", price_table(book_for("USD")), "firm.csv")


def test_the_named_file_is_asked_for():
    assert named_prices(NAMED, "x") == "firm.yaml"
    assert named_prices(SMALL, "x") is None
    assert named_prices("- 1", "x") is None


def test_without_prices_there_is_no_file(store):
    assert price_file(store.revisions.open("a", SMALL)) is None
