"""The hands on the map, one tool a file. No Qt here.

Invariant: until the end of a gesture the network is untouched, so dropping the preview is all that
cancelling takes.
"""
