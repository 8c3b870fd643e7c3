"""All measures of one layout together."""

from dataclasses import dataclass

from optimizer.appraisal.appraisal import Appraisal
from optimizer.appraisal.cook import cook_measures
from optimizer.appraisal.cost import cost_of
from optimizer.appraisal.cost_sheet import Cost
from optimizer.appraisal.destinations import destinations
from optimizer.appraisal.enclosure import enclosure_measures
from optimizer.appraisal.finish import finish_plan, finish_take_off
from optimizer.appraisal.jogs import paved_jogs
from optimizer.appraisal.order import aligned_share, order_measures
from optimizer.appraisal.party import party_measures
from optimizer.appraisal.paths import path_measures
from optimizer.appraisal.paved import overpaved_sqft, paved_share
from optimizer.appraisal.roofs import empty_roofs
from optimizer.appraisal.seats import people_seated, worth_placed
from optimizer.appraisal.site import SeenShares, site_measures
from optimizer.appraisal.sun import sun_of
from optimizer.appraisal.table import table_way
from optimizer.appraisal.take_off import all_charges
from optimizer.appraisal.terraces import bare_doors
from optimizer.appraisal.walking import later_walking_ft, trip_lengths, walking_ft
from optimizer.brief import Relation
from optimizer.catalogue import PriceBook
from optimizer.derived import Derived
from optimizer.planting import planting_measures

SIGHT = ("in_view", "out_of_view")


@dataclass(frozen=True, slots=True)
class Given:
    """What the caller has at hand, who has the independent check: wishes missed, shares of sight, the cost."""

    missed: tuple[Relation, ...] = ()
    seen: SeenShares = ()
    cost: Cost | None = None


def priced(derived: Derived, book: PriceBook) -> Cost:
    """Cost sheet of a layout."""
    return cost_of(all_charges(derived, book), book, derived.scenario.brief.budget)


def appraise(derived: Derived, book: PriceBook, given: Given | None = None) -> Appraisal:
    """Exact figures of a layout."""
    scenario, placed, found = derived.scenario, derived.placed, derived.laid
    site, brief, paths = scenario.site, scenario.brief, derived.paths
    given = given or Given()
    planting = planting_measures(site, placed, book, derived.planting)
    finish = finish_plan(site, brief.finish, placed, found.legs, paths)
    paved = paved_share(site, placed, paths)
    return Appraisal(
        cost=given.cost or priced(derived, book),
        ways=found.ways,
        legs=found.legs,
        planting=planting,
        destinations=destinations(site, placed, derived.planting),
        overpaved_sqft=overpaved_sqft(site, paved),
        bare_doors=bare_doors(site, brief, placed),
        empty_roofs=empty_roofs(site, placed),
        jogs=paved_jogs(derived),
        shut_off=derived.shut_off,
        finish=finish_take_off(finish, placed),
        cook=cook_measures(derived),
        order=order_measures(site, placed),
        enclosure=enclosure_measures(site, placed, derived.grading, derived.planting),
        paths=path_measures(brief.trips, found.trips, found.legs, area_sqft=paths.area),
        party=party_measures(scenario, placed, book, found),
        walking_ft=walking_ft(brief.trips, found.ways),
        later_walking_ft=later_walking_ft(brief.trips, placed, derived.network),
        trips_ft=trip_lengths(brief.trips, found.ways),
        worth=worth_placed(placed),
        seats=people_seated(placed),
        aligned_share=aligned_share(site, placed.layout),
        leftover_share=planting.unused_share,
        paved_share=paved,
        sun_h=sun_of(derived),
        sight_missed=tuple(wish.between for wish in given.missed if wish.kind in SIGHT),
        site=site_measures(derived, seen=given.seen),
        table=table_way(derived),
        wishes_missed=tuple(wish.words for wish in given.missed),
    )
