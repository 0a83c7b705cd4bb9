"""What differs between two plans: in each cell, in the order of placing, and beside the pieces.

The earlier plan is what stands, the later one what is wanted. What only the later one has is placed; what
only the earlier one has is taken.
"""

from model.comparing.beside import Beside, differences_beside
from model.comparing.cells import (
    Difference,
    Kind,
    compare,
    compare_as_built,
    comparison,
    difference,
    difference_at,
)
from model.comparing.order import placed_elsewhere

__all__ = [
    "Beside",
    "Difference",
    "Kind",
    "compare",
    "compare_as_built",
    "comparison",
    "difference",
    "difference_at",
    "differences_beside",
    "placed_elsewhere",
]
