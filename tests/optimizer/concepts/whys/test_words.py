"""What answers say in the same way."""

import pytest

from optimizer.concepts.floor import floor_price
from optimizer.concepts.whys.answers import cannot_be, unknown
from optimizer.concepts.whys.nothing import _words
from optimizer.concepts.whys.stands import told_of
from optimizer.concepts.whys.trying import Trial
from optimizer.concepts.whys.words import above_ceiling, share_words
from optimizer.layout import Layout, Placement
from tests.optimizer.concepts.whys.tiny_yard import TEXT, tiny
from tests.small_yard import changed


def with_ceiling(amount):
    """The tiny yard with a ceiling."""
    return tiny(changed("ceiling: 90000", f"ceiling: {amount}", TEXT))


def test_above_the_ceiling():
    """Its own floor, to the unit; said alike wherever it is the reason."""
    floor = floor_price(tiny())
    words = above_ceiling(with_ceiling(1000))
    assert f"costs at least {floor:,.0f} USD, without ways; the ceiling is 1,000 USD" in words
    assert cannot_be(with_ceiling(1000), (), is_least=True) == f"It cannot be: with it, {words}."
    assert _words(with_ceiling(1000), (), is_least=True) == f"{words[:1].upper()}{words[1:]}."


@pytest.mark.parametrize("more", [0, 1])
def test_within_the_ceiling(more):
    """Nothing to say where the least is affordable to the unit."""
    assert above_ceiling(with_ceiling(int(floor_price(tiny())) + 1 + more)) is None


@pytest.mark.parametrize(("share", "words"), [
    (0.0, "none"), (0.001, "hardly any"), (149 / 311, "about half"), (0.99, "nearly all"), (1.0, "all"),
])  # fmt: skip
def test_shares(share, words):
    """None and all are said of nothing less."""
    assert share_words(share) == words


def test_rooms_are_named():
    """Of what refused most of the plans that were tried the rooms that broke it are told, not the rule alone."""
    case = tiny()
    trial = Trial(case)
    for x in (12.0, 16.0, 20.0):
        table = Placement("table", "two", 4.0, 12.0, 12.0, 8.0, "+y")
        trial.judge(Layout((table, Placement("nook", "small", x + 4.0, 12.0, 8.0, 8.0, "+y"))))
    ((rule, rooms),) = trial.most_refused(1)
    assert (rule, rooms) == ("apart", ("nook", "table"))
    words = unknown(told_of(case, trial.most_refused(1)))
    assert words.endswith("broke most often: Nook at least 12 ft from table.")
    zone = Trial(case)
    zone.judge(Layout((Placement("table", "two", 4.0, 8.0, 12.0, 8.0, "+y"),)))
    words = unknown(told_of(case, zone.most_refused(1)))
    assert words.endswith(" (table and back door).")
