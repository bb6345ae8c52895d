package straywire.module;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import straywire.format.BadEntry;
import straywire.format.EnumWords;

/** Entries for what the eye, the meter and the logic probe tell. */
final class EyeVerbs {
  private static final Pattern VOLTS =
      Pattern.compile("(-?[0-9]{1,4}([.,][0-9]{1,18})?)(m(?=[vV]))?[vV]?");

  private static final List<String> YES_NO = List.of("yes", "no");

  private final Module module;
  private final Labels labels;
  private final ValueWords<LampState> values;

  EyeVerbs(Module module) {
    this.module = module;
    labels = new Labels(module);
    values = new ValueWords<>(WordValues.ofLamps(module));
  }

  List<EntryVerb<?>> all() {
    List<EntryVerb<?>> all = new ArrayList<>();
    all.add(
        new EntryVerb<>(
            Entry.Seen.class,
            "see",
            "see memory 1001011- B3 dim",
            typed -> new Entry.Seen(values.parse(typed)),
            e -> values.print(e.lamps()),
            values::next));
    all.add(
        new EntryVerb<>(
            Entry.Measured.class,
            "measure",
            "measure U1.3 row 0.2",
            typed -> {
              Point point = point(typed);
              double volts = volts(typed);
              typed.end();
              return new Entry.Measured(point, volts);
            },
            e -> point(e.point()) + " " + Wording.number(e.volts()),
            before -> nextOfPoint(before, List.of())));
    List<String> shows = EnumWords.words(Entry.ProbeShows.values());
    all.add(
        new EntryVerb<>(
            Entry.Probed.class,
            "probe",
            "probe U1.3 high",
            typed -> {
              Point point = point(typed);
              String shown = typed.oneOf(shows);
              typed.end();
              return new Entry.Probed(point, EnumWords.of(Entry.ProbeShows.class, shown));
            },
            e -> point(e.point()) + " " + EnumWords.word(e.shows()),
            before -> nextOfPoint(before, shows)));
    all.add(
        new EntryVerb<>(
            Entry.Continuity.class,
            "joined",
            "joined U1.3 U2.3/row yes",
            this::joined,
            e -> e.from() + " " + e.to() + " " + yesNo(e.joined()),
            before -> before.size() < 2 ? points() : before.size() == 2 ? YES_NO : List.of()));
    all.add(
        new EntryVerb<>(
            Entry.Inspected.class,
            "inspect",
            "inspect jumper U1.3-U2.3 wrong",
            typed -> {
              String kind = typed.oneOf(inspectable());
              String subject =
                  kind.equals(Wording.SUPPLY)
                      ? kind
                      : Wording.inspected(kind + " " + typed.next("the name of a " + kind), labels);
              boolean asMeant = typed.oneOf(List.of("ok", "wrong")).equals("ok");
              typed.end();
              return new Entry.Inspected(subject, asMeant);
            },
            e -> e.subject() + (e.asMeant() ? " ok" : " wrong"),
            this::nextOfInspect));
    return all;
  }

  private Point point(Typed typed) {
    Point point = labels.point(typed.next("a place, such as U1.3"));
    if (typed.take("row")) {
      return new Point(point.end(), false);
    }
    if (typed.take("leg") && !point.leg()) {
      throw new BadEntry(point + " has no leg");
    }
    return point;
  }

  private static String point(Point point) {
    return point.toString().replace(Labels.ROW, " row");
  }

  private List<String> points() {
    List<String> points = new ArrayList<>();
    for (String end : labels.ends()) {
      points.add(end);
      if (labels.point(end).leg()) {
        points.add(end + Labels.ROW);
      }
    }
    return points;
  }

  private List<String> nextOfPoint(List<String> before, List<String> values) {
    if (before.isEmpty()) {
      return labels.ends();
    }
    if (before.size() > 1) {
      return before.size() == 2 && List.of("row", "leg").contains(before.get(1))
          ? values
          : List.of();
    }
    List<String> next = new ArrayList<>(values);
    if (before.get(0).contains(".") && !before.get(0).endsWith(Labels.ROW)) {
      next.add("row");
    }
    return next;
  }

  /** As a meter shows it or a person says it: {@code 0.2}, {@code 1,45 V}, {@code 300mV}. */
  private static double volts(Typed typed) {
    String text = typed.next("volts");
    if (List.of("v", "mv").contains(typed.peek().toLowerCase(Locale.ROOT))) {
      text += typed.next("a unit");
    }
    Matcher number = VOLTS.matcher(text);
    if (!number.matches()) {
      throw new BadEntry("expected volts such as 0.2, got " + text);
    }
    double volts = Double.parseDouble(number.group(1).replace(',', '.'));
    return Wording.volts(number.group(3) == null ? volts : volts / 1000);
  }

  private Entry.Continuity joined(Typed typed) {
    Point from = labels.point(typed.next("a place, such as U1.3"));
    Point to = labels.point(typed.next("a second place"));
    if (from.equals(to)) {
      throw new BadEntry("expected two places, got " + from + " twice");
    }
    boolean joined = typed.oneOf(YES_NO).equals("yes");
    typed.end();
    return new Entry.Continuity(from, to, joined);
  }

  private static String yesNo(boolean yes) {
    return yes ? "yes" : "no";
  }

  private static List<String> inspectable() {
    List<String> all = new ArrayList<>(Wording.INSPECTED);
    all.add(Wording.SUPPLY);
    return all;
  }

  private List<String> nextOfInspect(List<String> before) {
    if (before.isEmpty()) {
      return inspectable();
    }
    if (before.size() == 2 || before.equals(List.of(Wording.SUPPLY))) {
      return List.of("ok", "wrong");
    }
    if (before.size() > 2) {
      return List.of();
    }
    return switch (before.get(0)) {
      case "jumper" -> module.jumpers().stream().map(Jumper::name).toList();
      case "part" -> List.copyOf(module.parts().keySet());
      case "leg" -> labels.ends().stream().filter(end -> labels.point(end).leg()).toList();
      case "lamp" -> List.copyOf(module.lamps().keySet());
      case "control" -> List.copyOf(module.controls().keySet());
      case "rail" -> module.rails().stream().map(RailSegment::label).toList();
      default -> List.of();
    };
  }
}
