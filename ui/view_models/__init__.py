"""From a result to ready words and numbers: pure functions, no page in them."""

from optimizer.concepts.words import capital, listed
from ui.view_models.all_wishes import all_wishes
from ui.view_models.answers import Answer, answers
from ui.view_models.budgets import BudgetStep, budget_steps, limit_words
from ui.view_models.card import Card, card
from ui.view_models.comparison import Comparison, ComparisonRow, compare
from ui.view_models.cost_sheet import CostRow, CostSheet, PhaseCost, RoomCost, cost_sheet
from ui.view_models.deciding import Deciding, deciding
from ui.view_models.figure import Figure
from ui.view_models.improvement import Improved, improved_told
from ui.view_models.later import LaterWords, later_words
from ui.view_models.phases import PhaseWords, phase_words_of
from ui.view_models.progress import Progress, progress
from ui.view_models.sheet import Check, Sheet, sheet
from ui.view_models.summary import Summary, ending, scenario_summary
from ui.view_models.why import Told, told
from ui.view_models.words import CAUTION, Words, number_words, sentence, share_words, words_of

__all__ = [
    "CAUTION",
    "Answer",
    "BudgetStep",
    "Card",
    "Check",
    "Comparison",
    "ComparisonRow",
    "CostRow",
    "CostSheet",
    "Deciding",
    "Figure",
    "Improved",
    "LaterWords",
    "PhaseCost",
    "PhaseWords",
    "Progress",
    "RoomCost",
    "Sheet",
    "Summary",
    "Told",
    "Words",
    "all_wishes",
    "answers",
    "budget_steps",
    "capital",
    "card",
    "compare",
    "cost_sheet",
    "deciding",
    "ending",
    "improved_told",
    "later_words",
    "limit_words",
    "listed",
    "number_words",
    "phase_words_of",
    "progress",
    "scenario_summary",
    "sentence",
    "share_words",
    "sheet",
    "told",
    "words_of",
]
