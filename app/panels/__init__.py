"""The parts of the main window around the plan view: one panel, one file."""
