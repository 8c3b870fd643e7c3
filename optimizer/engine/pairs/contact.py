"""How two rooms may stand side by side: what `no_overlap`, `no_slivers` and `touching` ask of them together."""

from dataclasses import dataclass

import numpy as np

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.pairs.gaps import Gaps


@dataclass(frozen=True, slots=True)
class Contact:
    """Rooms that do not touch keep `gap` steps along x or along y; rooms that touch share `share` steps of edge.

    Where `must_touch`, they touch and share `touch_share` steps. The open side of the room at an end that is `shut`
    is not touched. Where they may not touch at all, nothing but the gap will do.
    """

    may_overlap: bool = True
    gap: int = 0
    share: int = 0
    must_touch: bool = False
    touch_share: int = 0
    shut: tuple[int, ...] = ()
    may_touch: bool = True

    def and_also(self, other: "Contact") -> "Contact":
        """What both ask."""
        return Contact(
            may_overlap=self.may_overlap and other.may_overlap,
            gap=max(self.gap, other.gap),
            share=max(self.share, other.share),
            must_touch=self.must_touch or other.must_touch,
            touch_share=max(self.touch_share, other.touch_share),
            shut=tuple(sorted({*self.shut, *other.shut})),
            may_touch=self.may_touch and other.may_touch,
        )

    @property
    def binds(self) -> bool:
        """Whether anything is asked."""
        return self.must_touch or self.gap > 0 or not self.may_overlap

    @property
    def shared(self) -> int:
        """Steps of edge that rooms which touch must share."""
        return max(1, self.touch_share if self.must_touch else self.share)

    @property
    def reach(self) -> int:
        """Free steps beyond which nothing changes."""
        return self.gap

    def kept(self, gaps: Gaps) -> Cells:
        """Offsets at which the rooms stand as asked."""
        if self.must_touch:
            return gaps.touching(self.shared, shut=self.shut)
        kept = ~np.outer(gaps.y < self.gap, gaps.x < self.gap)
        if self.gap and self.may_touch:
            kept |= gaps.touching(self.shared, shut=self.shut)
        if self.may_overlap:
            kept |= np.outer(gaps.y < 0, gaps.x < 0)
        return np.asarray(kept)
