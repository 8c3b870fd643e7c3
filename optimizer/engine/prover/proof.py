"""What a proof of the whole says, and how much work it may take."""

import threading
from dataclasses import dataclass
from pathlib import Path

from optimizer.engine.problem import State


@dataclass(frozen=True, slots=True)
class WholeProof:
    """The best layout by the model's count that is known, and a bound over all layouts of the model, in cents.

    `work_s` is the solver's deterministic time.
    """

    state: State | None
    objective: int
    bound: int
    work_s: float = 0.0

    @property
    def is_proven(self) -> bool:
        """Whether no layout of the model is better."""
        return self.state is not None and self.bound >= self.objective


@dataclass(frozen=True, slots=True)
class Budget:
    """How long to go on: until stopped, or for so much of the solver's deterministic time. `workers` at a time.

    A limit of work repeats exactly: there several workers never share a model.
    """

    stop: threading.Event
    work_s: float | None = None
    workers: int = 1
    seed: int = 0
    log_file: Path | None = None
    """Where the solver's log is added, if anywhere."""

    def log(self, line: str) -> None:
        """Add a line of the solver's log."""
        if self.log_file is not None:
            with self.log_file.open("a", encoding="utf-8") as file:
                file.write(f"{line}\n")
