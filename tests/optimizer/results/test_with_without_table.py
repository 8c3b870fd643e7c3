"""With and without as a table, and held against the concepts that it names."""

import csv
import io
from dataclasses import replace
from decimal import Decimal

from optimizer.concepts import Side, WithWithout
from optimizer.results.with_without import with_without_csv, with_without_differences
from tests.sample_run import sample_document, sample_option, sample_set

ONE = sample_option()
NAMED = Side("a1", ONE.appraisal.cost.phase(1), 11.0, 1234.5, 30_500.0)
OTHER = Side(None, Decimal("7000.00"), 9.0, 1100.0, 31_000.0)
PAIR = WithWithout("quiet nook", None, NAMED, OTHER, "=with the nook")


def test_a_row_for_each():
    """What it costs more, and nothing where a side lacks; no cell is a formula."""
    pairs = (PAIR, WithWithout("fire feature", "generous", None, OTHER, ""))
    first, second = csv.DictReader(io.StringIO(with_without_csv(pairs, currency="USD")))
    assert (first["room"], first["with_concept"], first["with_cost"]) == ("quiet nook", "a1", "7768.97")
    assert (first["more_cost"], first["more_worth"], first["more_walking_ft"]) == ("768.97", "2", "134.5")
    assert first["changes"] == "'=with the nook"
    assert (second["size"], second["with_cost"], second["more_cost"]) == ("generous", "", "")
    assert second["without_score"] == "31000.00"


def test_held_against_the_concepts():
    """A figure that is not the concept's is told, and so is a concept that there is not."""
    concepts = replace(sample_set(1), options=(ONE,))
    good = sample_document(replace(concepts, with_without=(PAIR,)))
    assert list(with_without_differences(good)) == []
    for wrong in (replace(NAMED, cost=Decimal("1.00")), replace(NAMED, score=1.0), replace(NAMED, concept="a9")):
        document = sample_document(replace(concepts, with_without=(replace(PAIR, with_it=wrong),)))
        (words,) = with_without_differences(document)
        assert words == f"with_without of quiet nook: with_it is not as {wrong.concept}"


def test_older_results_have_none():
    """A document without the key is no difference."""
    document = sample_document()
    del document["with_without"]
    assert list(with_without_differences(document)) == []
