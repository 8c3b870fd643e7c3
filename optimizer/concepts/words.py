"""Small pieces of sentences."""

from collections.abc import Sequence


def listed(names: Sequence[str]) -> str:
    """Names in a row: one, one and other, one, another and a third."""
    return " and ".join(names) if len(names) < 3 else ", ".join(names[:-1]) + " and " + names[-1]


def capital(text: str) -> str:
    """Text with a capital at its start."""
    return f"{text[:1].upper()}{text[1:]}"
