"""The dry run: signals, items and carts together, tick by tick."""
