package straywire.parts;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What kind of function a part type has: the shelf that a builder looks for it on. */
public enum PartGroup {
  GATE("Gates and inverters"),
  BUFFER("Buffers and transceivers"),
  DECODER("Decoders and encoders"),
  MULTIPLEXER("Multiplexers"),
  FLIP_FLOP("Flip-flops and latches"),
  REGISTER("Registers"),
  SHIFT_REGISTER("Shift registers"),
  COUNTER("Counters"),
  ARITHMETIC("Adders, comparators and arithmetic"),
  MEMORY("Memories"),
  TIMER("Timers and one-shots"),
  OTHER("Other parts");

  private final String title;

  PartGroup(String title) {
    this.title = title;
  }

  /** A heading. */
  public String title() {
    return title;
  }

  /** As written in part files: {@code flip-flop}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The group that part files call so. */
  public static Optional<PartGroup> of(String word) {
    return Arrays.stream(values()).filter(group -> group.word().equals(word)).findFirst();
  }

  /** All words for groups, in the order of the groups. */
  public static List<String> words() {
    return Arrays.stream(values()).map(PartGroup::word).toList();
  }
}
