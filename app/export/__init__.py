"""The build sheet on paper: PDF, or SVG and PNG pages."""

from app.export.sheet import export_sheet, working_out, write_sheet

__all__ = ["export_sheet", "working_out", "write_sheet"]
