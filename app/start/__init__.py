"""The start screen: what a user begins with, what was left over, recent documents, examples."""

from app.start.examples import example_paths, network_paths
from app.start.screen import StartScreen

__all__ = ["StartScreen", "example_paths", "network_paths"]
