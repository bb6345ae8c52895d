/**
 * What is meant, and what was noted: modules (parts, nets, jumpers, controls, lamps, ports), the
 * bench log and its entries, and the text formats of both. Knows nothing of faults or simulation.
 */
package straywire.module;
