"""Reading and writing plan files; the one place that writes a file."""
