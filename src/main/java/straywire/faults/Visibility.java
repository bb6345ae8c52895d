package straywire.faults;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import straywire.module.End;
import straywire.module.Module;

/**
 * What a careful look at one thing on the board shows of a hypothesis. A jumper shows that it is
 * missing, sits elsewhere or runs past an inverter; a part shows its marking, its notch and the
 * rows it was counted by; a leg shows that it is bent or touches its neighbour. Stuck outputs and
 * inputs, shorts to a rail, dead lamps and dead contacts look sound.
 */
public final class Visibility {
  private final Module module;
  private final BoardIndex index;

  public Visibility(Module module) {
    this.module = module;
    this.index = new BoardIndex(module);
  }

  /**
   * Would a careful look at {@code subject} find it not as meant?
   *
   * @param subject {@code jumper U1.3-U2.3}, {@code part U3}, {@code leg U1.3}, {@code lamp R7},
   *     {@code control A0}, {@code rail GND.right} or {@code supply}
   * @throws IllegalArgumentException when the subject is none of these or not in the module
   */
  public boolean shows(Hypothesis hypothesis, String subject) {
    if (!known(subject)) {
      throw new IllegalArgumentException(
          "Nothing to look at called "
              + subject
              + " in module "
              + module.name()
              + "; say jumper, part, leg, lamp, control or rail and its label, or supply");
    }
    return subjects(hypothesis).contains(subject);
  }

  /** All subjects of which a careful look would find that they are not as meant. */
  public Set<String> subjects(Hypothesis hypothesis) {
    List<Edit> edits = hypothesis.edits();
    Set<String> subjects = new TreeSet<>();
    for (Edit edit : edits) {
      if (!legOfBypass(edit, edits)) {
        subjects.addAll(edit.seenAt(module));
      }
    }
    return subjects;
  }

  /** The output leg of an inverter left out is without its wire, but looks as it should. */
  private static boolean legOfBypass(Edit edit, List<Edit> edits) {
    return edit instanceof LegEdit.ContactOpen open
        && edits.stream()
            .anyMatch(
                e ->
                    e instanceof WireEdit.JumperAdded added
                        && !added.from().leg()
                        && !added.to().leg()
                        && (added.from().end().equals(open.pin())
                            || added.to().end().equals(open.pin())));
  }

  private boolean known(String subject) {
    if (subject.equals("supply")) {
      return true;
    }
    int space = subject.indexOf(' ');
    if (space < 0) {
      return false;
    }
    String label = subject.substring(space + 1);
    return switch (subject.substring(0, space)) {
      case "jumper" -> index.jumpers.containsKey(label);
      case "part" -> module.parts().containsKey(label);
      case "leg" -> index.ends.containsKey(label) && kind(label) == End.Kind.PIN;
      case "lamp" -> module.lamps().containsKey(label);
      case "control" -> module.controls().containsKey(label);
      case "rail" -> module.rail(label).isPresent();
      default -> false;
    };
  }

  private End.Kind kind(String label) {
    return index.ends.get(label).kind();
  }
}
