"""How signal parts behave."""
