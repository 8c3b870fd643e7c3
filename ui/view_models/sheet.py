"""A concept opened: a paragraph, its figures, its checks, its proof and its cautions."""

from dataclasses import dataclass, replace

from optimizer.brief import RULES, Brief
from optimizer.check import Finding
from optimizer.concepts import ASKED_BY, Option, Proof, level_words
from optimizer.concepts.owner_notes import owner_notes
from optimizer.concepts.words import capital, choice_words, listed
from optimizer.layout import Placement
from optimizer.scenario import Scenario
from ui.view_models.card import Card, card
from ui.view_models.cost_sheet import CostSheet, cost_sheet, expected
from ui.view_models.deciding import Deciding, deciding, trips_said
from ui.view_models.figure import Figure
from ui.view_models.groups import FigureGroup, figure_groups
from ui.view_models.later import later_figures
from ui.view_models.words import Words, number_words, sentence, share_words, words_of


@dataclass(frozen=True, slots=True)
class Check:
    """A hard rule, and whether the independent check found it kept."""

    sentence: str
    is_kept: bool
    words: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """Everything that the opened concept shows, in ready words."""

    card: Card
    verdict: str
    """Whether it holds, how its cost lies to the ceiling, and what it leaves out, in a line."""
    paragraph: str
    deciding: tuple[Deciding, ...]
    """The five figures that decide."""
    figures: tuple[Figure, ...]
    groups: tuple[FigureGroup, ...]
    rooms: tuple[Figure, ...]
    left_out: tuple[Figure, ...]
    wishes_missed: tuple[str, ...]
    cost: CostSheet
    checks: tuple[Check, ...]
    proof: str
    cautions: tuple[str, ...]
    permits: tuple[str, ...]
    remedies: tuple[str, ...]
    later: tuple[Figure, ...] = ()


def sheet(option: Option, scenario: Scenario, *, for_designer: bool = False) -> Sheet:
    """Sheet of one concept of a scenario, for an owner unless for a designer."""
    words = words_of(scenario, for_designer=for_designer)
    return Sheet(
        card=card(option, scenario, words),
        verdict=_verdict(option, scenario, words),
        paragraph=_paragraph(option, scenario, words),
        deciding=deciding(option, scenario, words),
        figures=_figures(option, scenario.brief, words),
        groups=figure_groups(option.appraisal, words),
        rooms=tuple(_room(place, scenario.brief, words) for place in option.layout.placements),
        left_out=tuple(Figure(left.room, sentence(words.signed(_as_here(left.why)))) for left in option.left_out),
        wishes_missed=option.appraisal.wishes_missed,
        cost=replace(
            cost_sheet(option.appraisal.cost, words, option.uncertainty, scenario.book.said, option.parts),
            levels=words.signed(level_words(option, scenario.currency)),
        ),
        checks=_checks(option.findings, words),
        proof=_proof(option.proof, words),
        cautions=_cautions(option, scenario, words),
        permits=option.permits,
        remedies=tuple(words.signed(remedy.words) for remedy in option.remedies),
        later=later_figures(option, words),
    )


def _cautions(option: Option, scenario: Scenario, words: Words) -> tuple[str, ...]:
    """Every caution for a designer; for an owner in short, without those about money, which stand beside the sums."""
    if words.for_designer:
        return tuple(words.signed(caution) for caution in option.cautions)
    return owner_notes(scenario, option).care


def _as_here(why: str) -> str:
    """Why a room is left out, without the command that would tell more: beside it stands a button."""
    return why.removesuffix(ASKED_BY)


def _verdict(option: Option, scenario: Scenario, words: Words) -> str:
    broken = len(option.findings)
    holds = f"Breaks rules in {broken} place{'' if broken == 1 else 's'}" if broken else "Keeps every rule"
    first, ceiling = option.appraisal.cost.phase(1), scenario.brief.budget.ceiling
    if ceiling is None:
        money = words.money(first)
    else:
        side = "under" if first <= ceiling else "over"
        money = f"{words.money(abs(ceiling - first))} {side} the {words.term('ceiling')}"
    without = card(option, scenario, words).left_out
    rooms = f"without {listed(without)}" if without else "every wished room"
    return f"{holds} · {money} · {rooms}"


def _paragraph(option: Option, scenario: Scenario, words: Words) -> str:
    shown = card(option, scenario, words)
    parts = (
        shown.reason,
        f"It seats {shown.seats}. People walk {shown.walking} at one gathering.",
        _money_sentence(option, scenario, words),
        _left_out_sentence(shown),
        _differs_sentence(option, words),
    )
    return " ".join(part for part in parts if part)


def _differs_sentence(option: Option, words: Words) -> str:
    """Say how it differs from the nearest better one, unless the reason has said it."""
    if option.differs_by is None or all(part in option.reason for part in option.differs_by.words.split(", ")):
        return ""
    return sentence(f"Compared with the nearest better concept: {words.signed(option.differs_by.words)}")


def _left_out_sentence(shown: Card) -> str:
    """Name what is left out, unless the reason has said it."""
    unsaid = tuple(room for room in shown.left_out if room not in shown.reason)
    return f"It does without {listed(unsaid)}." if unsaid else ""


def _money_sentence(option: Option, scenario: Scenario, words: Words) -> str:
    cost, ceiling = option.appraisal.cost, scenario.brief.budget.ceiling
    first = words.money(cost.phase(1))
    limit = words.signed("a ceiling")
    under = "" if ceiling is None else f" of {limit} of {words.money(ceiling)}"
    later = cost.total - cost.phase(1)
    return f"Phase 1 costs {first}{under}{f'; later phases {words.money(later)}' if later else ''}."


def _figures(option: Option, brief: Brief, words: Words) -> tuple[Figure, ...]:
    appraisal = option.appraisal
    all_in, likely = words.signed("contingency included"), expected(appraisal.cost, words)
    return (
        Figure("Phase 1", words.money(appraisal.cost.phase(1)), f"expect {likely}; {all_in}" if likely else all_in),
        Figure("All phases", words.money(appraisal.cost.total), all_in),
        Figure("Seats", str(appraisal.seats), f"drawn; the party has {brief.guests.party}"),
        Figure("Walking", words.length(appraisal.walking_ft), trips_said(brief, option)),
        Figure(capital(words.term("worth")), number_words(appraisal.worth), "points of your wish list"),
        Figure("Paved", share_words(appraisal.paved_share), "of the open yard"),
    )


def _room(place: Placement, brief: Brief, words: Words) -> Figure:
    wish = brief.room(place.room)
    phase = wish.phase if wish else 1
    later = "" if phase == 1 else f"; kept free for phase {phase}"
    larger = f"; {_size(place.base, words)} before it was made larger to meet a line" if place.has_grown else ""
    return Figure(place.room, _size(place, words), f"{choice_words(place.choice)}{larger}{later}".removeprefix("; "))


def _size(place: Placement, words: Words) -> str:
    width = words.length(place.width_ft)
    return f"{width} across" if place.is_circle else f"{width} × {words.length(place.depth_ft)}"


def _checks(findings: tuple[Finding, ...], words: Words) -> tuple[Check, ...]:
    broken: dict[str, list[str]] = {rule: [] for rule in RULES}
    for finding in findings:
        broken[finding.rule].append(words.signed(finding.words))
    return tuple(
        Check(words.signed(rule.sentence), not broken[rule.id], sentence("; ".join(broken[rule.id])))
        for rule in RULES.values()
    )


def _proof(proof: Proof | None, words: Words) -> str:
    if proof is None:
        return "The solver was not asked: how much better it could be is not known."
    if proof.arrangement == "proven":
        return "Proven: by the solver's own count, nothing better exists with these rooms in this arrangement."
    left = words.money(max(0.0, proof.objective - proof.bound))
    return (
        f"Not proven: by the solver's own count, up to {left} may still be saved with these rooms in this arrangement."
    )
