"""The foot of every flight keeps clear of seats and flames: where flights stand the judge alone knows."""

from optimizer.engine.rules.part import JUDGED_ONLY

PART = JUDGED_ONLY
