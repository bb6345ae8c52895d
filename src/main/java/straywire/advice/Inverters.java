package straywire.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import straywire.advice.WiringFact.Inverter;
import straywire.advice.WiringFact.PinFact;
import straywire.advice.WiringFact.UsedInverters;
import straywire.logic.PinKind;
import straywire.logic.PinPlanes;
import straywire.logic.PinSpec;
import straywire.module.Fitted;
import straywire.parts.Part;

/**
 * Finds inverters by working parts, not by their numbers: 64 random input rows at once, with pins
 * that the module ties to a rail held there, so that an exclusive-or with one input tied high
 * counts.
 */
final class Inverters {
  /** Passes after which a part without memory has settled. */
  private static final int PASSES = 8;

  private Inverters() {}

  /** Inverters of one part; {@code pins} are that part's facts in pin order. */
  static List<WiringFact> of(Fitted fitted, List<PinFact> pins) {
    Part part = fitted.part();
    if (part.logic().stateLength() > 0) {
      return List.of();
    }
    PinPlanes planes = work(part, pins);
    List<WiringFact> found = new ArrayList<>();
    List<String> used = new ArrayList<>();
    used.add(fitted.label());
    for (PinSpec output : part.pins()) {
      for (PinSpec input : part.pins()) {
        if (output.kind().drives()
            && output.kind() != PinKind.BIDIRECTIONAL
            && inverts(planes, input, output, pins)) {
          PinFact in = pins.get(input.number() - 1);
          PinFact out = pins.get(output.number() - 1);
          boolean both = !in.net().isEmpty() && !out.net().isEmpty();
          found.add(new Inverter(fitted.label(), in.pin(), out.pin(), both));
          if (both) {
            used.add(in.pin());
            used.add(out.pin());
          }
        }
      }
    }
    if (used.size() > 1) {
      found.add(new UsedInverters(fitted.label(), used.size() / 2, List.copyOf(used)));
    }
    return found;
  }

  private static PinPlanes work(Part part, List<PinFact> pins) {
    PinPlanes planes = new PinPlanes(part.pinCount());
    SplittableRandom rows = new SplittableRandom(1);
    for (PinSpec pin : part.pins()) {
      long random = rows.nextLong();
      long high =
          switch (pins.get(pin.number() - 1).tie()) {
            case LOW -> 0L;
            case HIGH -> -1L;
            case NONE -> random;
          };
      if (pin.kind() == PinKind.SUPPLY) {
        high = -1L;
      } else if (pin.kind() == PinKind.GROUND) {
        high = 0L;
      }
      planes.can1[pin.number()] = high;
      planes.can0[pin.number()] = ~high;
      planes.was1[pin.number()] = high;
      planes.was0[pin.number()] = ~high;
    }
    for (int pass = 0; pass < PASSES; pass++) {
      if (!part.logic().step(planes, new long[0], 0, -1L)) {
        break;
      }
    }
    return planes;
  }

  private static boolean inverts(
      PinPlanes planes, PinSpec input, PinSpec output, List<PinFact> pins) {
    int in = input.number();
    int out = output.number();
    boolean free = input.kind() == PinKind.INPUT && pins.get(in - 1).tie() == Tie.NONE && in != out;
    // An open-collector output inverts as well: its high is "let go".
    long high = planes.drive1[out] | (planes.off[out] & ~planes.drive0[out]);
    boolean mayLetGo = output.kind() != PinKind.OPEN_COLLECTOR && planes.off[out] != 0;
    return free && !mayLetGo && planes.drive0[out] == planes.can1[in] && high == planes.can0[in];
  }
}
