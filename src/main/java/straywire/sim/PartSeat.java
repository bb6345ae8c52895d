package straywire.sim;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import straywire.logic.PinKind;
import straywire.logic.PinPlanes;
import straywire.module.Contents;
import straywire.parts.Family;
import straywire.parts.Part;

/**
 * One part type in one socket, in the lanes where it sits there: its pins on the nodes, what is
 * held at them, and how its legs get supply and ground.
 */
final class PartSeat {
  final String label;
  final Part part;
  final Family family;
  final long lanes;

  /** Node of each leg, by pin number. */
  final int[] node;

  final int[] listening;
  final int[] driving;

  /** Index of the first driver; driving[i] is driver {@code firstDriver + i}. */
  final int firstDriver;

  final int stateAt;

  /** True when the part takes clock edges: what it saw a unit of delay earlier matters to it. */
  private final boolean clocked;

  /** True when some of its memory holds its value without power. */
  final boolean keeps;

  private final PinPlanes pins;
  private final long[] inputLow;
  private final long[] inputHigh;
  private final long[] outputLow;
  private final long[] outputHigh;
  private final long[] outputOff;
  private long unlisted;

  /** Lanes with supply and ground; without ground; without supply but fed through inputs. */
  private long powered;

  private long noGround;
  private long noSupply;

  /** What its memory was programmed with, and lanes in which it was something else. */
  private final Contents contents;

  private final Map<Variation.ContentsFault, Long> otherContents =
      new EnumMap<>(Variation.ContentsFault.class);

  /** Where the clamp of a bare LED keeps a high below what this family takes for one. */
  private final long[] clamped;

  PartSeat(
      String label,
      Part part,
      Family family,
      long lanes,
      int[] node,
      int firstDriver,
      int stateAt,
      Contents contents,
      long[] clamped) {
    this.label = label;
    this.contents = contents;
    this.part = part;
    this.family = family;
    this.lanes = lanes;
    this.node = node;
    this.firstDriver = firstDriver;
    this.stateAt = stateAt;
    clocked = part.logic().stateLength() > 2 * part.logic().cellCount();
    keeps = part.logic().keeps();
    this.clamped = clamped;
    int count = part.pinCount() + 1;
    pins = new PinPlanes(part.pinCount());
    inputLow = new long[count];
    inputHigh = new long[count];
    outputLow = new long[count];
    outputHigh = new long[count];
    outputOff = new long[count];
    listening =
        part.pins().stream().filter(p -> p.kind().listens()).mapToInt(p -> p.number()).toArray();
    driving =
        part.pins().stream().filter(p -> p.kind().drives()).mapToInt(p -> p.number()).toArray();
  }

  /** The same seat with its memory elsewhere in the state. */
  PartSeat movedTo(int at) {
    return new PartSeat(label, part, family, lanes, node, firstDriver, at, contents, clamped);
  }

  void hold(Variation.PinHold hold, long lane) {
    long[] planes =
        switch (hold.fault()) {
          case OUTPUT_LOW -> outputLow;
          case OUTPUT_HIGH -> outputHigh;
          case OUTPUT_OFF -> outputOff;
          case INPUT_LOW -> inputLow;
          case INPUT_HIGH -> inputHigh;
        };
    planes[hold.pin()] |= lane & lanes;
  }

  void unlist(long lane) {
    unlisted |= lane & lanes;
  }

  /** Finds out, from the rails each node reaches, how the part is supplied in each lane. */
  void connectPower(Topology topology) {
    int supply = part.pinOf(PinKind.SUPPLY);
    int ground = part.pinOf(PinKind.GROUND);
    if (supply == 0 || ground == 0) {
      powered = lanes;
      return;
    }
    long plus = topology.railHigh[node[supply]] & ~topology.railLow[node[supply]];
    long minus = topology.railLow[node[ground]] & ~topology.railHigh[node[ground]];
    powered = lanes & plus & minus;
    noGround = lanes & plus & ~minus & ~topology.railHigh[node[ground]];
    noSupply =
        family.feedsThroughInputs() ? lanes & minus & ~plus & ~topology.railLow[node[supply]] : 0;
  }

  /** Lanes in which an open input of this part leans high. */
  long leans() {
    return family.openReadsHigh() ? powered | noGround : 0;
  }

  /** Lanes in which the leg at {@code pin} is a supply or ground leg that misses its rail. */
  long starved(int pin) {
    return switch (part.pin(pin).kind()) {
      case GROUND -> noGround;
      case SUPPLY -> lanes & ~powered & ~noGround;
      default -> 0;
    };
  }

  int lowRank() {
    return part.bus() ? family.busLowRank() : family.lowRank();
  }

  int highRank() {
    return part.bus() ? family.busHighRank() : family.highRank();
  }

  /**
   * Loads the pins from node levels of now and of one unit of delay earlier.
   *
   * @return lanes in which these differ
   */
  private long look(long[] now, long[] before, int nodes, int unstableAt) {
    long fresh = 0;
    for (int pin : listening) {
      int at = node[pin];
      pins.can1[pin] = one(now, at, nodes, pin);
      pins.can0[pin] = zero(now, at, nodes, pin);
      if (clocked) {
        // What does not come to rest changes of itself as well.
        pins.open[pin] =
            (now[2 * nodes + at] | now[unstableAt + at]) & ~(inputLow[pin] | inputHigh[pin]);
      }
      pins.was1[pin] = one(before, at, nodes, pin);
      pins.was0[pin] = zero(before, at, nodes, pin);
      fresh |= (pins.can1[pin] ^ pins.was1[pin]) | (pins.can0[pin] ^ pins.was0[pin]);
    }
    return fresh;
  }

  private long one(long[] levels, int at, int nodes, int pin) {
    long high = levels[at];
    if (!family.openReadsHigh()) {
      high &= ~clamped[at];
    }
    return ((high | levels[2 * nodes + at]) & ~inputLow[pin]) | inputHigh[pin];
  }

  private long zero(long[] levels, int at, int nodes, int pin) {
    long low = levels[nodes + at];
    if (!family.openReadsHigh()) {
      low |= levels[2 * nodes + at] | (levels[at] & clamped[at]);
    }
    return (low & ~inputHigh[pin]) | inputLow[pin];
  }

  /**
   * One unit of delay. Node levels are three runs of {@code nodes} words: may be high, may be low,
   * may be open.
   *
   * @param state the lane group's state; drivers are three runs of {@code drivers} words from
   *     {@code driversAt}, with the same meaning
   * @param touched receives true for each driver that changed, by driver index
   * @param storing lanes in which the supply is good enough to write what is kept without power
   * @return true when the part needs another unit of delay though nothing at its pins may change
   */
  boolean step(
      long[] state,
      long[] before,
      int nodes,
      int unstableAt,
      int driversAt,
      int drivers,
      long[] raised,
      boolean[] touched,
      long storing) {
    long fresh = look(state, before, nodes, unstableAt);
    long anyLow = 0;
    long anyHigh = 0;
    long mayLow = 0;
    long mayHigh = 0;
    if ((noGround | noSupply) != 0) {
      for (int pin : listening) {
        int at = node[pin];
        anyLow |= state[nodes + at] & ~state[at] & ~state[2 * nodes + at];
        anyHigh |= state[at] & ~state[nodes + at] & ~state[2 * nodes + at];
        mayLow |= state[nodes + at];
        mayHigh |= state[at];
      }
    }
    raised[0] = noGround & anyLow;
    long runs = powered | raised[0] | (noSupply & anyHigh);
    // Whether an unknown input feeds the part is unknown as well: it does either, and forgets.
    long perhaps = ((noGround & mayLow) | (noSupply & mayHigh)) & ~runs;
    boolean moved = work(state, runs, storing);
    if (perhaps != 0) {
      long[] held = keeps ? heldIn(state) : new long[0];
      part.logic().losePower(state, stateAt, perhaps);
      work(state, perhaps, storing);
      for (int i = 0; i < held.length; i++) {
        // What it may have stored stands beside what it may have kept.
        state[stateAt + i] |= held[i] & perhaps;
      }
      part.logic().losePower(state, stateAt, perhaps);
    }
    long live = runs | perhaps;
    long stuckHigh = noGround & ~anyLow;
    for (int i = 0; i < driving.length; i++) {
      int pin = driving[i];
      long one = pins.drive1[pin] & live;
      long zero = pins.drive0[pin] & live;
      long off = (pins.off[pin] & live) | ~live;
      boolean canLetGo = part.pin(pin).kind() != PinKind.OUTPUT;
      if (unlisted != 0) {
        long odd = unlisted & live;
        if (part.pin(pin).kind() == PinKind.BIDIRECTIONAL) {
          odd &= one | zero;
        }
        one |= odd;
        zero |= odd;
        off = canLetGo && part.pin(pin).kind() != PinKind.BIDIRECTIONAL ? off | odd : off & ~odd;
      }
      long held = (outputLow[pin] | outputHigh[pin] | outputOff[pin]) & live;
      one = (one & ~held) | (outputHigh[pin] & live);
      zero = (zero & ~held) | (outputLow[pin] & live);
      off = (off & ~held) | (outputOff[pin] & live);
      if (canLetGo) {
        off |= perhaps;
      } else {
        one |= stuckHigh;
        off = (off & ~(stuckHigh & ~perhaps)) | (perhaps & noSupply);
      }
      off = (off & lanes) | ~lanes;
      int at = driversAt + firstDriver + i;
      if (state[at] != one || state[at + drivers] != zero || state[at + 2 * drivers] != off) {
        state[at] = one;
        state[at + drivers] = zero;
        state[at + 2 * drivers] = off;
        touched[firstDriver + i] = true;
      }
    }
    return clocked && (moved || fresh != 0);
  }

  private boolean work(long[] state, long runs, long storing) {
    if (!keeps || (runs & ~storing) == 0) {
      return part.logic().step(pins, state, stateAt, runs);
    }
    boolean stored = part.logic().step(pins, state, stateAt, runs & storing);
    boolean worked = part.logic().stepStoringNothing(pins, state, stateAt, runs & ~storing);
    return stored || worked;
  }

  private long[] heldIn(long[] state) {
    return Arrays.copyOfRange(state, stateAt, stateAt + part.logic().stateLength());
  }

  void programWrongly(Variation.ContentsFault fault, long lane) {
    otherContents.merge(fault, lane & lanes, (a, b) -> a | b);
  }

  /** Puts in what the memory was programmed with before it came to the board. */
  void program(long[] state) {
    if (contents.known()) {
      Programmed programmed = new Programmed(part.logic(), contents);
      long meant = -1L;
      for (Map.Entry<Variation.ContentsFault, Long> other : otherContents.entrySet()) {
        meant &= ~other.getValue();
        programmed.wrongly(other.getKey(), state, stateAt, other.getValue());
      }
      programmed.asMeant(state, stateAt, meant);
    }
  }

  /** Takes over all that the part remembers, of which only what is kept without power counts. */
  void wake(long[] state, long[] off) {
    System.arraycopy(off, stateAt, state, stateAt, part.logic().stateLength());
  }

  /** Whether another seat is the same socket with the same type in it. */
  boolean takesPlaceOf(PartSeat other) {
    return label.equals(other.label) && part.type().equals(other.part.type());
  }

  /** Takes over what another seat remembers in the lanes of both. */
  void takeOver(long[] state, PartSeat other, long[] from) {
    long both = lanes & other.lanes;
    for (int i = 0; i < part.logic().stateLength(); i++) {
      long outside = state[stateAt + i] & ~both;
      state[stateAt + i] = outside | (from[other.stateAt + i] & both);
    }
  }

  /** The pins as the part sees them in a settled state, for tracing an unknown output back. */
  PinPlanes settledPins(long[] state, int nodes, int unstableAt) {
    look(state, state, nodes, unstableAt);
    return pins;
  }

  /** Lanes in which the output at {@code pin} is what the part's own function says. */
  long follows(int pin) {
    return lanes & ~(unlisted | outputLow[pin] | outputHigh[pin] | outputOff[pin]);
  }

  /** Lanes in which the part takes the level on the leg of input {@code pin}. */
  long hears(int pin) {
    return lanes & ~(inputLow[pin] | inputHigh[pin]);
  }
}
