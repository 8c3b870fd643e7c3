"""Parts of the page: each shows one thing, from ready words."""

from ui.components.budget_view import budget_view
from ui.components.comparison_view import comparison_view
from ui.components.concept_list import concept_list
from ui.components.concept_sheet import concept_sheet
from ui.components.markup import Markup, element, image, paragraph, problem_list, show
from ui.components.pictures import large_plan, small_picture
from ui.components.scenario_choice import scenario_choice
from ui.components.search_progress import search_progress
from ui.components.style import page_style

__all__ = [
    "Markup",
    "budget_view",
    "comparison_view",
    "concept_list",
    "concept_sheet",
    "element",
    "image",
    "large_plan",
    "page_style",
    "paragraph",
    "problem_list",
    "scenario_choice",
    "search_progress",
    "show",
    "small_picture",
]
