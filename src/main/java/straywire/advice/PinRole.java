package straywire.advice;

import java.util.regex.Pattern;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.parts.Part;

/** What a pin is for, told from its data-sheet name and kind alone. */
public enum PinRole {
  SUPPLY(""),
  GROUND(""),
  /** Write enable of a memory or register file. */
  WRITE("WE|GW"),
  /** Chip select, gate or output enable, count enable. */
  ENABLE("CS|CE|\\d?OE|\\d?G\\d?[AB]?|GR|ENP|ENT|CTEN|CCKEN|EI|CLKINH"),
  /** Which way a transceiver, counter or shift register works. */
  DIRECTION("DIR|D//U|SH//LD"),
  /** Clear, reset, preset or set. */
  CLEAR("\\d?CLR|S?R?CCLR|SRCLR|\\d?RESET|\\d?PRE|\\d?SET|R[09]\\(\\d\\)"),
  LOAD("LOAD|LD"),
  /** Clock, count or latch enable. */
  CLOCK("\\d?CLK|CK[AB]|RCLK|SRCLK|CCLK|UP|DOWN|LE|\\d?C\\d?C"),
  /** Address line of a memory or register file. */
  ADDRESS("A\\d+|[RW][AB]"),
  /** Selects an input or output of a decoder or multiplexer. */
  SELECT("\\d?[ABC]|S\\d?"),
  /** Any other input. */
  DATA_IN(""),
  /** Any output, and both ways of a transceiver. */
  DATA_OUT(""),
  NONE("");

  private final Pattern names;

  PinRole(String names) {
    this.names = Pattern.compile(names);
  }

  private boolean named(String name) {
    return names.matcher(name).matches();
  }

  /** Role of {@code pin} on {@code part}; names such as A mean other things on other parts. */
  public static PinRole of(Part part, PinSpec pin) {
    String name = pin.activeLow() ? pin.name().substring(1) : pin.name();
    return switch (pin.kind()) {
      case SUPPLY -> SUPPLY;
      case GROUND -> GROUND;
      case NOT_CONNECTED -> NONE;
      case INPUT -> ofInput(part, pin, name);
      case OUTPUT, TRISTATE, OPEN_COLLECTOR, BIDIRECTIONAL -> DATA_OUT;
    };
  }

  private static PinRole ofInput(Part part, PinSpec pin, String name) {
    // Registers with two output gates name them /M and /N.
    if (pin.activeLow() && (name.equals("M") || name.equals("N"))) {
      return ENABLE;
    }
    for (PinRole role : new PinRole[] {WRITE, ENABLE, DIRECTION, CLEAR, LOAD, CLOCK}) {
      if (role.named(name) && !(role == ENABLE && isGateInput(part, name))) {
        return role;
      }
    }
    if (ADDRESS.named(name) && hasInput(part, WRITE)) {
      return ADDRESS;
    }
    if (SELECT.named(name) && selects(part)) {
      return SELECT;
    }
    return DATA_IN;
  }

  /** On a wide gate or a register, G is the seventh of A, B, C ... and no enable. */
  private static boolean isGateInput(Part part, String name) {
    return name.equals("G") && part.pinNamed("F").isPresent();
  }

  private static boolean hasInput(Part part, PinRole role) {
    return part.pins().stream()
        .filter(p -> p.kind() == PinKind.INPUT)
        .anyMatch(p -> role.named(p.activeLow() ? p.name().substring(1) : p.name()));
  }

  /** Decoders and multiplexers: an enable, and nothing that remembers. */
  private static boolean selects(Part part) {
    return part.logic().stateLength() == 0 && hasInput(part, ENABLE) && !hasInput(part, CLOCK);
  }
}
