"""A whole scenario file, key by key: the brief, the money and the options wanted. Lengths come out in feet."""

import re
from typing import Annotated, Any, Final, Literal, Self

from pydantic import (
    BeforeValidator,
    Field,
    PlainValidator,
    ValidationInfo,
    WithJsonSchema,
    model_validator,
)

from optimizer.brief import Equipment, Interim, RelationKind, RoomKind, RoomShape
from optimizer.scenario.finish_schema import FinishPart
from optimizer.scenario.hold_schema import HoldPart
from optimizer.scenario.part import Part
from optimizer.scenario.site_schema import SitePart
from optimizer.scenario.sketch_schema import SketchPart
from optimizer.scenario.values import (
    ClockHour,
    Count,
    Distance,
    Money,
    Name,
    Number,
    Seats,
    Share,
    Size,
    Weight,
    clock_text,
    length_validator,
    unexpected,
    unit_ft,
)

SCHEMA_VERSION: Final = 1
MOST_ROOMS: Final = 40


def is_newer(version: Any) -> bool:
    """Whether a file is of a version that this program does not know yet."""
    return isinstance(version, int) and version > SCHEMA_VERSION


def _version(value: Any) -> Any:
    """Refuse another format version by name."""
    if isinstance(value, bool) or not isinstance(value, int):
        raise unexpected(f"schema_version {SCHEMA_VERSION}", f"write schema_version: {SCHEMA_VERSION}")
    if is_newer(value):
        raise unexpected(f"schema_version {SCHEMA_VERSION}", "the file is made for a newer program: update this one")
    return value


def _grid_step(value: Any, info: ValidationInfo) -> float:
    """Read a grid step; it stays in the file's own unit, where exact multiples of it are exact."""
    if isinstance(value, str):
        return _STEP(value, info) / unit_ft(info)
    _STEP(value, info)
    return float(value)


_STEP: Final = length_validator("a length above 0", lambda ft: ft > 0)
_NO_NAME_FIRST: Final = re.compile(r"^[0-9]|(^|\s)[-+]\s*[0-9.]")
_EQUIPMENT: Final = re.compile(r"(?P<name>[^0-9]*[^0-9\s])\s+(?P<width>[0-9].*)")


def _equipment(value: Any, info: ValidationInfo) -> Equipment:
    """Read equipment such as `sink` or `grill 36 in`: a name, then its width unless the catalogue shall say it."""
    if isinstance(value, Equipment):
        return value
    if not isinstance(value, str) or not value.strip() or not value.isprintable() or len(value) > 200:
        raise unexpected("equipment such as sink or grill 36 in", "write its name, then its width if it matters")
    if _NO_NAME_FIRST.search(value.strip()):
        raise unexpected("equipment such as sink or grill 36 in", "write its name first, then a width above 0")
    match = _EQUIPMENT.fullmatch(value.strip())
    return Equipment(match["name"], _WIDTH(match["width"], info)) if match else Equipment(value.strip())


_WIDTH: Final = length_validator("equipment such as grill 36 in, with a width above 0", lambda ft: ft > 0)


class GuestsPart(Part):
    """People at table."""

    @model_validator(mode="after")
    def _party_is_the_larger(self) -> Self:
        """Refuse a party of fewer people than a usual day has, where the file says both."""
        if self.model_fields_set >= {"everyday", "party"} and self.party < self.everyday:
            found = f"{self.party} at the party, {self.everyday} every day"
            raise unexpected("a party of at least the everyday guests", "swap the two, or correct one", found)
        return self

    everyday: Count = 4
    """On a usual day."""
    party: Count = 12
    """At the party that the yard must carry."""


EquipmentList = Annotated[
    tuple[Annotated[Equipment, PlainValidator(_equipment), WithJsonSchema({"type": "string"})], ...],
    Field(max_length=40),
]


WaterSides = tuple[Size, Size]


class ChoicePart(Part):
    """One size-and-equipment level of a room: by width and depth, a kitchen's by equipment, a pool's by its water."""

    label: Name
    """What it is called."""
    width: Size | None = None
    """Along the front."""
    depth: Size | None = None
    """From front to back."""
    seats: Seats = 0
    """People it seats."""
    worth: Number
    """What the owner would give for it, in points; the last thing to give up has most."""
    equipment: EquipmentList = ()
    """Kitchens: what stands in it, for which the catalogue works out the size unless it is given."""
    bar_seats: Seats = 0
    """Kitchens: stools at the counter of this choice."""
    water: WaterSides | None = None
    """Pools: sides of the water of this choice, for which the catalogue works out the deck unless a size is given."""


class SunPart(Part):
    """Sun or shade wanted in a daily window of some months."""

    want: Literal["sun", "shade"]
    """Which of the two."""
    start: ClockHour = Field(alias="from")
    """Local clock hour at which the window opens, such as "16:00"."""
    end: ClockHour = Field(alias="to")
    """Local clock hour at which it closes."""
    months: Annotated[tuple[Annotated[int, Field(ge=1, le=12)], ...], Field(min_length=1, max_length=12)]
    """Months, 1 to 12."""
    hours: Annotated[float, Field(gt=0, le=24)] | None = None
    """Hours of it that are wished for; the whole window where nothing is said."""
    least: Annotated[float, Field(gt=0, le=24)] | None = None
    """Hours of it without which a layout is none."""

    @model_validator(mode="after")
    def _opens_before_it_closes(self) -> Self:
        """Refuse a window over midnight."""
        if self.start >= self.end:
            raise unexpected(
                "`from` earlier in the day than `to`",
                'swap the two; a window ends at "24:00" at the latest, and there is no sun at midnight to wish for',
                f"from {clock_text(self.start)} to {clock_text(self.end)}",
            )
        if max(self.hours or 0.0, self.least or 0.0) > self.end - self.start:
            raise unexpected(
                "no more hours than the window has",
                "ask for fewer, or open the window wider",
                f"{max(self.hours or 0.0, self.least or 0.0):g} h in a window of {self.end - self.start:g} h",
            )
        return self

    @model_validator(mode="after")
    def _asks_for_what_can_be(self) -> Self:
        """Refuse a least above the wish, and a month twice, which would count twice in the mean."""
        if self.hours is not None and self.least is not None and self.least > self.hours:
            raise unexpected(
                "`least` of at most the `hours` that are wished for",
                "swap the two, or leave one out",
                f"least {self.least:g} with hours {self.hours:g}",
            )
        if len(set(self.months)) < len(self.months):
            found = ", ".join(str(month) for month in sorted(self.months))
            raise unexpected("each month once", "take out the months that repeat", found)
        return self


class RoomPart(Part):
    """One wished room: by `choices`, or sized by the catalogue from its use (equipment, seats, water, futures) and
    `worth`.
    """

    name: Name
    """Name by which relations and trips know it."""
    kind: RoomKind
    """What the catalogue knows of it."""
    required: bool = False
    """Whether a layout without it is none."""
    phase: Annotated[int, Field(ge=1, le=9)] = 1
    """When it is built."""
    may_wait: bool = False
    """Whether it may be put into a later phase, where phase 1 has no money for it."""
    choices: Annotated[tuple[ChoicePart, ...], Field(max_length=20)] = ()
    """Sizes that would do."""
    worth: Number | None = None
    """Worth of the largest size, where the catalogue makes the sizes; smaller ones have a part of it."""
    equipment: EquipmentList = ()
    """Kitchens: what stands in it, each with its width unless the catalogue shall say it; the usual if empty."""
    bar_seats: Seats = 0
    """Kitchens: stools at the counter."""
    seats: Seats | None = None
    """People it shall seat; the usual number of its kind where nothing is said."""
    fuel: Literal["gas", "wood"] | None = None
    """Fire: what burns."""
    shape: RoomShape | None = None
    """Fire: whether its ground is a circle; a rectangle where nothing is said."""
    futures: Annotated[tuple[Name, ...], Field(max_length=20)] = ()
    """Reserves: what may be built there later; it must take any one of these."""
    interim: Interim | None = None
    """Reserves: what the ground is until then; lawn if nothing is said. `nook`: paved as the nook is, open to it."""
    water: WaterSides | None = None
    """Pools: the two sides of the water, without its deck; three usual sizes if nothing is said."""
    deck: Size | None = None
    """Pools: deck round the water, 4 ft or more; one long side has 8 to 10 ft."""
    sun: SunPart | None = None
    """Sun or shade wanted."""
    cover: bool | None = None
    """Whether a shade structure over it may be bought; where shade is wished for if nothing is said."""
    screen: bool | None = None
    """Whether a screen beside it may be bought; where something must not see it if nothing is said."""
    grow: Annotated[float, Field(ge=0, le=1)] | None = None
    """Share of its area by which it may grow to meet lines; 0.2 where nothing is said, 0 for none."""


class RelationPart(Part):
    """How two rooms, or a room and a thing of the site, lie to each other."""

    between: tuple[Name, Name]
    """The two names."""
    kind: RelationKind
    """What holds between them."""
    within: Size | None = None
    """`near`: largest distance, edge to edge."""
    at_least: Distance | None = None
    """`apart`: least distance, edge to edge."""
    shared_edge: Size | None = None
    """`touching`: length of edge that both share; 3 ft where nothing is said."""
    by: Literal["straight", "walking"] | None = None
    """How distance is measured; `near` walks where nothing is said, `apart` goes straight."""
    wish: Number | None = None
    """Weight of a wish; without it the relation is hard."""
    share: Annotated[float, Field(ge=0, le=1)] | None = None
    """`in_view`: least share of it that is seen; `out_of_view`: largest."""
    eye: Literal["seated", "standing"] | None = None
    """`in_view`, `out_of_view`: how the looker holds the eye; by what the place is used for if nothing is said."""


class TripPart(Part):
    """Walking from one place to another."""

    start: Name = Field(alias="from")
    """Room, door or entrance where it starts."""
    end: Name = Field(alias="to")
    """Room, door or entrance where it ends."""
    count: Number
    """Times a gathering."""


class WeightsPart(Part):
    """How much each named loss counts; 0 leaves one out."""

    walking: Weight = 1.0
    """Feet walked."""
    cost: Weight = 1.0
    """Money."""
    sun: Weight = 1.0
    """Hours of sun or shade missed."""
    worth: Weight = 1.0
    """Worth not bought."""
    sight: Weight = 1.0
    """Views."""
    order: Weight = 1.0
    """Lines that do not meet."""
    smoke: Weight = 1.0
    """Smoke at doors, windows and seats."""
    paving: Weight = 1.0
    """How much paving a path counts against the walking that it saves; only lays ways out."""


class BriefPart(Part):
    """What is wanted."""

    guests: GuestsPart = GuestsPart()
    """People at table."""
    rooms: Annotated[tuple[RoomPart, ...], Field(min_length=1, max_length=MOST_ROOMS)]
    """The wished rooms."""
    relations: Annotated[tuple[RelationPart, ...], Field(max_length=1000)] = ()
    """How they lie to each other; hard unless `wish` gives a weight."""
    trips: Annotated[tuple[TripPart, ...], Field(max_length=1000)] = ()
    """Walking, per gathering."""
    holds: Annotated[tuple[HoldPart, ...], Field(max_length=200)] = ()
    """What a person has decided; each is a hard rule of its own."""
    weights: WeightsPart = WeightsPart()
    """What counts how much."""
    finish: FinishPart = FinishPart()
    """What the paved ground is finished with."""


class LaterPart(Part):
    """Later phases."""

    years: Annotated[float, Field(ge=0, le=50)] = 0.0
    """Years from one phase to the next."""
    escalation: Share | None = None
    """Share by which prices rise in a year."""


class AllowancesPart(Part):
    """Owner's allowances."""

    appliances: Literal["in", "out"] = "in"
    """Whether appliances are in the sums; `out` lists them at no price."""
    furniture: Money | None = None
    """Sum that is set aside for furniture, in phase 1."""


class BudgetPart(Part):
    """Money for phase 1."""

    ceiling: Money | None = None
    """Most that phase 1 may cost, every step below included."""
    contingency: Share | None = None
    """Share added for what is not known yet; 0.15 where nothing is said."""
    overhead: Share | None = None
    """Share added to the sum of all lines for running the firm."""
    markup: Share | None = None
    """Share added after overhead for profit."""
    tax: Share | None = None
    """Share added last of all, such as sales tax."""
    later: LaterPart = LaterPart()
    """When later phases are built, and how prices rise until then."""
    allowances: AllowancesPart = AllowancesPart()
    """What the owner buys or sets aside."""
    estimate_class: Annotated[int, Field(ge=1, le=5)] | None = None
    """Class of the estimate of phase 1, 5 (an idea) to 1 (bid on); 4 where nothing is said."""
    phases: dict[Literal["2", "3", "4", "5", "6", "7", "8", "9"], Money] = Field(default_factory=dict)
    """Most that a later phase may cost, contingency included, by its number, such as {2: 40000}."""


class OptionsPart(Part):
    """How many concepts, on what grid, from what seed."""

    count: Annotated[int, Field(ge=1, le=100)] = 12
    """How many concepts."""
    grid_step: (
        Annotated[
            float,
            PlainValidator(_grid_step),
            WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string"}]}),
        ]
        | None
    ) = None
    """Step of the grid that rooms lie on; 1 ft, or 0.25 m in a metric file, where nothing is said."""
    seed: Annotated[int, Field(ge=0, le=2**31 - 1)] = 7
    """Seed of the search."""


class ScenarioPart(Part):
    """A scenario: site, brief, budget and options wanted."""

    schema_version: Annotated[Literal[1], BeforeValidator(_version)]
    """Version of this format."""
    name: Name
    """What the yard is called."""
    units: Literal["ft", "m"]
    """Unit of bare numbers."""
    currency: Annotated[str, Field(pattern="^[A-Z]{3}$")] = "USD"
    """Currency of the budget, three capitals."""
    site: SitePart
    """What is there."""
    brief: BriefPart
    """What is wanted."""
    budget: BudgetPart = BudgetPart()
    """Money for phase 1."""
    prices: Name | None = None
    """Price book of one's own: a file (.yaml, .json or .csv) beside this one; else invented demonstration prices."""
    sketches: Annotated[tuple[SketchPart, ...], Field(max_length=20)] = ()
    """Layouts of one's own, shown beside the concepts."""
    options: OptionsPart = OptionsPart()
    """Concepts wanted."""
