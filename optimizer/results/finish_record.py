"""Take-off of the finish as a plain record, and back."""

from typing import Any, get_args

from optimizer.appraisal import FieldArea, FinishTakeOff
from optimizer.brief import Pattern
from optimizer.results.untrusted import Record


def finish_record(finish: FinishTakeOff) -> dict[str, Any]:
    """Record under `measures.finish`; areas and lengths as laid, `cuts` is the share to order on top."""
    return {
        "fields": [
            {
                "rooms": list(field.rooms),
                "pattern": field.pattern,
                "turn_deg": field.turn_deg,
                "area_sqft": field.area_sqft,
                "cuts": field.cuts,
            }
            for field in finish.fields
        ],
        "ways": {"area_sqft": finish.ways_sqft, "cuts": finish.ways_cuts},
        "field_order_sqft": finish.field_order_sqft,
        "border_ft": finish.border_ft,
        "accent": {"area_sqft": finish.accent_sqft, "cuts": finish.accent_cuts},
        "cap_ft": finish.cap_ft,
    }


def finish_from(measures: Record) -> FinishTakeOff:
    """Take-off of a record; that of a result that was made before it was measured is empty."""
    if measures.values.get("finish") is None:
        return FinishTakeOff()
    finish = measures.record("finish")
    ways, accent = finish.record("ways"), finish.record("accent")
    return FinishTakeOff(
        fields=tuple(_field(field) for field in finish.records("fields")),
        ways_sqft=ways.number("area_sqft"),
        ways_cuts=ways.number("cuts"),
        border_ft=finish.number("border_ft"),
        accent_sqft=accent.number("area_sqft"),
        accent_cuts=accent.number("cuts"),
        cap_ft=finish.number("cap_ft"),
    )


def _field(record: Record) -> FieldArea:
    return FieldArea(
        rooms=record.texts("rooms"),
        pattern=record.one_of("pattern", get_args(Pattern)),
        turn_deg=record.number("turn_deg"),
        area_sqft=record.number("area_sqft"),
        cuts=record.number("cuts"),
    )
