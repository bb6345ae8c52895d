/**
 * Part types and families as a reader looks them up: searching, and a part as lines of text, as
 * JSON and as a page with a drawing. Knows nothing of what a module does with a part, and prints
 * nothing.
 */
package straywire.pages;
