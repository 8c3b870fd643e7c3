"""One option: a layout, its appraisal, its checks and its proof; and the ranked set of them."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Final, Literal

from optimizer.appraisal import Appraisal, Outlook, Uncertainty
from optimizer.check import Finding
from optimizer.concepts.counted import NotIncluded
from optimizer.concepts.finish_levels import AtLevel
from optimizer.layout import Layout
from optimizer.quantities import Part
from optimizer.site import Ring

ProofStatus = Literal["proven", "bounded"]
SearchStatus = Literal["proven", "bounded", "undecided", "nothing_fits"]


@dataclass(frozen=True, slots=True)
class Proof:
    """What the solver proved of the best layout with these rooms in this order: its value and bound, in money."""

    arrangement: ProofStatus
    objective: float
    bound: float
    fingerprint: str | None = None
    """Hash of the model that the solver was asked about; None where it was not asked."""


@dataclass(frozen=True, slots=True)
class DiffersBy:
    """Difference (0 to 1) to the nearest better-ranked concept, and in words."""

    value: float
    words: str


@dataclass(frozen=True, slots=True)
class Idea:
    """The scheme that a concept follows: its name, and what this plan is like, in words without a full stop."""

    name: str
    words: str


@dataclass(frozen=True, slots=True)
class WayOut:
    """A change of the scenario with which concepts were found: in words, and as (op, path, value) of RFC 6902."""

    text: str
    patch: tuple[tuple[str, str, object], ...]


ASKED_BY: Final = ": `outdoor-rooms why` finds out"
NOT_ASKED: Final = f"not asked yet{ASKED_BY}"


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A wished room that this option does without, why, and what would bring it in."""

    room: str
    why: str
    ways_out: tuple[WayOut, ...] = ()


@dataclass(frozen=True, slots=True)
class Remedy:
    """One thing that could be added: what and what for in words, its price without contingency, and its ground [ft]."""

    words: str
    amount: Decimal
    outline: Ring


@dataclass(frozen=True, slots=True)
class Option:
    """One concept, or a sketch of the scenario, which has its `sketch` name in place of rank and proof.

    `score` is the sum of `losses` with the exact figures, in money, lower is better. Only a sketch may have `findings`.
    """

    id: str
    rank: int | None
    score: float
    losses: tuple[tuple[str, float], ...]
    reason: str
    layout: Layout
    left_out: tuple[LeftOut, ...]
    appraisal: Appraisal
    findings: tuple[Finding, ...]
    cautions: tuple[str, ...]
    proof: Proof | None
    """None where nobody asked the solver."""
    differs_by: DiffersBy | None
    permits: tuple[str, ...] = ()
    """Permits and approvals likely needed: a prompt, no advice."""
    remedies: tuple[Remedy, ...] = ()
    """What could be added to mend what is better not seen; in no cost and no score."""
    parts: tuple[Part, ...] = ()
    """What the lines of its cost sheet consist of."""
    not_included: tuple[NotIncluded, ...] = ()
    """What no line of its cost sheet pays for."""
    idea: Idea | None = None
    sketch: str | None = None
    uncertainty: Uncertainty | None = None
    """How likely phase 1 stays under the ceiling, and what moves it most; None where it was not asked."""
    futures: tuple[Outlook, ...] = ()
    """What may come later on ground that is held for it; in no score."""
    level: str | None = None
    """Finish level that it is measured and drawn in; None where the brief names none."""
    at_levels: tuple[AtLevel, ...] = ()
    """What it costs and is worth in each finish level that the brief offers."""

    @property
    def title(self) -> str:
        """What it is called on sheets and screens."""
        return f"Concept {self.rank}" if self.sketch is None else f"Sketch: {self.sketch}"

    @property
    def idea_name(self) -> str | None:
        """Name of the idea that it follows; None for none."""
        return None if self.idea is None else self.idea.name

    @property
    def open_futures(self) -> tuple[str, ...]:
        """Names of the futures that stay possible."""
        return tuple(outlook.future for outlook in self.futures if outlook.is_open)

    @property
    def left_out_rooms(self) -> tuple[str, ...]:
        """Names of the wished rooms that it does without."""
        return tuple(left.room for left in self.left_out)

    def has(self, room: str) -> bool:
        """Whether a room is there, and more than its pad and stubs."""
        return self.layout.has(room)


@dataclass(frozen=True, slots=True)
class Conflict:
    """Why nothing fits: rule ids with sentence and rooms, in `words` for a person, and ways out that were tried."""

    rules: tuple[tuple[str, str, tuple[str, ...]], ...]
    words: str
    ways_out: tuple[WayOut, ...] = ()


@dataclass(frozen=True, slots=True)
class SearchRecord:
    """How the search went. Objective, bound and gap speak of the model; None where there is no solution."""

    status: SearchStatus
    objective: float | None
    bound: float | None
    terms: tuple[tuple[str, float], ...]
    seconds: float
    seed: int
    repeatable: bool
    stopped: bool
    arrangements_seen: int
    option: str | None = None
    """Id of the shown concept whose layout objective, bound and terms speak of; None where it is not shown."""
    processes: int = 1
    """How many looked at layouts, this one among them."""
    refused: tuple[str, ...] = ()
    """By rule, how many layouts the engine proposed and the check refused, those over the ceiling aside; and the first
    of them, which repeats it."""

    @property
    def gap(self) -> float | None:
        """(objective - bound) / objective, or None without a solution or bound."""
        if self.objective is None or self.bound is None:
            return None
        return 0.0 if self.objective <= 0 else max(0.0, (self.objective - self.bound) / self.objective)


@dataclass(frozen=True, slots=True)
class Side:
    """The best that a run found with something, or without it: phase 1, worth, walking and score by the exact figures;
    `concept` is its id if it is shown.
    """

    concept: str | None
    cost: Decimal
    worth: float
    walking_ft: float
    score: float


@dataclass(frozen=True, slots=True)
class WithWithout:
    """A wished room, or a larger size of one, with the best found with it and without it, and what else changes."""

    room: str
    size: str | None
    with_it: Side | None
    without_it: Side | None
    changes: str
    more_walking_ft: float | None = None
    """How much more is walked with it, on the trips that both have; None where a side lacks."""
    trips_only_with: tuple[str, ...] = ()
    trips_only_without: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class OptionSet:
    """The ranked options of one run and the sketches after them, or why there are none."""

    options: tuple[Option, ...]
    search: SearchRecord
    conflict: Conflict | None = None
    with_without: tuple[WithWithout, ...] = ()
    """What each wished room and each larger size costs and brings, by what the run found."""

    @property
    def concepts(self) -> tuple[Option, ...]:
        """The ranked options."""
        return tuple(option for option in self.options if option.sketch is None)

    @property
    def sketches(self) -> tuple[Option, ...]:
        """Layouts of the user's own."""
        return tuple(option for option in self.options if option.sketch is not None)
