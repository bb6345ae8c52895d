/**
 * The language in which the function of a part is written: tokens, sentences, gates, and the
 * program that works 64 lanes at once. Must not know part files, families or modules.
 */
package straywire.logic;
