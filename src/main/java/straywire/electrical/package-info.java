/**
 * Voltages, currents and times of a module as meant, worked out on paper: from the families of its
 * parts, its resistors, lamps and capacitors. Knows parts and modules; must not know faults, rules,
 * simulation, or what anybody saw.
 */
package straywire.electrical;
