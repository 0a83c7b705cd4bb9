"""A slow, plain second implementation of the rules of the world and of what follows from them.

It was written from the text of the rules alone and shares no code with ``model``: cells are tuples
``(x, y, z)``, directions, parts and shapes are the words of the plan file. Only ``adapter`` knows both sides.

Where the text leaves a question open, this is the reading taken here:

* *Settling, no open direction*: the shape stays as it is, and no slope rule. A booster or detector rail with
  open directions on both axes keeps its shape, and the slope rule is applied to it.
* *Joining*: the links are the directions of the live links together with the direction of the column of the
  rail that is joined, so a live link that already leads into that column counts once.
* *Joining after a notice* visits the ends of the new shape in the order that placing does.
* *Powered and released*: a wired switch is released before the next one is powered.
* *Readers together*: a switch has the other signal than at idle when at least one holding reader throws it.
* *A cart that would run into a block* stops, even in the cell by which it would leave by an arm: it has
  "left by an arm as soon as it leaves" that cell, and a stopped cart does not leave it.
* *What a cart runs into* is looked for in the cell that its end points at, which is one up for a raised end.
* *Two arms with the same way out*: the first in file order is the one that the cart leaves by.
* *A route whose arm has no way in, no rail there, or is not known* is never reached.
* *The tie by reading the switches*: switch after switch, for each one first whether it is powered at idle,
  then reader after reader, sorted by name, whether it is thrown.

Of the dry run:

* *The start* counts as a tick; up to 200 follow, and then tick 0, with what is pending then still pending.
* *A change of a signal part* is one from off to on or back, at the end of a tick against the end of the last.
* *A repeater that is due* at its turn in file order finds a lock that came on before it in that tick.
* *The ninth change of a torch* counts; it is out until it looks at its block 160 ticks later, and no sooner.
* *A part that a rail touches* and that carries a signal part is one that can carry.
* *A booster passes its signal on* along the links of the one that passes it on.
* *A cart is held* at the end of every tick in which it stands on a booster without a signal.
* *Collisions* are looked for after carts have moved and again after the script; all in that cell go off the
  track, and one that had stopped gets no second entry. The cart that came in turns a detector rail on.
* *The other way* of a pair is the list of what acts with the two in each other's place; the whole tick is run
  again. Hoppers come first in that list, then crafts; with the first craft all that are due take and look.
"""
