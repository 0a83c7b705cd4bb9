"""The plan under edit beside another one: what differs, on the plan view and as a list."""
