"""A result's own words about its proofs, counted again: what is false in them is not said again."""

from dataclasses import replace

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.option import OptionSet, Proof
from optimizer.concepts.ranking import Comparison, in_words
from optimizer.concepts.reasons import Teller
from optimizer.concepts.recount import Recount
from optimizer.engine.model import arrangement_scope, build_model
from optimizer.engine.problem import layout_of, modelled_losses, modelled_value
from optimizer.engine.problem.arrangement import key_of
from optimizer.layout import Layout
from tests.explored import explored, states
from tests.sample_run import SEARCH, sample_option
from tests.yards import plain_rooms, plain_yard

YARD = plain_yard(ceiling=None)
CASE = Case(YARD, plain_rooms(), Case.of(YARD).book)
EXPLORER = explored(YARD, plain_rooms(), rebuilds=15)
PROBLEM, STATE = EXPLORER.board.problem, states(EXPLORER)[0]
VALUE = modelled_value(PROBLEM, STATE) / 100
OWN = build_model(PROBLEM, arrangement_scope(PROBLEM, key_of(PROBLEM, STATE))).fingerprint
RECOUNT = Recount(CASE)
OPTION = replace(sample_option(), layout=layout_of(PROBLEM, STATE))


@pytest.mark.parametrize(("said", "borne_out"), [
    (Proof("proven", VALUE, VALUE, OWN), Proof("proven", VALUE, VALUE, OWN)),
    (Proof("proven", VALUE, VALUE, "another"), Proof("proven", VALUE, VALUE, OWN)),
    (Proof("proven", VALUE - 5, VALUE - 5, OWN), Proof("bounded", VALUE, VALUE - 5, OWN)),
    (Proof("proven", VALUE + 5, VALUE + 5, OWN), Proof("proven", VALUE, VALUE, OWN)),
    (Proof("proven", VALUE, VALUE - 5, OWN), Proof("bounded", VALUE, VALUE - 5, OWN)),
    (Proof("proven", VALUE, VALUE, None), Proof("bounded", VALUE, VALUE, None)),
    (Proof("bounded", VALUE, 0.0, None), Proof("bounded", VALUE, 0.0, None)),
])  # fmt: skip
def test_what_a_layout_bears_out(said, borne_out):
    """Its own objective, no bound above it, the fingerprint of its own arrangement, and proven only by a solver."""
    assert RECOUNT.with_proof(replace(OPTION, proof=said)).proof == borne_out


def test_a_proof_is_of_the_layout_before_growth():
    """A room that grew to a line has changed neither objective nor bound."""
    first, *others = OPTION.layout.placements
    grown = replace(OPTION, layout=Layout((first.grown_to("+x", first.right_ft + 1.5), *others)))
    said = Proof("proven", VALUE, VALUE, OWN)
    assert RECOUNT.with_proof(replace(grown, proof=said)).proof == said


def test_two_arrangements_have_two_fingerprints():
    """So that a proof of one is not taken for that of another; two layouts of one arrangement share it."""
    keys = {key_of(PROBLEM, state) for state in states(EXPLORER)[:4]}
    found = {build_model(PROBLEM, arrangement_scope(PROBLEM, key)).fingerprint for key in keys}
    assert len(found) == len(keys) == 4


TERMS = tuple((name, cents / 100) for name, cents in modelled_losses(PROBLEM, STATE).items())
TRUE = replace(SEARCH, status="proven", objective=VALUE, bound=VALUE, terms=TERMS, option=OPTION.id)


@pytest.mark.parametrize(("search", "words"), [
    (TRUE, ()),
    (replace(TRUE, status="bounded", bound=VALUE - 9), ()),
    (replace(TRUE, bound=VALUE + 1), ("is above the objective",)),
    (replace(TRUE, bound=VALUE - 9), ("called proven",)),
    (replace(TRUE, bound=None), ("without the others", "called proven")),
    (replace(TRUE, status="bounded", objective=None, bound=None, terms=(), option=None), ()),
    (replace(TRUE, status="bounded", objective=None, terms=(), option=None), ("without the others",)),
    (replace(TRUE, terms=(("choices", -1.0), *TERMS[1:])), ("terms of the search", "sum of its terms")),
    (replace(TRUE, objective=VALUE - 7, bound=VALUE - 7), ("objective of the search", "sum of its terms")),
    (replace(TRUE, objective=VALUE - 7, bound=VALUE - 7, option=None), ("sum of its terms",)),
    (replace(TRUE, option=None), ()),
    (replace(TRUE, option="concept-09"), ("concept-09, which is not in the result",)),
    (replace(TRUE, status="undecided"), ("called undecided, and there are concepts",)),
    (replace(TRUE, status="nothing_fits"), ("and there are concepts", "and there is no conflict")),
])  # fmt: skip
def test_what_the_search_says_is_borne_out_or_named(search, words):
    """Bound and status by each other, objective and terms by the concept that they speak of."""
    found = list(RECOUNT.of_search(OptionSet((OPTION,), search)))
    assert len(found) == len(words)
    assert all(word in line for word, line in zip(words, found, strict=True))


def numbered(*options):
    """Concepts in this order with the words that a run gives them."""
    comparison = Comparison(CASE.diagonal_ft, PROBLEM.context.pose.layout)
    return in_words(options, comparison, Teller(YARD, CASE.book.currency))


def test_reasons_and_differences_are_told_again():
    """As they were told nothing is said; another reason, another value or other words are named with what was found."""
    second = replace(OPTION, layout=layout_of(PROBLEM, states(EXPLORER)[1]))
    one, two = numbered(OPTION, second)
    assert list(RECOUNT.of_words([one, two], [OPTION, second])) == []
    assert two.differs_by is not None
    for differs in (
        replace(two.differs_by, value=two.differs_by.value + 0.01),
        replace(two.differs_by, words="x"),
        None,
    ):
        (words,) = RECOUNT.of_words([one, replace(two, differs_by=differs)], [OPTION, second])
        assert words.startswith("concept concept-02: differs_by is ")
    (words,) = RECOUNT.of_words([replace(one, reason="Best."), two], [OPTION, second])
    assert words == f"concept concept-01: its reason is 'Best.', found {one.reason!r}"


def test_of_one_concept_taken_out_no_words_are_told_again():
    """What it was told against is not in the file: neither its reason nor the concept that the search speaks of."""
    second = replace(OPTION, layout=layout_of(PROBLEM, states(EXPLORER)[1]))
    _, two = numbered(OPTION, second)
    assert list(RECOUNT.of_words([two], [second])) == []
    other = replace(TRUE, option="concept-01")
    assert list(RECOUNT.of_search(OptionSet((two,), other))) == []
    assert len(list(RECOUNT.of_words([replace(two, rank=1)], [second]))) == 2
