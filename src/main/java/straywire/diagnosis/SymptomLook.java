package straywire.diagnosis;

import java.util.Map;

/**
 * One look at the lamps and what was done before it.
 *
 * @param powerUp how often the power had been switched on
 * @param presses how often the button that takes a word in had been pressed since
 * @param place value of the address switches; 0 when there are none
 * @param driven whether the lines are meant to be driven
 * @param controls level of each control, true is high
 * @param entry number of the entry among those walked, from 0
 */
record SymptomLook(
    int powerUp,
    int presses,
    long place,
    boolean driven,
    Map<String, Boolean> controls,
    int entry) {}
