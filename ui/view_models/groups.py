"""Figures of a concept by what they are about, in words: order, ways, the cook, the party, the site."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from optimizer.appraisal import Appraisal, CookMeasures, TableWay
from optimizer.appraisal.cook import TO_TABLE_FT
from optimizer.appraisal.jogs import JOG_FT
from optimizer.appraisal.work_zone import SIDE_FT
from optimizer.concepts.words import listed
from ui.view_models.figure import Figure
from ui.view_models.site_figures import site_figures
from ui.view_models.words import Words, share_words

_PHASE_LABELS: Final = {"fire": "After the meal"}


@dataclass(frozen=True, slots=True)
class FigureGroup:
    """Figures under one heading."""

    heading: str
    figures: tuple[Figure, ...]


def figure_groups(appraisal: Appraisal, words: Words) -> tuple[FigureGroup, ...]:
    """Groups that have any figure."""
    groups = (
        FigureGroup("Order", tuple(_order(appraisal, words))),
        FigureGroup("Ways", tuple(_ways(appraisal, words))),
        FigureGroup("Beds and lawn", tuple(_planting(appraisal, words))),
        FigureGroup("The cook", tuple(figure for kitchen in appraisal.cook for figure in _cook(kitchen, words))),
        FigureGroup("The party", tuple(_party(appraisal, words))),
        FigureGroup("Sun, sight, ground and smoke", (*_sun(appraisal), *site_figures(appraisal.site, words))),
    )
    return tuple(group for group in groups if group.figures)


def _order(appraisal: Appraisal, words: Words) -> Iterator[Figure]:
    order = appraisal.order
    yield Figure(
        "Aligned edges", share_words(appraisal.aligned_share), "on a line shared with house, structure or room"
    )
    yield Figure(
        "Near misses", words.length(order.near_miss_ft), "of edges that almost line up: neither flush nor clearly apart"
    )
    if order.off_structure_ft:
        yield Figure(
            "Off the structure",
            words.length(order.off_structure_ft),
            "how far rooms are from lying centred or flush under it",
        )
    if order.centred:
        yield Figure("Centred", ", ".join(order.centred), "on the centre line of a door or window")
    if order.off_axis:
        yield Figure("Fire", "off centre", "not in line with a main door or window")
    for door in appraisal.bare_doors:
        yield Figure(f"At the {door}", "no terrace", "you step out onto a landing, and the terrace lies elsewhere")
    for structure in appraisal.empty_roofs:
        yield Figure(f"Under the {structure}", "no room", "the roof that stands there already is not used")
    for room, from_gathering, _, off in appraisal.destinations:
        if from_gathering is not None:
            handy = "a place of its own" if not off else f"{words.length(off)} too near or too far"
            yield Figure(f"{room} to gathering", words.length(from_gathering), handy)
    for backs in appraisal.enclosure.rooms:
        asked = f"sides with a wall, bed or hedge behind; {backs.wanted} wanted"
        yield Figure(f"Back, {backs.room}", str(backs.backed), asked)
    for fire in appraisal.enclosure.backs_in_view:
        yield Figure(f"Back, {fire}", "in view", "seen from a main door or window")


def _ways(appraisal: Appraisal, words: Words) -> Iterator[Figure]:
    paths = appraisal.paths
    yield Figure("Paved ways", words.area(paths.area_sqft), f"on {words.length(paths.length_ft)} of centre line")
    for start, end, bends, detour in paths.main:
        bent = "straight" if not bends else f"{bends} bend{'s' if bends > 1 else ''}"
        yield Figure(f"{start} to {end}", bent, f"{detour:.1f} times the straight line")
    if appraisal.jogs:
        yield Figure(
            "Jogs", str(appraisal.jogs), f"short steps in the edge of the paving, under {words.length(JOG_FT)}"
        )
    for reserve, future in appraisal.shut_off:
        yield Figure(f"Later {future}", "nothing drives in", f"no way from the street to the {reserve} is wide enough")
    if appraisal.table is not None:
        yield from _table(appraisal.table, words)


def _table(way: TableWay, words: Words) -> Iterator[Figure]:
    """How near the everyday table lies to the door that serves it."""
    if way.on_foot_ft is not None:
        steps = "" if way.risers is None else f", {way.risers} steps up or down"
        yield Figure("Everyday table", words.length(way.on_foot_ft), f"on foot from the {way.door}{steps}")


def _planting(appraisal: Appraisal, words: Words) -> Iterator[Figure]:
    planting = appraisal.planting
    for reason, area in planting.beds_sqft:
        yield Figure(f"Beds, {reason}", words.area(area))
    if planting.beds_sqft and planting.paid_sqft:
        paid = f"the sum for planting pays for {words.area(planting.paid_sqft)} of beds"
        yield Figure("Beds in all", words.area(sum(area for _, area in planting.beds_sqft)), paid)
    if planting.lawn_sqft:
        long, short = planting.lawn_rectangle_ft
        share = share_words(planting.lawn_rectangle_share)
        largest = f"the largest rectangle is {words.length(long)} by {words.length(short)}, {share} of it"
        yield Figure("Lawn", words.area(planting.lawn_sqft), largest)
    if planting.bank_sqft:
        yield Figure("Bank", words.area(planting.bank_sqft), "too steep to use or to mow: planted or left as it is")
    yield Figure("Land without a use", share_words(planting.unused_share), "of the open yard")
    yield Figure("Too narrow or small for lawn", share_words(planting.narrow_share), "of the open yard, and planted")


def _cook(kitchen: CookMeasures, words: Words) -> Iterator[Figure]:
    yield Figure("Work", words.length(kitchen.work_ft), f"round grill, sink and refrigerator of {kitchen.kitchen}")
    if kitchen.to_table_ft is not None and kitchen.angle_deg is not None:
        least, most = (words.length(bound) for bound in TO_TABLE_FT)
        yield Figure("Bar to table", words.length(kitchen.to_table_ft), f"handy from {least} to {most}")
        yield Figure("Looks at the table", f"{kitchen.angle_deg:.0f}°", "how far the cook turns from straight ahead")
    if kitchen.dish_ft is not None:
        yield Figure("From grill to table", words.length(kitchen.dish_ft), "over the bar to the table's edge")
    for start, end in kitchen.crossed_by:
        yield Figure("Crossed by", f"{start} to {end}", "guests walk across that way")
    yield from _counter(kitchen, words)


def _counter(kitchen: CookMeasures, words: Words) -> Iterator[Figure]:
    """What lies along the counter, before it, and in the cook's view."""
    for start, end, length_ft in kitchen.zone.off_sides:
        least, most = (words.length(bound) for bound in SIDE_FT)
        yield Figure(f"{start.capitalize()} to {end}", words.length(length_ft), f"handy from {least} to {most}")
    if kitchen.zone.missing:
        yield Figure(
            "Little counter", listed(kitchen.zone.missing), "less counter beside it than kitchen planners advise"
        )
    if kitchen.past_stools_ft is not None:
        yield Figure("Past the stools", words.length(kitchen.past_stools_ft), "clear from the bar's edge")
    for place, share in kitchen.watches:
        yield Figure(f"The cook sees, {place}", share_words(share), "from behind the bar")


def _party(appraisal: Appraisal, words: Words) -> Iterator[Figure]:
    party = appraisal.party
    if not party.people:
        return
    yield Figure(
        "Guests", str(party.people), f"on {party.seats} seats and {words.area(party.standing_sqft)} to stand on"
    )
    if party.without:
        yield Figure("Without a place", str(party.without), "neither a seat nor ground to stand on")
    for phase in party.phases:
        where = listed([f"{place} {count}" for place, count in phase.people if count])
        yield Figure(
            _PHASE_LABELS.get(phase.name, phase.name.capitalize()), str(sum(n for _, n in phase.people)), where
        )
    if party.worst:
        what = "way" if party.worst.at == "way" else "edge"
        between = " and ".join(party.worst.between)
        yield Figure(
            "Narrowest place",
            f"{words.length(party.worst.width_ft)} {what}",
            f"between {between}; flow grade {party.worst.grade}",
        )
    if party.remedy:
        amount = "nothing" if party.remedy.amount is None else words.money(party.remedy.amount)
        yield Figure("What would ease it", amount, words.signed(party.remedy.words))


def _sun(appraisal: Appraisal) -> Iterator[Figure]:
    for room, hours, missed in appraisal.sun_h:
        wish = "as wished" if missed < 0.05 else f"{missed:.1f} h less sun or shade than wished"
        yield Figure(f"Sun, {room}", f"{hours:.1f} h", f"direct, in its hours: {wish}")
