"""Questions that the window asks, each one window of its own."""
