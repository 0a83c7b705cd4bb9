"""What the program brings along: names, palette, icons, the schema of plan files, example plans."""
