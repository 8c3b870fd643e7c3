"""An idea in words for an owner: what the plan is like, with places by name."""

from collections.abc import Callable, Iterable
from typing import Final

from optimizer.appraisal import Appraisal
from optimizer.catalogue import IdeaName, Tie
from optimizer.concepts.ideas import Plan, idea_name, tie_of
from optimizer.concepts.option import Idea
from optimizer.concepts.whereabouts import OUT_IN_THE_GARDEN, whereabouts
from optimizer.concepts.words import listed
from optimizer.layout import Placed, PlacedRoom
from optimizer.scenario import Scenario


def idea_of(scenario: Scenario, placed: Placed, appraisal: Appraisal) -> Idea | None:
    """The idea of a layout with these figures; None for none."""
    plan = Plan(scenario, placed, appraisal)
    name = idea_name(plan)
    if name is None:
        return None
    tie, words = tie_of(plan, name), _WORDS[name](plan)
    return Idea(name, words) if tie is None else Idea(f"{name}, {tie}", f"{words}, {_TIED[tie](plan)}")


def _round_water(plan: Plan) -> str:
    assert plan.by_water is not None
    pool, rooms = plan.by_water
    return f"{_named(rooms)} round the {pool.name}"


def _under_roof(plan: Plan) -> str:
    structure = plan.roofed[0][1]
    return f"{_named(room for room, roof in plan.roofed if roof is structure)} under the {structure.name}"


def _beside(plan: Plan) -> str:
    assert plan.garden_door is not None
    return f"{_table(plan)} beside the house, round the corner from the {plan.garden_door.name}"


def _garden(plan: Plan) -> str:
    assert plan.table is not None
    off_ft = plan.off_house_ft(plan.table) or 0.0
    away = f"{off_ft / plan.scenario.unit_ft:,.0f} {plan.scenario.units} from the house"
    return f"{_table(plan)} out in the garden{_where(plan, plan.table)}, {away}"


def _axis(plan: Plan) -> str:
    assert plan.axis is not None
    opening, met = plan.axis
    return f"{_table(plan)} and the {met} in one line, straight out from the {opening.name}"


def _down(plan: Plan) -> str:
    return f"terraces that step down the slope, from the {plan.terraces[0].name} {_below(plan)}"


def _below(plan: Plan) -> str:
    first, *others = plan.terraces
    levels = dict(plan.appraisal.site.ground.levels) if plan.appraisal.site.ground else {}
    drop = (levels[first.name] - levels[others[-1].name]) / plan.scenario.unit_ft
    return f"down to the {listed([room.name for room in others])}, {drop:.1f} {plan.scenario.units} in all"


def _garden_room(plan: Plan) -> str:
    return f"a court{_at_house(plan)}, and {_apart(plan)}"


def _apart(plan: Plan) -> str:
    return listed([f"the {room.name} out in the garden{_where(plan, room)}" for room in plan.garden_rooms])


def _court(plan: Plan) -> str:
    assert plan.table is not None
    return f"one court{_at_house(plan)}: {_named([plan.table, *plan.others])} close together"


def _row(plan: Plan) -> str:
    assert plan.table is not None
    return f"{_named([plan.table, *plan.others])} in a row along the house"


_WORDS: Final[dict[IdeaName, Callable[[Plan], str]]] = {
    "round the water": _round_water,
    "under the old roof": _under_roof,
    "beside the house": _beside,
    "out in the garden": _garden,
    "along one axis": _axis,
    "stepping down": _down,
    "a court and a garden room": _garden_room,
    "one court at the house": _court,
    "in a row along the house": _row,
}


_TIED: Final[dict[Tie, Callable[[Plan], str]]] = {
    "stepping down": lambda plan: f"terraces {_below(plan)}",
    "with a garden room": _apart,
    "in one court": lambda plan: f"{_named(plan.away)} close to {_table(plan)}",
}


def _table(plan: Plan) -> str:
    assert plan.table is not None
    return f"the {plan.table.name}"


def _named(rooms: Iterable[PlacedRoom]) -> str:
    return listed([f"the {room.name}" for room in rooms])


def _where(plan: Plan, room: PlacedRoom) -> str:
    """Where a room of the garden lies, after a space; nothing where no more is to be said than that it is there."""
    words = whereabouts(room.placement, plan.scenario.site)
    return "" if words == OUT_IN_THE_GARDEN else f" {words}"


def _at_house(plan: Plan) -> str:
    assert plan.table is not None
    return _where(plan, plan.table) or " at the house"
