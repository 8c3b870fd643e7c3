"""The command on a made-up pipeline: what is tried is the command, not the engine. Run as a script, or installed in a test.

What the made-up engine does is named by the environment variable FAKE_ENGINE: `two` concepts at once, `until_stopped`,
`stopped_early` (nothing found when it is stopped), `nothing_fits`, `undecided`, `fault`, `other_currency`, `differs`,
`false_proof`.
"""

import os
import sys
import time
from dataclasses import dataclass, replace
from pathlib import Path
from types import ModuleType

PROJECT = Path(__file__).parents[3]


@dataclass(frozen=True)
class RunSettings:
    """What the command passes on."""

    count: int | None
    seconds: float = 20.0
    seed: int | None = None
    repeatable: bool = False
    processes: int | None = None
    start_from: Path | None = None
    solver_log: Path | None = None


def make_options(scenario, settings, *, emit, stop, show=None):
    """Do what FAKE_ENGINE says."""
    from optimizer.errors import Problem, ScenarioError
    from optimizer.events import Event
    from tests.sample_run import NOTHING_FITS, UNDECIDED, sample_set

    emit(Event("stage", {"stage": "Looking for layouts"}))
    emit(Event("option", {"found": 1, "best": "23,869 USD"}))
    match os.environ.get("FAKE_ENGINE", "two"):
        case "two":
            return sample_set(settings.count or 2)
        case "nothing_fits":
            return NOTHING_FITS
        case "undecided":
            return UNDECIDED
        case "fault":
            raise RuntimeError("the engine broke")
        case "other_currency":
            raise ScenarioError((Problem("a currency with prices", "'EUR'", "name another", "yard.yaml:9:1"),))
        case "until_stopped":
            if show is not None:
                show(sample_set(1))
                emit(Event("option", {"found": 2, "best": "23,869 USD"}))
            return _stopped(sample_set(), stop)
        case "stopped_early":
            return _stopped(UNDECIDED, stop)
    raise AssertionError


def _stopped(option_set, stop):
    stop.wait(60)
    # Writing what was found takes its time, in which more signals may come.
    time.sleep(0.5)
    return replace(option_set, search=replace(option_set.search, stopped=stop.is_set()))


def site_facts(scenario):
    """Give two facts."""
    return (("yard", scenario.name), ("rooms wished", str(len(scenario.brief.rooms))))


def recheck(path):
    """Give what FAKE_ENGINE says differs."""
    return ("concept a1: breaks a rule",) if os.environ.get("FAKE_ENGINE") == "differs" else ()


def solve_again(path, *, seconds, stop):
    """Give what FAKE_ENGINE says of proofs, and for how long they were tried."""
    from optimizer.concepts.solved_again import Doubt

    match os.environ.get("FAKE_ENGINE"):
        case "undecided":
            yield Doubt(f"undecided in {seconds:g} s", is_undecided=True)
        case "false_proof":
            yield Doubt("undecided too", is_undecided=True)
            yield Doubt("not the best", is_undecided=False)
        case "until_stopped":
            yield Doubt("stopped" if stop.wait(60) else "not stopped", is_undecided=True)


def plan_drawing(scenario, option, *, audience="designer"):
    """Give something that the made-up writer takes."""
    return f"{scenario.name} {option.id} for the {audience}"


def fake_modules() -> dict[str, ModuleType]:
    """Modules that stand in for the pipeline and the writers of drawings."""
    pipeline, export = ModuleType("optimizer.pipeline"), ModuleType("optimizer.export")
    rechecking = ModuleType("optimizer.rechecking")
    for made_up in (RunSettings, make_options, site_facts, plan_drawing):
        setattr(pipeline, made_up.__name__, made_up)
    rechecking.recheck, rechecking.solve_again = recheck, solve_again
    export.plan_svg = lambda drawing: f"<svg><title>{drawing}</title></svg>"
    return {"optimizer.pipeline": pipeline, "optimizer.export": export, "optimizer.rechecking": rechecking}


if __name__ == "__main__":
    sys.path.insert(0, str(PROJECT))
    sys.modules.update(fake_modules())
    from optimizer.cli import main

    sys.exit(main())
