/**
 * Hypotheses as edits of the wiring: what can go wrong, where, and what it changes. Knows modules
 * and parts; must not know rules, logs or probabilities beyond a prior weight.
 */
package straywire.faults;
