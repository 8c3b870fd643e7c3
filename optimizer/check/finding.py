"""One result of the independent check."""

from dataclasses import dataclass

from optimizer.brief import RULES, RuleId


@dataclass(frozen=True, slots=True)
class Finding:
    """A broken hard rule: which, who is to blame, by how much.

    `rooms` names the placed rooms whose places break it and the things of the site that they break it with: those in
    the wrong place, at the ends of a flight or a way, or but for which the rule would hold. It is empty where the whole
    layout is to blame.
    """

    rule: RuleId
    rooms: tuple[str, ...]
    amount: float
    unit: str
    words: str

    @property
    def sentence(self) -> str:
        """What should hold."""
        return RULES[self.rule].sentence
