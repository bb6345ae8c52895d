/**
 * From the posterior to suspects and to the next step: ambiguity groups, the menu of steps, the
 * information each brings per second of the hand. Knows only the probability of each outcome under
 * each hypothesis; no class here prints.
 */
package straywire.steps;
