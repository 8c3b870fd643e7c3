"""What can be wrong with what a person gave us, each with where it is and what to do."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong in an input: what was expected, what was found, where, and what to do."""

    expected: str
    found: str
    advice: str
    where: str = ""
    """`file:line:column`, or as much of it as is known."""

    def __str__(self) -> str:
        lead = f"{self.where}: " if self.where else ""
        return f"{lead}expected {self.expected}, found {self.found}; {self.advice}"


class InputError(Exception):
    """The text of an input or the call shows that it is wrong (exit 2); carries every problem found."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(str(problem) for problem in problems))


class ScenarioError(InputError):
    """A scenario file cannot be used."""


class ResultError(InputError):
    """A result file cannot be read."""


class OutputError(InputError):
    """A result cannot be written where it was asked for."""
