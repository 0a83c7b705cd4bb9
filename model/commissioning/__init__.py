"""Commissioning: the test runs that show every fault, and the faults that explain what carts did."""
