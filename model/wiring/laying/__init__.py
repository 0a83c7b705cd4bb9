"""Lines from readers to switches: the ground, the search, and what was laid."""
