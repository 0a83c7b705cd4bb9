"""What a screen reader hears of the two windows, beside the names of what has the focus."""
