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


@pytest.mark.parametrize(
    ("words", "text", "said"),
    [
        (FEET, "Costs 1,523 USD less to begin with", "Costs $1,523 less to begin with"),
        (METRES, "saves 9,770 EUR; 3 EUROPEAN oaks", "saves €9,770; 3 EUROPEAN oaks"),
        (Words("NZD", "m"), "costs 12 NZD more", "costs 12 NZD more"),
    ],
)
def test_amounts_in_the_programs_sentences_have_the_sign_of_those_beside_them(words, text, said):
    """One sign for one currency on one page; a currency without a sign keeps its code."""
    assert words.signed(text) == said


@pytest.mark.parametrize(
    ("words", "said"),
    [(FEET, "100 sq ft at $48.00"), (METRES, "9.29 m² at €517"), (Words("USD", "m"), "9.29 m² at $517")],
)
def test_a_line_is_counted_in_the_units_of_the_scenario(words, said):
    """48 a square foot is 48 / 0.09290304 = 517 a square metre; pieces stay pieces."""
    assert words.priced(Decimal(100), "sq ft", Decimal(48)) == said
    assert words.priced(Decimal(3), "each", Decimal(450)).startswith("3 each at ")


@pytest.mark.parametrize(("words", "said"), [(FEET, "10 cu yd"), (METRES, "8 m³")])
def test_earth_in_the_units_of_the_scenario(words, said):
    """10 cubic yards are 7.65 cubic metres."""
    assert words.earth(10.0) == said


def test_the_trades_words_are_for_designers():
    """An owner reads what each word of the trade means; a designer reads the word."""
    owner, designer = Words("USD", "ft"), Words("USD", "ft", for_designer=True)
    for trade, words in (
        ("worth", "how much you would miss it"),
        ("ceiling", "all-in limit"),
        ("contingency", "for surprises"),
        ("reserve", "kept for later"),
        ("futures", "what could go there"),
        ("take-off", "quantities"),
    ):
        assert (owner.term(trade), designer.term(trade)) == (words, trade)


def test_sentences_of_the_program_are_put_into_owners_words():
    """Whole words alone, with the right article; a designer's sentence stays as it is."""
    said = "More would pass the ceiling of 130,000 USD, contingency included"
    assert FEET.signed(said) == "More would pass the all-in limit of $130,000, the sum for surprises included"
    assert FEET.signed("Phase 1, with its contingency, is dear") == "Phase 1, with its sum for surprises, is dear"
    assert FEET.signed("under a ceiling") == "under an all-in limit"
    assert FEET.signed("ceilings") == "ceilings"
    assert Words("USD", "ft", for_designer=True).signed(said).startswith("More would pass the ceiling of $130,000")
