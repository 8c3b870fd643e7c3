"""A small invented yard with its rooms and a layout that keeps every rule, most of them just so."""

from dataclasses import replace
from decimal import Decimal

from optimizer.brief import Brief, Budget, Guests, Hold, Relation, RoomKind, RoomWish, Trip
from optimizer.catalogue import Item, SizedChoice, SizedRoom, kind_rules
from optimizer.layout import Front, Layout, Placement
from optimizer.scenario import Scenario, load_scenario
from optimizer.site import (
    Building,
    Door,
    Entrance,
    KeepOut,
    Place,
    Setbacks,
    Site,
    Structure,
    Surrounding,
    Tree,
    Window,
)

PLAIN_SITE = Site(
    place=Place(40.0, -83.0, "America/New_York"),
    boundary=((0, 0), (60, 0), (60, 40), (0, 40)),
    edge_names=("street", "east", "rear", "west"),
    setbacks=(Setbacks(paving=2, wall=2, roof=5, fire=5, water=5, equipment=2),) * 4,
    buildings=(
        Building(
            "house",
            ((10, 0), (50, 0), (50, 12), (10, 12)),
            height_ft=20,
            floor_z_ft=1.0,
            doors=(Door("kitchen door", (20, 12), 3, (0, 1)),),
            windows=(Window("bath window", (40, 12), 4, (0, 1)),),
        ),
    ),
    entrances=(Entrance("gate", (0, 20), 5, (1, 0)),),
    structures=(Structure("old roof", ((44, 30), (54, 30), (54, 38), (44, 38)), may_hold=("table",)),),
    trees=(Tree("oak", (6, 34), trunk_diameter_ft=0.8, canopy_radius_ft=5),),
    keep_outs=(KeepOut("drain strip", ((56, 0), (60, 0), (60, 40), (56, 40)), allow=("path", "lawn")),),
    surroundings=(Surrounding("street eye", at=(30, -6)), Surrounding("rear eye", at=(30, 50))),
)

FOUR_AT_TABLE = (Item("table", 4, 4, 6, 4), *(Item("chair", x, y, 1, 1, seats=1) for x in (5, 8) for y in (3, 8)))
"""A table with a chair for each everyday guest of the plain yard, in a room of 14 x 12 ft."""
TWELVE_ON_SOFAS = (Item("sofa", 1, 1, 10, 2, seats=6), Item("sofa", 1, 9, 10, 2, seats=6))
"""A seat for everybody at its party, none of them at a table."""

KEPT_RELATIONS = (
    Relation(("cooker", "table"), "touching", shared_edge_ft=8),
    Relation(("cooker", "table"), "faces"),
    Relation(("nook", "table"), "near", within_ft=3),
    Relation(("nook", "table"), "apart", at_least_ft=3),
    Relation(("nook", "rear eye"), "in_view"),
    Relation(("nook", "street eye"), "out_of_view"),
)


def plain_yard(*relations: Relation, ceiling: str | None = "1000") -> Scenario:
    """The yard with these relations; a ceiling is a decimal number of money."""
    brief = Brief(
        Guests(4, 12),
        rooms=tuple(RoomWish(room.name, room.rules.kind) for room in plain_rooms()),
        relations=relations,
        trips=(Trip("kitchen door", "cooker", 10), Trip("gate", "table", 4)),
        budget=Budget(Decimal(ceiling) if ceiling else None),
    )
    return Scenario("plain yard", "ft", "USD", PLAIN_SITE, brief, "", "")


def sized(
    name: str, kind: RoomKind, width_ft: float, depth_ft: float, *, required: bool = False, **facts: str
) -> SizedRoom:
    """A room with one choice, all of its sides open."""
    choice = SizedChoice("plain", width_ft, depth_ft, seats=4, worth=5.0)
    return SizedRoom(name, kind_rules(kind), required, phase=1, choices=(choice,), **facts)  # type: ignore[arg-type]


def plain_rooms(*changed: SizedRoom) -> tuple[SizedRoom, ...]:
    """Table, cooker, fire and nook; a changed room stands in for its namesake, or is added."""
    rooms = {
        "table": sized("table", "gathering", 14, 12, required=True),
        "cooker": sized("cooker", "kitchen", 8, 6),
        "fire": sized("fire", "fire", 8, 8, fuel="gas"),
        "nook": sized("nook", "nook", 8, 7),
    }
    return tuple({**rooms, **{room.name: room for room in changed}}.values())


def laid_table(name: str, width_ft: float, depth_ft: float) -> SizedRoom:
    """A gathering whose table reaches to within 2 ft of its edges."""
    room = sized(name, "gathering", width_ft, depth_ft, required=True)
    table = Item("table", 2.0, 2.0, width_ft - 4, depth_ft - 4)
    return replace(room, choices=(replace(room.choices[0], furniture=(table,)),))


def cornered(name: str, kind: RoomKind, width_ft: float, depth_ft: float) -> SizedRoom:
    """A room with a chair in each of its corners."""
    room = sized(name, kind, width_ft, depth_ft, required=True)
    corners = [(x, y) for x in (0.0, width_ft - 2) for y in (0.0, depth_ft - 2)]
    chairs = tuple(Item("chair", x, y, 2, 2, seats=1) for x, y in corners)
    return replace(room, choices=(replace(room.choices[0], furniture=chairs),))


def seating(name: str, kind: RoomKind, width_ft: float, depth_ft: float, *seats: Item) -> SizedRoom:
    """A room that must be there, plain or for the same money and worth `laid` with these seats."""
    room = sized(name, kind, width_ft, depth_ft, required=True)
    laid = replace(room.choices[0], label="laid", furniture=seats, seats=sum(item.seats for item in seats))
    return replace(room, choices=(room.choices[0], laid))


def bathing(name: str, *, required: bool = False, **facts: object) -> SizedRoom:
    """A pool of 8 x 6 ft with 4 ft of deck round it, 8 ft of it at its front."""
    room = sized(name, "pool", 16, 18, required=required)
    water = Item("water", 4.0, 4.0, 8.0, 6.0)
    return replace(room, choices=(replace(room.choices[0], furniture=(water,), seats=0),), **facts)  # type: ignore[arg-type]


def circled(name: str, across_ft: float, *, required: bool = False) -> SizedRoom:
    """A gas fire so far across, with a pit in its middle."""
    room = sized(name, "fire", across_ft, across_ft, required=required, fuel="gas")
    pit = Item("fire pit", across_ft / 2 - 1, across_ft / 2 - 1, 2.0, 2.0, shape="circle")
    return replace(room, choices=(replace(room.choices[0], shape="circle", furniture=(pit,)),))


def round_at(room: str, x_ft: float, y_ft: float, across_ft: float, *, choice: str = "plain") -> Placement:
    """One placed circle, by the lower left corner of its square."""
    return Placement(room, choice, x_ft, y_ft, across_ft, across_ft, "+y", shape="circle")


def stand(
    room: str, x_ft: float, y_ft: float, width_ft: float, depth_ft: float, front: Front = "+y", *, choice: str = "plain"
) -> Placement:
    """One placed room."""
    return Placement(room, choice, x_ft, y_ft, width_ft, depth_ft, front)


KEPT = {
    "table": stand("table", 24, 16, 14, 12),
    "cooker": stand("cooker", 38, 18, 6, 8, "-x"),
    "fire": stand("fire", 10, 22, 8, 8),
    "nook": stand("nook", 28, 31, 8, 7),
}


def plain_layout(*changed: Placement, without: tuple[str, ...] = ()) -> Layout:
    """The layout that keeps every rule, with rooms moved, added, or left out."""
    placements = {**KEPT, **{placement.room: placement for placement in changed}}
    return Layout(tuple(placement for name, placement in placements.items() if name not in without))


def on_site(scenario: Scenario, **changes: object) -> Scenario:
    """The scenario with parts of its site replaced."""
    return replace(scenario, site=replace(scenario.site, **changes))  # type: ignore[arg-type]


def holding(scenario: Scenario, *holds: Hold) -> Scenario:
    """The scenario with these holds."""
    return replace(scenario, brief=replace(scenario.brief, holds=holds))


def tight_thimble() -> Scenario:
    """The smallest demonstration yard under a ceiling that its kitchen does not fit under, where much is refused soon."""
    yard = load_scenario("scenarios/thimble-yard.yaml")
    budget = replace(yard.brief.budget, ceiling=Decimal(60000))
    return replace(yard, brief=replace(yard.brief, budget=budget))
