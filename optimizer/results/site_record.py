"""Measures of the site's facts as a plain record, and back."""

from typing import Any

from optimizer.appraisal import GroundMeasures, SiteMeasures, SmokeShare
from optimizer.results.untrusted import Record
from optimizer.site import Point


def site_record(site: SiteMeasures) -> dict[str, Any]:
    """Record of the measures, under the names of `measures` in options.json."""
    return {
        "ground": site.ground and _ground_record(site.ground),
        "views": [
            {"from": looker, "of": seen, "kind": kind, "seen_share": share} for looker, seen, kind, share in site.sight
        ],
        "smoke": [{"from": source, "at": place, "season_share": share} for source, place, share in site.smoke],
        "arrival_ft": site.arrival_ft,
        "risers_seen_share": site.risers_seen_share,
        "axes": [{"opening": opening, "meets": meets} for opening, meets in site.axes],
        "focal_point": site.focal_point and _focal_record(*site.focal_point),
    }


def site_from(measures: Record) -> SiteMeasures:
    """Measures of a record; those of a result that was made before they were measured are empty."""
    if "ground" not in measures.values:
        return SiteMeasures()
    ground = measures.record_or_none("ground")
    return SiteMeasures(
        ground=None if ground is None else _ground_from(ground),
        sight=tuple(
            (view.text("from"), view.text("of"), view.text("kind"), view.number("seen_share"))
            for view in measures.records("views")
        ),
        smoke=tuple(
            SmokeShare(s.text("from"), s.text("at"), s.number("season_share")) for s in measures.records("smoke")
        ),
        arrival_ft=measures.number_or_none("arrival_ft"),
        risers_seen_share=measures.number_or_none("risers_seen_share"),
        axes=tuple((axis.text("opening"), _text_or_none(axis, "meets")) for axis in measures.records("axes")),
        focal_point=_focal_from(measures),
    )


def _ground_record(ground: GroundMeasures) -> dict[str, Any]:
    return {
        "levels": [{"room": room, "level_ft": level} for room, level in ground.levels],
        "risers": ground.risers,
        "cut_bcy": ground.cut_bcy,
        "fill_ccy": ground.fill_ccy,
        "away_lcy": ground.away_lcy,
        "wall_face_sqft": ground.wall_face_sqft,
        "tallest_wall_ft": ground.tallest_wall_ft,
        "guard_ft": ground.guard_ft,
        "undrained": list(ground.undrained),
        "flags": list(ground.flags),
    }


def _ground_from(record: Record) -> GroundMeasures:
    return GroundMeasures(
        levels=tuple((level.text("room"), level.number("level_ft")) for level in record.records("levels")),
        risers=record.whole("risers"),
        cut_bcy=record.number("cut_bcy"),
        fill_ccy=record.number("fill_ccy"),
        away_lcy=record.number("away_lcy"),
        wall_face_sqft=record.number("wall_face_sqft"),
        tallest_wall_ft=record.number("tallest_wall_ft"),
        guard_ft=record.number("guard_ft"),
        undrained=record.texts("undrained"),
        flags=record.texts("flags"),
    )


def _focal_record(at: Point, ways: int) -> dict[str, Any]:
    return {"x_ft": at[0], "y_ft": at[1], "ways": ways}


def _focal_from(measures: Record) -> tuple[Point, int] | None:
    if measures.values.get("focal_point") is None:
        return None
    found = measures.record("focal_point")
    return (found.number("x_ft"), found.number("y_ft")), found.whole("ways")


def _text_or_none(record: Record, key: str) -> str | None:
    return None if record.values.get(key) is None else record.text(key)
