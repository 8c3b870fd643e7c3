"""The brief as the family gave it: rooms by size or by use, how they relate, who walks where, what it may cost."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, replace
from typing import Final, Literal

from optimizer.brief.budget import Budget
from optimizer.brief.finish import FinishLevel, FinishWish
from optimizer.brief.holds import Hold

Interim = Literal["lawn", "gravel court", "nook"]
RoomShape = Literal["rectangle", "circle"]
RoomKind = Literal[
    "gathering", "kitchen", "fire", "nook", "pool", "reserve", "arrival", "lawn", "bed", "storage", "play"
]
LATER_PHASE: Final = 2
"""Phase of what comes later, where nobody says in which."""
RelationKind = Literal["touching", "near", "apart", "in_view", "out_of_view", "faces", "accessible"]
_SAID: Final[Mapping[RelationKind, str]] = {
    "touching": "touching",
    "near": "near",
    "apart": "apart from",
    "in_view": "in view of",
    "out_of_view": "out of view of",
    "faces": "opening towards",
    "accessible": "without a step from",
}


@dataclass(frozen=True, slots=True)
class Equipment:
    """A piece of kitchen equipment; None where the brief leaves its width to the catalogue."""

    name: str
    width_ft: float | None = None


@dataclass(frozen=True, slots=True)
class Choice:
    """One size-and-equipment level of a room as the brief gives it.

    A kitchen's may give equipment and bar seats in the place of a size, and a pool's its water: the catalogue then
    works the size out.
    """

    label: str
    width_ft: float | None
    depth_ft: float | None
    seats: int
    worth: float
    equipment: tuple[Equipment, ...] = ()
    bar_seats: int = 0
    water_ft: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class SunWish:
    """Sun or shade wanted in a daily window of some months; hours are local clock hours, months 1 to 12.

    `hours` of it are wished for, the whole window where None; with fewer than `least_hours` an option is never shown.
    """

    want: Literal["sun", "shade"]
    from_h: float
    to_h: float
    months: tuple[int, ...]
    hours: float | None = None
    least_hours: float | None = None

    @property
    def window_h(self) -> float:
        """Length of the daily window [h]."""
        return self.to_h - self.from_h

    @property
    def wished_h(self) -> float:
        """Hours of sun, or of shade, that are wished for [h]."""
        return self.window_h if self.hours is None else self.hours

    def given_h(self, sun_h: float) -> float:
        """Hours of what is wished for, sun or shade, where there are so many of direct sun [h]."""
        return sun_h if self.want == "sun" else self.window_h - sun_h


@dataclass(frozen=True, slots=True)
class RoomWish:
    """One wished room: by `choices` where the brief gives sizes, else by its use (equipment, seats, water, futures)."""

    name: str
    kind: RoomKind
    required: bool = False
    phase: int = 1
    may_wait: bool = False
    """Whether its phase is open: phase 1, or a later one where money or order ask for that."""
    choices: tuple[Choice, ...] = ()
    worth: float | None = None
    equipment: tuple[Equipment, ...] = ()
    bar_seats: int = 0
    seats: int | None = None
    fuel: Literal["gas", "wood"] | None = None
    futures: tuple[str, ...] = ()
    interim: Interim = "lawn"
    """Reserves: what the ground is until something is built on it."""
    water_ft: tuple[float, float] | None = None
    """Pools: sides of the water [ft], in either order; None where the catalogue shall say it."""
    deck_ft: float | None = None
    """Pools: deck round the water [ft]; one long side has more."""
    sun: SunWish | None = None
    cover: bool | None = None
    """Whether a shade structure over it may be bought; None: where shade is wished for."""
    screen: bool | None = None
    """Whether a screen beside it may be bought; None: where something must not see it."""
    shape: RoomShape = "rectangle"
    """Fires alone may be circles."""
    grow: float | None = None
    """Share of its area by which it may grow to meet lines; None: what is usual."""

    @property
    def all_equipment(self) -> tuple[Equipment, ...]:
        """Equipment of the wish and of any of its choices, each once."""
        return tuple(dict.fromkeys((*self.equipment, *(item for choice in self.choices for item in choice.equipment))))


@dataclass(frozen=True, slots=True)
class Relation:
    """How two rooms, or a room and a thing of the site, lie to each other; hard unless `wish` gives a weight.

    `share` is how much of what is looked at must be seen, or may be, from 0 to 1; `eye` how the looker holds it.
    """

    between: tuple[str, str]
    kind: RelationKind
    within_ft: float | None = None
    at_least_ft: float | None = None
    shared_edge_ft: float | None = None
    by: Literal["straight", "walking"] = "straight"
    wish: float | None = None
    share: float | None = None
    eye: Literal["seated", "standing"] | None = None

    @property
    def is_hard(self) -> bool:
        """Whether an option that breaks it is never shown."""
        return self.wish is None

    @property
    def words(self) -> str:
        """What it asks for, without its figure: `table in view of gate`."""
        one, other = self.between
        return f"{one} {_SAID[self.kind]} {other}"


@dataclass(frozen=True, slots=True)
class Trip:
    """Walking from one place to another, so many times a gathering."""

    start: str
    end: str
    count: float


@dataclass(frozen=True, slots=True)
class Guests:
    """People at table on a usual day, and at the party that the yard must carry."""

    everyday: int
    party: int


@dataclass(frozen=True, slots=True)
class Weights:
    """How much each named loss counts; 0 leaves one out."""

    walking: float = 1.0
    cost: float = 1.0
    sun: float = 1.0
    worth: float = 1.0
    sight: float = 1.0
    order: float = 1.0
    smoke: float = 1.0
    paving: float = 1.0
    """How much a path's paving counts against the walking that it saves, when ways are laid; no loss of its own."""


@dataclass(frozen=True, slots=True)
class OptionsWanted:
    """How many concepts, on what grid, from what seed. `grid_step` is in the file's own unit."""

    count: int = 12
    grid_step: float = 1.0
    seed: int = 7


@dataclass(frozen=True, slots=True)
class Brief:
    """What is wanted."""

    guests: Guests
    rooms: tuple[RoomWish, ...]
    relations: tuple[Relation, ...] = ()
    trips: tuple[Trip, ...] = ()
    weights: Weights = Weights()
    budget: Budget = field(default_factory=Budget)
    options: OptionsWanted = OptionsWanted()
    finish: FinishWish = field(default_factory=FinishWish)
    """What concepts are finished with: that of `finish_level`, where one is named."""
    holds: tuple[Hold, ...] = ()
    finish_levels: tuple[FinishLevel, ...] = ()
    """Finishes that may be tried, as the file names them."""
    finish_level: str | None = None

    def at_level(self, name: str | None) -> "Brief":
        """The brief with another of its levels; as it is for None. KeyError for a level that it does not offer."""
        return self if name is None else replace(self, finish=self.level(name).finish, finish_level=name)

    def level(self, name: str) -> FinishLevel:
        """The offered level of that name; KeyError where there is none."""
        return {level.name: level for level in self.finish_levels}[name]

    def room(self, name: str) -> RoomWish | None:
        """The wished room of that name, or None."""
        return next((room for room in self.rooms if room.name == name), None)

    def holds_of(self, name: str) -> tuple[Hold, ...]:
        """What is held of the room of that name."""
        return tuple(hold for hold in self.holds if hold.room == name)

    def ends_at(self, names: Collection[str]) -> float:
        """How often a gathering's trips have an end at one of these rooms or things, each end counted."""
        return sum(trip.count * ((trip.start in names) + (trip.end in names)) for trip in self.trips)
