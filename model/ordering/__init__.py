"""The build order: which rail comes before which, and how each is faced, so that the routes are served."""

from model.ordering.planner import best_order, orders_by_orientation
from model.ordering.result import BuildOrder
from model.ordering.survey import Survey, survey

__all__ = ["BuildOrder", "Survey", "best_order", "orders_by_orientation", "survey"]
