"""All tools of the map, by name."""

from __future__ import annotations

from typing import Final

from app.network.tools.erase import EraseTool
from app.network.tools.node import JunctionTool, StationTool
from app.network.tools.pair import LinkTool, TripTool
from app.network.tools.select import SelectTool

TOOLS: Final = {
    tool.name: tool for tool in (SelectTool, StationTool, JunctionTool, LinkTool, TripTool, EraseTool)
}
