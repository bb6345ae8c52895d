package straywire.faults;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A way in which a module goes wrong. The comment gives the places a suggestion of it names, in
 * order; expansion turns the two into edits.
 */
public enum Mechanism {
  /** Nothing is wrong; no place. */
  NOTHING_WRONG,
  /** jumper. */
  JUMPER_MISSING,
  /** jumper on a supply or ground rail of a part: the part has no supply, or no ground. */
  SUPPLY_JUMPER_MISSING,
  /** pin: leg bent under, bad hole, chip not pressed home. */
  LEG_NOT_IN_ROW,
  /** jumper, its end as meant, the end whose row it sits in. */
  END_MOVED,
  /** jumper, its end, other jumper, its end: the two ends exchanged. */
  ENDS_SWAPPED,
  /** pairs of (jumper, end), in bus order: the ends sit in reverse order. */
  ORDER_REVERSED,
  /** part, then pairs of (input pin, output pin): the inverters are left out. */
  INVERTER_BYPASSED,
  /** two points: neighbouring legs touch, or a whisker. */
  BRIDGED,
  /** pin: shorted to the ground rail. */
  SHORTED_LOW,
  /** pin: shorted to the supply rail. */
  SHORTED_HIGH,
  /** pin. */
  OUTPUT_STUCK_LOW,
  /** pin. */
  OUTPUT_STUCK_HIGH,
  /** pin. */
  OUTPUT_DEAD,
  /** pin. */
  INPUT_STUCK_LOW,
  /** pin. */
  INPUT_STUCK_HIGH,
  /** jumper to a rail, the rail segment it goes to instead. */
  WRONG_RAIL,
  /** part. */
  TURNED,
  /** part: a 14-pin part wired as if it had 16 pins, notch ends aligned. */
  COUNTED_AS_16,
  /** part: only its supply and ground wired where a 16-pin part has them. */
  SUPPLY_AS_16,
  /** part: pins counted from the wrong end, p for N+1-p. */
  COUNTED_MIRRORED,
  /** rail segment. */
  RAIL_NOT_LINKED,
  /** part whose supply is not at its corners, wired as if it were. */
  SUPPLY_AT_CORNERS,
  /** part: not across the trench, so that each leg shares a row with the one opposite. */
  NOT_ACROSS_TRENCH,
  /** part, part type, family. */
  WRONG_PART,
  /** one or more lamps. */
  BARE_LED,
  /** lamp. */
  LED_BACKWARDS,
  /** lamp. */
  LED_DEAD,
  /** contact. */
  CONTACT_DEAD,
  /** contact. */
  CONTACT_STUCK,
  /** contact. */
  PULL_MISSING,
  /** control that changes over: its two throws wired the wrong way round. */
  THROWS_EXCHANGED,
  /**
   * control that changes over between two terminals: its common leg is on no rail; with one of its
   * throws, that the wire to the rail sits there.
   */
  COMMON_OPEN,
  /** contact, {@code any}, 2, 3 or 4: how often it closes at one press. */
  CONTACT_BOUNCES,
  /** part whose contents the module states, {@code blank}, {@code shifted} or {@code reversed}. */
  CONTENTS_WRONG,
  /** part without a capacitor across its supply: it upsets itself now and then. */
  SUPPLY_NOT_QUIET,
  /** part: its outputs do something that nothing else here describes. */
  PART_UNLISTED,
  /** no place. */
  SUPPLY_REVERSED,
  /** no place. */
  RAILS_JOINED;

  /** The mechanism as tables and hypothesis ids write it, such as {@code jumper-missing}. */
  public String slug() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Mechanism> ofSlug(String slug) {
    return Arrays.stream(values()).filter(m -> m.slug().equals(slug)).findFirst();
  }
}
