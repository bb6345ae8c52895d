/**
 * Lane-parallel simulation of a module as built: 64 variations of the wiring to a machine word.
 * Knows edges, holds and part variants; must not know what a fault is called, how likely it is, or
 * what anybody saw.
 */
package straywire.sim;
