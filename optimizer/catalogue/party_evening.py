"""How a party's evening runs, and how well a walkway serves those who walk on it."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from optimizer.catalogue.data_files import data


@dataclass(frozen=True, slots=True)
class Phase:
    """A part of the evening: in how many minutes people change to it, and how they share out over kinds of place."""

    name: str
    moving_min: float
    people: tuple[tuple[str, float], ...]

    def share(self, kind: str) -> float:
        """Share of a kind of room, or of the entrance; 0 where nobody goes."""
        return dict(self.people).get(kind, 0.0)


@cache
def party_phases() -> tuple[Phase, ...]:
    """Phases of the evening, in order."""
    return tuple(
        Phase(entry["name"], float(entry["moving_min"]), tuple(entry["people"].items()))
        for entry in data("party.yaml")["phases"]
    )


def walkway_grade(flow: float) -> str:
    """Level of service, A to F, of a flow [people a minute for each foot of width]."""
    return next((grade for grade, most in _grades() if flow <= most), "F")


def best_grade_flow() -> float:
    """Largest flow of grade A [people a minute for each foot of width]."""
    return next(most for _, most in _grades())


def passing_ft() -> float:
    """Width of a way on which two people pass each other with ease [ft]."""
    return float(data("party.yaml")["passing_ft"])


def _grades() -> Iterator[tuple[str, float]]:
    return ((grade, float(most)) for grade, most in data("party.yaml")["grades"].items())
