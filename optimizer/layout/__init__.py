"""Where every chosen room stands: answers in feet, no opinions."""

from optimizer.layout.arrangement import MOVED_SHARE, Arrangement, arrangement_of, difference
from optimizer.layout.placement import Front, Layout, Placement
from optimizer.layout.pose import Pose, canonical_pose

__all__ = [
    "MOVED_SHARE",
    "Arrangement",
    "Front",
    "Layout",
    "Placement",
    "Pose",
    "arrangement_of",
    "canonical_pose",
    "difference",
]
