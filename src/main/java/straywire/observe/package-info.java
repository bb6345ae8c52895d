/**
 * What can be looked at and what it says: instruments, readings and how likely each is, steps of
 * the hand and their seconds, what is believed about unwritten bits. Must not know which hypotheses
 * there are.
 */
package straywire.observe;
