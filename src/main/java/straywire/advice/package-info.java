/**
 * The rule base: facts about wiring and log go in, suggestions, weights and words come out. The
 * only package that knows the rule engine; must not know how hypotheses are simulated or ranked.
 */
package straywire.advice;
