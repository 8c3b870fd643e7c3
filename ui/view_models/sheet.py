"""A concept opened: a paragraph, its figures, its checks, its proof and its cautions."""

from dataclasses import dataclass

from optimizer.appraisal import Appraisal
from optimizer.brief import RULES, Brief
from optimizer.check import Finding
from optimizer.concepts import Option, Proof
from optimizer.layout import Placement
from optimizer.scenario import Scenario
from ui.view_models.card import Card, card
from ui.view_models.cost_sheet import CostSheet, cost_sheet
from ui.view_models.figure import Figure
from ui.view_models.groups import FigureGroup, figure_groups
from ui.view_models.words import Words, listed, number_words, sentence, share_words, words_of


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
    paragraph: str
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


def sheet(option: Option, scenario: Scenario) -> Sheet:
    """Sheet of one concept of a scenario."""
    words = words_of(scenario)
    return Sheet(
        card=card(option, words),
        paragraph=_paragraph(option, scenario, words),
        figures=_figures(option.appraisal, scenario.brief, words),
        groups=figure_groups(option.appraisal, words),
        rooms=tuple(_room(place, scenario.brief, words) for place in option.layout.placements),
        left_out=tuple(Figure(left_out.room, sentence(words.signed(left_out.why))) for left_out in option.left_out),
        wishes_missed=option.appraisal.wishes_missed,
        cost=cost_sheet(option.appraisal.cost, words, option.parts),
        checks=_checks(option.findings),
        proof=_proof(option.proof, words),
        cautions=option.cautions,
        permits=option.permits,
        remedies=tuple(remedy.words for remedy in option.remedies),
    )


def _paragraph(option: Option, scenario: Scenario, words: Words) -> str:
    shown = card(option, words)
    parts = (
        shown.reason,
        f"It seats {shown.seats}. People walk {shown.walking} at one gathering.",
        _money_sentence(option, scenario, words),
        _left_out_sentence(shown),
        sentence(f"Compared with the nearest better concept: {words.signed(option.differs_by.words)}")
        if option.differs_by
        else "",
    )
    return " ".join(part for part in parts if part)


def _left_out_sentence(shown: Card) -> str:
    """Name what is left out, unless the reason has said it."""
    unsaid = tuple(room for room in shown.left_out if room not in shown.reason)
    return f"It does without {listed(unsaid)}." if unsaid else ""


def _money_sentence(option: Option, scenario: Scenario, words: Words) -> str:
    cost, ceiling = option.appraisal.cost, scenario.brief.budget.ceiling
    first = words.money(cost.phase(1))
    under = "" if ceiling is None else f" of a ceiling of {words.money(ceiling)}"
    later = cost.total - cost.phase(1)
    return f"Phase 1 costs {first}{under}{f'; later phases {words.money(later)}' if later else ''}."


def _figures(appraisal: Appraisal, brief: Brief, words: Words) -> tuple[Figure, ...]:
    return (
        Figure("Phase 1", words.money(appraisal.cost.phase(1)), "contingency included"),
        Figure("All phases", words.money(appraisal.cost.total), "contingency included"),
        Figure("Seats", str(appraisal.seats), f"drawn; the party has {brief.guests.party}"),
        Figure("Walking", words.length(appraisal.walking_ft), "all trips of one gathering"),
        Figure("Worth", number_words(appraisal.worth), "points of your wish list"),
        Figure("Paved", share_words(appraisal.paved_share), "of the open yard"),
    )


def _room(place: Placement, brief: Brief, words: Words) -> Figure:
    wish = brief.room(place.room)
    phase = wish.phase if wish else 1
    later = "" if phase == 1 else f"; hold here for phase {phase}"
    larger = f"; {_size(place.base, words)} before it was made larger to meet a line" if place.has_grown else ""
    return Figure(place.room, _size(place, words), f"{place.choice}{larger}{later}")


def _size(place: Placement, words: Words) -> str:
    return f"{words.length(place.width_ft)} × {words.length(place.depth_ft)}"


def _checks(findings: tuple[Finding, ...]) -> tuple[Check, ...]:
    broken = {finding.rule: finding.words for finding in findings}
    return tuple(Check(rule.sentence, rule.id not in broken, broken.get(rule.id, "")) for rule in RULES.values())


def _proof(proof: Proof | None, words: Words) -> str:
    if proof is None:
        return "The solver was not asked: how much better it could be is not known."
    if proof.arrangement == "proven":
        return "Proven: by the solver's own count, nothing better exists with these rooms in this arrangement."
    left = words.money(max(0.0, proof.objective - proof.bound))
    return (
        f"Not proven: by the solver's own count, up to {left} may still be saved with these rooms in this arrangement."
    )
