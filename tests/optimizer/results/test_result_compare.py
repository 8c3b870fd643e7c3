"""What a result says and does not hold is told in plain sentences."""

from copy import deepcopy
from dataclasses import replace
from functools import reduce
from operator import getitem

import pytest

from optimizer.catalogue import book_for
from optimizer.check import Finding
from optimizer.concepts import Option
from optimizer.errors import ResultError
from optimizer.results import refuse_other_version
from optimizer.results.compare import FROM_THE_SEARCH, differences, document_differences
from optimizer.results.schema import to_record
from tests.filled import filled, places_of
from tests.sample_run import sample_document, sample_scenario, sample_set


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


def with_falsified(record, place):
    """A copy of a record in which one value is another."""
    other = deepcopy(record)
    inside = reduce(getitem, place[:-1], other)
    match inside[place[-1]]:
        case bool(value):
            inside[place[-1]] = not value
        case int(value) | float(value):
            inside[place[-1]] = value + 0.02
        case str(value) if place[-1] in ("amount", "total"):
            inside[place[-1]] = f"{float(value) + 0.01:.2f}"
        case value:
            inside[place[-1]] = f"{value}9"
    return other


def test_every_value_is_compared():
    """Whatever value of whatever measure is falsified is told, but for what only the search can say."""
    record = to_record(replace(filled(Option), findings=()))
    told = differences(record, record)
    places = list(places_of(record))
    assert len(places) > 250
    silent = {place for place in places if differences(with_falsified(record, place), record) == told}
    assert {place[0] for place in silent} == FROM_THE_SEARCH - {"id"} | {"left_out"}
    # What the patches of a way out are worth `recheck` finds out by applying them.
    assert {place[2] for place in silent if place[0] == "left_out"} == {"why", "ways_out"}


def test_every_list_is_compared():
    """A list that is cut short, or has an entry more, is told."""
    record = to_record(replace(filled(Option), findings=()))
    lists = {p[:-1] for p in places_of(record) if isinstance(p[-1], int) and p[0] not in FROM_THE_SEARCH}
    told = differences(record, record)
    for place in (place for place in lists if "ways_out" not in place):
        for change in (list.pop, lambda entries: entries.append(entries[0])):
            other = deepcopy(record)
            change(reduce(getitem, place, other))
            assert differences(other, record) != told, place


@pytest.mark.parametrize(
    ("place", "value", "words"),
    [
        (("cost", "lines", 0, "unit_price"), "29.00", "cost.lines[gathering area, paving].unit_price is 29.00, found 30.00"),
        (("cost", "lines", 1, "amount"), "1715.64", "quiet nook, paving: 56.25 x 30.50 is not 1715.64"),
        (("cost", "total"), "23868.98", "its phases do not add up to the total of 23868.98"),
        (("measures", "walking_ft"), 1233.5, "measures.walking_ft is 1,233.5, found 1,234.5"),
        (("measures", "aligned_share"), 0.626, "measures.aligned_share is 0.626, found 0.625"),
        (("measures", "sun", 0, "hours"), 2.25, "measures.sun[quiet nook].hours is 2.25, found 1.75"),
        (("measures", "steps"), 0, "measures.steps is 0, found nothing"),
        (("measures", "charm"), 9, "measures.charm is 9, and is not computed"),
        (("rooms", 0, "seats"), 9, "rooms[gathering area].seats is 9, found 6"),
        (("left_out",), [], "left_out lacks: water reserve"),
        (("paths",), [], "paths has 0 entries, found 1"),
        (("cautions",), ["Never mind."], "cautions has, and should not: Never mind."),
        (("findings",), [{"rule": "near", "rooms": []}], "says that it breaks the rule near, which it keeps"),
    ],
)  # fmt: skip
def test_what_does_not_hold_is_said(stored, fresh, place, value, words):
    """Each false value gives a sentence that names the concept, the place and both values."""
    reduce(getitem, place[:-1], stored)[place[-1]] = value
    found = differences(stored, fresh)
    assert f"concept a1: {words}" in found


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
        (("options", 0, "rank"), 3, "the concepts have the ranks 3, 2, not 1 to 2"),
        (("options", 1, "rank"), 3, "the concepts have the ranks 1, 3, not 1 to 2"),
        (("options", 0, "rooms", 0, "base_y_ft"), 2.0, "a1: the gathering area has not grown, and a place before"),
        (("options", 0, "rooms", 0, "base_width_ft"), 2.0, "a1: the gathering area has not grown, and a place before"),
        (
            ("versions", "price_book", "name"),
            "Ours",
            "the name of its prices is 'Ours' among the versions, found 'Demo",
        ),
        (("versions", "price_book", "date"), "1999", "the date of its prices is '1999' among the versions, found '20"),
        (("search", "gap"), 0.21, "the gap of the search is 0.21, found 0.2"),
        (("search", "gap"), None, "the gap of the search is nothing, found 0.2"),
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


def test_one_concept_taken_out_keeps_its_number():
    """It stands alone: those before it are not in the file."""
    document = sample_document()
    document["options"] = document["options"][1:]
    assert document_differences(document, sample_scenario(), book_for("USD")) == ()


@pytest.mark.parametrize(
    ("place", "value"),
    [(("versions", "optimizer"), "9"), (("versions", "catalogue", "digest"), "0"), (("versions",), None)],
)
def test_a_result_of_another_version_is_refused(place, value):
    """Its figures may be others without being false; another library does not count."""
    document = sample_document()
    document["versions"]["numpy"] = "1"
    refuse_other_version(document, "options.json")
    reduce(getitem, place[:-1], document)[place[-1]] = value
    with pytest.raises(ResultError, match=r"options.json.versions.*: expected a result "):
        refuse_other_version(document, "options.json")


def with_ideas(*ideas, lacking=3, scores=(100.0, 101.0, 102.0, 103.0)):
    """Document of concepts with these ideas in this order, all with as much left out but the last."""
    document = sample_document(sample_set(len(ideas)))
    for option, idea, score in zip(document["options"], ideas, scores, strict=False):
        option["score"], option["idea"] = score, idea and {"name": idea, "words": ""}
        option["left_out"] = option["left_out"][:lacking]
        option["proof"] = {**option["proof"], "bound": 0.0}
    return document


def order_of(document):
    """What is said of the order of its concepts."""
    return document_differences(document, sample_scenario(), book_for("USD"))


def test_the_first_three_follow_three_ideas():
    """Other ideas before a better score of the first's idea; an order by score alone is told."""
    assert order_of(with_ideas("court", "roof", "garden", "court", scores=(100.0, 102.0, 104.0, 101.0))) == ()
    told = order_of(with_ideas("court", "court", "roof", "garden"))
    assert told == ("concept a3 does not come as number 2, though it is near the best and follows another idea",)
    assert order_of(with_ideas("court", "roof", "court", "garden"))[0].startswith(
        "concept a4 does not come as number 3"
    )
    assert order_of(with_ideas(None, None, None, None)) == ()


def test_more_left_out_does_not_come_first():
    """A concept with every room near the best comes before all others."""
    document = with_ideas(None, None, scores=(100.0, 105.0))
    document["options"][1]["left_out"] = []
    told = order_of(document)
    assert told == ("concept a2 does not come as number 1, though it is near the best and leaves less out",)


def test_a_false_idea_is_told():
    """The name of another idea, other words for it, and an idea that the layout has not."""
    fresh = sample_document()["options"][0]
    named = {"name": "out in the garden", "words": "the table out in the garden"}
    for said, found, words in (
        ({**named, "name": "beside the house"}, named, "idea.name is beside the house, found out in the garden"),
        ({**named, "words": "a palace"}, named, "idea.words is a palace, found the table out in the garden"),
        (named, None, "idea is"),
        (None, named, "idea is nothing, found"),
    ):
        told = differences({**fresh, "idea": said}, {**fresh, "idea": found})
        assert len(told) == 1
        assert words in told[0]


def with_sketch(**changes):
    """A document with two concepts and a sketch that breaks one rule."""
    overlap = Finding("no_overlap", ("gathering area", "quiet nook"), 12.0, "sq ft", "they overlap by 12.0 sq ft")
    own = {"id": "s1", "rank": None, "proof": None, "sketch": "first idea", "findings": (overlap,), "score": 1.0}
    sketch = replace(sample_set(3).options[2], **{**own, **changes})
    return sample_document(replace(sample_set(), options=(*sample_set().options, sketch)))


def test_a_sketch_may_break_rules_and_must_say_so():
    """As it is nothing differs, though its score is the least; a finding that is not told, or told and not so, does."""
    document = with_sketch()
    sketch = document["options"][2]
    assert order_of(document) == ()
    assert differences(sketch, sketch) == ()
    silent = {**sketch, "findings": []}
    assert any("they overlap by 12.0 sq ft" in told for told in differences(silent, sketch))
    (told,) = differences(sketch, silent)
    assert told == "sketch s1: says that it breaks the rule no_overlap, which it keeps"


def test_rank_and_proof_are_a_concepts_alone():
    """A sketch with a rank or a proof, a concept without one, and a sketch among the concepts are told."""
    for changes in ({"rank": 3}, {"proof": sample_set().options[0].proof}):
        assert "s1 has a rank or proof, as a sketch must not" in order_of(with_sketch(**changes))
    document = with_sketch()
    document["options"][1]["rank"] = None
    assert "a2 has no rank or proof, as a concept must not" in order_of(document)
    document = with_sketch()
    document["options"].reverse()
    assert "the sketches do not stand after the concepts" in order_of(document)
