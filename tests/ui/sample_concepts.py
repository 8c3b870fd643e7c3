"""Four made-up concepts that differ, and the folder that a search leaves of them."""

from dataclasses import replace
from decimal import Decimal

from optimizer.catalogue import sized_rooms
from optimizer.concepts import DiffersBy, LeftOut, OptionSet, Proof, WithWithout
from optimizer.drawing import draw_plan
from optimizer.export import plan_svg
from optimizer.export.budget_picture import budget_picture
from optimizer.layout import Layout, Placement, placed_of
from optimizer.results import to_document, to_text
from optimizer.results.budgets import budgets_csv, budgets_document
from optimizer.results.with_without import with_without_csv
from tests.sample_budgets import sample_budgets
from tests.sample_run import SEARCH, sample_option, sample_scenario

_FIRST = {
    "gathering area": ("table for six", 60, 84, "+y"),
    "outdoor kitchen": ("modest", 60, 72, "+y"),
    "fire feature": ("modest", 28, 78, "+y"),
    "quiet nook": ("two chairs", 16, 86, "+y"),
}
_SECOND = {**_FIRST, "gathering area": ("table for eight", 62, 84, "+y"), "quiet nook": ("two chairs", 80, 74, "+y")}
_THIRD = {room: place for room, place in _SECOND.items() if room != "fire feature"}
_FOURTH = {**_FIRST, "water reserve": ("one size", 30, 98, "+y")}


def sample_concepts():
    """Give the made-up ranked set."""
    first = _option(1, _FIRST, "24000.00")
    second = _option(2, _SECOND, "26500.50", differs=DiffersBy(0.31, "the quiet nook lies east of the kitchen"))
    third = _option(3, _THIRD, "18200.00", differs=DiffersBy(0.4, "no fire feature"))
    fourth = _option(4, _FOURTH, "38900.00", differs=DiffersBy(0.2, "the reserve lies behind the fire feature"))
    bounded = replace(third, proof=Proof("bounded", 30_500.0, 29_000.0))
    return OptionSet(options=(first, second, bounded, fourth), search=SEARCH)


def write_ready(folder, option_set):
    """Write what the options command writes for the page."""
    scenario = sample_scenario()
    rooms = sized_rooms(scenario.brief)
    document = to_document(scenario, rooms, option_set, book=_book())
    (folder / "options.json").write_text(to_text(document), encoding="utf-8")
    compared = with_without_csv([WithWithout("fire feature", None, None, None, "")], currency=scenario.currency)
    (folder / "with-without.csv").write_text(compared, encoding="utf-8")
    (folder / "why.json").write_text(to_text(WHY), encoding="utf-8")
    for option in option_set.options:
        drawing = draw_plan(scenario, placed_of(rooms, option.layout), option.appraisal.ways, title=option.title)
        (folder / f"{option.id}.svg").write_text(plan_svg(drawing), encoding="utf-8")


WHY = {
    "question": "Why is the fire feature left out?",
    "answer": "It cannot be: with it, what is required costs at least 131,000 USD; the ceiling is 130,000 USD.",
    "answered": True,
    "rules": [{"id": "near", "sentence": "Stays near.", "rooms": ["fire feature", "gathering area"]}],
    "ways_out": [
        {
            "text": "raise the ceiling to 140,000 USD",
            "patch": [{"op": "replace", "path": "/budget/ceiling", "value": 140000}],
        }
    ],
}
"""An answer as the why command writes it."""


def write_ready_budgets(folder):
    """Write what the budgets command writes for the page; the first point in plain materials, the second in good."""
    scenario, found = sample_scenario(), sample_budgets()
    levels = (("plain", None), ("good", "plain"))
    points = zip(found.points, levels, strict=True)
    options = zip(found.options, levels, strict=True)
    found = replace(
        found,
        points=tuple(replace(point, level=now, level_before=before) for point, (now, before) in points),
        options=tuple(replace(option, level=now) for option, (now, _) in options),
    )
    document = budgets_document(scenario, sized_rooms(scenario.brief), found, book=_book())
    (folder / "budgets.json").write_text(to_text(document), encoding="utf-8")
    (folder / "budgets.csv").write_text(budgets_csv(found, currency="USD"), encoding="utf-8")
    (folder / "budgets.svg").write_text(budget_picture(scenario.name, found, "USD"), encoding="utf-8")
    for option in found.options:
        placed = placed_of(sized_rooms(scenario.brief), option.layout)
        drawing = draw_plan(scenario, placed, option.appraisal.ways, title=option.id)
        (folder / f"{option.id}.svg").write_text(plan_svg(drawing), encoding="utf-8")


def _book():
    from optimizer.catalogue import book_for

    return book_for(sample_scenario().currency)


def _option(rank, places, total, *, differs=None):
    sample = sample_option(f"c{rank}", rank=rank, score=30_000.0 + 500 * rank)
    wished = [room.name for room in sample_scenario().brief.rooms]
    cost = replace(
        sample.appraisal.cost, total=Decimal(total), phases=((1, Decimal(total) - 16100), (2, Decimal(16100)))
    )
    return replace(
        sample,
        layout=Layout(tuple(_placed(room, *place) for room, place in places.items())),
        left_out=tuple(LeftOut(room, "the budget ends before it") for room in wished if room not in places),
        appraisal=replace(sample.appraisal, cost=cost, walking_ft=1200.0 + 37 * rank, seats=6 + 2 * rank),
        differs_by=differs,
    )


def _placed(room, choice, x_ft, y_ft, front):
    sized = next(sized for sized in sized_rooms(sample_scenario().brief) if sized.name == room).choice(choice)
    return Placement(room, choice, float(x_ft), float(y_ft), sized.width_ft, sized.depth_ft, front)
