"""Every hard rule's part of the model, by the rule's id: one registry, as the check has its own."""

from typing import Final

from optimizer.brief import RuleId
from optimizer.instance.rules import cook, ground, neighbours, party, relations, sun, whole, yard
from optimizer.instance.rules.part import Limits, Part

PARTS: Final[dict[RuleId, Part]] = {
    **yard.PARTS,
    **ground.PARTS,
    **sun.PARTS,
    **neighbours.PARTS,
    **relations.PARTS,
    **whole.PARTS,
    **cook.PARTS,
    **party.PARTS,
}

__all__ = ["PARTS", "Limits", "Part"]
