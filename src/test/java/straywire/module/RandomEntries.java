package straywire.module;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/** Entries of every kind that fit a module, from a seed. */
final class RandomEntries {
  static final int KINDS = 18;

  private final Module module;
  private final Labels labels;
  private final Random random;

  RandomEntries(Module module, long seed) {
    this.module = module;
    this.labels = new Labels(module);
    this.random = new Random(seed);
  }

  /**
   * An entry for a log.
   *
   * @param kind from 0 to {@link #KINDS} - 1
   * @param number of the entry in its log, above 1
   */
  Entry ofKind(int kind, int number) {
    return switch (kind) {
      case 0 -> new Entry.Power(random.nextBoolean());
      case 1 -> new Entry.Set(levels());
      case 2 -> new Entry.Press(any(labels.buttons()));
      case 3 -> new Entry.Hold(any(labels.buttons()));
      case 4 -> new Entry.Release(any(labels.buttons()));
      case 5 -> new Entry.Seen(seen());
      case 6 -> new Entry.Measured(point(), (random.nextInt(6001) - 3000) / 100.0);
      case 7 -> new Entry.Probed(point(), any(List.of(Entry.ProbeShows.values())));
      case 8 -> continuity();
      case 9 ->
          new Entry.Symptom(
              any(List.of("all-dark", "bit-stuck-low", "x2")),
              random.nextInt(3) == 0 ? "" : any(List.copyOf(labels.all())),
              any(List.of(Entry.Answer.values())),
              random.nextBoolean() ? List.of() : List.of(1 + random.nextInt(number - 1)),
              random.nextBoolean());
      case 10 -> new Entry.Inspected(subject(), random.nextBoolean());
      case 11 -> new Entry.Repaired(words());
      case 12 -> new Entry.Exchanged(any(List.copyOf(module.parts().keySet())));
      case 13 -> new Entry.Instruments(some(Wording.INSTRUMENTS));
      case 14 -> new Entry.Withdrawn(1 + random.nextInt(number - 1));
      case 15 -> new Entry.Note(words());
      case 16 -> new Entry.Finding(faults(), words());
      default -> new Entry.Expected(faults(), random.nextInt(9));
    };
  }

  Entry any(int number) {
    return ofKind(random.nextInt(KINDS), number);
  }

  private <T> T any(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  private <T> List<T> some(List<T> list) {
    List<T> shuffled = new ArrayList<>(list);
    Collections.shuffle(shuffled, random);
    return shuffled.subList(0, random.nextInt(list.size() + 1));
  }

  private <T> List<T> oneOrMore(List<T> list) {
    List<T> some = some(list);
    return some.isEmpty() ? List.of(any(list)) : some;
  }

  private Map<String, Boolean> levels() {
    WordValues<Boolean> values = WordValues.ofControls(module);
    Map<String, Boolean> levels = new TreeMap<>();
    oneOrMore(values.singles()).forEach(label -> levels.put(label, random.nextBoolean()));
    if (random.nextBoolean()) {
      any(module.controlWords())
          .members()
          .forEach(label -> levels.put(label, random.nextBoolean()));
    }
    return levels;
  }

  private Map<String, LampState> seen() {
    Map<String, LampState> seen = new TreeMap<>();
    List<LampState> states = List.of(LampState.values());
    oneOrMore(List.copyOf(module.lamps().keySet())).forEach(l -> seen.put(l, any(states)));
    if (random.nextBoolean()) {
      any(module.lampWords()).members().forEach(l -> seen.put(l, any(states)));
    }
    return seen;
  }

  private Point point() {
    Point point = labels.point(any(labels.ends()));
    return random.nextBoolean() ? point : new Point(point.end(), false);
  }

  private Entry continuity() {
    Point from = point();
    Point to = point();
    while (to.equals(from)) {
      to = point();
    }
    return new Entry.Continuity(from, to, random.nextBoolean());
  }

  private String subject() {
    return switch (random.nextInt(6)) {
      case 0 -> "jumper " + any(module.jumpers());
      case 1 -> "part " + any(List.copyOf(module.parts().keySet()));
      case 2 -> "leg " + End.pin(any(List.copyOf(module.parts().keySet())), 1 + random.nextInt(14));
      case 3 -> "lamp " + any(List.copyOf(module.lamps().keySet()));
      case 4 -> "control " + any(List.copyOf(module.controls().keySet()));
      default -> "rail " + any(module.rails()).label();
    };
  }

  private List<String> faults() {
    return some(List.of("jumper-missing U1.3-U2.3", "turned U3", "bare-led R1+dead U2.5"));
  }

  private String words() {
    return String.join(
        " ",
        oneOrMore(List.of("moved", "the wire", "\"back\"", "1 kΩ", "a\\b", "within 3", ": x")));
  }
}
