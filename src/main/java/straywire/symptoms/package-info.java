/**
 * What people say: each symptom is a predicate over an exercise of the simulated module, so that
 * its probability under every hypothesis is worked out. Must not know the ranking.
 */
package straywire.symptoms;
