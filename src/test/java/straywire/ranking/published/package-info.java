/**
 * Checks of ranking and step choice against published examples of other worlds: multipliers,
 * adders, combinational benchmark circuits, meter readings. Each check names its source and whether
 * its number was read there, or computed for this project by brute force from open data; a number
 * that is only remembered decides nothing.
 *
 * <p>The models here are small and slow on purpose and share nothing with the simulator of the
 * program: only {@code Posterior}, {@code StepChoice} and {@code ReadingTable} are under test.
 */
package straywire.ranking.published;
