"""From the records of a result file back to options."""

from decimal import Decimal
from typing import Final, get_args

from optimizer.appraisal import (
    Appraisal,
    Cost,
    CostLine,
    Destination,
    EnclosureMeasures,
    OrderMeasures,
    PathMeasures,
    RoomBacks,
    WayRun,
)
from optimizer.brief import RULES
from optimizer.check import Finding
from optimizer.circulation import Leg, LegUse, Way
from optimizer.layout import Front, Layout, Placement
from optimizer.options import Conflict, DiffersBy, LeftOut, Option, Proof, Remedy, SearchRecord, WayOut
from optimizer.planting import PlantingMeasures
from optimizer.results.cook_record import cooks_from
from optimizer.results.finish_record import finish_from
from optimizer.results.party_record import party_from
from optimizer.results.site_record import site_from
from optimizer.results.untrusted import Record, refuse

FARTHEST_FT: Final = 100_000.0
"""No yard reaches farther; geometry on greater numbers loses its exactness."""
MOST_UNITS: Final = 1e9
"""Of an item on a cost line; products with prices stay exact decimals."""


def option_from(record: Record) -> Option:
    """Option of a record; ResultError where a value is missing or of the wrong type."""
    proof = record.record("proof")
    differs = record.record_or_none("differs_by")
    return Option(
        id=_id(record),
        rank=record.whole("rank"),
        score=record.number("score"),
        losses=_numbers(record.record("losses")),
        reason=record.text("reason"),
        layout=Layout(tuple(_placement(room) for room in record.records("rooms", most=80))),
        left_out=tuple(LeftOut(left.text("name"), left.text("why")) for left in record.records("left_out", most=80)),
        appraisal=_appraisal(record),
        findings=tuple(_finding(finding) for finding in record.records("findings")),
        cautions=record.texts("cautions"),
        permits=record.texts("permits") if "permits" in record.values else (),
        remedies=tuple(map(_remedy, record.records("remedies"))) if "remedies" in record.values else (),
        proof=Proof(
            proof.one_of("arrangement", ("proven", "bounded")), proof.number("objective"), proof.number("bound")
        ),
        differs_by=None if differs is None else DiffersBy(differs.number("value"), differs.text("words")),
    )


def search_from(record: Record) -> SearchRecord:
    """How the search went, of its record."""
    return SearchRecord(
        status=record.one_of("status", ("proven", "bounded", "undecided", "nothing_fits")),
        objective=record.number_or_none("objective"),
        bound=record.number_or_none("bound"),
        terms=_numbers(record.record("terms")),
        seconds=record.number("seconds"),
        seed=record.whole("seed"),
        repeatable=record.truth("repeatable"),
        stopped=record.truth("stopped"),
        arrangements_seen=record.whole("arrangements_seen"),
        refused=record.texts("refused") if "refused" in record.values else (),
    )


def conflict_from(record: Record) -> Conflict:
    """Why nothing fits, of its record."""
    return Conflict(
        rules=tuple((rule.text("id"), rule.text("sentence"), rule.texts("rooms")) for rule in record.records("rules")),
        words=record.text("words", longest=20_000),
        ways_out=() if record.values.get("ways_out") is None else tuple(map(_way_out, record.records("ways_out"))),
    )


def _way_out(record: Record) -> WayOut:
    operations = record.records("patch")
    return WayOut(record.text("text"), tuple((o.text("op"), o.text("path"), o.values.get("value")) for o in operations))


def _remedy(record: Record) -> Remedy:
    return Remedy(record.text("words"), record.money("amount"), record.points("outline", largest=FARTHEST_FT))


def _id(record: Record) -> str:
    # An id becomes part of a file's name and of an address.
    name = record.text("id", longest=40)
    if not (name.isascii() and name.replace("-", "").replace("_", "").isalnum()):
        refuse("letters, digits, - and _", name, f"{record.where}.id")
    return name


def _numbers(record: Record) -> tuple[tuple[str, float], ...]:
    return tuple((name, record.number(name)) for name in record.values)


def _placement(record: Record) -> Placement:
    return Placement(
        room=record.text("name"),
        choice=record.text("choice"),
        x_ft=record.number("x_ft", largest=FARTHEST_FT),
        y_ft=record.number("y_ft", largest=FARTHEST_FT),
        width_ft=_size(record, "width_ft"),
        depth_ft=_size(record, "depth_ft"),
        front=record.one_of("front", get_args(Front)),
    )


def _size(record: Record, key: str) -> float:
    size_ft = record.number(key, largest=FARTHEST_FT)
    if size_ft <= 0:
        refuse("a size above 0", size_ft, f"{record.where}.{key}")
    return size_ft


def _appraisal(record: Record) -> Appraisal:
    measures = record.record("measures")
    return Appraisal(
        cost=_cost(record.record("cost")),
        ways=tuple(_way(path) for path in record.records("paths")),
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
        legs=_legs(record),
        paths=_paths(measures),
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


def _way(record: Record) -> Way:
    return Way(
        between=record.pair("between"),
        width_ft=record.number("width_ft", largest=FARTHEST_FT),
        points=record.points("points", largest=FARTHEST_FT),
        length_ft=record.number("length_ft"),
    )


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


def _paths(measures: Record) -> PathMeasures:
    """Measures of paths; those of a result that was made before they were measured are empty."""
    if measures.values.get("paths") is None:
        return PathMeasures()
    paths = measures.record("paths")
    runs = (WayRun(*run.pair("between"), run.whole("bends"), run.number("detour")) for run in paths.records("main"))
    return PathMeasures(paths.number("area_sqft"), paths.number("length_ft"), tuple(runs))


def _legs(record: Record) -> tuple[Leg, ...]:
    """Paved legs; in a result that was made before ways shared any, each way was paved on its own."""
    if record.values.get("legs") is None:
        ways = map(_way, record.records("paths"))
        return tuple(Leg(way.points, way.width_ft, "main", (way.between,)) for way in ways)
    return tuple(_leg(leg) for leg in record.records("legs"))


def _leg(record: Record) -> Leg:
    return Leg(
        points=record.points("points", largest=FARTHEST_FT),
        width_ft=record.number("width_ft", largest=FARTHEST_FT),
        use=record.one_of("use", get_args(LegUse)),
        trips=record.pairs("trips"),
    )


def _cost(record: Record) -> Cost:
    phases = record.record("phases")
    return Cost(
        lines=tuple(_cost_line(line) for line in record.records("lines")),
        phases=tuple((_phase(phases, name), phases.money(name)) for name in phases.values),
        total=record.money("total"),
        low=record.money("low"),
        high=record.money("high"),
    )


def _phase(phases: Record, name: str) -> int:
    if not (name.isascii() and name.isdigit() and len(name) <= 3):
        refuse("the number of a phase", name, phases.where)
    return int(name)


def _cost_line(record: Record) -> CostLine:
    return CostLine(
        phase=record.whole("phase"),
        room=record.text("room"),
        item=record.text("item"),
        # By its shortest text, so that a quantity written as 12.35 comes back as 12.35.
        quantity=Decimal(repr(record.number("quantity", largest=MOST_UNITS))),
        unit=record.text("unit"),
        unit_price=record.money("unit_price"),
        amount=record.money("amount"),
    )


def _finding(record: Record) -> Finding:
    return Finding(
        rule=record.one_of("rule", tuple(RULES)),
        rooms=record.texts("rooms"),
        amount=record.number("amount"),
        unit=record.text("unit"),
        words=record.text("words"),
    )
