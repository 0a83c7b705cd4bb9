"""The first sketch: six hints, one at a time, by which a new user draws a small junction."""
