"""Backs of rooms in the result file."""

import json
from dataclasses import replace

from optimizer.appraisal import EnclosureMeasures, RoomBacks
from optimizer.results.read import read_result
from optimizer.results.write import to_text
from tests.sample_run import sample_document, sample_option, sample_set

FULL = EnclosureMeasures((RoomBacks("table", 1, 3), RoomBacks("nook", 2, 1)), ("fire",))


def read_back(tmp_path, document) -> EnclosureMeasures:
    """Measure of the first option after writing and reading."""
    path = tmp_path / "options.json"
    path.write_text(to_text(document), encoding="utf-8")
    return read_result(path).option_set.options[0].appraisal.enclosure


def test_backs_come_back_as_they_were(tmp_path):
    """Every room with its sides, every fire that is seen from behind, and how many backs are missing."""
    option = sample_option()
    option = replace(option, appraisal=replace(option.appraisal, enclosure=FULL))
    document = sample_document(replace(sample_set(1), options=(option,)))
    assert document["options"][0]["measures"]["enclosure"]["missing"] == 2
    assert read_back(tmp_path, document) == FULL


def test_an_older_result_has_none(tmp_path):
    """A result that was made before backs were measured is read, without any."""
    document = json.loads(to_text(sample_document()))
    del document["options"][0]["measures"]["enclosure"]
    assert read_back(tmp_path, document) == EnclosureMeasures()
