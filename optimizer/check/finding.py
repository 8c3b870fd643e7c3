"""One result of the independent check."""

from dataclasses import dataclass

from optimizer.brief import RULES, RuleId


@dataclass(frozen=True, slots=True)
class Finding:
    """A broken hard rule: which, between whom, by how much."""

    rule: RuleId
    rooms: tuple[str, ...]
    amount: float
    unit: str
    words: str

    @property
    def sentence(self) -> str:
        """What should hold."""
        return RULES[self.rule].sentence
