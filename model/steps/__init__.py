"""The builder's steps: what to place, in which order, and what to see after each."""

from model.steps.building import build_steps
from model.steps.step import Step

__all__ = ["Step", "build_steps"]
