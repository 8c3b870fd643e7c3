"""With and without as a table."""

import csv
import io
from decimal import Decimal

from optimizer.concepts import Side, WithWithout
from optimizer.results.with_without import with_without_csv
from tests.sample_run import sample_option

ONE = sample_option()
NAMED = Side("a1", ONE.appraisal.cost.phase(1), 11.0, 1234.5, 30_500.0)
OTHER = Side(None, Decimal("7000.00"), 9.0, 1100.0, 31_000.0)
PAIR = WithWithout("quiet nook", None, NAMED, OTHER, "=with the nook", -12.25, ("gate to nook", "nook to table"))


def test_a_row_for_each():
    """What it costs more, with the walking that it is told of and not the sums of unlike trips, and nothing where a side
    lacks; no cell is a formula.
    """
    pairs = (PAIR, WithWithout("fire feature", "generous", None, OTHER, ""))
    first, second = csv.DictReader(io.StringIO(with_without_csv(pairs, currency="USD")))
    assert (first["room"], first["with_concept"], first["with_cost"]) == ("quiet nook", "a1", "7768.97")
    assert (first["more_cost"], first["more_worth"], first["more_walking_ft"]) == ("768.97", "2", "-12.2")
    assert (first["trips_only_with"], first["trips_only_without"]) == ("gate to nook; nook to table", "")
    assert first["changes"] == "'=with the nook"
    assert (second["size"], second["with_cost"], second["more_cost"]) == ("generous", "", "")
    assert second["without_score"] == "31000.00"
