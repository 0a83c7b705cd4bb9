"""The subcommands of the command line, one a file; each gives its exit status."""
