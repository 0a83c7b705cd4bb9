"""The build sheet on paper: PDF, or SVG and PNG pages."""

from app.export.sheet import export_sheet, sheet_pages

__all__ = ["export_sheet", "sheet_pages"]
