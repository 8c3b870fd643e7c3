"""From the record of an option back to its appraisal."""

from optimizer.appraisal import Appraisal, Destination, EnclosureMeasures, OrderMeasures, RoomBacks
from optimizer.planting import PlantingMeasures
from optimizer.results.cook_record import cooks_from
from optimizer.results.finish_record import finish_from
from optimizer.results.party_record import party_from
from optimizer.results.rebuild_cost import cost_from
from optimizer.results.rebuild_ways import legs_from, paths_from, way_from
from optimizer.results.site_record import site_from
from optimizer.results.untrusted import Record


def appraisal_from(record: Record) -> Appraisal:
    """Appraisal of an option's record; measures that an older result lacks are empty."""
    measures = record.record("measures")
    return Appraisal(
        cost=cost_from(record.record("cost")),
        ways=tuple(way_from(path) for path in record.records("paths")),
        walking_ft=measures.number("walking_ft"),
        trips_ft=tuple((*trip.pair("between"), trip.number("length_ft")) for trip in measures.records("trips")),
        worth=measures.number("worth"),
        seats=measures.whole("seats"),
        aligned_share=measures.number("aligned_share"),
        leftover_share=measures.number("leftover_share"),
        paved_share=measures.number("paved_share"),
        sun_h=_sun(measures),
        sight_missed=measures.record("sight").pairs("missed"),
        wishes_missed=measures.texts("wishes_missed"),
        site=site_from(measures),
        legs=legs_from(record),
        paths=paths_from(measures),
        order=_order(measures),
        cook=cooks_from(measures),
        destinations=_destinations(measures),
        overpaved_sqft=measures.number_or_none("overpaved_sqft") or 0.0,
        planting=_planting(measures),
        finish=finish_from(measures),
        enclosure=_enclosure(measures),
        party=party_from(measures),
    )


def _sun(measures: Record) -> tuple[tuple[str, float, float], ...]:
    if measures.values.get("sun") is None:
        return ()
    return tuple((sun.text("room"), sun.number("hours"), sun.number("missed_h")) for sun in measures.records("sun"))


def _planting(measures: Record) -> PlantingMeasures:
    """Measures of planting; those of a result that was made before they were measured are empty."""
    if measures.values.get("planting") is None:
        return PlantingMeasures()
    planting = measures.record("planting")
    beds, size = planting.record("beds_sqft"), planting.record("lawn_rectangle_ft")
    return PlantingMeasures(
        beds_sqft=tuple((reason, beds.number(reason)) for reason in beds.values),
        lawn_sqft=planting.number("lawn_sqft"),
        lawn_rectangle_ft=(size.number("long"), size.number("short")),
        leftover_sqft=planting.number("leftover_sqft"),
        unused_share=planting.number("unused_share"),
        narrow_share=planting.number("narrow_share"),
        paid_sqft=planting.number_or_none("paid_sqft") or 0.0,
    )


def _enclosure(measures: Record) -> EnclosureMeasures:
    """Backs of rooms; those of a result that was made before they were measured are empty."""
    if measures.values.get("enclosure") is None:
        return EnclosureMeasures()
    enclosure = measures.record("enclosure")
    rooms = (RoomBacks(r.text("room"), r.whole("wanted"), r.whole("backed")) for r in enclosure.records("rooms"))
    return EnclosureMeasures(tuple(rooms), enclosure.texts("backs_in_view"))


def _destinations(measures: Record) -> tuple[Destination, ...]:
    """Fires and nooks; empty for a result that was made before they were measured."""
    if measures.values.get("destinations") is None:
        return ()
    return tuple(
        Destination(
            found.text("room"),
            found.number_or_none("from_gathering_ft"),
            found.number_or_none("from_door_ft"),
            found.number("off_ft"),
        )
        for found in measures.records("destinations")
    )


def _order(measures: Record) -> OrderMeasures:
    """Measures of order; those of a result that was made before they were measured are empty."""
    if measures.values.get("order") is None:
        return OrderMeasures()
    order = measures.record("order")
    return OrderMeasures(
        unaligned_ft=order.number("unaligned_ft"),
        near_miss_ft=order.number("near_miss_ft"),
        off_structure_ft=order.number("off_structure_ft"),
        off_axis=order.whole("off_axis"),
        across_contour_ft=order.number("across_contour_ft"),
        disorder_ft=order.number("disorder_ft") if "disorder_ft" in order.values else 0.0,
        centred=order.texts("centred") if "centred" in order.values else (),
    )
