package straywire.sim;

import java.util.OptionalLong;
import straywire.logic.PartLogic;
import straywire.module.Contents;

/** Puts into a memory what it was programmed with, as meant or otherwise. */
final class Programmed {
  private final PartLogic logic;
  private final PartLogic.Store store;
  private final Contents meant;

  /**
   * @param logic of a part that keeps its contents without power
   */
  Programmed(PartLogic logic, Contents meant) {
    this.logic = logic;
    this.store = logic.store().orElseThrow();
    this.meant = meant;
  }

  /** As meant, in {@code lanes}; words that were not stated stay as they are. */
  void asMeant(long[] state, int at, long lanes) {
    meant.words().forEach((address, word) -> word(state, at, address, word, lanes));
  }

  /** Otherwise than meant, in {@code lanes}. */
  void wrongly(Variation.ContentsFault fault, long[] state, int at, long lanes) {
    for (int address = 0; address < store.words(); address++) {
      OptionalLong word = instead(fault, address);
      if (word.isPresent()) {
        word(state, at, address, word.getAsLong(), lanes);
      }
    }
  }

  private OptionalLong instead(Variation.ContentsFault fault, int address) {
    return switch (fault) {
      case BLANK -> OptionalLong.of(-1L);
      case SHIFTED -> address == 0 ? OptionalLong.of(-1L) : meant.at(address - 1);
      case REVERSED -> {
        OptionalLong word = meant.at(address);
        yield word.isEmpty()
            ? word
            : OptionalLong.of(Long.reverse(word.getAsLong()) >>> (Long.SIZE - store.bits()));
      }
    };
  }

  private void word(long[] state, int at, int address, long word, long lanes) {
    for (int bit = 0; bit < store.bits(); bit++) {
      int cell = store.firstCell() + address * store.bits() + bit;
      logic.put(state, at, cell, (word >>> bit & 1) != 0, lanes);
    }
  }
}
