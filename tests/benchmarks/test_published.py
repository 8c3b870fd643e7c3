"""Small published instances, solved to their published optimum by the project's own engine."""

import json
from pathlib import Path

import pytest

from tests.benchmarks.published import Row, solved, wrong

INSTANCES = Path(__file__).parent / "instances"


@pytest.mark.parametrize("name", ["grid-nug6", "row-Cl5", "discs-clay0203m", "pack-squares-4", "pack-squares-5"])
def test_small_instances_are_proven(name):
    """Objective and proof agree with the published value (source in each file)."""
    data = json.loads((INSTANCES / f"{name}.json").read_text())
    row = solved(data, 30.0)
    assert row.status == "proven"
    assert wrong(row) is None


def test_a_false_proof_is_told():
    """A better objective than the best known, a bound past it, and a proof that misses it are each told."""
    told = [
        wrong(Row("a", 1, objective, bound, 10.0, None, 0.0, status))
        for objective, bound, status in ((9.0, 8.0, "bounded"), (12.0, 11.0, "bounded"), (11.0, 10.0, "proven"))
    ]
    assert None not in told
    assert wrong(Row("a", 1, 10.0, 10.0, 10.0, 0.0, 0.0, "proven")) is None
