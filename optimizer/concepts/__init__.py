"""One run of the main job: search, judge every layout in real geometry, measure it, rank what holds."""

from optimizer.concepts.case import Case
from optimizer.concepts.run import ConceptRun

__all__ = ["Case", "ConceptRun"]
