"""The editor and the command line: draws and asks, never decides a rule of the world."""
