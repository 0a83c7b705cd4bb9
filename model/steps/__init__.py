"""Building by steps: what to place one after another, in groups, and what stands there then."""
