"""From the records of walks and paved legs back to them."""

from typing import get_args

from optimizer.appraisal import PathMeasures, WayRun
from optimizer.circulation import Leg, LegUse, Way
from optimizer.results.untrusted import FARTHEST_FT, Record


def way_from(record: Record) -> Way:
    """Walk of a record."""
    return Way(
        between=record.pair("between"),
        width_ft=record.number("width_ft", largest=FARTHEST_FT),
        points=record.points("points", largest=FARTHEST_FT),
        length_ft=record.number("length_ft"),
    )


def legs_from(record: Record) -> tuple[Leg, ...]:
    """Paved legs; in a result that was made before ways shared any, each way was paved on its own."""
    if record.values.get("legs") is None:
        ways = map(way_from, record.records("paths"))
        return tuple(Leg(way.points, way.width_ft, "main", (way.between,)) for way in ways)
    return tuple(_leg(leg) for leg in record.records("legs"))


def _leg(record: Record) -> Leg:
    return Leg(
        points=record.points("points", largest=FARTHEST_FT),
        width_ft=record.number("width_ft", largest=FARTHEST_FT),
        use=record.one_of("use", get_args(LegUse)),
        trips=record.pairs("trips"),
    )


def paths_from(measures: Record) -> PathMeasures:
    """Measures of paths; those of a result that was made before they were measured are empty."""
    if measures.values.get("paths") is None:
        return PathMeasures()
    paths = measures.record("paths")
    runs = (WayRun(*run.pair("between"), run.whole("bends"), run.number("detour")) for run in paths.records("main"))
    return PathMeasures(paths.number("area_sqft"), paths.number("length_ft"), tuple(runs))
