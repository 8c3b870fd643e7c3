"""The objective once more, with the exact figures: named losses in money, each at least 0."""

from collections.abc import Collection, Sequence
from decimal import Decimal

from optimizer.appraisal import (
    Appraisal,
    bare_doors_loss,
    cook_loss,
    destinations_loss,
    empty_roofs_loss,
    order_loss,
    shut_off_loss,
    smoke_loss_units,
)
from optimizer.catalogue import SizedRoom, rates
from optimizer.scenario import Scenario

Losses = tuple[tuple[str, float], ...]


def losses_of(
    scenario: Scenario,
    rooms: Sequence[SizedRoom],
    appraisal: Appraisal,
    *,
    left_out: Collection[str],
    worth_rate: float,
    wish_weights: float,
    waiting_cost: Decimal = Decimal(0),
) -> Losses:
    """Named losses of a layout in money.

    `left_out` are the rooms that it has no place for, `worth_rate` is the money that a point of worth stands for,
    `wish_weights` the sum of the weights of the wished relations that are not kept, and `waiting_cost` what rooms cost
    that the layout puts into a later phase: it saves nothing to build later what there is money for now.
    """
    weights, rate = scenario.brief.weights, rates()
    walked_ft = appraisal.walking_ft + appraisal.later_walking_ft + rate.stands_in * scenario.brief.ends_at(left_out)
    most = sum(max(choice.worth for choice in room.choices) for room in rooms)
    return (
        ("cost", weights.cost * rate.cost * float(appraisal.cost.phase(1) + waiting_cost)),
        ("walking", weights.walking * rate.walking * walked_ft),
        ("worth", weights.worth * worth_rate * max(0.0, most - appraisal.worth)),
        ("sun", weights.sun * rate.sun * sum(missed for _, _, missed in appraisal.sun_h)),
        ("order", weights.order * order_loss(appraisal.order)),
        ("terraces", weights.order * bare_doors_loss(scenario.site, scenario.brief, appraisal.bare_doors)),
        ("roofs", weights.order * empty_roofs_loss(scenario.site, rooms, appraisal.empty_roofs, scenario.book)),
        ("party", weights.worth * rate.party * appraisal.party.without),
        ("cook", weights.walking * cook_loss(appraisal.cook)),
        ("destinations", weights.walking * destinations_loss(appraisal.destinations)),
        ("access", weights.worth * shut_off_loss(scenario.brief, appraisal.shut_off, scenario.book)),
        ("ways", weights.order * rate.way_off * appraisal.paths.off),
        ("jogs", weights.order * rate.jog * appraisal.jogs),
        ("paving", weights.order * rate.overpaved * appraisal.overpaved_sqft),
        ("leftovers", weights.order * rate.leftover * appraisal.planting.leftover_sqft),
        ("lawn", weights.order * rate.scattered_lawn * appraisal.planting.scattered_sqft),
        ("enclosure", weights.order * rate.unbacked * appraisal.enclosure.missing),
        ("smoke", weights.smoke * rate.smoke * smoke_loss_units(scenario.brief, rooms, appraisal.site.smoke)),
        ("sight", weights.sight * rate.sight * wish_weights),
    )
