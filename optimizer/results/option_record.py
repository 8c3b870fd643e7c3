"""One option as the plain record that options.json holds. What is not computed is None."""

from collections.abc import Sequence
from dataclasses import asdict
from decimal import Decimal
from typing import Any

from optimizer.appraisal import Appraisal, Cost, EnclosureMeasures, PathMeasures
from optimizer.catalogue import SizedRoom
from optimizer.check import Finding
from optimizer.circulation import Leg, Way
from optimizer.layout import Placement
from optimizer.options import Option, Remedy
from optimizer.planting import PlantingMeasures
from optimizer.results.cook_record import cook_records
from optimizer.results.finish_record import finish_record
from optimizer.results.party_record import party_record
from optimizer.results.site_record import site_record


def option_record(rooms: Sequence[SizedRoom], option: Option) -> dict[str, Any]:
    """Record of an option. Lengths in feet, money as text with two decimals."""
    by_name = {room.name: room for room in rooms}
    ground = option.appraisal.site.ground
    levels = dict(ground.levels) if ground else {}
    return {
        "id": option.id,
        "rank": option.rank,
        "score": option.score,
        "losses": dict(option.losses),
        "reason": option.reason,
        "rooms": [_room(by_name[place.room], place, levels.get(place.room)) for place in option.layout.placements],
        "left_out": [{"name": left.room, "why": left.why} for left in option.left_out],
        "paths": [_path(way) for way in option.appraisal.ways],
        "legs": [_leg(leg) for leg in option.appraisal.legs],
        "cost": _cost(option.appraisal.cost),
        "measures": _measures(option.appraisal),
        "findings": [_finding(finding) for finding in option.findings],
        "cautions": list(option.cautions),
        "permits": list(option.permits),
        "remedies": [_remedy(remedy) for remedy in option.remedies],
        "proof": {
            "arrangement": option.proof.arrangement,
            "objective": option.proof.objective,
            "bound": option.proof.bound,
        },
        "differs_by": option.differs_by and {"value": option.differs_by.value, "words": option.differs_by.words},
    }


def money(amount: Decimal) -> str:
    """Money as text with two decimals."""
    return f"{amount:.2f}"


def _remedy(remedy: Remedy) -> dict[str, Any]:
    outline = [list(point) for point in remedy.outline]
    return {"words": remedy.words, "amount": money(remedy.amount), "outline": outline}


def _room(room: SizedRoom, place: Placement, level_ft: float | None) -> dict[str, Any]:
    choice = room.choice(place.choice)
    return {
        "name": place.room,
        "kind": room.rules.kind,
        "choice": place.choice,
        "phase": room.phase,
        "x_ft": place.x_ft,
        "y_ft": place.y_ft,
        "width_ft": place.width_ft,
        "depth_ft": place.depth_ft,
        "front": place.front,
        "shape": "rectangle",
        "seats": choice and choice.seats,
        "level_ft": level_ft,
    }


def _path(way: Way) -> dict[str, Any]:
    return {
        "between": list(way.between),
        "width_ft": way.width_ft,
        "length_ft": way.length_ft,
        "points": [list(point) for point in way.points],
    }


def _leg(leg: Leg) -> dict[str, Any]:
    return {
        "use": leg.use,
        "width_ft": leg.width_ft,
        "points": [list(point) for point in leg.points],
        "trips": [list(pair) for pair in leg.trips],
    }


def _cost(cost: Cost) -> dict[str, Any]:
    return {
        "total": money(cost.total),
        "low": money(cost.low),
        "high": money(cost.high),
        "phases": {str(phase): money(amount) for phase, amount in cost.phases},
        "lines": [
            {
                "phase": line.phase,
                "room": line.room,
                "item": line.item,
                "quantity": float(line.quantity),
                "unit": line.unit,
                "unit_price": money(line.unit_price),
                "amount": money(line.amount),
            }
            for line in cost.lines
        ],
    }


def _measures(appraisal: Appraisal) -> dict[str, Any]:
    return {
        "walking_ft": appraisal.walking_ft,
        "worth": appraisal.worth,
        "seats": appraisal.seats,
        "aligned_share": appraisal.aligned_share,
        "leftover_share": appraisal.leftover_share,
        "paved_share": appraisal.paved_share,
        "paths": _paths(appraisal.paths),
        "order": {**asdict(appraisal.order), "centred": list(appraisal.order.centred)},
        "enclosure": _enclosure(appraisal.enclosure),
        "cook": cook_records(appraisal.cook),
        "destinations": [destination._asdict() for destination in appraisal.destinations],
        "overpaved_sqft": appraisal.overpaved_sqft,
        "planting": _planting(appraisal.planting),
        "finish": finish_record(appraisal.finish),
        "trips": [{"between": [start, end], "length_ft": length} for start, end, length in appraisal.trips_ft],
        # No entry at all means that the sun was not computed, not that it is missed nowhere.
        "sun": [{"room": room, "hours": hours, "missed_h": missed} for room, hours, missed in appraisal.sun_h] or None,
        "sight": {"missed": [list(pair) for pair in appraisal.sight_missed]},
        "wishes_missed": list(appraisal.wishes_missed),
        "steps": appraisal.site.ground and appraisal.site.ground.risers,
        "party": party_record(appraisal.party),
        **site_record(appraisal.site),
    }


def _paths(paths: PathMeasures) -> dict[str, Any]:
    runs = [{"between": [start, end], "bends": bends, "detour": detour} for start, end, bends, detour in paths.main]
    return {"area_sqft": paths.area_sqft, "length_ft": paths.length_ft, "main": runs}


def _enclosure(enclosure: EnclosureMeasures) -> dict[str, Any]:
    return {
        "rooms": [room._asdict() for room in enclosure.rooms],
        "backs_in_view": list(enclosure.backs_in_view),
        "missing": enclosure.missing,
    }


def _planting(planting: PlantingMeasures) -> dict[str, Any]:
    return {
        **asdict(planting),
        "beds_sqft": dict(planting.beds_sqft),
        "lawn_rectangle_ft": dict(zip(("long", "short"), planting.lawn_rectangle_ft, strict=True)),
    }


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "sentence": finding.sentence,
        "rooms": list(finding.rooms),
        "amount": finding.amount,
        "unit": finding.unit,
        "words": finding.words,
    }
