package straywire.logic;

import straywire.logic.Gates.Access;
import straywire.logic.Gates.Gate;
import straywire.logic.PartLogic.UnknownSink;

/** Walks back from an unknown value to the one unknown it comes from. */
final class Trace {
  private final Gates gates;
  private final long[] r;
  private final UnknownSink sink;

  /**
   * @param r all registers, as a run of the program left them
   */
  Trace(Gates gates, long[] r, UnknownSink sink) {
    this.gates = gates;
    this.r = r;
    this.sink = sink;
  }

  /** Tells the sink for those of {@code lanes} in which the reference is unknown. */
  void follow(int reference, boolean inverted, long lanes) {
    long unknown = lanes & r[reference] & r[reference ^ 1];
    if (unknown == 0) {
      return;
    }
    boolean turned = inverted ^ ((reference & 1) == 1);
    Gate gate = gates.gate(reference >> 1);
    switch (gate.kind()) {
      case CONSTANT, PIN_BEFORE, PIN_OPEN, EDGE, WRITE -> {}
      case PIN_NOW -> sink.input(gate.a(), turned, unknown);
      case REMEMBERED -> sink.cell(gate.a(), turned, unknown);
      case AND -> {
        follow(gate.a(), turned, unknown & one(gate.b()));
        follow(gate.b(), turned, unknown & one(gate.a()));
      }
      case XOR -> {
        follow(gate.a(), turned, unknown & zero(gate.b()));
        follow(gate.a(), !turned, unknown & one(gate.b()));
        follow(gate.b(), turned, unknown & zero(gate.a()));
        follow(gate.b(), !turned, unknown & one(gate.a()));
      }
      case CHOOSE -> {
        follow(gate.a(), turned, unknown & one(gate.c()));
        follow(gate.b(), turned, unknown & zero(gate.c()));
        follow(gate.c(), turned, unknown & one(gate.a()) & zero(gate.b()));
        follow(gate.c(), !turned, unknown & zero(gate.a()) & one(gate.b()));
      }
      case READ -> word(gates.access(gate.a()), 0, 0, gate.b(), turned, unknown);
    }
  }

  /** Only lanes whose address is known: an unknown address mixes several cells. */
  private void word(Access access, int bit, int word, int dataBit, boolean turned, long lanes) {
    if (lanes == 0) {
      return;
    }
    if (bit < access.addressBits()) {
      int line = access.addressLine(bit);
      word(access, bit + 1, 2 * word, dataBit, turned, lanes & zero(line));
      word(access, bit + 1, 2 * word + 1, dataBit, turned, lanes & one(line));
      return;
    }
    sink.cell(access.firstCell() + word * access.bits() + dataBit, turned, lanes);
  }

  private long one(int reference) {
    return r[reference] & ~r[reference ^ 1];
  }

  private long zero(int reference) {
    return r[reference ^ 1] & ~r[reference];
  }
}
