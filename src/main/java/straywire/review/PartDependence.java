package straywire.review;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import straywire.logic.PartLogic;
import straywire.logic.PinKind;
import straywire.logic.PinPlanes;
import straywire.logic.PinSpec;
import straywire.parts.Part;

/**
 * Which outputs of a part depend on which inputs, found by working two copies of it on the same
 * random steps, one of them with one input turned over.
 */
final class PartDependence {
  private static final int STEPS = 64;

  /** Passes after which a part's outputs have settled. */
  private static final int PASSES = 8;

  /** A part that remembers more is not worked: each output counts as dependent on each input. */
  private static final int MOST_CELLS = 64;

  private final Map<String, Map<Integer, BitSet>> known = new HashMap<>();

  /** True when what {@code output} drives, or whether it drives, may change with {@code input}. */
  boolean depends(Part part, int output, int input) {
    return known
        .computeIfAbsent(part.type(), type -> new HashMap<>())
        .computeIfAbsent(input, pin -> outputsOf(part, pin))
        .get(output);
  }

  private static BitSet outputsOf(Part part, int input) {
    BitSet outputs = new BitSet();
    if (part.logic().cellCount() > MOST_CELLS) {
      part.pins().stream().filter(p -> p.kind().drives()).forEach(p -> outputs.set(p.number()));
      return outputs;
    }
    Copy plain = new Copy(part, 0);
    Copy turned = new Copy(part, input);
    SplittableRandom random = new SplittableRandom(1);
    for (int step = 0; step < STEPS; step++) {
      for (PinSpec pin : part.pins()) {
        long level =
            pin.kind() == PinKind.SUPPLY
                ? -1L
                : pin.kind() == PinKind.GROUND ? 0 : random.nextLong();
        plain.set(pin.number(), level);
        turned.set(pin.number(), level);
      }
      plain.settle();
      turned.settle();
      for (PinSpec pin : part.pins()) {
        if (pin.kind().drives() && pin.number() != input && plain.differs(turned, pin.number())) {
          outputs.set(pin.number());
        }
      }
    }
    return outputs;
  }

  /** One copy of a part at work. */
  private static final class Copy {
    private final PartLogic logic;
    private final PinPlanes planes;
    private final long[] state;
    private final int turned;

    Copy(Part part, int turned) {
      logic = part.logic();
      planes = new PinPlanes(part.pinCount());
      state = new long[logic.stateLength()];
      logic.forget(state, 0, -1L);
      this.turned = turned;
    }

    void set(int pin, long high) {
      planes.was1[pin] = planes.can1[pin];
      planes.was0[pin] = planes.can0[pin];
      planes.can1[pin] = pin == turned ? ~high : high;
      planes.can0[pin] = ~planes.can1[pin];
      if ((planes.was1[pin] | planes.was0[pin]) == 0) {
        planes.was1[pin] = planes.can1[pin];
        planes.was0[pin] = planes.can0[pin];
      }
    }

    void settle() {
      for (int pass = 0; pass < PASSES && logic.step(planes, state, 0, -1L); pass++) {
        System.arraycopy(planes.can1, 0, planes.was1, 0, planes.can1.length);
        System.arraycopy(planes.can0, 0, planes.was0, 0, planes.can0.length);
      }
    }

    boolean differs(Copy other, int pin) {
      return planes.drive1[pin] != other.planes.drive1[pin]
          || planes.drive0[pin] != other.planes.drive0[pin]
          || planes.off[pin] != other.planes.off[pin];
    }
  }
}
