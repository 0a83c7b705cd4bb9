"""Modules: small circuits ready to be put down."""
