<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1">
<context>
    <name></name>
    <message numerus="yes">
        <source>%n error(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n warning(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n note(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Move %n piece(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Mirror %n piece(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Turn %n piece(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>File</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Preview</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>View</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Network</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start with an empty plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New network</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start with an empty network, in a window of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a plan or a network from a file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start screen…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recent plans, examples, and plans left over from last time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the plan to its file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save as…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the plan to another file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take over the file as another program left it, as one step that can be undone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Build sheet…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the sheets to build from, as PDF, SVG or PNG.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Materials as CSV…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write what to carry as a table.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Close</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Close the window.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take back the last step.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Redo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do again what was taken back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cut</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the chosen pieces away and keep them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep a copy of the chosen pieces.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place the pieces that were kept.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase chosen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the chosen pieces away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose every piece of this level.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Menu here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open the menu of what has the focus, as a right click on it does.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn the chosen pieces a quarter clockwise, or the plan when nothing is chosen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mirror</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mirror the chosen pieces east to west, or the plan when nothing is chosen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contents…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say what the chosen hopper, barrel or auto-crafter holds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tool</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Select</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose and move pieces.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag to lay track.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click to place the part in hand.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Module</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click to put down a ready circuit: a reader, a latch, an inverter.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag to draw a line of dust with blocks under it; the strength left is shown.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag across the end of a track: in, out or both.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click or drag to take pieces away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Throw</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click a switch to preview its powered state.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test cart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag a cart onto a rail or an arm to see its way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Survey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw each rail in the shape in which it stands in the world.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Title…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name the plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Running side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not checked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts may run on either side.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts run on the left.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts run on the right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sheet data…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the title block of the build sheet says.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to x y z…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show a cell and its level.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move plan to x y z…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give the cell of the cursor another place; all follows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn the whole plan a quarter clockwise.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn plan back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn the whole plan a quarter counter-clockwise.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mirror plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mirror the whole plan east to west; the running side changes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Build order…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find the order of placing that needs the fewest inverters.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wire junction…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay readers, inverters and lines under the track for all wanted routes, and prove them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Re-wire line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lead the line that is chosen, or under the cursor, a shorter way to the same ends.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Order from survey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find an order of placing that gives every rail the shape in which it stands.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clear survey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Forget the surveyed shapes; once more brings them back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Compare with a plan…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mark what another plan has otherwise, and list what to place and take away; once more ends it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Compare with the saved file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mark what was changed since the plan was saved; once more ends it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next difference</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the next difference.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Previous difference</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the difference before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swap earlier and later</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tell how to get from the open plan to the other one, or the other way round.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One level up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw on the level above.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One level down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw on the level below.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Solo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hide the levels above and below.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lock level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let nothing on this level be changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hide level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave this level out where the ones above and below it are drawn on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>End the preview</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the plan as built; Esc in the plan view does the same.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dry run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run signals, items and carts together, tick by tick; Esc in the plan view ends it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run or pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the time of the dry run go on, or stand still.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One tick</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do a twentieth of a second of the dry run.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slower</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the dry run go on more slowly.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Faster</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the dry run go on faster.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin the dry run again at tick 0.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Repeat from the start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin at tick 0; what was done comes again, each in its tick.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Watch in the timing diagram what the chosen cells read, or watch them no more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Timing diagram as SVG…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the ticks that are seen, as a drawing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Waveforms as VCD…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write what all probes read for a waveform viewer (IEEE 1364).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Zoom in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the plan larger.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Zoom out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the plan smaller.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>100 %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>48 pixels a cell.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fit all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the whole plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fit selection</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show all that is chosen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In depth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the levels pulled apart, in a window of its own that follows the plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Findings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the findings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Materials</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the materials.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Switches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the switches.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Routes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the wanted routes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the readers.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the list of all pieces.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test runs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the test runs.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Timing diagram</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the timing diagram; from there, hide it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Differences</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to what another plan has otherwise.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plan view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the plan view.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Panels</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Parts tray</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show or hide the parts tray.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level strip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show or hide the strip of levels.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Orientations</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show or hide how the plan comes out in its eight orientations.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Side panel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show or hide findings, materials, switches and routes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reset panels</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show every panel again, as large as it comes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Theme</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the system</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Light or dark as the system asks.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dark lines on light paper.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Light lines on dark paper.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Less motion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let nothing glide: the view jumps, and a test cart is at the end of its way at once.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Help…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every tool, part, finding, menu and key; opens at what has the focus.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is this?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The next click on a thing in the window says what it is; Esc ends that.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First sketch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw a small junction yourself, a hint at a time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look for an action…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Type a word and choose what to do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All keys on one page.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before you build…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to know and to try before you place a block.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>About Platelayer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The version, and what it is for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start with an empty plan, in a window of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start with an empty network.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the network to its file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the network to another file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Departure cards…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write a card for every station, what to take to go where, as PDF.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Network as GraphML…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write stations, junctions and links for other programs.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take what is chosen away, with all that ends there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose every station and junction.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change the name, the length or the readers of what is chosen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose and move stations and junctions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Station</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click to place a station.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click to place a junction.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Link</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag from a station or junction to another to join them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag from a station to another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click to take a station, a junction or a link away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name the network.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add trip…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say who rides where.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the trip that is chosen in the list away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin all names</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep the name of every reader that is called, as signs in the world bear it already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open junction&apos;s plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the plan of the chosen junction in a window of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read plans again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take over what the plan files of the junctions say now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place anew</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find a place for every station and junction, as when nobody had moved any.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Light nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show no trip and no reader; Esc does the same.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the map larger.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the map smaller.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>48 pixels a square.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the whole network.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the trips.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stations</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the stations.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the map.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sums</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show or hide the sums under the map.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show or hide trips, readers, stations and findings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let nothing glide: the view jumps to what is shown.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the plan view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Arrows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>move the cursor a cell</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>does at the cursor what a click does there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space and drag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moves the view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Esc</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes back one step of a gesture, ends a preview or a dry run, chooses nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>in a dry run, on a lever or a button: works it; Shift and click chooses it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>R</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turns what is in hand, or what is chosen or carried</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>M</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mirrors what is chosen or carried</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>D</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>changes the delay, the mode or the way up of what is chosen or in hand; a line&apos;s repeaters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PgUp and PgDown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>while a line is drawn: lead it a level up or down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>W</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>gives the test cart the waybill, or takes it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl and arrows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moves what is chosen by a cell</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl and drag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>copies what is chosen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shift and click</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>chooses one piece more, or one less</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shift and Enter, arrows, Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>places or erases in every cell passed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shift and Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>steps a surveyed rail back to the shape before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Alt</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes to the menus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the timing diagram</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left and right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>move the cursor by a tick</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl, left and right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>go to the change before and after</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Home</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes to the first tick</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>End</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes along with the run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Up and down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>choose a row</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Page up, page down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>scroll along time; so does Shift with the wheel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>+ and −</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>zoom along time; so does Ctrl with the wheel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>0</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>shows the whole run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>shows the row&apos;s cell on the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Del</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes the row&apos;s probe away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn the plan by a quarter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pull the levels apart, or bring them closer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>draw on the level above or below</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>O</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>shows all levels, or only some</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>shows the ways of carts as on the plan, or leaves them out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>shows all of it, the levels pulled apart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl, + and −</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>zoom; so does the wheel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>move the picture; so does a drag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes to the cell in the plan view, and chooses what is there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>closes the window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>move the cursor a square</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shift and arrows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>go to the next station or junction that way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>does at the cursor what a click does there; a link or a trip ends with a second Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moves the map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes back one step of a gesture, lights nothing, chooses nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moves what is chosen by a square</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>chooses one thing more, or one less</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Double click</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>changes what is there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A wanted route is not reached</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every wanted route whose carts do not leave by the wanted arm in the shown choice.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>With this track no cart gets from the one arm to the other as wanted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Follow the route with the test cart and mend the track where it goes wrong.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wanted routes conflict</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each route can be served alone, but not all of them in the settings in which they run.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A switch lies one way at a time, so at least one of these routes goes wrong whatever is wired.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give up or change one of the routes, or lead one of them round the switch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The order of the signals matters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No choice serves for sure, and in the one shown the order of the power changes matters.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Signals that change in one tick come in no certain order, so a cart may go either way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put a rail between switches that touch, so that one does not bend the other.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing carries it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rails, dust, repeaters, comparators and what stands need a carrying part below.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A piece without something to stand or hang on cannot be placed, or drops later.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put a block where the message says, or move the piece.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An arm is off the track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts come in on a rail, and leave from one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No cart can come in or go out where there is no rail, so no route by this arm can be worked out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay the missing rail, or drag the arm to the end of the track.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A route names an unknown arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each arm that a route names must be among the arms.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is wanted cannot be worked out, so nothing is said of where these carts go.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add the arm, or choose another one in the route.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A name stands twice</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A name must stand for one arm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Routes name arms, so two of one name cannot be told apart, and only the first is looked at.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give each arm a name of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A switch that never changes needs a signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Powered while no reader holds, and thrown by none.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The switch needs a source beside it for good, where a curve that cannot change would do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the third arm away from the rail, or place the rails in another order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A throw bends another rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In a wanted setting a rail that is not wired changes shape on a wanted route.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rail stays bent after the signal went, so the junction does not come back to what was built.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep a straight rail between the two, or place the rails in another order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A four-way rail cannot be thrown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A rail with four neighbours stays as it was built, whatever signal it gets.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>With four neighbours a rail takes no notice of signals and always lies as it was built.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move one of the four arms away by a cell, so that three neighbours are left.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A straight part where the route bends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Booster and detector rails are always straight.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Booster and detector rails never lie in a curve, so the cart does not turn there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put a plain rail there, and the booster or detector rail on a straight cell of the route.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A loose end on a wanted route</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An end that finds no rail, or one that never points back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A rail with a loose end has room, so the next rail placed beside it may bend it off the route.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay the missing rail, put the arm there, or place the rails in another order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wiring beside a three-way rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every change of a signal part beside a three-way rail gives it notice, meant or not.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rail settles again whenever that part is placed or changes, and may lie otherwise than built.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lead the wiring past at least one cell further off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A detector rail beside a three-way rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A detector rail is a signal part: it throws the rail beside it whenever a cart passes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each cart on the detector rail powers the three-way rail and may turn it under the train.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put a plain rail between the two.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An arm runs on the wrong side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seen along the heading in which carts come in, the in lies on the running side of the out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm does not fit the line that it is to be joined to, and carts would meet head-on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change over the in and the out of the arm, or set the running side of the plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts can meet head-on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The cells that some wanted routes run through one way and others the other way, for each set of routes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two carts that come towards each other on one track stop each other.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give each heading a track of its own, or let only one of the routes be used at a time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A booster rail without a signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No signal part beside it or on a block that it touches, and none within 8 boosters along its run.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A booster rail without a signal holds the cart instead of driving it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set a torch, a lever or a line beside it or on the block that it lies on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Too far without a booster</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More than 30 cells of a wanted route on end without a booster rail.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A cart loses speed on plain rail, and may come to a stand before it is through.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put a booster rail with a signal into the stretch, where it is straight.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another cart is misled while a reader holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An empty cart that reaches its arm while no reader holds, but not while the reader of another arm does.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A cart that comes by while the called one passes is sent the called way too.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep the two routes off each other&apos;s switches, or let no cart come while a reader holds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An inverter is needed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The switch is powered at idle, so its line must be turned round.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An inverter is one more part in the line, and one more that can be built wrongly.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn the junction to an orientation that needs none, or build the inverter that the sheet shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Built otherwise than it rests</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shape as built differs from the one after the first power cycle.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Until the switch was powered once, carts go another way than later.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power the switch once after building, or place the rails in another order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rails that no wanted route passes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each stretch of rails that no wanted route passes, with its rails in file order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>They cost material, and rails beside the route can bend it as they are placed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase them, or add the route that they are meant for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan of a junction could not be read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan of every junction that has one could be read when the network was opened.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is known of its readers and arms, so that no way leads through it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put the plan file back and read the plans again, or give the junction another plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A name must stand for one station, and for one junction; a station and a junction may share it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Links and trips name stations and junctions, so of two of one name only the first is looked at.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give each a name of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link or a trip leads to what is not there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Both ends of a link are a station or an arm, both ends of a trip a station.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No cart can run on such a link, or make such a trip.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Correct the name, or add what is missing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Several links begin at one arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By an arm carts leave on one track. Several links may end at one arm, or begin at one station.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The track behind an arm leads to one place, and no reader chooses between several.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep one link, and put a junction where the track divides.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A trip cannot be made</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the first station of a trip a way leads to the last, without changing carts on the way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whatever waybills a traveller takes along, no cart arrives there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add the missing links, or take the trip away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A reader takes a waybill meant for a later one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A cart passes a reader by its default only while it carries nothing of the name that the reader takes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The cart leaves by the wrong way, and its waybill is missing further on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settle another name for one of the two readers, or none.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A trip needs more waybills than a storage cart holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The waybills of a trip lie in the 27 slots of a storage cart, 64 of one name in a slot.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What does not fit into the cart is missing at a later reader, and the cart goes astray.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settle fewer names for readers on the way, or other defaults, or divide the trip.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A junction&apos;s wanted routes contradict the network</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where a link begins at an arm some cart must leave by it; where one ends, carts need a way on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No cart ever comes to the link, or nobody knows where carts go that come by it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give the junction the missing route, or join the link to another arm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A station cannot be reached</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To each station a way leads from another one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nobody arrives there, and carts that set out from there are never made up for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a link that ends there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Who arrives there cannot come back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Who can come to a station can come back, changing carts at other stations if need be.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travellers and carts gather at these stations and never return.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a link that leads back, or the missing way through a junction.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An empty cart never leaves a loop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whoever follows the defaults from arm to arm comes to a station, or to a dead end, but not round.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts that run empty, or whose waybills were taken, gather in the loop and block the line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settle another default for one of the readers on the loop.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link joins arms of unlike running side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts run on the same side at both ends of a link, where it is known.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The two tracks of the line must cross somewhere, or carts meet head-on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mirror one of the junctions, or cross the tracks over on the line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts leave by an arm, and no link begins there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link begins at each arm by which carts leave.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A cart that leaves by this arm, called or empty, goes nowhere.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add the link, or let no way of the junction end at the arm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A pin is not kept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is settled is there, and can be so.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan is made as if the pin were not there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the pin away, or change what stands against it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A pinned default is not that of the junction&apos;s plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The default of a junction with a plan is the idle route of the plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts will run as the junction is built, not as it is planned here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change over the idle and the called route in the plan, or take the pin away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No link ends at an arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link ends at each arm by which carts may enter.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is built there for carts that come in is never used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add the link, or leave the arm out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A reader is called otherwise in the plan of its junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The waybill of a reader is the one that the plan of its junction names.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Who builds from the plan fills the reader with a waybill that no traveller carries.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fill the reader as the network has it, or change the waybill in the plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inverter, flat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turns the signal of a line round, in the level of the line: a target block, and a torch on its side that is lit while the line is off. The torch gives to all that stands beside it and powers a block that lies on it: keep those cells clear. More than eight changes within 60 ticks put a torch out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inverted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inverter, upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turns the signal of a line round under a switch: a target block, the torch standing on it, and over that the block that carries the switch, powered while the line is off. The line ends with dust beside the target block, from any of the four sides. More than eight changes within 60 ticks put a torch out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Latch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keeps one of two states: a signal at set turns it on, one at reset turns it off, and reset wins. It starts off, and reset takes 14 ticks. A comparator and a repeater hand a signal round, reset takes it away at the comparator; the delays see to it that no short pulse runs round for ever and that of two pulses the one that ends later decides. No torch is in the ring. With two outputs a torch gives the other state as well; more than eight changes within 60 ticks put it out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Outputs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>two</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Merge by repeaters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two lines that throw one: the repeaters face the cell in which the common line starts, at 15, and let nothing back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Merge at a block</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Three lines that throw one: each ends with dust beside the target block, on its level, and none of them hears of the others, since a block that dust powers gives nothing to dust. The repeater starts the common line afresh, at 15.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>three</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Off-delay</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Goes on with its input and stays on for a time after it went off; gaps in the input that are shorter than that time less the delay do not show. Comparators hand a strength round, and it loses one at each turn. A row of slots in use of an auto-crafter cuts it off earlier; longer rings turn more slowly. Any strength at the input will do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>34</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>38</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>42</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>46</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>50</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>54</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>58</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>62</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>66</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>98</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>130</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>194</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>held</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes one waybill out of a passing storage cart and holds the line on until the last cart of its train has passed. Carts come from the detector rail to the hopper. The hopper under the rail holds 22 of the waybill and takes one more from the first cart that has it; the comparator beside it then reads 2 instead of 1, and the line is on 5 ticks after the cart came over the hopper. The detector rail stops the hopper below it while carts pass, and a ring of comparators keeps that up for a while after, since the strength that goes round in it loses 1 each time; then that hopper takes the waybills out again, one in 8 ticks, and a torch stops it 4 ticks after the last. The line is on for at least 63 ticks after the last cart came to the detector rail, with a long ring 119; every further cart that lost a waybill adds 8. The short and the long ring lie under the track and beside it; the one beside leaves the track free below but for two cells; the one apart has its detector rail 4 cells before the hopper instead of 2, so that a booster with a torch under its block fits between. The barrel keeps 1,728 waybills: empty it before it is full, else the line stays on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>short</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>long</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>beside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>apart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>ahead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>aside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Side drive</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drives a switch from its one side without a rail, and does not turn the signal round. Lines end with dust beside the lower target block, from any of three sides, and do not feed each other. The repeater powers the block in front of it, the dust on that block takes the power up, and bends to the target block that carries the switch. The repeater lies under the switch, or along the free side, which leaves the cell under the switch free. A switch that does not lie at rest as built needs a button there, under its carrier: nobody presses it, but being there it gives notice.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>under</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>along</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>switch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swapped default</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Makes the line of a reader idle-on: the block stands where the line would start, the reader&apos;s repeater faces it, and the line starts beyond the torch, on until the reader holds. The block is strongly powered while the reader holds: keep dust that is not meant away from it. More than eight changes within 60 ticks put a torch out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Torch stack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drives a switch from below through inverters one on the other: two leave the signal as it is, three turn it round. The line ends with dust beside the target block, from any of the four sides; the block over the upper torch carries the switch. More than eight changes within 60 ticks put a torch out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Torches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drive</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carries</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Signals</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Items</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plain rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Booster rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Detector rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Solid block</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slab</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Target block</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Signal dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Signal torch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Repeater</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Comparator</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lever</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Button</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hopper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Barrel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Auto-crafter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lamp</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The only rail that can curve, and so the only one that can be a switch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drives a cart while it has a signal, and holds it while it has none; it never curves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gives a signal of 15 on all sides while a cart stands on it; it never curves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carries track and parts; a powered one hands its signal on to the parts beside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carries parts and never takes a signal; it cuts no dust above or beside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carries parts on the upper half of its cell and never takes a signal.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A solid block to which the dust beside it bends.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carries a signal along, one weaker with every cell.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gives a signal of 15 unless the block at which it stands is powered: an inverter.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hands a signal on at full strength after its delay, one way only; from its side it can be locked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Compares the signal at its back with those at its sides, or subtracts them; it reads the container behind it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A signal of 15 that stays on or off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A signal of 15 for a moment.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes items from above and gives them to what it faces, one at a time; a signal stops it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keeps items; a comparator with its back to it reads how full it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Makes one craft of its items each time that a signal comes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Is lit while it is powered.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Attempt</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Proof</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Room</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Expecting &apos;,&apos; delimiter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Expecting &apos;:&apos; delimiter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Expecting property name enclosed in double quotes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Expecting value</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Extra data</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Illegal trailing comma before end of array</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Illegal trailing comma before end of object</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Invalid \escape</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Invalid \uXXXX escape</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Invalid control character at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unterminated string starting at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n rail(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>rails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden rails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>booster rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n booster rail(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>booster rails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden booster rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden booster rails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>detector rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n detector rail(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>detector rails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden detector rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden detector rails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>solid block</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n solid block(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>solid blocks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden solid block</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden solid blocks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n glass(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>piece of glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pieces of glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>piece of wooden glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pieces of wooden glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>slab</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n slab(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>slabs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden slab</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden slabs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>target block</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n target block(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>target blocks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden target block</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden target blocks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n dust(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>piece of dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pieces of dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>piece of wooden dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pieces of wooden dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>torch</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n torch(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>torches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden torch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden torches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>repeater</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n repeater(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>repeaters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden repeater</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden repeaters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>comparator</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n comparator(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>comparators</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden comparator</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden comparators</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lever</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n lever(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>levers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden lever</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden levers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>button</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n button(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>buttons</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden button</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden buttons</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>hopper</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n hopper(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>hoppers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden hopper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden hoppers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>barrel</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n barrel(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>barrels</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden barrel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden barrels</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>auto-crafter</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n auto-crafter(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>auto-crafters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden auto-crafter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden auto-crafters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lamp</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n lamp(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>lamps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden lamp</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden lamps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>north</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>east</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>south</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>west</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>north-south</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>east-west</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rising-north</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rising-east</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rising-south</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rising-west</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>south-east</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>south-west</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>north-east</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>north-west</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>compare</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>subtract</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>error</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>warning</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Esc ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>then drag: lays track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>then click: places the part in hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>opens a plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level {level} · north is up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing here yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan has changed, so the dry run has ended.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The dry run is on: a click works a lever or a button, Test cart sends carts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The dry run has ended, to show the preview.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is nothing to run: the plan is empty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Beginning the dry run…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: no dry run was begun.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is done in the next tick; the dry run is paused.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} more in the list.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts come in here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts leave here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>both</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts come in and leave here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name of the arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leaves the track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stopped by a block</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>runs in a loop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leaves by {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>with {waybill}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>with the waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The cart leaves by an arm, whether or not rails go on beyond it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No rail follows, or the next one cannot be entered from here; a bar ends the way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something that a cart cannot run into stands before it; a bar ends the way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The cart comes to a cell again with the same heading, and goes round without end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way of a cart without the waybill: an unbroken edge, and one chevron.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way of a called cart while its reader holds: a dashed edge, and two chevrons.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{reason} at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Preview: {names}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Preview: the {arm} reader holds — {states}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test cart: {run}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it throws no switch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} switches powered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{names} powered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} switches resting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{names} resting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No cart can come in by {arm}: it has no in, or no rail lies there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Working out the routes…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan has changed, so the line stays as it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stopped: the line stays as it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pieces of several lines are chosen; choose one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No line here: choose a dust or a repeater of one, or put the cursor on it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wiring the line anew, {seconds} s; Esc stops.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>~ too fast to draw</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A part marked ~ goes on and off more than three times a second; not each is drawn.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Repeat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What came of the dry run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Times real time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Times real time; {slower} and {faster} go slower and faster</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dry run, tick {tick} ({seconds:.2f} s)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cart {cart} left the track at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cart {cart} was stopped by a block at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cart {cart} collided at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tick {tick}: {words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cart {cart} leaves by {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cart} with {held}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unsure: {one} or {other} may come first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find an order of placing that gives the survey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop the search</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clear</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clear the survey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Forget the surveyed shapes; Clear survey in the menu Plan brings them back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{does} (Esc)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Survey: searching for an order, {seconds} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Survey: {count:,} rails differ from the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Survey: 1 rail differs from the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Survey: no rail differs from the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} stands {shape} there, as drawn it lies {drawn}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The survey is cleared; Clear survey once more brings it back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is surveyed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No surveyed rail differs from the plan: it is in such an order already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The search was stopped after {seconds} s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan has changed, so the search has ended.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan is in an order now that gives every rail the shape in which it stands.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No order was found in {seconds} s that gives this survey; there may be one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No order of placing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No order was found that</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{none} makes {cell} lie {shape}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{none} makes any of these lie so: {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{none} makes these lie so together: {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waybill of the arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts in the train</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Free cells between two carts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Waybill in each cart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What each cart carries (W, or Shift while letting go)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gap</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copying the pieces…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: nothing was copied.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to copy: no piece is chosen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copied {pieces}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n piece(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Reading the clipboard…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: nothing is pasted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to paste: the clipboard holds no pieces.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{document} — changed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said} — Platelayer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Placed in this order: {needs}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Compare with a plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This plan has no file yet with which it could be compared.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} is a network; a plan can only be compared with a plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the saved file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Comparing…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: nothing is compared.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No longer compared</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a hopper, a barrel or an auto-crafter to say what it holds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Working out the steps and the test runs…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Build sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title} not written: {error}. The plan is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wrote {path}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>Wrote {file} and %n more file(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Pages of an older sheet are still there: {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: no build sheet was written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The build sheet was not written: {error}. The plan is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sent to {printer}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: no build sheet was printed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drawing page {page:,} of {pages:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{path} is gone: it was deleted or renamed. What is open here is all there is of it; save it to keep it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{path} was changed by something else. Here it is as it was before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read it again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Opening {name}…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: {name} was not opened.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{path} is open in another window, too. Each asks before it writes over the other.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write over it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{path} was changed by something else since it was opened.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changed outside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Writing over it loses that change.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{path} is there already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Writing over it loses what is in it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Don&apos;t save</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the changes to {short}?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Without saving they are lost.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plans and networks ({endings});;All files (*)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to x y z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shows the cell and its level.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The cell of the cursor, now at {here}, comes to this place; the whole plan follows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move plan to x y z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moving the plan…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turning the plan…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Print</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The system knows no printer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the sheet as PDF, and print that where there is one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hold the reader of</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run an empty cart from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run a called cart from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take probe away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing here can be probed: choose rails, blocks, signal parts or hoppers.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{probes} taken away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n probe(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>There is room for {most} probes; choose fewer cells.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Waveforms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is nothing to write yet: probe a part and start the dry run.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>take away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>change</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lies otherwise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{number} placed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{number} taken away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{number} turned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{number} changed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{number} lying otherwise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>title</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>running side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>route</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waiver</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no piece differs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}; lies {otherwise}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}; lies the same</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>without</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>keys that this version does not know</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>facing {way}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wooden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>delay {ticks} ticks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set to subtract</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set to compare</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>holding {items}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{before} → {after}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>idle {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>called {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no reason given</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{end} {cell} heading {heading}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Comparing, on the way to {name} · {counts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Comparing with {name} · {counts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the plans are being compared</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Previous</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The difference before this one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The next difference</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swap</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the earlier plan be the later one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Compare no longer (Esc)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From {before} to {after}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take away {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{part} lies otherwise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan in depth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ways of carts shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ways of carts left out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All levels</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Own level and next ones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Own level only</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Levels of what is chosen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click: go there in the plan. Wheel: zoom. Drag: move. Esc: close.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn ←</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn the plan a quarter clockwise (Left)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn →</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn the plan a quarter counter-clockwise (Right)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Closer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring the levels closer together (−)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Apart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pull the levels further apart (+)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show all of it, the levels pulled apart (0)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Levels shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which levels are shown (O)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the ways of carts as on the plan (W)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} in depth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seen from the south-east.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seen from the north-east.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seen from the north-west.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seen from the south-west.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level {level}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>Levels %n cell(s) apart.</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>No level is shown: nothing stands there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{line}, drawn on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plan a rail junction before you place a block.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The Brinepan Tramway of the examples is invented, as are its stations, waybills and traffic.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power every switch once.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Until its first signal a switch can lie otherwise than it rests.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Platelayer {version}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before you build</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A run besides those that are listed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>empty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Search again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place in this order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn, and place in this order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Build order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Search the plan as it is now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As drawn now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Best order found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan has changed since: what stands here is of the plan before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No routes are wanted yet, so every order serves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Searching, {seconds} s: orientation {number} of {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All eight orientations were searched in {seconds} s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stopped after {seconds} s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}: as good as now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose another orientation to turn the plan and place it so, as one step.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>orientation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inverters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>thrown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wired</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a better order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The number of the orientation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How the plan is turned from how it is drawn now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Switches that are powered while no reader holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Switches thrown, summed over the readers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Switches that need a line or an inverter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whether it is proved that no order is better</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the junction is cheapest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>searching…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waiting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not looked at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not ruled out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no order serves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none found that serves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cheapest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cheapest so far</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a file…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Print…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pages could not be worked out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>x, to the east</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>y, the level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>z, to the south</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One lies in each slot but the first, so the items do not wander.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contents</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add item</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What comes of it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the {part} at {place} holds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{used} of {slots}; a comparator reads {strength}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n slot(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Remove</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Item {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many of item {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove item {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Legal owner</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Identification number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Revision</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Date of issue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Created by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Approved by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Title</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The name of the plan, here and on the build sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sheet data</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New key</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give key</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take keys away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As it was</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take it over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose an action to give it other keys.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{action}: go into the field and press the keys that it shall have.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{key} means {action} already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{key} is free.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{key} cannot be given away: in the drawing it {does}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{group}: {action}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>what it does</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All as they were</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look for an action</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn, export, level…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to look for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Actions found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No action has all these words.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cannot be done now: {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay colour over the drawing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps, with pictures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Preset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Folder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Forget</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Format</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pages</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Colour</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PDF is one file; SVG and PNG are one a page. All can be read in black and white.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Beside the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another folder…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Folder for sheets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep choices</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The name under which these choices are kept:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Page before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Smaller</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Larger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Working out the pages…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Page {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Page {number} of {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pages of the build sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set aside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>old loop, goes in spring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reason</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why is this right as it is? The reason is kept in the file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place the wiring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wire junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why it is not wired</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No routes are wanted yet, so there is nothing to wire.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Searching, {seconds} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not wired, after {seconds} s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All wanted routes are served as the plan is: there is nothing to place.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wired and proved in {seconds} s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>throws</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>next train after</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm whose reader the line comes from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The switches that it throws</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cells of dust in the line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Repeaters in the line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the last cart of a called train until all is at rest, and another train may come in by any arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not wired</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>error: not wired, {message} {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another one may find other places for readers and lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cells beside the track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far the wiring may reach out beyond the track, on each side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Levels below the track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How deep it may go below the lowest rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading the file again…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Untitled plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another edit is being worked out: it must be done, or cancelled, first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: the plan is as it was.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Departures. Put the waybills named into your cart before you set out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No trip from here is planned.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No track leads away from here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>times at 8 cells a second</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>card {number} of {of}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>And {count:,} more tracks lead away from here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no way leads there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>take along</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set out towards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{end}, more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{minutes} min {rest} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{minutes} min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{hours:,} h {minutes} min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A cart without a waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Towards {by}, a cart without a waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cart} goes to {end}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cart} circles and arrives nowhere.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cart} comes to {end}, and no further.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Network without a title</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Push a cart in at the arm. Tick what you saw; where it was otherwise, note how the cart left.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test checklist</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no wanted route to test yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No run can show that</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No run can tell whether</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>and {count:,} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>in at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>must leave by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way each switch must lie. R rests, P powered, B as built, not wired, — not passed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not reached</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Control table</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No routes are wanted yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>picture not to scale · north up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is placed yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stacks of 64</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to carry.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n more kind(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n kind(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>{kinds} of error.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Listed in the findings: mend these first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In depth — the levels pulled apart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no page in depth: the plan is too large for this paper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>isometric · 1 cell = {size:g} mm along each axis</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>x {west} to {east}, z {north} to {south}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seen from the {seen_from}, the levels {gap:g} cells apart; {where}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dashed uprights lead from corner to corner, and from a rail to what works on it from below.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 piece</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>en</source>
        <comment>The ISO 639-1 code of the language into which all this is translated</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Document type</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rev.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Title, supplementary title</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>of these rising, wide end high</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>of these switches, drive on the free side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>switches with an inverter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>place it facing this way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>place these in order of their numbers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} on top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} on a side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}, delay in ticks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 cell = {cell:g} mm · north up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title} · part {own} of {parts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On this page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On this level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>match line, sheet {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>running side {side}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>List of readers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to write on the sign of each reader: by which arm carts leave without the waybill, and with it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The network has no readers.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{kind} · part {number} of {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leave by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>with waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You should now see: {sight}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Laying out the steps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step {first:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps {first:,} to {last:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{steps} of {count:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>north up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Control table and test checklist</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title} · part {number} of {pages}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A tick is 1/20 s. Wide line over grey: on; narrow line: off. Steps and figures: strength, 0 to 15. Solid black: changes too close to draw. ?: the order within the tick decides.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Timing diagram: {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Timing diagram of the dry run, ticks {first} to {last}, {since} to {to}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>green: ways of empty carts · purple: of called carts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The menu Help tells of every part, finding, tool and key, and begins this sketch again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Skip this</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on to the next hint</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enough</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show no more hints; the menu Help has them</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First sketch, {number} of {all}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{done} of {wanted} done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>That was the first sketch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Esc puts this away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay a straight track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take up Lay track{tool_lay} and drag along the outline. By keys: Enter, the arrows, and Enter again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay a branch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag along the outline to the middle of the track. The rail at the corner becomes a curve; the rail where both tracks meet becomes a switch. By keys: Enter, the arrows, and Enter again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set an arm at each end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts come in and leave by arms. Take up Arm{tool_arm}, click the end of a track, type a name such as Quay, and press Enter. By keys: the arrows to the end, then Enter twice.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say what is wanted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In Routes{show_routes}, at the right below, add a route: from one arm, idle is where an empty cart leaves. Then choose the arm under called; a cart with the waybill leaves there. By keys: Tab to Add route and Space, the arrows to a cell, and F2 to edit it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take up Throw{tool_throw} and click the switch: it shows its powered state; once more, and it rests. Then take up Test cart{tool_cart} and drag a cart in from an arm. By keys: Enter on the switch; for the cart Enter, an arrow, Enter.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read what the plan says</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a finding{show_findings}: it says what is wrong, and what mends it. Choose the switch in Switches{show_switches}: a box with a circle under idle is an inverter. Then ask for the build sheet{build_sheet}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The first sketch is put away; First sketch in the menu Help goes on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Search: switch, arm, erase…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Index of the help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing in the help has all these words.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Page of the help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Needs nothing to stand on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Needs a part that carries below it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Needs a part that carries at its back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What can stand in a cell. The symbols are those of the plan and of the build sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Parts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tray</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rails and other parts can stand on it; a cart cannot run into it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is solid: it can be powered, and cuts dust beside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>When it changes, rails beside it take notice.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It has {count} slots.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It faces {ways}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>any of the four sides</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{ways} or {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What can stand in the way of a plan. Each finding in the list leads to its entry here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What can stand in the way of people who ride the network.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Findings of networks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Weight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A tool says what the pointer, and Enter at the cursor, do on the plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tools</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the pointer, and Enter at the cursor, do on the map of a network.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tools of networks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the menu offers, and what its keys do wherever the focus is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Menu {menu}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the menu offers in the window of a network.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Networks: menu {menu}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the keys do while a drawing has the focus; no action is named so.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On the map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keys of the drawings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Menu</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What stands in the way of the plan, the gravest first. Choosing a finding goes there and says why it matters and what to do; What is this? tells of its rule.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many of each part the plan needs, in pieces and in stacks of 64.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The fewest test runs that show every fault. Note what each cart did; the list says what to look at.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each switch with its two states, how it must lie for an empty cart, and which readers throw it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is wanted: from which arm to which, empty and with a waybill; edited in place.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For each arm with a called route: its waybill, and the switches that it throws.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every piece of the plan, level by level: the drawing as a list.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The parts. Choosing one takes it in hand; a click on the plan places it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is in hand, the way in which it faces, and the keys that change it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ready circuits. Choosing one takes it in hand; a click puts down all of it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The levels of the plan with their pieces; choosing one draws on it, its menu locks or hides it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan turned and mirrored in eight ways, with the inverters that each needs; choose one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What another plan has otherwise: what to place, take away, turn and change.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the probes of a dry run read, tick by tick.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What went wrong, and what became of it; it stays until it is closed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Who rides where, which waybills to take, and how long it lasts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each reader with the name of its waybill; a pinned name stays as it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each station, and what it takes to go from there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much the network needs in all.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The cell of the cursor: x to the east, y up, z to the south.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What lies in the cell of the cursor, or what was just done.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many pieces are chosen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many errors, warnings and notes there are that are not set aside.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whether all is saved, and when the copy was made that outlives a crash.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan, seen from above, north up. The tool in use says what a click does; the arrows move a cursor, and Enter does there what a click does.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The network: stations, junctions and the links between them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All that can be done, by name. Alt and a letter open a menu.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tabs: each brings a list to the front.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title}. {tip} Keys: {keys}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level {level} is locked: nothing on it is changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The program made a mistake ({kind}: {error}). A recovery copy of the plan is kept.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said} What happened is written in {log}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{arm} from {junction}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan is worked out: {news}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} — changed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The name of the network, here and on the cards.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A trip takes two stations.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A trip runs from one station to another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Placing all anew…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: all stands where it stood.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No way leads there, so none can be pinned.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan is still being worked out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No reader is called, so none has a name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every name is pinned already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No junction of this network has a plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plans say what they said before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cells from {start} to {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How long the track is, in cells.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A length is a whole number of cells, from 1 to {limit:,}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The name of the {what}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add links {start} ⇄ {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>And one back, by the same arms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Track from {start} to {end}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add link</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leaves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>enters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length in cells</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length, in cells</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Arm by which it {verb} {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{capitalize} {name} by arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{time} at 8 cells a second</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many ride from one station to another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trips a week</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Untitled network</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The cards could not be written to {file}: {reason}. The network is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The graph could not be written to {file}: {reason}. The network is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Departure cards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancelled: no cards were written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Planning the network…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Network as GraphML</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trips, readers and stations</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No station or junction stands further that way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>link {start} → {end}, {length} cells, {time}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>by its plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>by its readers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>junction {name}, {readers}, {origin}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n reader(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>station {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>then click: places a station</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>then click: places a junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>then drag: joins two of them</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>then drag: says who rides</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>other way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>default</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts that come by an arm leave by one way, or by one of two where there is a reader. An empty default is chosen by the program.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By its readers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From a plan file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose plan…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>North, East, South</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Arms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each arm to the others</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add reader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove reader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose the plan file first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Built</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No plan chosen yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plans (*.plan.json);;All files (*)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{trip}: no way leads there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{trip}: take {names}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{trip}: take nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes nothing: no trip calls it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reader at {place}: default {default}, {takes}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>without a waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>with a waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>passes by the default</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>is called here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Map of the network</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No findings: nothing stands in the way of this network.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What stands in the way of a network is listed here as you draw.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking for what stands in the way…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the finding means</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>call</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The junction, and the arm by which carts come in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm by which a cart leaves without its waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The waybill that it takes; a dot marks what is pinned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts a week that pass it by the default way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts a week that it takes a waybill from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not called</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>chosen by the program</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Call</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Default</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unpin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A junction&apos;s reader sends a cart one of two ways; what each takes is listed here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Being worked out…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>station</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arrive</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>links</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The station</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts a week that set out from it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts a week that go to it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Links from it and to it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change station</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where carts start and end is listed here. Take up Station{key} and click on the map.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan: {said}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan is being worked out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>working out the plan…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{stage} {done:,} of {of:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>proved fewest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at least {bound} needed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waybills a week</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>name, {sure}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>names, {sure}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{part} of {whole}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>readers are called</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>trips, %n without a way</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>trips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts a week</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a week</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waybills</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cells</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The station from which they ride</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The station to which they ride</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many ride a week</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to take along, in the order in which it is taken</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far it is, in cells</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How long it takes at 8 cells a second, in minutes and seconds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>“{value}” is no number of trips.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{amount} waybill(s) a week</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{amount} name(s)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{amount} cell(s) a trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin way…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unpin way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Who rides from where to where is listed here. Take up Trip{key} and drag from a station to another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No way leads there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>by {arms}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>past no reader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way is pinned. {price}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way is pinned.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing: the defaults lead there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{place} {waybill} at {reader}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It costs {costs}, and saves {saves}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It costs {costs}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It saves {saves}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It costs nothing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{seconds} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{minutes} min {seconds:02} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{length} cells, {time}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something stands there already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link runs from one station or junction to another: drag from the one to the other.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A trip runs from one station to another: drag from the one to the other.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The trip takes the chosen way, whatever it costs. The shortest one stands first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin the way {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ways</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>past no junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{length}: {through}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} has no plan; it is known by its readers only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not served</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{inverters}, {thrown:,} thrown, {wired:,} wired</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n inverter(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>no order is better</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not proved to be the best</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no order serves all wanted routes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no order that serves was found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>served: {needs}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choices</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>must leave</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>came out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tick a run when its cart came out as it must, by a click or with Space</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm by which the cart comes in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the cart carries</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm by which the cart must leave</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm by which the cart came out, or that it stays; a click or Enter offers them</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as it must</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>must leave by {must}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stays as the plan stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>came out by {saw}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>run {row}: from {start}, {load}, {wanted}; {did}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another run…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What they miss</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Faults that no run shows, and faults that no run tells apart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What may be wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Restore</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring the cleared answers back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clear the answers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space ticks a run whose cart came out as it must; Enter offers what else it may have done.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the cart of run {row} did</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking for what explains it…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What no run tells:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The test runs of the wanted routes are listed here; no routes are wanted yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No cart can come in by the arms of the wanted routes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Working out the test runs…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not every wanted route arrives as drawn; the findings say why.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No fault explains what the carts did, nor do any two together, nor does the plan built turned or mirrored.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an empty cart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a cart with {waybill}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next: send {cart} in at {start}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No single fault is possible here, so no run is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No run shows any of {faults}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n fault(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>{runs} shows {shown} of {faults}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{runs} show {shown} of {faults}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n run(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>{first}, and {second}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It looks as if it was built otherwise than drawn: {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>which of these it is: {names}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>whether {fault}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tick a run when its cart came out as it must; else choose what the cart did.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{ticked} of {runs} came out right; no fault shows so far.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every cart did as it must: there is no single fault that a run could show.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One explanation:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No further run tells these {explanations} apart; the smallest first:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{explanations} explanations, the smallest first:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} crosses {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It crosses none of {routes}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n other route(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>It may run together with {map}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set aside: “{reason}”</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set aside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No findings: nothing stands in the way of building this plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mend the finding</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set aside…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop the waivers without a finding</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{findings} set aside no longer found</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n finding(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>What stands in the way of a plan is listed here as you draw.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No findings: nothing stands in the way of this plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take up again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop {waivers}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n waiver(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Findings, materials and test runs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Switches, routes, readers and pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>faces {facing}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing here, carried by {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rests {shape}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>powered {shape}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>needs an inverter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not wired</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>thrown for carts from {arms}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>named {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>of wood</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>holds {held}, reads {strength}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>in heading {heading}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>out heading {heading}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm {name}, {ways}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on {count} wanted routes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>called</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>idle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on the {kind} route {start} to {goal}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{findings} set aside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>R turns</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>delay {delay} ticks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>D delays</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>D changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a click places it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>faces the drag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a click: {facing}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In hand: {said}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level {number}: {counted}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>locked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>hidden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>part</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stacks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to carry</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Full stacks of 64, and the pieces over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level of the materials</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to carry is counted here as you draw.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{counted} in all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Message</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Close the message</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A finding of this weight is about the cell; of several, the number stands beside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{severity}, set aside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Such a finding was set aside with a reason: dashed and empty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Explained on each page of the build sheet that bears it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A test cart, a reader that is previewed and a chosen test run show the way of a cart.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Way of a cart, {load}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ways of carts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where track enters and leaves the junction. Its tag points the way in which carts run.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Arms and their tags</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Arm, {ends}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The markers of findings on the plan, and the signs that the build sheet adds to the parts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Markers and signs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ready circuits to put down: readers, latches, inverters, drives.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Modules</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ports</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>R turns, M mirrors; a click puts it down.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the parts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Page of the module</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hold, ticks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For how many ticks it stays on after its input went off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where its repeater lies: under the switch, or along the free side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where its line starts: ahead of the carts, or aside of their way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The second one gives the other state, through a torch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the ring lies that keeps the line on, and how long it does; see below</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two leave the signal as it is, three turn it round</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To which side of the block the torch hangs, as the reader faces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The waybill that it takes out of the carts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Module: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>into the block above</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>into the block below</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>level shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{abs} above</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{value} below</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n level(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n column(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Delay {delay} ticks, {columns}, {levels}, {counted}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>going {facing}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title}. Ports: {ports}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inverters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inverters needed; choosing one turns the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Orientation {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Orientation {number}, mirrored</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: not worked out yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: no choice of signals serves all wanted routes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: no inverter needed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: {inverters} needed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inverter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>x z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>faces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lies, is set</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The height at which the piece stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To the east and to the south</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way that it points, where that means something</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shape of a rail; delay, mode and content of other pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>switch, {shape}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rail, 64, south-east…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look for pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every piece of the plan stands here once there is one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{found} of {pieces}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A route with a called way has a reader; what it throws is listed here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>End preview</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{arm}: {throws}, waybill {waybill}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm by which an empty cart must leave</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm by which a cart with the waybill must leave</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The waybill that calls the route; the arm&apos;s name where it is left out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not reached as the plan stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reached</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wanted routes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add route</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove the chosen route</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw arms first: with the Arm tool, drag across the end of a track.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a route for each arm by which carts come in.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Double-click or F2 edits a cell; the waybill may be any name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{headerData} of the route</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No signal comes to the booster on which it is held, and nothing else moves or changes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left the track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no rail where it went on from here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>was stopped by a block</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A part stands where the track goes on from here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waits without end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dust out of reach</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two lines touch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A block powered from two lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A torch burns out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A circuit that never settles</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A reader with the wrong count</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A hold that is too short</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tick {tick}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cart {cart} {does}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cart {cart} ran into a cart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A cart stood at {at}; both are gone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts {carts} collided</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>They were in one cell, {at}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{names} change in one tick; the world may take them the other way round.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>So it was {count} times.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>After {time}, with {load}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>After {time}, empty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Order within a tick decides</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cart {cart} left by {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where carts arrive, what is lost and why is listed here as the dry run goes on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No cart has arrived or been lost, and no order within a tick decided anything.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the dry run found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not pressed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pressed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>brakes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drives</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>unsure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cart {cart}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>burnt out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>strength {value}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>delay {delay} ticks, {words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{mode}, gives {strength}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>with a signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} items, reads {reading}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stopped by its signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>strongly powered, {power}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>weakly powered, {power}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How large the drawing is shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} selected</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{percent} %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>saved</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no recovery copy</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>recovery copy {age} ago</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A copy of the plan as it is now, in case this program or the machine fails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{whole} min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cell</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rests</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>powered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>called by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Named in the order of placing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the switch lies</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How it lies without a signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How it lies with a signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it must do while no reader holds: rest, or be powered by an inverter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arms whose reader throws it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>never</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A curve with a third neighbour becomes a switch, and is listed here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No route is wanted yet, so that no switch need be wired.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No choice of signals serves all wanted routes; the findings say why.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every wanted route arrives without a switch being wired.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 inverter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{inverters} inverters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 throw</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{throws} throws</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{inverter_word}, {throw_word}: the fewest for this orientation.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>throws {listed}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>throws nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said} Being worked out anew…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tick</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>second</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What each probed part reads stands here tick by tick: choose parts on the plan and press Probe.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing has been read yet: start the dry run{key}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unsure: the order within this tick decides.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Watch what the chosen cells read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Watch the cell of the chosen row no more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Zoom in along time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Zoom out along time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whole run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show all ticks that were run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>SVG…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the ticks that are seen, of all probes, as a drawing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>VCD…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the whole run for a waveform viewer (IEEE 1364)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show what the dry run found beside the diagram</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tick {tick}, {seconds}, with the run. {sentence}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tick {tick}, {seconds}. {sentence}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Found  {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at rest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>works</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stopped by a signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>has a signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>power</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>strength</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>output</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Torch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Booster</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Detector</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not read yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said} since tick {since}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}, {words} from tick {after}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ready made</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Modules…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readers, latches, inverters and other circuits to put down whole{key}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{first} and {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Undid: {step}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Did again: {step}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done: {step}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Added</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changed</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copied</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drew</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dropped</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erased</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fit</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fitted</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fix</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fixed</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gave</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Laid</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Make</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Made</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mirror</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mirrored</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moved</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paste</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pasted</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pinned</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Placed</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Re-wire</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Re-wired</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Removed</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rename</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Renamed</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reorder</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reordered</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Replace</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Replaced</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settle</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settled</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Started</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swap</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swapped</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Took</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turned</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unpin</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unpinned</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wire</source>
        <comment>Begins a step</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wired</source>
        <comment>Begins a step that is done</comment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>in and out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm, {ends}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cart heading {heading}, {load}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>strength {figure} at the end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cells} cannot take it</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n cell(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Opened: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing selected</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no findings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Check: {counts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing made</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The preview has ended</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The dry run stands still at tick {tick}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The dry run goes on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The dry run has ended</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cannot be read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Example: {title}, {kind}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open {title} as your own; the example stays as it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{arms} arms, {routes} routes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left over: {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep for later</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep what was left over for later</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Close this; what was left over is offered again next time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Untitled</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>never saved</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take it up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take up {title}, {saved}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>When the copy was made that is taken up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>thrown away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Throw away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep this copy after all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This copy goes when this screen closes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring back {title}, {saved}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Throw away {title}, {saved}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plan a junction before
you place a block.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>six hints</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plans and networks that you open or save are listed here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Examples of the Brinepan Tramway — an invented company</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} was at {places}; it is here now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No end of a track here: drag across one, onto the track or off it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No rail at {cell}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The test cart carries the waybill.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The test cart is empty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag the cart in the direction in which it shall run.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No cart comes in by {name}: the arm has only an out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} stays {old}; in the plan it becomes {new}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Taken away by hand, {first}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Taken away by hand, {count} rails keep the shapes that they have now: {first}, …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag to draw a line of dust. Page Up, Page Down: a level on. D: repeaters, or dust alone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Laying the line…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It sets repeaters where its strength would run out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dust alone: no repeaters are set.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} cells: the strength comes when the line is laid.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n repeater(s) (at {at})</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>{said}; strength {left} at the end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click a rail to step through its shapes, or drag across it as it stands there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The survey is kept as it is; take up Survey again to go on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No order of placing makes the rail at {cell} lie like that.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag across a rail, from the middle of one edge to another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No switch at {cell}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No lever or button at {cell}; in a dry run signals throw the switches.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a quarter clockwise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>half round</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a quarter counter-clockwise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mirrored</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as drawn</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turns what is in hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>changes delay and mode</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mirrors what is carried</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>loads the test cart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moves the cursor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moves what is chosen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes to the next station or junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>acts at the cursor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes a step back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes to the next field</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes to the field before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>opens a menu</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{next:,} of {of:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>round {done:,} of {of:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>made shorter, {done:,} of {of:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>run {done:,} of {of:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Empty the barrel of each reader before it is full, at {room:,} waybills: then its line stays on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{done:,} of {of:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wired: {lines}, {dust:,} dust, {repeaters}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n line(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>{cells} from above, {levels} below the track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>all {runs:,} runs passed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>its one run passed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{passed:,} of {runs} passed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{ticks}, {seconds:g} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n tick(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>the inverter of the switch at {place} is missing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the switch at {place} has an inverter that it should not have</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the line of the reader of {arm} is dead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the line of the reader of {arm} never lets go</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the line of the reader of {arm} does not reach the switch at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the rail at {place} lies {shape}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a cart holds {slots} stacks of {stack}; {count} are too many</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no {wanted} at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no container at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the {part} at {place} has {slots} slots</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The reader at {cell} holds {count} and reads {reading}. It must hold {right}: then it reads 1, and 2 with one more. Of items that stack to 16 it must hold {of_16}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no arm {arm!r}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the arm {arm} has no way in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no rail lies where the arm {arm} comes in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no rail lies at {place}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The torch at {at} changes more than 8 times in 60 ticks and burns out for 160.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The part at {at} still changes 20 seconds after the last cart, item or event.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The dust at {at} is out of reach: the dust beside it has strength 1, and it never has any.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The block at {at} is powered from two lines.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two lines meet: what is on at {one} throws what {other} throws, too.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The switch at {at} changed between the carts {one} and {other} of one train: the hold is shorter than the gap between them, or came after the first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add arm {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set arm {old_name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rename arm {old_name} to {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove arm {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is already an arm {name}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is already a wanted route from {new}; remove it first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set title</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave running side unchecked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set running side to {side}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set sheet data</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay line of {dust}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay line of {dust} and {repeaters}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase {pieces}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paste {pieces}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place {pieces}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set {pieces}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change {word} to {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn {word} to {facing}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set delay of {word} to {delay} ticks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set {word} to {mode}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set what {word} holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set {word}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reorder {pieces}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set the build order of {rails}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add {blocks}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n block(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>{cell} is out of reach: x and z go from −{limit:,} to {limit:,}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} is out of reach: levels go from −{lowest:,} to {highest:,}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A {part} cannot point {facing}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A repeater&apos;s delay is 2, 4, 6 or 8 ticks, not {delay}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There cannot be {count} of an item.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A {part} has {slots} slots of {stack} items.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A plan takes {limit:,} pieces at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A plan takes {limit:,} arms at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm {arm} needs an in or an out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A plan takes {limit:,} wanted routes at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set route from {start}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A route from {new_start} stands in the table already; one route an arm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start a route at {new_start}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove route from {start}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay {rails}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn plan to orientation {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{label} and set the build order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move plan by {move}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set aside {rule}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take up {rule}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n waybill(s) “{name}”</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>{step}, replacing {count:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes other waybills</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>take other waybills</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is a {kind} {name} already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A network takes {limit:,} {kind} at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link leads from one place to another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link has 1 to {limit:,} cells.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A trip has 0 to {limit:,} carts a week.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An arm has one reader at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A junction takes {limit:,} readers at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts from {start} leave by one arm, or by one of two.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts from {start} cannot leave by {default}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{end} is no arm of a junction.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The map goes from −{limit:,} to {limit:,}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change title</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add station {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add junction {junction}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>link {start} → {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add {first}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add {count:,} links</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change link {start} → {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add trip {start} → {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change trip {start} → {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} things</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rename station {old} to {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rename junction {old} to {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change junction {old}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set reader {reader}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove reader {reader}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>trip {start} → {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin {reader}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unpin {reader}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pin the way {start} → {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unpin the way {start} → {end}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pinned ways</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The readers of {junction} are the wanted routes of its plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} links begin at {start}, to {ends}; carts take the first of them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No link ends at {end}; no cart comes by it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No link begins at {end}, where carts leave {junction}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An empty cart that comes to {names} goes round without end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} stations are called {name}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} junctions are called {name}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From {names} no way leads back to where carts come from.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An empty cart from {reader} leaves by {default} in the plan of its junction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}, by {default} here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no plan keeps it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pin on {reader} is not kept: {why}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no way enters by these arms, in this order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no such reader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it has no way {default}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing is said of carts that enter by {missing}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no such trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pinned way {trip} is not kept: {why}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link begins at {end}, but {why}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A link ends at {end}, but {why}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts only come in by that arm of its plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts only leave by that arm of its plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no wanted route of its plan leads there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no way of its readers leads there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no wanted route of its plan begins there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no way leads on from there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No way leads to {name} from any other station.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The waybills for {trip} take {slots:,} slots; a storage cart has {slots_of_cart}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No way leads from {start} to {end}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The link {trip} names {missing}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The trip {trip} names {missing}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{end}, a junction without an arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{end}, and there is no such station</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{end}, and there is no junction {junction}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{end}, and {junction} has no arm {arm}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The reader {end} takes {waybill} in the plan of its junction, {planned} here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{waybills:,} waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{waybills:,} waybills</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {names} of {arm} is not on a rail: none lies at {places}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{names}: {count} cells without a booster from {first} to {last}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The booster rail at {cell} gets no signal and brakes every cart.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{switch} is built {built} and rests {resting} once it was powered.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{names} bends at {cell}, where a {part} lies.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No choice of signals serves {routes} together.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the rail at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No choice of signals serves {routes} together: they need {names} to lie differently.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{switch} must be powered all the time: no reader throws it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The detector rail at {detector} throws the three-way rail at {rail} under every cart.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{names} would need another shape of the rail at {cell}, which has four neighbours.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{names} run in opposite headings through {where}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{switch} needs an inverter: it is powered while no reader holds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rail at {cell} has a loose end to the {heading}, on {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An empty cart on {route} {ending} {holding}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{times} arms are called {name}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How these rails lie depends on the order in which the signals change: {places}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cart} cannot come in, so it does not reach {goal}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cart} {ending} instead of leaving by {goal}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{told} It would get there if the switches lay as they rest, not as built.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts on {arm} do not run on the {side}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rail at {cell} is bent to {shape} {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The route from {names} names {name}, but no arm is called so.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {part} at {place} is not carried: there is {there} at {places}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No signal is meant for the three-way rail at {rail}, but {beside} touches it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{shown} and {more:,} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A called cart from {start}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An empty cart from {start}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>while no reader holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>while the reader of {arm} holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>runs off the track at {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>runs into a block at {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>goes round without end past {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A test cart before the first passenger.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go through the test checklist when all is built.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rules are common practice, from memory.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Your world may run by others: try one switch before you build the rest.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Build in this orientation only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turned or mirrored, switches can rest the other way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay the numbered rails in order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Their shape follows from the order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face the way of the arrow where a rail has one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It would lie across else.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go step by step: some parts come late.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each of them says why it waits for a higher level.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mend the plan before you build it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>And {count:,} more of this kind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{most} and {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It rests wrong until the first signal.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>They rest wrong until the first signal.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power {listed} once.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level {low} before level {high}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The levels in order, from {low} up to {high}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rails fall where nothing carries them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None of the faults that are looked for can be there: no run is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{shown:,} of {faults}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n single fault(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>This run shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>These {runs} show</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{runs} {shown}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No run can show any of {faults}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{first}, or {second}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one of {left:,} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>footprint {width} × {depth} cells, {covered} covered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level {level} — {names}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 piece.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} pieces.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unbroken curve: the switch at rest. Dashed curve: powered.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Narrow line across a curve: carts run straight through.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place the numbered rails in the order of their numbers, the others at any time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Grey lines: level {below}, one below.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Laid only after {on} (step {step:,}), so that all rails around come to lie as planned.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Placed before {places}, a signal could reach the track while it is laid.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Placed before {places}, it could turn a rail beside while the track is laid.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it hangs from stands higher, at {places}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing in the plan carries it at {places}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{area} at level {y}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A floor of {size} {parts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>to the east</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>to the south</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A line of {parts} {way}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} takes notice: it lies {resting} without a signal, and {powered} with one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} takes notice: it lies {resting} without a signal.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} more rails take notice.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All others</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Both</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rise to the {heading}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rises to the {heading}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lie {shape}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lies {shape}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said} for now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}, {places} only for now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} has turned from {before} to {after} for now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} has turned from {before} to {after}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{cell} to {shape}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The detector rail is a signal part: as it is placed it may turn {said}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} {parts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>facing {facing}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{parts} at {places}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{parts} from {first} to {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set to {mode}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{more:,} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Signal parts touch the block at {carrier} already; take them away first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of the sides of the block at {carrier} {free} are free, for {lines}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A hopper beside {carrier} would stop when that block is powered.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no room for a button under the block at {carrier}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something stands in the way at {taken_below}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rails lie so far apart that wiring could stand in {cells} cells; at most {most} are searched.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The route from {start} to {goal} is not reached, wired or not.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the rail at {at} does depends on the order in which signals change.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The booster rail at {cell} has no signal and holds every cart.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A reader takes {depth_needed} levels below its rail; only {depth} are allowed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two lines are in each other&apos;s way at their starts or ends.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The lines have too little room at the target block at {block}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No way was found past the other lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no way of {latest} ticks or less</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{why} to the target block at {block}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No dust can lie beside the target block at {group}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No dust can lie at {start}, where the line starts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would make the {part} settle again whenever it changes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would feed the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would drive the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would act at the side of the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would lock the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would be read by the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would put out the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would exchange items with the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would throw the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would stop the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would light the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would set off the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said} It would do so through the {block}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {what} would take the place of what the {part} looks at.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {what} would cut the {part} off from the {source}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {what} would bend the {source}, so that it no longer acts on the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {what} would keep the {source} from the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{part} at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would join the {part}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would join the {part}, a step up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {source} would join the {part}, a step down.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {names} is in the way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the line itself</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the {part} below</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At {first} {what} leaves no room for a block under the dust.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No signal comes as far as {dead}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line stays as it is. Led anew it failed in the dry run: {fault}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lines are wired below track, and there is no track here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line acts on nothing, so there is nowhere to lead it to.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line acts on the {where}; only lines that end beside target blocks are wired anew.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line stays as it is. {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No shorter way was found; the line keeps its {length}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line is wired anew: {length} instead of {before}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{dust} dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{dust} dust and {repeaters}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A {name} stands in the way at {place}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{place} lies outside the box in which wiring may stand.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A {name} at {place} would couple with what stands about it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{value} is no choice for {parameter} of the {doc}: it can be {possible}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {word} at {first} stands in the way, and {more} more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {word} at {first} stands in the way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place module {module}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>its signal would come too late at the first switch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it would leave no room for a line at {shut}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no straight of it is long enough before the first switch that it must throw.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no place for the reader of {arm}: {whys}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>control table</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wire {lines}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{stations}, {trips}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n station(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n trip(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Plans (*{ending});;All files (*)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan has no file yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan was not saved: {path} ends as a file of another kind does, and could not be opened again. Names of plans end in {ending}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan was not saved: {file} could not be written: {reason}. Nothing is lost: it is still open, and the file is as it was.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{path} was not opened: {reason}. The plan that was open is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{file} was not opened: {place}: expected {expected}. The plan that was open is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{file} was not opened: {place}: expected {expected}. The network that was open is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Networks (*{ending});;All files (*)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a network</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the network</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The network has no file yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The network was not saved: {path} ends as a file of another kind does, and could not be opened again. Names of networks end in {ending}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The network was not saved: {file} could not be written: {reason}. Nothing is lost: it is still open, and the file is as it was.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{path} was not opened: {reason}. The network that was open is unchanged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A name cannot be empty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A name has {limit} characters at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A name takes no comma and no slash.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An item has 1 to {limit} characters.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A text has {limit:,} characters at most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Text takes no control characters.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>JSON ({reason})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>UTF-8 without a byte order mark; save it again without one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>line {line}, byte {byte}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a number of at most 4,300 digits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>JSON, which has no {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>each key once; this one is doubled</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>whole characters; there is half of a surrogate pair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>line {line}, column {column}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at most {limit} lists and objects inside one another</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&quot;{form}&quot;; this is a plan file: &quot;platelayer check&quot; reads it, and the editor opens it under a name that ends in .plan.json</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&quot;{form}&quot;; this is a network file: &quot;platelayer network&quot; reads it, and the editor opens it under a name that ends in .network.json</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at most {limit:,} values under keys of its own</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{known}; version {version} was written by a newer Platelayer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the key &quot;{key}&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>top level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{file}: {place}: expected {expected}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;at&quot; and &quot;heading&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>north, east, south or west</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;format&quot;, &quot;version&quot; and &quot;pieces&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {pieces:,} pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;part&quot; and &quot;at&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one of {parts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>north, east, south, west, up or down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>2, 4, 6 or 8</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>compare or subtract</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {arms:,} arms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;name&quot; and at least one of &quot;in&quot; and &quot;out&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {routes:,} routes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;from&quot; and &quot;idle&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {waivers:,} waivers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;rule&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a word of 1 to {name} characters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {cells:,} cells</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {arms:,} names</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at most {limit:,} pieces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at most {limit:,} values</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a station, or a junction and its arm with a slash between</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a junction and its arm with a slash between</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a place on the map: two numbers from -{map:,} to {map:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;from&quot;, &quot;to&quot; and &quot;per_week&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;format&quot; and &quot;version&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {stations:,} stations</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;name&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {junctions:,} junctions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;name&quot;, and &quot;plan&quot; or &quot;readers&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the path of a plan file, 1 to {path:,} characters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {arms:,} readers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;from&quot; and &quot;ways&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of one or two arms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>null or one of the ways</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {links:,} links</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;from&quot;, &quot;to&quot; and &quot;length&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a whole number from 1 to {length:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {trips:,} trips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a number from 0 to {per_week:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {pins:,} pins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;reader&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {pins:,} ways</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;from&quot;, &quot;to&quot; and &quot;via&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {via:,} arms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {via:,} names</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a plan file that can be read; {error}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one pin a reader; {other} is for the same</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one way for two stations; {other} is for the same</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one reader an arm; {other} is for the same</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>two arms, not one arm twice</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>null or one of the ways, {ways}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;runs&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {runs:,} runs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;from&quot;, &quot;waybill&quot; and &quot;saw&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>null or a name of 1 to {name} characters without control characters, comma or slash</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an arm by which carts come in; {arm} is none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an arm by which carts leave, or {stays}; {arm} is none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a file that can be read ({reason})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the file itself</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an ordinary file, no pipe and no device</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at most {limit:,} bytes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>three whole numbers [x, y, z], x and z from -{xz:,} to {xz:,}, y from {lowest:,} to {highest:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a name of 1 to {name} characters without control characters, comma or slash</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a text of at most {text:,} characters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of what the slots hold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;item&quot; and &quot;count&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waybill: and a name of 1 to {name} characters without control characters, comma or slash; or another word without control characters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a whole number from 1 to {count:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>true or false</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left or right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{facings} for {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this key only on {parts}, not on {part}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at least one of &quot;in&quot; and &quot;out&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a cell of its own; {other} stands there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one route an arm; {other} begins there too</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{words} or {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>what {slots} slots can hold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a whole number from 0 to {count:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object of waybills, each with a whole number from 0 to {count:,}; or a list of such objects, one a cart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;events&quot; and &quot;probes&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {probes:,} cells</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of at most {events:,} events</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object with &quot;tick&quot; and &quot;do&quot;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>send, lever, button or fill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a whole number from 0 to {ticks:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a whole number from 1 to {carts:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a whole number from 0 to {gap:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at most {limit:,} carts in all trains together</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>one entry a cart; the train has %n cart(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>waybills, each a name of 1 to {name} characters without control characters, comma or slash</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>what the {slots} slots of a cart can hold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the torch at {torch} burns out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it is not at rest {ticks} ticks after the train was sent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the signal at {cell} stays at {after}, and was {before}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the reader at {cell} has {after} items, and had {before}</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>readers took {own} of {waybill} from %n cart(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>a reader took {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{run}: {faults}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>which of the rails at {one} and {other} turns first decides something</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>where {first} comes before {second} within a tick, {fault}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{arm} called</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{arm} idle</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n cart(s) with gap {gap}</source>
        <translation type="unfinished">
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>the first alone with the waybill</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>with waybills for others</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{train}, {count} times</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{first}, then {second}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the cart left the track at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cart {carts} left the track at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts {carts} left the track at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the cart was stopped by a block at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cart {carts} was stopped by a block at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts {carts} were stopped by a block at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the cart ran into another at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cart {carts} ran into another at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts {carts} ran into another at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the cart got no further at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cart {carts} got no further at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts {carts} got no further at {cell}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the cart came to {arm}, not to {goal}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cart {carts} came to {arm}, not to {goal}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>carts {carts} came to {arm}, not to {goal}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Working</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{stage}: {done:,} of {of:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The reader {reader} takes the {name} that is meant for {later}, on the trip {trip}, and on {more:,} more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The reader {reader} takes the {name} that is meant for {later}, on the trip {trip}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carts run on the {side} at {end} and on the {other_side} at {other_end}, which are joined.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No wanted route passes the rail at {places}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No wanted route passes these {count:,} rails: {places}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Laying the rails</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pasting the pieces…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moving what is chosen…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Setting what is chosen…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turning what is chosen…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>January</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>February</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>March</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>April</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>May</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>June</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>July</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>August</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>September</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>October</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>November</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>December</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>yesterday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day} {month}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day} {month} {year}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Laying out the levels</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>level {low}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>levels {low} to {high}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read the file again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The plan of {junction} was not read: {why}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Empty the line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Comparing the cells</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Connecting the signal parts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>new</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stands already</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>level below</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>level above</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>has turned</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
