"""No way leads through furniture: ways follow from all rooms together, so the judge alone says it."""

from optimizer.engine.rules.part import JUDGED_ONLY

PART = JUDGED_ONLY
