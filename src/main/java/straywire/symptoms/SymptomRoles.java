package straywire.symptoms;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.module.Word;

/**
 * How the hand works what one word of lamps shows. Found by trying the module as meant, never from
 * a name.
 *
 * @param lamps the word, high bit first; its label is empty for a module whose lamps form no word
 * @param store how a word is put in and kept; empty when the lamps only follow the controls
 * @param gate the switch that drives and releases these lamps' lines; often none
 * @param steps the button that takes the word on, press by press, to one picture after another, as
 *     a counter or shift register does; empty when there is none
 */
record SymptomRoles(Word lamps, Optional<Store> store, Optional<Gate> gate, String steps) {
  /**
   * @param button takes the word in when pressed
   * @param data switches whose levels are taken in, high bit first
   * @param address switches that choose between places, high bit first; empty when there is one
   *     place only
   * @param mode other switches that must not be at rest for the lamps to show what is kept
   */
  record Store(String button, List<String> data, List<String> address, Map<String, Boolean> mode) {
    Store {
      data = List.copyOf(data);
      address = List.copyOf(address);
      mode = new TreeMap<>(mode);
    }
  }

  /**
   * @param control the switch
   * @param drivesAt its level, true is high, at which the lines are driven
   */
  record Gate(String control, boolean drivesAt) {}

  int width() {
    return lamps.members().size();
  }

  /** Sets switches to the bits of a number, the first one highest. */
  static Map<String, Boolean> setting(List<String> switches, long value) {
    Map<String, Boolean> setting = new TreeMap<>();
    for (int i = 0; i < switches.size(); i++) {
      setting.put(switches.get(i), (value >>> (switches.size() - 1 - i) & 1) != 0);
    }
    return setting;
  }

  /** The number that switches stand at, the first one highest. */
  static long value(List<String> switches, Map<String, Boolean> levels) {
    long value = 0;
    for (String control : switches) {
      value = value << 1 | (levels.get(control) ? 1 : 0);
    }
    return value;
  }

  /** The lowest {@code bits} bits set, 0 to 64. */
  static long ones(int bits) {
    return bits == 0 ? 0 : -1L >>> (Long.SIZE - bits);
  }
}
