"""The scenario file: its schema, its strict reader, and the site and brief that come out of it."""

from optimizer.scenario.json_schema import scenario_schema
from optimizer.scenario.notes import scenario_notes
from optimizer.scenario.price_books import files_beside
from optimizer.scenario.reader import load_scenario, read_scenario
from optimizer.scenario.scenario import Scenario

__all__ = ["Scenario", "files_beside", "load_scenario", "read_scenario", "scenario_notes", "scenario_schema"]
