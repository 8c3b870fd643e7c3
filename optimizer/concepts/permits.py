"""Permits and approvals that a concept is likely to need: a prompt for whoever asks the local offices."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from shapely import Point, Polygon

from optimizer.appraisal import Appraisal
from optimizer.brief import RoomKind
from optimizer.catalogue import root_rings
from optimizer.catalogue.steps import wall_needs_permit
from optimizer.concepts.words import listed
from optimizer.layout import Placed, outline
from optimizer.scenario import Scenario

PAVED_SHARE: Final = 0.45
"""Paved share of the open yard above which stormwater rules are likely; common practice, no source."""
NEAR_LIMIT: Final = 0.9
"""Share of a local limit of paving from which on it is worth telling; common practice, no source."""
_OVERLAP_SQFT: Final = 0.05
PROMPT: Final = "Questions to ask, not advice: the local office decides whether a permit is needed, and which."


@dataclass(frozen=True, slots=True)
class _Concept:
    """What the prompts are made from."""

    scenario: Scenario
    placed: Placed
    appraisal: Appraisal | None

    def names(self, *kinds: RoomKind) -> list[str]:
        """Names of the placed rooms of these kinds."""
        return [room.name for room in self.placed.of_kind(*kinds)]


def permits_for(scenario: Scenario, placed: Placed, appraisal: Appraisal | None = None) -> tuple[str, ...]:
    """Permits and approvals likely needed, each with why; the first line says what the list is.

    Walls and the paved share are judged from the appraisal, and left out without one.
    """
    concept = _Concept(scenario, placed, appraisal)
    asks = (_structures, _walls, _trades, _fire, _water, _ground, _trees, _stormwater)
    found = (words for ask in asks for words in ask(concept))
    return (PROMPT, *found, *_ALWAYS) if len(placed) else ()


_ALWAYS: Final = (
    "Utility marking: have lines in the ground marked before anybody digs; in the US call 811 two to three days ahead.",
    "Owners' association: where there is one, it approves what is seen from outside.",
)


def _structures(concept: _Concept) -> Iterator[str]:
    roofed = [there.name for there, choice in concept.placed.chosen if "roof" in there.room.built_as(choice)]
    if roofed:
        yield f"Building permit: a roof is built over the {listed(roofed)}; footings, wind and snow are checked."


def _walls(concept: _Concept) -> Iterator[str]:
    ground = concept.appraisal.site.ground if concept.appraisal else None
    if ground is not None and wall_needs_permit(ground.tallest_wall_ft):
        yield (
            "Building permit: a wall is likely above 4 ft from the bottom of its footing, the usual limit "
            "(IRC R105.2); a lower one needs it too where it bears a load or a slope."
        )


def _trades(concept: _Concept) -> Iterator[str]:
    hot = concept.placed.of_kind("kitchen", "fire")
    gas = [room.name for room in hot if room.kind == "kitchen" or room.room.fuel != "wood"]
    if gas:
        yield f"Gas permit: a line to the {listed(gas)} is sized, run and tested by a licensed trade."
    if electric := concept.names("kitchen", "pool", "reserve"):
        yield f"Electrical permit: circuits to the {listed(electric)} are protected for wet places and inspected."
    sinks = [room.name for room in concept.placed if room.items("sink")]
    if sinks:
        yield f"Plumbing permit: the sink of the {listed(sinks)} needs water that drains in frost, and a legal drain."


def _fire(concept: _Concept) -> Iterator[str]:
    wood = [fire.name for fire in concept.placed.of_kind("fire") if fire.room.fuel == "wood"]
    if wood:
        yield f"Fire department: the {listed(wood)} burns wood; open fire may need a permit, or be banned at times."


def _water(concept: _Concept) -> Iterator[str]:
    if water := concept.names("pool"):
        yield (
            f"Pool permit: the {listed(water)} with its barrier, gates and door alarms; where water is deeper than "
            "24 in, model codes ask for a barrier 48 in high (ISPSC 305). Digging, bonding and filling are inspected."
        )
    if water := concept.names("reserve"):
        yield (
            f"Pool permit and barrier, later: the {listed(water)} holds room for water; where it is deeper than 24 in, "
            "model codes ask for a barrier 48 in high (ISPSC 305)."
        )


def _ground(concept: _Concept) -> Iterator[str]:
    site = concept.scenario.site
    shapes = [room.shape for room in concept.placed]
    plain = [area for area in site.keep_outs if area.kind == "plain"]
    crossed = [area.name for area in plain if any(_overlap(shape, outline(area.outline)) for shape in shapes)]
    if crossed:
        yield f"Easement: work on the {listed(crossed)} needs the consent of whoever holds the right."
    if ground := [a.name for a in site.keep_outs if a.kind.startswith("septic")]:
        yield f"Health department: work near the {listed(ground)}; they decide on distances and loads there."
    if over := [a.name for a in site.keep_outs if a.kind == "overhead line"]:
        yield f"Power company: the {listed(over)} over the yard; they decide on heights over roofs, water and machines."


def _trees(concept: _Concept) -> Iterator[str]:
    site, rings = concept.scenario.site, root_rings(concept.scenario.site)
    shapes = [room.shape for room in concept.placed if room.rules.built_as]
    near = [
        tree.name
        for tree in site.trees
        if any(shape.distance(Point(tree.at)) < rings.outer_trunks * tree.trunk_diameter_ft for shape in shapes)
    ]
    if near:
        yield f"Tree ordinance: building in the root ring of the {listed(near)} may need a permit and an arborist."


def _stormwater(concept: _Concept) -> Iterator[str]:
    limit = concept.scenario.site.paved_share_limit
    asked = PAVED_SHARE if limit is None else min(PAVED_SHARE, NEAR_LIMIT * limit)
    if concept.appraisal is not None and concept.appraisal.paved_share >= asked:
        told = "" if limit is None else f"; the local limit is {limit:.0%}"
        yield f"Stormwater: {concept.appraisal.paved_share:.0%} of the open yard is paved{told}."


def _overlap(one: Polygon, other: Polygon) -> bool:
    return bool(one.intersection(other).area > _OVERLAP_SQFT)
