"""The plan view: one widget that paints the plan and hands pointer and keys to the tools."""
