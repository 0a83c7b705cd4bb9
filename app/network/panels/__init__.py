"""The panels of the network window; one a file."""
