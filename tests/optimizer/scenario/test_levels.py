"""Spot levels that say too little, or of another place."""

from pathlib import Path

import pytest

from optimizer.errors import InputError
from optimizer.scenario import load_scenario
from optimizer.scenario.notes import scenario_notes

TEXT = Path("scenarios/fernhollow-court.yaml").read_text(encoding="utf-8")
AT, REST = TEXT.split("  levels:", 1)
AFTER = REST[REST.index("  wind_from") :]


def with_levels(tmp_path: Path, *levels: tuple[float, float, float]) -> Path:
    """The example with these spot levels in place of its own."""
    lines = "".join(f"    - {{at: [{x}, {y}], z: {z}}}\n" for x, y, z in levels)
    path = tmp_path / "yard.yaml"
    path.write_text(f"{AT}  levels:\n{lines}{AFTER}", encoding="utf-8")
    return path


def notes(path: Path) -> str:
    return "\n".join(note for note in scenario_notes(load_scenario(path)) if note.startswith("levels"))


def test_one_level_alone_is_flat_ground(tmp_path):
    assert "one only" in notes(with_levels(tmp_path, (50, 60, 1.0)))


def test_levels_that_leave_ground_unknown(tmp_path):
    assert "do not reach all" in notes(with_levels(tmp_path, (20, 70, 0), (80, 70, 0), (50, 110, -2)))


def test_levels_outside_the_yard_count_and_are_told(tmp_path):
    corners = [(-10, -10, 0), (110, -10, 0), (110, 130, -2), (-10, 130, -2)]
    found = notes(with_levels(tmp_path, *corners))
    assert "4 of 4 lie outside" in found
    assert "do not reach" not in found


def test_a_level_of_another_place_is_refused(tmp_path):
    """4,000 ft away: the wrong unit, or the wrong survey."""
    with pytest.raises(InputError) as refused:
        load_scenario(with_levels(tmp_path, (0, 0, 0), (100, 0, 0), (4000, 60, 0)))
    (problem,) = refused.value.problems
    assert "beside it" in str(problem)
    assert "ft outside" in str(problem)
