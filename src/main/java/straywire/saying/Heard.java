package straywire.saying;

import java.util.List;

/** What a line of free words was understood as. */
public sealed interface Heard {
  /** One or more meanings, each of them clear. */
  record Clear(List<Meaning> meanings) implements Heard {
    public Clear {
      meanings = List.copyOf(meanings);
    }
  }

  /** Several that it may have meant, the likeliest first: to pick from. */
  record Several(List<Meaning> meanings) implements Heard {
    public Several {
      meanings = List.copyOf(meanings);
    }
  }

  /** Nothing that is known here. */
  record Nothing() implements Heard {}
}
