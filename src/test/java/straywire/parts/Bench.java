package straywire.parts;

import java.util.Arrays;
import straywire.logic.PinPlanes;

/** One part on its own, 64 lanes of it, with levels put on its pins by hand. */
final class Bench {
  final Part part;
  final PinPlanes pins;
  final long[] state;

  Bench(Part part) {
    this.part = part;
    pins = new PinPlanes(part.pinCount());
    state = new long[part.logic().stateLength() + 3];
    part.logic().forget(state, 3, -1L);
    Arrays.fill(pins.can1, -1L);
    Arrays.fill(pins.can0, -1L);
    Arrays.fill(pins.was1, -1L);
    Arrays.fill(pins.was0, -1L);
  }

  int number(String pin) {
    return part.pinNamed(pin).orElseThrow().number();
  }

  /** Puts levels on a pin; what it had becomes what it was at the next {@link #step}. */
  void put(int pin, long can1, long can0) {
    pins.can1[pin] = can1;
    pins.can0[pin] = can0;
  }

  void high(String pin) {
    put(number(pin), -1L, 0L);
  }

  void low(String pin) {
    put(number(pin), 0L, -1L);
  }

  void unknown(String pin) {
    put(number(pin), -1L, -1L);
  }

  void set(String pin, boolean level) {
    put(number(pin), level ? -1L : 0L, level ? 0L : -1L);
  }

  /** Puts a number on pins given high bit first. */
  void word(long value, String... names) {
    for (int i = 0; i < names.length; i++) {
      set(names[i], ((value >> (names.length - 1 - i)) & 1) == 1);
    }
  }

  void step() {
    part.logic().step(pins, state, 3, -1L);
    System.arraycopy(pins.can1, 0, pins.was1, 0, pins.can1.length);
    System.arraycopy(pins.can0, 0, pins.was0, 0, pins.can0.length);
  }

  /** Steps until nothing moves inside the part. */
  void settle() {
    for (int i = 0; i < 3; i++) {
      step();
    }
  }

  void pulse(String clock) {
    low(clock);
    settle();
    high(clock);
    settle();
  }

  void fallingPulse(String clock) {
    high(clock);
    settle();
    low(clock);
    settle();
  }

  /** What lane 0 shows at an output: 0, 1, Z, X, or ? where even driving is unknown. */
  char shows(String pin) {
    return shows(number(pin), 0);
  }

  char shows(int pin, int lane) {
    boolean one = ((pins.drive1[pin] >>> lane) & 1) == 1;
    boolean zero = ((pins.drive0[pin] >>> lane) & 1) == 1;
    boolean off = ((pins.off[pin] >>> lane) & 1) == 1;
    if (off) {
      return one || zero ? '?' : 'Z';
    }
    if (one && zero) {
      return 'X';
    }
    return one ? '1' : '0';
  }

  /** Outputs given high bit first, as shown. */
  String shows(String... names) {
    StringBuilder text = new StringBuilder();
    for (String name : names) {
      text.append(shows(name));
    }
    return text.toString();
  }
}
