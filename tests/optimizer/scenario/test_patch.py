"""Changed scenarios: operations as RFC 6902 has them, and what comes of a text that no longer is one."""

from dataclasses import replace

import pytest

from optimizer.catalogue import book_for
from optimizer.errors import ScenarioError
from optimizer.results.price_table import price_table
from optimizer.scenario import load_scenario, read_scenario
from optimizer.scenario.patch import _apply, patched
from tests.small_yard import SMALL

YARD = read_scenario(SMALL, "yard.yaml")


# RFC 6902, appendix A, from memory: A.1, A.2, A.3, A.4, A.5, A.14 and A.16.
@pytest.mark.parametrize(("before", "operation", "after"), [
    ({"foo": "bar"}, ("add", "/baz", "qux"), {"foo": "bar", "baz": "qux"}),
    ({"foo": ["bar", "baz"]}, ("add", "/foo/1", "qux"), {"foo": ["bar", "qux", "baz"]}),
    ({"baz": "qux", "foo": "bar"}, ("remove", "/baz", None), {"foo": "bar"}),
    ({"foo": ["bar", "qux", "baz"]}, ("remove", "/foo/1", None), {"foo": ["bar", "baz"]}),
    ({"baz": "qux", "foo": "bar"}, ("replace", "/baz", "boo"), {"baz": "boo", "foo": "bar"}),
    ({"/": 9, "~1": 10}, ("replace", "/~01", 11), {"/": 9, "~1": 11}),
    ({"foo": ["bar"]}, ("add", "/foo/-", ["abc", "def"]), {"foo": ["bar", ["abc", "def"]]}),
])  # fmt: skip
def test_operations(before, operation, after):
    """One each."""
    _apply(before, *operation)
    assert before == after


def test_the_text_is_changed():
    """In order, and read anew: what is in the new scenario is in its text."""
    changed = patched(YARD, [("add", "/brief/rooms/0/required", True), ("add", "/budget", {"ceiling": 9000})])
    assert changed.brief.rooms[0].required
    assert changed.brief.budget.ceiling == 9000
    assert changed.digest != YARD.digest
    assert read_scenario(changed.text, "again").brief == changed.brief
    assert not YARD.brief.rooms[0].required


def test_the_prices_stay():
    """A firm's own book, whether the text names it or the call did, prices what was changed too."""
    book = replace(book_for("USD"), name="Alder and Sons")
    for text in (SMALL, f"prices: own.csv\n{SMALL}"):
        changed = patched(read_scenario(text, "yard.yaml", book), [("add", "/brief/rooms/0/required", True)])
        assert changed.book is book


@pytest.mark.parametrize("operation", [
    ("replace", "/brief/nothing", 1),
    ("remove", "/brief/rooms/7", None),
    ("add", "/brief/nothing/name", 1),
    ("test", "/name", "Small Yard"),
    ("add", "/name/first", "Small"),
    ("replace", "/brief/rooms/first", 1),
])  # fmt: skip
def test_a_path_that_leads_nowhere(operation):
    """And an operation that is not known."""
    with pytest.raises(LookupError):
        patched(YARD, [operation])


def test_a_scenario_without_a_text():
    """One that was made up in memory bears no change."""
    with pytest.raises(LookupError):
        patched(replace(YARD, text=""), [("add", "/brief/rooms/0/required", True)])


def test_what_is_no_scenario_any_more():
    """A room that a relation needs is taken away: said as of any text."""
    with pytest.raises(ScenarioError, match="chairs"):
        patched(YARD, [("remove", "/brief/rooms/1", None)])


def test_prices_of_ones_own_stay(tmp_path):
    """What is changed is priced by the same book, also where the text names its file."""
    (tmp_path / "firm.csv").write_text(price_table(book_for("USD")).replace(book_for("USD").name, "Our prices"))
    (tmp_path / "yard.yaml").write_text(f"prices: firm.csv\n{SMALL}")
    scenario = load_scenario(tmp_path / "yard.yaml")
    changed = patched(scenario, (("replace", "/name", "Another"),))
    assert changed.prices == scenario.prices
    assert changed.prices.name == "Our prices"
