"""Parts of the page: each shows one thing, from ready words."""

from ui.components.budget_view import budget_view
from ui.components.comparison_view import comparison_view
from ui.components.concept_list import concept_list
from ui.components.concept_sheet import concept_sheet
from ui.components.finalist_form import finalist_form
from ui.components.handover import handover
from ui.components.hold_form import hold_form
from ui.components.markup import Markup, element, image, paragraph, plain, problem_list, show
from ui.components.scenario_choice import scenario_choice
from ui.components.search_progress import search_progress
from ui.components.strip import strip
from ui.components.style import page_style
from ui.components.wishes_form import wishes_form

__all__ = [
    "Markup",
    "budget_view",
    "comparison_view",
    "concept_list",
    "concept_sheet",
    "element",
    "finalist_form",
    "handover",
    "hold_form",
    "image",
    "page_style",
    "paragraph",
    "plain",
    "problem_list",
    "scenario_choice",
    "search_progress",
    "show",
    "strip",
    "wishes_form",
]
