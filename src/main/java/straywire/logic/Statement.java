package straywire.logic;

import java.util.List;
import java.util.Optional;

/** One sentence of a part's logic. */
public sealed interface Statement {
  int line();

  /** {@code Y = value} or {@code Y = value when enable}: an output, or a name for a value. */
  record Let(List<String> targets, Expr value, Optional<Expr> when, int line)
      implements Statement {}

  /** {@code q <- ...}: remembered bits; a later clause overrides an earlier one. */
  record Take(List<String> targets, List<Clause> clauses, int line) implements Statement {}

  /** {@code memory cells 16 x 4}; kept when it says {@code kept without power}. */
  record Memory(String name, int words, int bits, boolean kept, int line) implements Statement {}

  /** {@code table digits: 1111110 0110000 ...}: fixed words, address 0 first. */
  record Table(String name, List<String> words, int line) implements Statement {}

  /** {@code cells at address <- value while condition}. */
  record Store(String memory, Expr address, Expr value, Expr condition, int line)
      implements Statement {}

  /** {@code ignore CONT}: inputs that no level logic depends on. */
  record Ignore(List<String> pins, int line) implements Statement {}

  /** What a remembered word takes, and at which edge or while which condition. */
  record Clause(Expr value, Moment moment, Expr condition, int line) {}

  enum Moment {
    RISING,
    FALLING,
    WHILE
  }
}
