"""What answers say in the same way."""

import pytest

from optimizer.concepts.floor import floor_price
from optimizer.concepts.whys.answers import cannot_be
from optimizer.concepts.whys.nothing import _words
from optimizer.concepts.whys.words import above_ceiling
from tests.optimizer.concepts.whys.tiny_yard import TEXT, tiny


def with_ceiling(amount):
    """The tiny yard with a ceiling."""
    return tiny(TEXT.replace("ceiling: 90000", f"ceiling: {amount}"))


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
