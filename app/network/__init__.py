"""The network desk: a window with the line map of a network, its trips and its readers."""
