package straywire.faults;

import java.util.Optional;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.module.Control;
import straywire.module.ControlContact;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.RailSegment;

/**
 * The places of one suggestion, looked up on its module. Whatever is not there, or is of the wrong
 * kind, is an {@link IllegalArgumentException} that names rule, mechanism and place.
 */
final class Places {
  private static final String ROW = "/row";

  private final Module module;
  private final BoardIndex index;
  private final Suggestion suggestion;

  Places(Module module, BoardIndex index, Suggestion suggestion) {
    this.module = module;
    this.index = index;
    this.suggestion = suggestion;
  }

  int count() {
    return suggestion.places().size();
  }

  /** Insists on exactly {@code count} places. */
  void need(int count, String what) {
    if (count() != count) {
      throw wrong("names " + what + ", got " + suggestion.places());
    }
  }

  /** Insists on one place or more. */
  void needSome(String what) {
    if (count() == 0) {
      throw wrong("names " + what + ", got " + suggestion.places());
    }
  }

  /** Insists on {@code first} places followed by one or more pairs. */
  void needPairs(int first, int leastPairs, String what) {
    int rest = count() - first;
    if (rest < 2 * leastPairs || rest % 2 != 0) {
      throw wrong("names " + what + ", got " + suggestion.places());
    }
  }

  String label(int at) {
    return suggestion.places().get(at);
  }

  Jumper jumper(int at) {
    return found(at, Optional.ofNullable(index.jumpers.get(label(at))), "jumper");
  }

  End end(int at) {
    return found(at, Optional.ofNullable(index.ends.get(label(at))), "end");
  }

  /** The end at {@code at}, which must be one of the two of {@code jumper}. */
  End endOf(Jumper jumper, int at) {
    End end = end(at);
    if (!jumper.touches(end)) {
      throw wrong("place " + end + " is not an end of jumper " + jumper);
    }
    return end;
  }

  Point point(int at) {
    String label = label(at);
    boolean row = label.endsWith(ROW);
    String name = row ? label.substring(0, label.length() - ROW.length()) : label;
    End end = found(at, Optional.ofNullable(index.ends.get(name)), "point");
    return new Point(end, end.kind() == End.Kind.PIN && !row);
  }

  /** A pin of a part that is fitted. */
  End pin(int at) {
    End end = end(at);
    if (end.kind() != End.Kind.PIN) {
      throw wrong("place " + end + " is not a pin");
    }
    fitted(end.label());
    return end;
  }

  End pinOf(String part, int at) {
    End pin = pin(at);
    if (!pin.label().equals(part)) {
      throw wrong("place " + pin + " is not a pin of " + part);
    }
    return pin;
  }

  PinSpec spec(End pin) {
    return module.parts().get(pin.label()).part().pin(pin.pin());
  }

  End output(End pin) {
    if (!spec(pin).kind().drives()) {
      throw wrong("place " + pin + " is not an output but " + spec(pin).kind());
    }
    return pin;
  }

  End input(End pin) {
    if (!spec(pin).kind().listens()) {
      throw wrong("place " + pin + " is not an input but " + spec(pin).kind());
    }
    return pin;
  }

  /** True for a supply or ground pin. */
  boolean powers(End end) {
    if (end.kind() != End.Kind.PIN) {
      return false;
    }
    PinKind kind = spec(end).kind();
    return kind == PinKind.SUPPLY || kind == PinKind.GROUND;
  }

  Fitted part(int at) {
    found(at, Optional.ofNullable(module.parts().get(label(at))), "part");
    return fitted(label(at));
  }

  RailSegment rail(int at) {
    return found(at, module.rail(label(at)), "rail segment");
  }

  Lamp lamp(int at) {
    return found(at, Optional.ofNullable(module.lamps().get(label(at))), "lamp");
  }

  Control control(int at) {
    return found(at, Optional.ofNullable(module.controls().get(label(at))), "control");
  }

  ControlContact contact(int at) {
    String label = label(at);
    return found(
        at,
        module.everyContact().stream().filter(c -> c.label().equals(label)).findFirst(),
        "control");
  }

  IllegalArgumentException wrong(String why) {
    return new IllegalArgumentException(
        "Rule " + suggestion.rule() + ", " + suggestion.mechanism() + ": " + why);
  }

  private Fitted fitted(String part) {
    Fitted fitted = module.parts().get(part);
    if (!fitted.fitted()) {
      throw wrong("part " + part + " is not fitted yet");
    }
    return fitted;
  }

  private <T> T found(int at, Optional<T> what, String kind) {
    return what.orElseThrow(
        () -> wrong("there is no " + kind + " " + label(at) + " in module " + module.name()));
  }
}
