package straywire.sim;

import java.util.ArrayList;
import java.util.List;
import straywire.parts.Family;
import straywire.parts.Part;

/**
 * How one built module differs from the wiring as meant, in terms the simulation knows: edges taken
 * away or added, pins held, parts and lamps and controls that are something else. Filled once by
 * its maker, then only read.
 */
public final class Variation {
  /** What a pin does in place of what it should. */
  enum PinFault {
    OUTPUT_LOW,
    OUTPUT_HIGH,
    OUTPUT_OFF,
    INPUT_LOW,
    INPUT_HIGH
  }

  /** What a control does in place of what the hand says. */
  public enum ControlFault {
    NEVER_CLOSES,
    ALWAYS_CLOSED,
    NO_PULL,
    /** Closes in the other position than meant. */
    EXCHANGED,
    /** Closes, opens and closes again, each time long enough for the module to settle. */
    CLOSES_TWICE,
    CLOSES_THREE_TIMES,
    CLOSES_FOUR_TIMES,
    /**
     * Once closed it may or may not open and close again, up to four closings in all. Nothing to a
     * contact between lines.
     */
    CLOSES_ANYHOW;

    /** How often the contact surely closes at one move of the hand. */
    int closings() {
      return switch (this) {
        case CLOSES_TWICE -> 2;
        case CLOSES_THREE_TIMES -> 3;
        case CLOSES_FOUR_TIMES -> 4;
        case NEVER_CLOSES, ALWAYS_CLOSED, NO_PULL, EXCHANGED, CLOSES_ANYHOW -> 1;
      };
    }
  }

  /** What a lamp shows in place of its net. */
  public enum LampFault {
    NO_RESISTOR,
    NEVER_LIGHTS
  }

  /** What was programmed into a memory in place of what was meant. */
  public enum ContentsFault {
    /** Erased: every bit is 1. */
    BLANK,
    /** Each word stands one address above its own. */
    SHIFTED,
    /** The bits of each word in reverse order. */
    REVERSED
  }

  record PinHold(String part, int pin, PinFault fault) {}

  record Socket(String label, Part part, Family family) {}

  record Labelled<F>(String label, F fault) {}

  final List<Integer> edgesOff = new ArrayList<>();
  final List<int[]> edgesOn = new ArrayList<>();
  final List<PinHold> holds = new ArrayList<>();
  final List<Socket> sockets = new ArrayList<>();
  final List<String> unlisted = new ArrayList<>();
  final List<Labelled<LampFault>> lamps = new ArrayList<>();
  final List<Labelled<ControlFault>> controls = new ArrayList<>();
  final List<Labelled<ContentsFault>> contents = new ArrayList<>();
  boolean noLogic;

  /** Takes an edge of the wiring away. */
  public void remove(int edge) {
    edgesOff.add(edge);
  }

  /** Joins two vertices of the wiring. */
  public void join(int from, int to) {
    edgesOn.add(new int[] {Math.min(from, to), Math.max(from, to)});
  }

  public void holdOutput(String part, int pin, boolean high) {
    holds.add(new PinHold(part, pin, high ? PinFault.OUTPUT_HIGH : PinFault.OUTPUT_LOW));
  }

  public void killOutput(String part, int pin) {
    holds.add(new PinHold(part, pin, PinFault.OUTPUT_OFF));
  }

  public void holdInput(String part, int pin, boolean high) {
    holds.add(new PinHold(part, pin, high ? PinFault.INPUT_HIGH : PinFault.INPUT_LOW));
  }

  /** Another part type, or family, in a socket. */
  public void replace(String label, Part part, Family family) {
    sockets.add(new Socket(label, part, family));
  }

  /** The outputs of a part are unknown. */
  public void unlist(String part) {
    unlisted.add(part);
  }

  public void lamp(String label, LampFault fault) {
    lamps.add(new Labelled<>(label, fault));
  }

  public void control(String label, ControlFault fault) {
    controls.add(new Labelled<>(label, fault));
  }

  /** Other contents in a memory than the module states; without effect where it states none. */
  public void program(String part, ContentsFault fault) {
    contents.add(new Labelled<>(part, fault));
  }

  /** The supply is not there as it should be: no logic is simulated, every lamp stays dark. */
  public void noLogic() {
    noLogic = true;
  }
}
