/**
 * Part types and logic families: pins, function and electrical habits, all read from data files.
 * Knows nothing of modules, wiring or faults.
 */
package straywire.parts;
