"""Where a run is, from the events that it printed."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Progress:
    """State of a run: its stage, seconds since the start, concepts found, the best so far and its problems."""

    stage: str = "Starting"
    elapsed_s: float = 0.0
    found: int = 0
    best: str = ""
    problems: tuple[str, ...] = ()

    def share(self, seconds: float) -> float:
        """Share of the allowed time that is used, 0 to 1."""
        return min(1.0, max(0.0, self.elapsed_s / seconds)) if seconds > 0 else 1.0


def progress(events: Iterable[dict[str, Any]]) -> Progress:
    """Progress after these events, oldest first; unknown events and keys are passed over."""
    state = Progress()
    for event in events:
        state = _after(state, event)
    return state


def _after(state: Progress, event: dict[str, Any]) -> Progress:
    return Progress(
        stage=str(event.get("stage", state.stage)).capitalize(),
        elapsed_s=max(state.elapsed_s, float(event.get("elapsed_s", 0.0))),
        found=max(state.found, int(event.get("found", 0))),
        best=str(event.get("best", state.best)),
        problems=(*state.problems, str(event["text"])) if event.get("event") == "problem" else state.problems,
    )
