/**
 * What can be shown of the tool itself: accuracy, hand time, speed, how far its probabilities can
 * be trusted. Knows cases and everything below; must not know how a sitting is shown.
 */
package straywire.figures;
