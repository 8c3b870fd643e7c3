"""From the records of a result file back to options."""

from typing import get_args

from optimizer.brief import RULES
from optimizer.check import Finding
from optimizer.concepts import Conflict, DiffersBy, LeftOut, Option, Proof, Remedy, SearchRecord, WayOut
from optimizer.layout import Front, Layout, Placement
from optimizer.results.rebuild_appraisal import appraisal_from
from optimizer.results.untrusted import FARTHEST_FT, Record, refuse


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
        appraisal=appraisal_from(record),
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


def _finding(record: Record) -> Finding:
    return Finding(
        rule=record.one_of("rule", tuple(RULES)),
        rooms=record.texts("rooms"),
        amount=record.number("amount"),
        unit=record.text("unit"),
        words=record.text("words"),
    )
