"""Money, lengths and lists in words."""

from decimal import Decimal

import pytest

from ui.view_models import Words, listed, number_words, sentence

FEET, METRES = Words("USD", "ft"), Words("EUR", "m")


@pytest.mark.parametrize(
    ("words", "amount", "said"),
    [
        (FEET, Decimal("121400.49"), "$121,400"),
        (FEET, Decimal("-12.60"), "−$13"),
        (METRES, Decimal(1000), "€1,000"),
        (Words("NZD", "m"), Decimal(1000), "NZD 1,000"),
    ],
)
def test_money_in_the_currency_of_the_scenario(words, amount, said):
    """Money has its currency's sign, or its code where it has none here; the minus stands before both."""
    assert words.money(amount) == said


def test_money_to_the_cent():
    """With cents, none is lost."""
    assert FEET.money(Decimal("5040.1"), cents=True) == "$5,040.10"


@pytest.mark.parametrize(
    ("words", "length_ft", "said"),
    [(FEET, 1234.4, "1,234 ft"), (METRES, 10.0, "3.0 m"), (METRES, 1000.0, "305 m")],
)
def test_length_in_the_units_of_the_scenario(words, length_ft, said):
    """Feet are whole; metres have a tenth below a hundred."""
    assert words.length(length_ft) == said


@pytest.mark.parametrize(("names", "said"), [((), ""), (("a",), "a"), (("a", "b"), "a and b"), ("abc", "a, b and c")])
def test_list_as_a_person_writes_it(names, said):
    """Commas between, `and` before the last."""
    assert listed(names) == said


@pytest.mark.parametrize(("value", "said"), [(11.0, "11"), (100, "100"), (9.25, "9.25"), (Decimal("56.250"), "56.25")])
def test_number_says_no_needless_digit(value, said):
    """Whole numbers keep their zeros and get no decimals."""
    assert number_words(value) == said


def test_sentence_has_one_capital_and_one_stop():
    """A phrase becomes a sentence; a sentence stays one; nothing stays nothing."""
    assert [sentence(text) for text in ("no fire", "No fire.", " ")] == ["No fire.", "No fire.", ""]
