package straywire.pages;

import straywire.logic.PinKind;
import straywire.logic.PinSpec;

/** What a kind of pin is called. */
final class PinWords {
  private PinWords() {}

  static String of(PinKind kind) {
    return switch (kind) {
      case INPUT -> "input";
      case OUTPUT -> "output";
      case TRISTATE -> "three-state output";
      case OPEN_COLLECTOR -> "open-collector output";
      case BIDIRECTIONAL -> "in and out";
      case SUPPLY -> "supply";
      case GROUND -> "ground";
      case NOT_CONNECTED -> "not connected";
    };
  }

  /** The kind, and that the pin is drawn with a bar. */
  static String of(PinSpec pin) {
    boolean all = pin.activeLow() && !pin.name().substring(1).contains("/");
    String low = pin.kind() == PinKind.INPUT ? ", active low" : ", active low or complement";
    return of(pin.kind()) + (all ? low : "");
  }
}
