"""The page's steps, one a decision, and the frame that shows them."""

from ui.steps.frame import yard_page

__all__ = ["yard_page"]
