"""Wiring: modules, and lines between them and the switches."""
