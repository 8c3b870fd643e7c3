"""All measures of one layout together."""

from dataclasses import dataclass

from optimizer.appraisal.appraisal import Appraisal
from optimizer.appraisal.cook import cook_measures
from optimizer.appraisal.cost import cost_of
from optimizer.appraisal.destinations import destinations
from optimizer.appraisal.enclosure import enclosure_measures
from optimizer.appraisal.finish import finish_plan, finish_take_off
from optimizer.appraisal.order import aligned_share, order_measures
from optimizer.appraisal.party import party_measures
from optimizer.appraisal.paths import path_measures
from optimizer.appraisal.paved import overpaved_sqft, paved_share
from optimizer.appraisal.seats import people_seated, worth_placed
from optimizer.appraisal.site import SeenShares, site_measures
from optimizer.appraisal.take_off import take_off
from optimizer.appraisal.walking import trip_lengths, walking_ft
from optimizer.brief import Relation
from optimizer.catalogue import PriceBook
from optimizer.circulation import Ways, way_polygon, ways
from optimizer.grading import grade
from optimizer.layout import Placed
from optimizer.planting import planting_measures, planting_of
from optimizer.scenario import Scenario

SIGHT = ("in_view", "out_of_view")
SunHours = tuple[tuple[str, float, float], ...]


@dataclass(frozen=True, slots=True)
class Given:
    """What the caller has at hand, who has the maps and the independent check.

    Hours of sun (room, hours, hours missed), wishes missed, shares of sight; and the ways, where they are laid already.
    """

    sun_h: SunHours = ()
    missed: tuple[Relation, ...] = ()
    seen: SeenShares = ()
    laid: Ways | None = None


def appraise(scenario: Scenario, placed: Placed, book: PriceBook, given: Given | None = None) -> Appraisal:
    """Exact figures of a layout."""
    site, brief = scenario.site, scenario.brief
    given = given or Given()
    found = given.laid or ways(site, brief, placed)
    paths = way_polygon(site, placed, found.legs)
    grading = grade(site, placed, found.ways)
    planted = planting_of(site, brief.relations, placed, paths)
    planting = planting_measures(site, placed, book, planted)
    finish = finish_plan(site, brief.finish, placed, found.legs, paths)
    charges = take_off(scenario, placed, path_area_sqft=paths.area, grading=grading)
    paved = paved_share(site, placed, paths)
    return Appraisal(
        cost=cost_of(charges, book, brief.budget.contingency),
        ways=found.ways,
        legs=found.legs,
        planting=planting,
        destinations=destinations(site, placed, planted),
        overpaved_sqft=overpaved_sqft(site, paved),
        finish=finish_take_off(finish, placed),
        cook=cook_measures(site, placed, found, grading),
        order=order_measures(site, placed),
        enclosure=enclosure_measures(site, placed, grading, planted),
        paths=path_measures(brief.trips, found.trips, found.legs, area_sqft=paths.area),
        party=party_measures(scenario, placed, book, found),
        walking_ft=walking_ft(brief.trips, found.ways),
        trips_ft=trip_lengths(brief.trips, found.ways),
        worth=worth_placed(placed),
        seats=people_seated(placed),
        aligned_share=aligned_share(site, placed.layout),
        leftover_share=planting.unused_share,
        paved_share=paved,
        sun_h=given.sun_h,
        sight_missed=tuple(wish.between for wish in given.missed if wish.kind in SIGHT),
        site=site_measures(scenario, placed, grading, found, seen=given.seen),
        wishes_missed=tuple(
            f"{wish.between[0]} {wish.kind.replace('_', ' ')} {wish.between[1]}" for wish in given.missed
        ),
    )
