"""Ideas as the explorer tries them: the ground that each leaves to rooms."""

from optimizer.engine.ideas.grounds import IdeaGrounds
from optimizer.engine.ideas.places import Places

__all__ = ["IdeaGrounds", "Places"]
