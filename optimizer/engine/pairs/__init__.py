"""What two rooms do to each other by where one stands from the other: the same for every place of the yard."""

from optimizer.engine.pairs.contact import Contact
from optimizer.engine.pairs.gaps import Gaps
from optimizer.engine.pairs.look import Ask, View
from optimizer.engine.pairs.stamp import FORBIDDEN, Along, Condition, Penalty, Stamp

__all__ = ["FORBIDDEN", "Along", "Ask", "Condition", "Contact", "Gaps", "Penalty", "Stamp", "View"]
