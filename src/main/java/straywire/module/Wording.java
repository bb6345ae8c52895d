package straywire.module;

import java.math.BigDecimal;
import java.util.List;
import straywire.format.BadEntry;

/** What every entry may hold in free words and numbers, whether it comes as JSON or typed. */
final class Wording {
  /** Beyond any supply of such a module, volts: a reading further off is a slip of the pen. */
  static final double MOST_VOLTS = 30;

  /** What can lie at hand. */
  static final List<String> INSTRUMENTS = List.of("eyes", "meter", "logic-probe", "spare-parts");

  /** What can be looked over. */
  static final List<String> INSPECTED = List.of("jumper", "part", "leg", "lamp", "control", "rail");

  /** Looked over by itself, without a name: which way round the supply is. */
  static final String SUPPLY = "supply";

  private Wording() {}

  static String line(String what, String text) {
    String stripped = text.strip();
    if (stripped.isEmpty()) {
      throw new BadEntry(what + ": expected words, got nothing");
    }
    if (stripped.codePoints().anyMatch(Character::isISOControl)) {
      throw new BadEntry(what + ": expected one line of words");
    }
    return stripped;
  }

  static double volts(double volts) {
    if (!(Math.abs(volts) <= MOST_VOLTS)) {
      throw new BadEntry("volts: expected -30 to 30, got " + number(volts));
    }
    return volts;
  }

  /** The shortest decimal that reads back as the same number. */
  static BigDecimal decimal(double number) {
    BigDecimal shortest = BigDecimal.valueOf(number).stripTrailingZeros();
    return shortest.scale() < 0 ? shortest.setScale(0) : shortest;
  }

  static String number(double number) {
    return Double.isFinite(number) ? decimal(number).toPlainString() : String.valueOf(number);
  }

  static String symptom(String id) {
    if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw new BadEntry("symptom: expected an id such as all-dark, got " + id);
    }
    return id;
  }

  static List<String> instruments(List<String> names) {
    for (String name : names) {
      if (!INSTRUMENTS.contains(name)) {
        throw new BadEntry(name + " is no instrument; known are " + String.join(", ", INSTRUMENTS));
      }
      if (names.indexOf(name) != names.lastIndexOf(name)) {
        throw new BadEntry(name + " is named twice");
      }
    }
    return names;
  }

  static List<String> faults(List<String> ids) {
    for (String id : ids) {
      line("hypothesis", id);
      // Both marks separate ids from each other and from words on a typed line.
      if (id.contains(" ; ") || id.contains(" : ") || !id.equals(id.strip())) {
        throw new BadEntry("expected the id of a hypothesis, got \"" + id + "\"");
      }
    }
    return ids;
  }

  static String inspected(String subject, Labels labels) {
    if (subject.equals(SUPPLY)) {
      return subject;
    }
    int space = subject.indexOf(' ');
    String kind = space < 0 ? subject : subject.substring(0, space);
    String name = space < 0 ? "" : subject.substring(space + 1);
    return switch (kind) {
      case "jumper" -> "jumper " + labels.jumper(name).name();
      case "part" -> "part " + labels.part(name);
      case "leg" -> "leg " + leg(name, labels);
      case "lamp" -> "lamp " + labels.lamp(name);
      case "control" -> "control " + labels.control(name);
      case "rail" -> "rail " + labels.rail(name);
      default ->
          throw new BadEntry(
              "inspected: expected one of "
                  + String.join(", ", INSPECTED)
                  + " and a name, such as jumper U1.3-U2.3, or supply, got \""
                  + subject
                  + "\"");
    };
  }

  private static End leg(String name, Labels labels) {
    End end = labels.end(name);
    if (end.kind() != End.Kind.PIN) {
      throw new BadEntry(name + " has no leg; name a pin, such as U1.3");
    }
    return end;
  }
}
