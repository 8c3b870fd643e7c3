"""Runs of whole yards that several tests look at: each is searched once, whichever worker asks first."""

import pickle
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from optimizer.concepts import OptionSet
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import Scenario, load_scenario

DEMO_YARDS: Final = {"fernhollow-court": 5.0, "wattle-rise": 4.0, "thimble-yard": 4.0}
"""Demonstration yards that are searched, with the seconds for each."""
PLOTS: Final = tuple(sorted(Path("tests/plots").glob("plot-*.yaml"))[::2])
"""Every other real plot, for the time it takes."""
_WAIT_S: Final = 0.2


@dataclass(frozen=True)
class Shown:
    """A yard and the concepts that a run found for it."""

    scenario: Scenario
    found: OptionSet


Runs = Callable[[str], Shown]


def runs_in(folder: Path) -> Runs:
    """Give the run of a yard by its name; what one worker has searched others read from the folder."""

    def shown(name: str) -> Shown:
        plots = {path.stem: path for path in PLOTS}
        path = plots.get(name, Path(f"scenarios/{name}.yaml"))
        count, seconds = (3, 4.0) if name in plots else (None, DEMO_YARDS[name])
        scenario = load_scenario(path)
        # No process beside: what is found is the same, and none has to be begun.
        settings = RunSettings(count=count, seconds=seconds, repeatable=True, processes=0)
        return Shown(scenario, _once(folder / name, lambda: make_options(scenario, settings)))

    return shown


def _once(place: Path, search: Callable[[], OptionSet]) -> OptionSet:
    """What was found before, or is being found; else what the search finds, kept for others."""
    kept, begun = place.with_suffix(".pickle"), place.with_suffix(".begun")
    while True:
        if kept.exists():
            found: OptionSet = pickle.loads(kept.read_bytes())
            return found
        try:
            begun.touch(exist_ok=False)
            break
        except FileExistsError:
            time.sleep(_WAIT_S)
    try:
        place.with_suffix(".half").write_bytes(pickle.dumps(search()))
        place.with_suffix(".half").rename(kept)
    finally:
        begun.unlink()  # after a search that failed another worker tries it, and fails for itself
    return _once(place, search)
