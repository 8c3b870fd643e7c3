"""The cost sheet as a table: phases, rooms, lines, stated steps, totals, ranges, and what moves it most."""

from collections.abc import Iterator

from ui.components.markup import Markup, element, show
from ui.view_models import CostRow, CostSheet, PhaseCost, RoomCost


def cost_table(cost: CostSheet) -> None:
    """Show a cost sheet."""
    rows = [row for phase in cost.phases for row in _phase(phase)]
    total = _row("Total, all phases", cost.total, css="sum")
    likely = f"At concept stage expect {cost.low} to {cost.high}."
    said = [likely, *(phase.expect for phase in cost.phases), cost.sure, cost.levels, cost.prices]
    notes = (element("p", words, css="quiet") for words in said if words)
    show(element("table", element("tbody", *rows, total), css="sheet-table"), *notes, *_movers(cost))


def cost_summary(cost: CostSheet) -> None:
    """Show where the money goes: what each room and stated step of a phase comes to, its sum and its range."""
    rows = [row for phase in cost.phases for row in _sums(phase)]
    said = [*(phase.expect for phase in cost.phases), cost.levels, cost.prices]
    notes = (element("p", words, css="quiet") for words in said if words)
    show(element("table", element("tbody", *rows), css="sheet-table"), *notes)


def _sums(phase: PhaseCost) -> Iterator[Markup]:
    yield from (_row(f"{phase.title} · {room.room}", room.total) for room in phase.rooms)
    yield from (_row(f"{phase.title} · {step.item}, {step.quantity}", step.amount) for step in phase.steps)
    yield _row(f"{phase.title}: total", phase.total, css="sum")


def _movers(cost: CostSheet) -> Iterator[Markup]:
    if cost.movers:
        yield element("p", "What moves phase 1 most, as a share of its uncertainty:", css="quiet")
        yield element("table", element("tbody", *map(_line, cost.movers)), css="sheet-table")


def _phase(phase: PhaseCost) -> Iterator[Markup]:
    for room in phase.rooms:
        yield from _room(phase, room)
    yield from (_row(f"{phase.title}: {step.item}, {step.quantity}", step.amount) for step in phase.steps)
    yield _row(f"{phase.title}: total", phase.total, css="sum")


def _room(phase: PhaseCost, room: RoomCost) -> Iterator[Markup]:
    yield _row(f"{phase.title} · {room.room}", room.total, css="group", head="th")
    yield from (_line(row) for row in room.rows)


def _line(row: CostRow) -> Markup:
    counted = [element("li", part) for part in row.parts]
    folded = [element("details", element("summary", "How it is counted"), element("ul", *counted))] if counted else []
    item = element("td", row.item, element("small", row.quantity), *folded)
    return element("tr", item, element("td", row.amount, css="amount"))


def _row(label: str, amount: str, *, css: str = "", head: str = "td") -> Markup:
    return element("tr", element("th", label, scope="row"), element(head, amount, css="amount"), css=css)
