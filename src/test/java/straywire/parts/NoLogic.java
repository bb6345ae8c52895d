package straywire.parts;

import straywire.logic.PartLogic;
import straywire.logic.PinPlanes;

/** A part of which only the pins matter. */
public final class NoLogic implements PartLogic {
  @Override
  public int stateLength() {
    return 0;
  }

  @Override
  public void forget(long[] state, int at, long lanes) {}

  @Override
  public boolean step(PinPlanes pins, long[] state, int at, long lanes) {
    return false;
  }

  @Override
  public void trace(PinPlanes pins, long[] state, int at, int pin, long lanes, UnknownSink sink) {}

  @Override
  public int cellCount() {
    return 0;
  }

  @Override
  public long unknownCell(long[] state, int at, int cell) {
    return 0;
  }
}
