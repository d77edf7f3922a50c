/**
 * A day at the rack: which recipes are played, in which order and which of them at once; where they
 * get into each other's way, what has to be moved between them, and the order with the fewest
 * moves. Moves are counted in connections and in knobs and switches, each as one. Uses the core,
 * equipment, recipes and access. A session names its recipes; it has no copies of them.
 */
@NullMarked
package thudbook.sessions;

import org.jspecify.annotations.NullMarked;
