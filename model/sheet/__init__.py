"""The build sheet and the materials as data: what they say, nothing of how they are drawn."""

from model.sheet.materials import Materials, materials
from model.sheet.sheet import Sheet, build_sheet

__all__ = ["Materials", "Sheet", "build_sheet", "materials"]
