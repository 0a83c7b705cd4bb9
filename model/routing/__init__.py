"""From wanted routes to signals: how switches must lie, what readers throw, what needs an inverter."""
