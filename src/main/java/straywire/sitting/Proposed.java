package straywire.sitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import straywire.format.BadEntry;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.Step;

/**
 * A step laid out for the hand: what to do first, the one reading, what to do after it.
 *
 * @param purpose why this step stands here
 * @param before entries that the handling before the reading leaves in the log
 * @param after entries that the handling after it leaves
 * @param seconds expected time of the hand, above 0
 * @param bits expected information; 0 for a round of the exercise
 * @param expected expected readings by suspect rank, first suspect first; for a round of the
 *     exercise the one reading of a module with nothing wrong
 */
public record Proposed(
    Purpose purpose,
    List<Entry> before,
    Wanted wanted,
    List<Entry> after,
    double seconds,
    double bits,
    List<String> expected) {

  /** Why a step is asked for. */
  public enum Purpose {
    /** A round of the by-hand exercise, until something differs. */
    EXERCISE,
    /** Tells suspects apart. */
    SEARCH,
    /** Shows that a repair cured it. */
    CONFIRM,
    /** Answers an urgent caution, before all else. */
    CAUTION
  }

  public Proposed {
    before = List.copyOf(before);
    after = List.copyOf(after);
    expected = List.copyOf(expected);
  }

  /** A step that tells suspects apart. */
  static Proposed of(
      Step step, boolean powered, double seconds, double bits, List<String> expected) {
    List<Entry> before = new ArrayList<>();
    List<Entry> after = new ArrayList<>();
    Wanted wanted =
        step.by(
            new Step.Cases<Wanted>() {
              @Override
              public Wanted work(Step.Work s) {
                set(s.set());
                s.press().ifPresent(button -> before.add(new Entry.Press(button)));
                return new Wanted.Lamps(s.words());
              }

              @Override
              public Wanted measure(Step.Measure s) {
                hold(s.holding(), before, after);
                return new Wanted.Volts(s.point());
              }

              @Override
              public Wanted round(Step.MeasureRound s) {
                return new Wanted.Round(s.points());
              }

              @Override
              public Wanted probe(Step.Probe s) {
                hold(s.holding(), before, after);
                return new Wanted.Shows(s.point());
              }

              @Override
              public Wanted inspect(Step.Inspect s) {
                return new Wanted.AsMeant(s.subject());
              }

              @Override
              public Wanted beep(Step.Beep s) {
                powerOff();
                set(s.set());
                return new Wanted.Joined(s.from(), s.to());
              }

              @Override
              public Wanted exchange(Step.Exchange s) {
                powerOff();
                return new Wanted.Done(s.part());
              }

              @Override
              public Wanted ask(Step.Ask s) {
                return new Wanted.Noticed(s.symptom(), s.place());
              }

              private void set(Map<String, Boolean> levels) {
                if (!levels.isEmpty()) {
                  before.add(new Entry.Set(levels));
                }
              }

              private void powerOff() {
                if (powered) {
                  before.add(new Entry.Power(false));
                  after.add(new Entry.Power(true));
                }
              }
            });
    return new Proposed(Purpose.SEARCH, before, wanted, after, seconds, bits, expected);
  }

  private static void hold(Optional<String> button, List<Entry> before, List<Entry> after) {
    button.ifPresent(
        b -> {
          before.add(new Entry.Hold(b));
          after.add(new Entry.Release(b));
        });
  }

  /** The same, with something done before all else. */
  Proposed after(Entry first) {
    List<Entry> all = new ArrayList<>(List.of(first));
    all.addAll(before);
    return new Proposed(purpose, all, wanted, after, seconds, bits, expected);
  }

  /** The same, as the answer to a caution. */
  Proposed cautioned() {
    return new Proposed(Purpose.CAUTION, before, wanted, after, seconds, bits, expected);
  }

  /** All entries that the step leaves, with the readings in their place. */
  List<Entry> entries(List<Entry> readings) {
    List<Entry> all = new ArrayList<>(before);
    all.addAll(readings);
    all.addAll(after);
    return all;
  }

  /**
   * The reading's entry, or entries, of a short answer.
   *
   * @throws BadEntry when the answer does not fit, with what would be right
   */
  List<Entry> read(String answer, Module module) {
    return wanted instanceof Wanted.Lamps lamps
        ? lamps.read(answer, module, pictures())
        : wanted.read(answer, module);
  }

  /** The readings that are expected, each once; one when {@code ok} is an answer. */
  public List<String> pictures() {
    return expected.stream().filter(e -> !e.isEmpty()).distinct().toList();
  }

  /** True when the answer depends on where the controls stand. */
  boolean dependsOnControls() {
    return wanted instanceof Wanted.Lamps
        || wanted instanceof Wanted.Volts
        || wanted instanceof Wanted.Round
        || wanted instanceof Wanted.Shows;
  }
}
