"""The concepts of the steps, measured and in words; and all of it told once more of a result that has them."""

from collections.abc import Iterator, Sequence
from dataclasses import fields, replace
from decimal import Decimal
from functools import partial
from itertools import pairwise

from optimizer.brief import WORTH_DIGITS
from optimizer.concepts.budgets.points import Bought, BudgetPoint, BudgetSet, Step, points_of, unit_of
from optimizer.concepts.budgets.possible import Possible, at_ceiling
from optimizer.concepts.budgets.words import step_words
from optimizer.concepts.case import Case
from optimizer.concepts.option import Option

_EVEN = 0.005


def told_options(case: Case, steps: Sequence[Step]) -> tuple[Option, ...]:
    """A concept for each step, measured under the step's own ceiling and in its own level."""
    say = partial(step_words, rooms=case.rooms, currency=case.book.currency)
    reasons = [say(step.bought, None, step.ceiling) for step in steps[:1]]
    reasons += [say(after.bought, step.bought, after.ceiling - step.ceiling) for step, after in pairwise(steps)]
    numbered = enumerate(zip(steps, reasons, strict=True), 1)
    return tuple(_option(case, number, step, reason) for number, (step, reason) in numbered)


def _option(case: Case, number: int, step: Step, reason: str) -> Option:
    case = at_ceiling(case.at_level(step.bought.level), step.ceiling)
    option = case.described(step.bought.layout, case.in_full(step.bought.layout))
    return case.advised(replace(option, id=f"budget-{number:02}", rank=number, reason=reason))


def steps_again(found: BudgetSet) -> list[Step]:
    """The steps that a result tells of, by what its points say."""
    return [
        Step(point.ceiling, Bought(option.layout, point.cost, point.worth, option.score, point.level))
        for point, option in zip(found.points, found.options, strict=True)
    ]


def options_again(told: Option, fresh: Option) -> Iterator[str]:
    """What a concept says that neither check nor appraisal knows: its place, its reason, and why rooms are left out."""
    for name in ("id", "rank", "reason", "left_out", "differs_by"):
        said, counted = getattr(told, name), getattr(fresh, name)
        if said != counted:
            yield f"{told.id}: its {name} is {said!r}, found {counted!r}"


def points_again(possible: Possible, found: BudgetSet, fresh: Sequence[Option]) -> Iterator[str]:
    """What the points say that their concepts, measured again as `fresh`, and the least prices do not bear out."""
    if possible.steps != found.possible:
        yield "what is possible within each ceiling is not so by the least prices"
    bought = [Step(point.ceiling, _bought(option)) for point, option in zip(found.points, fresh, strict=True)]
    again = points_of(bought, possible.most_worth, [option.id for option in fresh])
    for number, (told, point) in enumerate(zip(found.points, again, strict=True), 1):
        yield from (f"step {number}: {words}" for words in _of_point(told, point))
    yield from _of_ceilings(found, unit_of(found.highest))


def _bought(option: Option) -> Bought:
    """What a concept is bought as: in its level, with the worth that it has there."""
    worth = next((at.worth for at in option.at_levels if at.level == option.level), option.appraisal.worth)
    cost = option.appraisal.cost.phase(1)
    return Bought(option.layout, cost, round(worth, WORTH_DIGITS), option.score, option.level)


def _of_point(told: BudgetPoint, found: BudgetPoint) -> Iterator[str]:
    for field in fields(BudgetPoint):
        said, counted = getattr(told, field.name), getattr(found, field.name)
        if not (abs(said - counted) <= _EVEN if isinstance(said, float) else said == counted):
            yield f"its {field.name} is {said}, found {counted}"


def _of_ceilings(found: BudgetSet, unit: Decimal) -> Iterator[str]:
    """Ceilings are whole figures within the range that was asked for, and each step has more worth than the last."""
    for number, point in enumerate(found.points, 1):
        if point.ceiling % unit and point.ceiling != found.lowest:
            yield f"step {number}: its ceiling of {point.ceiling} is no whole figure"
        if not found.lowest <= point.ceiling <= found.highest:
            yield f"step {number}: its ceiling of {point.ceiling} is not from {found.lowest} to {found.highest}"
    for number, (one, other) in enumerate(pairwise(found.points), 2):
        if other.ceiling <= one.ceiling or other.worth <= one.worth:
            yield f"step {number}: it does not buy more than the step before, for more money"
    layouts = len({option.layout for option in found.options})
    if found.layouts_found < layouts:
        yield f"it has {layouts} layouts, and says that {found.layouts_found} were found"
