"""What a result says and does not hold is told in plain sentences."""

from copy import deepcopy

import pytest

from optimizer.catalogue import book_for
from optimizer.results.compare import differences, document_differences, same
from tests.sample_run import sample_document, sample_scenario


@pytest.fixture(scope="module")
def fresh():
    """Record that a new check and appraisal make."""
    return sample_document()["options"][0]


@pytest.fixture
def stored(fresh):
    """Record as stored: a copy that a test may falsify."""
    return deepcopy(fresh)


def test_a_result_that_holds_has_no_differences(stored, fresh):
    """The same record twice differs in nothing."""
    assert differences(stored, fresh) == ()


def test_differences_within_rounding_are_none(stored, fresh):
    """Less than the tolerance is no difference: 0.01 ft of walking, half a thousandth of a share."""
    stored["measures"]["walking_ft"] += 0.009
    stored["measures"]["aligned_share"] += 0.0004
    stored["score"] -= 0.009
    assert differences(stored, fresh) == ()


def a_price(option):
    """Falsify the price of a line."""
    option["cost"]["lines"][0]["unit_price"] = "29.00"


def an_amount(option):
    """Falsify the amount of a line by a cent."""
    option["cost"]["lines"][1]["amount"] = "1715.64"


def a_line_less(option):
    """Leave a line out."""
    option["cost"]["lines"].pop()


def a_total(option):
    """Falsify the total by a cent."""
    option["cost"]["total"] = "23868.98"


def a_phase(option):
    """Move money from one phase to another."""
    option["cost"]["phases"] = {"1": "6768.97", "2": "17100.00"}


def a_walking_figure(option):
    """Shorten the walking."""
    option["measures"]["walking_ft"] -= 1


def a_share(option):
    """Better the order a little."""
    option["measures"]["aligned_share"] += 0.01


def a_sun_hour(option):
    """Add sun."""
    option["measures"]["sun"][0]["hours"] += 0.5


def a_step(option):
    """Invent what is not computed."""
    option["measures"]["steps"] = 0


def a_measure_of_its_own(option):
    """Add a measure that nobody computes."""
    option["measures"]["charm"] = 9


def a_loss(option):
    """Lower a loss."""
    option["losses"]["walking"] -= 100


def a_score(option):
    """Lower the score."""
    option["score"] -= 100


def a_seat(option):
    """Add a seat to a room."""
    option["rooms"][0]["seats"] += 1


def a_later_phase(option):
    """Put a room into the other phase."""
    option["rooms"][0]["phase"] = 2


def a_left_out_room_less(option):
    """Say nothing of a room that is left out."""
    option["left_out"].pop()


def a_left_out_room_more(option):
    """Say of a placed room that it is left out."""
    option["left_out"].append({"name": "quiet nook", "why": "no room"})


def a_path(option):
    """Bend a path."""
    option["paths"][0]["points"][0][0] += 1


def a_path_less(option):
    """Leave a path out."""
    option["paths"].clear()


def a_caution_less(option):
    """Leave the cautions out."""
    option["cautions"].clear()


def a_finding(option):
    """Claim a broken rule that is kept."""
    option["findings"].append({"rule": "near", "rooms": ["quiet nook"]})


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (a_price, "has unit_price 29.00, found 30.00"),
        (an_amount, "quiet nook, paving: 56.25 x 30.50 is not 1715.64"),
        (a_line_less, "the cost sheet has 2 lines, found 3"),
        (a_total, "its phases do not add up to the total of 23868.98"),
        (a_phase, "phase 1 is 6768.97, found 7768.97"),
        (a_walking_figure, "the measure walking_ft is 1,233.5, found 1,234.5"),
        (a_share, "the measure aligned_share is 0.635, found 0.625"),
        (a_sun_hour, "the measure sun"),
        (a_step, "the measure steps is 0, found nothing"),
        (a_measure_of_its_own, "the measure charm is not one that is computed"),
        (a_loss, "the loss walking is 13,600, found 13,700"),
        (a_score, "the figure score is"),
        (a_seat, "gathering area has seats"),
        (a_later_phase, "gathering area has phase 2, found 1"),
        (a_left_out_room_less, "water reserve is not placed, and is not named among what is left out"),
        (a_left_out_room_more, "quiet nook is named among what is left out"),
        (a_path, "the path between kitchen door and gathering area runs otherwise"),
        (a_path_less, "it has 0 paths, found 1"),
        (a_caution_less, "does not show the caution: Gas and fire"),
        (a_finding, "says that it breaks the rule near, which it keeps"),
    ],
)
def test_what_does_not_hold_is_said(stored, fresh, change, words):
    """Each false value gives a sentence that names the concept and the value."""
    change(stored)
    found = differences(stored, fresh)
    assert any(words in sentence for sentence in found), found
    assert all(sentence.startswith("concept a1: ") for sentence in found)


def test_a_broken_rule_is_said_with_its_sentence(stored, fresh):
    """What the new check finds, and the result does not show, is a difference."""
    sentence = "No two rooms overlap."
    finding = {"rule": "no_overlap", "sentence": sentence, "rooms": ["a", "b"], "words": "a and b share 12 sq ft."}
    found = differences(stored, {**fresh, "findings": [finding]})
    assert found == (f"concept a1: breaks a rule: {sentence} a and b share 12 sq ft.",)


def test_a_document_that_holds_has_no_differences():
    """The document of a run on the same scenario and prices differs in nothing."""
    assert document_differences(sample_document(), sample_scenario(), book_for("USD")) == ()


@pytest.mark.parametrize(
    ("where", "value", "words"),
    [
        (("scenario", "digest"), "0" * 64, "not the one that its digest was made of"),
        (("scenario", "name"), "Elsewhere", "the scenario's name is 'Fernhollow Court' in its text"),
        (("versions", "price_book", "digest"), "0" * 64, "the prices are not those of the book"),
        (("versions",), None, "the prices are not those of the book"),
        (("options", 0, "rank"), 3, "concept a2 does not rank after concept a1"),
        (("options", 0, "score"), 99_000.0, "concept a2 does not rank after concept a1"),
        (("options", 1, "proof", "bound"), 40_000.0, "concept a2: its bound of 40000 is above its own 31000"),
    ],
)
def test_what_a_document_does_not_hold_is_said(where, value, words):
    """False words about scenario, prices, order and bounds each give their sentence."""
    document = sample_document()
    inner = document
    for key in where[:-1]:
        inner = inner[key]
    inner[where[-1]] = value
    found = document_differences(document, sample_scenario(), book_for("USD"))
    assert len(found) == 1
    assert words in found[0]


def test_a_sameness_of_plain_values():
    """Numbers are the same within the tolerance, at any depth; all else only if equal."""
    assert same({"a": [1.0, "x", None]}, {"a": [1.005, "x", None]}, tolerance=0.01)
    assert not same({"a": [1.0]}, {"a": [1.02]}, tolerance=0.01)
    assert not same({"a": 1}, {"b": 1}, tolerance=0.01)
    assert not same([1], [1, 1], tolerance=0.01)
    assert not same(None, 0, tolerance=0.01)
