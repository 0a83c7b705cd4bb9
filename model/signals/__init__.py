"""Signal parts: what they link to and give to."""
