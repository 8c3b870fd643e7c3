"""The finish on the plan: fields, border courses, turned accents, their words in the legend, and how much of each."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from optimizer.appraisal import FinishPlan, FinishTakeOff
from optimizer.appraisal.finish import TURN_DEG
from optimizer.brief import Brief, Pattern
from optimizer.catalogue import ChosenFinish
from optimizer.drawing.marks import Mark
from optimizer.drawing.outlines import areas_of
from optimizer.drawing.words import Units, area_text, length_text

_NOTHING_FT = 0.05
_SEAT_WALL = "furniture.seat wall"


def finish_marks(plan: FinishPlan) -> Iterator[Mark]:
    """Fields of ways and terraces first, then borders over them."""
    ways = plan.palette.pattern
    yield from areas_of(_laid("field", plan.palette.field, ways, 0.0), plan.ways)
    for terrace in plan.terraces:
        yield from areas_of(_laid("field", plan.palette.field, terrace.pattern, terrace.turn_deg), terrace.field)
    yield from areas_of(_laid("accent", plan.palette.accent, plan.accent_pattern, TURN_DEG), plan.accent)
    for border in (*(terrace.border for terrace in plan.terraces), plan.accent_border):
        yield from areas_of(_plain("border_course", plan.palette.border), border)


def capped(plan: FinishPlan, marks: Iterable[Mark]) -> Iterator[Mark]:
    """The same marks with seat walls as their caps."""
    cap = _plain("cap", plan.palette.cap)
    for mark in marks:
        yield replace(mark, role=cap) if mark.role == _SEAT_WALL else mark


def finish_legend(plan: FinishPlan) -> dict[str, str]:
    """Short words of the legend by role, a pattern once however its courses run; the sheet's note names materials."""
    palette = plan.palette
    laid = [] if plan.ways.is_empty else [(palette.pattern, 0.0)]
    turns = dict(reversed([*laid, *((terrace.pattern, terrace.turn_deg) for terrace in plan.terraces)]))
    names = {pattern: palette.field.material if pattern == "loose" else pattern for pattern in turns}
    fields = {_laid("field", palette.field, *one): f"{palette.field.color} {names[one[0]]}" for one in turns.items()}
    return {
        **fields,
        _plain("border_course", palette.border): f"{palette.border.color} border",
        _laid("accent", palette.accent, plan.accent_pattern, TURN_DEG): f"{palette.accent.color} accent",
        _plain("cap", palette.cap): f"{palette.cap.color} seat wall cap",
    }


def finish_words(plan: FinishPlan, amounts: FinishTakeOff, brief: Brief, units: Units) -> tuple[str, ...]:
    """One sentence of what is to be laid, and of what is ordered for it; none where nothing is paved."""
    if not amounts.field_sqft:
        return ()
    palette = plan.palette
    patterns = sorted({field.pattern for field in amounts.fields}) or [palette.pattern]
    field = f"{area_text(amounts.field_sqft, units)} of {palette.field.words}, {' and '.join(patterns)}"
    order = f"{area_text(amounts.field_order_sqft, units)} with what is cut away"
    like = f", like the {brief.finish.like}" if brief.finish.like else ""
    border = f"border {length_text(amounts.border_ft, units)} of {palette.border.words}{like}"
    accent = f"turned accent {area_text(amounts.accent_sqft, units)} of {palette.accent.words}"
    cap = f"caps {length_text(amounts.cap_ft, units)} of {palette.cap.words}"
    more = [accent] * (amounts.accent_sqft > 0) + [cap] * (amounts.cap_ft > _NOTHING_FT)
    level = f", {brief.finish_level}" if brief.finish_level else ""
    return (f"Finish{level}: {'; '.join([f'{field} ({order})', border, *more])}.",)


def _laid(what: str, finish: ChosenFinish, pattern: Pattern, turn_deg: float) -> str:
    return f"{_plain(what, finish)}.{pattern.replace(' ', '_')}.{turn_deg:.0f}"


def _plain(what: str, finish: ChosenFinish) -> str:
    return f"{what}.{finish.material.replace(' ', '_')}.{finish.color.replace(' ', '_')}"
