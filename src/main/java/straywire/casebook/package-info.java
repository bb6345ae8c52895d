/**
 * Cases: finished sittings with a known cause, and simulated benches that stand in for one. Knows
 * diagnosis and everything below; must not know how a sitting is shown or typed.
 */
package straywire.casebook;
