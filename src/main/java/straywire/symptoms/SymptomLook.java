package straywire.symptoms;

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
 * @param pressed whether a button was pressed since the last look
 * @param step whether the button that takes the word on was pressed once, and nothing else done
 * @param held the button that is down at this look; mostly empty
 * @param preset number that the data switches stand at, high bit first; {@link #NO_PRESET} when
 *     there is not one for each lamp
 */
record SymptomLook(
    int powerUp,
    int presses,
    long place,
    boolean driven,
    Map<String, Boolean> controls,
    int entry,
    boolean pressed,
    boolean step,
    String held,
    long preset) {

  /** Not a number of fewer than 64 bits. */
  static final long NO_PRESET = -1;

  /** A look with every button up, and not the one right after a button was held. */
  SymptomLook(
      int powerUp,
      int presses,
      long place,
      boolean driven,
      Map<String, Boolean> controls,
      int entry) {
    this(powerUp, presses, place, driven, controls, entry, false, false, "", NO_PRESET);
  }

  boolean plain() {
    return held.isEmpty();
  }
}
