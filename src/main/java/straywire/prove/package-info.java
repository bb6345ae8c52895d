/**
 * What can be shown of the tool itself: how fast it works, how far its probabilities can be
 * trusted. Knows diagnosis and everything below; must not know of cases or of a sitting.
 */
package straywire.prove;
