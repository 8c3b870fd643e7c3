"""Measures of kitchens as plain records, and back."""

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any, Final

from optimizer.appraisal import CookMeasures, Landing, WorkZone
from optimizer.results.untrusted import Record

_SIDES: Final = ("lesser", "wider")


def cook_records(kitchens: Sequence[CookMeasures]) -> list[dict[str, Any]]:
    """Record of each kitchen."""
    return [
        {
            **asdict(kitchen),
            "crossed_by": list(map(list, kitchen.crossed_by)),
            "zone": _zone_record(kitchen.zone),
            "watches": dict(kitchen.watches),
        }
        for kitchen in kitchens
    ]


def _zone_record(zone: WorkZone) -> dict[str, Any]:
    return {
        "sides": [{"between": [start, end], "length_ft": length} for start, end, length in zone.sides_ft],
        "landings": [
            {"at": one.at, "asked_in": _widths(one.asked_in), "found_in": _widths(one.found_in)}
            for one in zone.landings
        ],
        "trash_ft": zone.trash_ft,
    }


def _widths(widths_in: tuple[float, float]) -> dict[str, float]:
    return dict(zip(_SIDES, widths_in, strict=True))


def cooks_from(measures: Record) -> tuple[CookMeasures, ...]:
    """Measures of kitchens; those of a result that was made before they were measured are empty."""
    return () if measures.values.get("cook") is None else tuple(map(_cook, measures.records("cook")))


def _cook(record: Record) -> CookMeasures:
    risers, watches = record.number_or_none("dish_risers"), record.record_or_none("watches")
    return CookMeasures(
        kitchen=record.text("kitchen"),
        work_ft=record.number("work_ft"),
        gathering=None if record.values.get("gathering") is None else record.text("gathering"),
        angle_deg=record.number_or_none("angle_deg"),
        to_table_ft=record.number_or_none("to_table_ft"),
        dish_ft=record.number_or_none("dish_ft"),
        crossed_by=record.pairs("crossed_by"),
        zone=_zone(record.record_or_none("zone")),
        dish_risers=None if risers is None else int(risers),
        past_stools_ft=record.number_or_none("past_stools_ft"),
        watches=() if watches is None else tuple((name, watches.number(name)) for name in watches.values),
    )


def _zone(zone: Record | None) -> WorkZone:
    """Work zone of a record; empty where it was not measured."""
    if zone is None:
        return WorkZone()
    return WorkZone(
        sides_ft=tuple((*side.pair("between"), side.number("length_ft")) for side in zone.records("sides")),
        landings=tuple(
            Landing(one.text("at"), _in(one.record("asked_in")), _in(one.record("found_in")))
            for one in zone.records("landings")
        ),
        trash_ft=zone.number_or_none("trash_ft"),
    )


def _in(widths: Record) -> tuple[float, float]:
    return (widths.number(_SIDES[0]), widths.number(_SIDES[1]))
