"""Which inverters fit where. The boxes are the cells that each shape takes, counted by hand."""

from __future__ import annotations

import pytest

from model.wiring.modules.choosing import drives_fitting, inverters_fitting


@pytest.mark.parametrize(
    ("box", "names"),
    [
        ((1, 1, 1), []),
        ((2, 1, 1), ["inverter-flat"]),
        ((1, 1, 2), ["inverter-flat"]),
        ((1, 2, 1), ["inverter-upright"]),
        ((2, 2, 2), ["inverter-upright", "inverter-flat"]),
        ((1, 5, 1), ["inverter-upright"]),
        ((1, 6, 1), ["inverter-upright", "torch-stack"]),
    ],
)
def test_inverters(box: tuple[int, int, int], names: list[str]) -> None:
    assert [module.name for module in inverters_fitting(*box)] == names


@pytest.mark.parametrize("box", [(2, 1, 1), (1, 1, 2), (3, 2, 4), (1, 6, 1)])
def test_what_is_given_lies_within_the_box(box: tuple[int, int, int]) -> None:
    for module in inverters_fitting(*box):
        sizes = [max(axis) - min(axis) + 1 for axis in zip(*module.cells, strict=True)]
        assert all(size <= room for size, room in zip(sizes, box, strict=True))


def test_drives() -> None:
    assert drives_fitting(9, 2, 9) == ()
    assert [module.name for module in drives_fitting(1, 3, 3)] == ["side-drive"]
    (stack,) = drives_fitting(1, 4, 1)
    assert (stack.name, stack.delay, stack.depth) == ("torch-stack", 4, 4)
