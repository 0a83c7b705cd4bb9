"""The cells that a drag passes, one beside the next."""

from __future__ import annotations

from model.grid import VECTORS, Cell, Heading

Path = tuple[Cell, ...]


def extended(path: Path, goal: Cell) -> Path:
    """The path drawn on to ``goal``; where the pointer jumped, straight on first and then round one corner.

    Going back over the last cells takes them off again. The goal lies on the path's level.
    """
    cells = list(path)
    for cell in _between(path, goal):
        if len(cells) > 1 and cells[-2] == cell:
            cells.pop()
        else:
            cells.append(cell)
    return tuple(cells)


def climbed(path: Path, goal: Cell) -> Path:
    """The same for a path that steps from level to level: towards the goal's, one up or down in each column.

    Over the goal's own column it does not climb; it goes on from there.
    """
    cells = list(path)
    for cell in _between(path, goal):
        if len(cells) > 1 and (cells[-2].x, cells[-2].z) == (cell.x, cell.z):
            cells.pop()
        else:
            last = cells[-1].y
            cells.append(cell._replace(y=max(last - 1, min(last + 1, goal.y))))
    return tuple(cells)


def last_heading(path: Path) -> Heading | None:
    """The heading of the path's last step; ``None`` for a single cell."""
    return heading_between(path[-2], path[-1]) if len(path) > 1 else None


def heading_between(a: Cell, b: Cell) -> Heading | None:
    """The heading from a column to the next; ``None`` where the two are not neighbours."""
    vector = (b.x - a.x, b.z - a.z)
    return Heading(VECTORS.index(vector)) if vector in VECTORS else None


def _between(path: Path, goal: Cell) -> list[Cell]:
    """The cells after the path's last, up to and with ``goal``."""
    last = path[-1]
    xs = _counted(last.x, goal.x)
    zs = _counted(last.z, goal.z)
    if _east_west_first(path, goal):
        return [Cell(x, goal.y, last.z) for x in xs] + [Cell(goal.x, goal.y, z) for z in zs]
    return [Cell(last.x, goal.y, z) for z in zs] + [Cell(x, goal.y, goal.z) for x in xs]


def _east_west_first(path: Path, goal: Cell) -> bool:
    heading = last_heading(path)
    if heading is not None:
        return not heading.lies_north_south
    return abs(goal.x - path[-1].x) >= abs(goal.z - path[-1].z)


def _counted(a: int, b: int) -> range:
    """From a to b, without a."""
    return range(a + 1, b + 1) if b >= a else range(a - 1, b - 1, -1)
