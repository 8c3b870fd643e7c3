"""Every room has the size of one of its choices: without the rule it may be a step short of it."""

from optimizer.engine.rules.part import Part

PART = Part(whole=True)
