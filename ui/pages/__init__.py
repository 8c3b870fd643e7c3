"""The pages."""

from ui.pages.concepts import concepts_page

__all__ = ["concepts_page"]
