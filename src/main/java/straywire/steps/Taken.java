package straywire.steps;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import straywire.module.Entry;
import straywire.module.Point;
import straywire.observe.Step;

/**
 * Readings that were taken and would come out the same again, slip included: counting them as fresh
 * evidence would let one reading, repeated, outvote all others.
 */
final class Taken {
  /** Touched since anything was moved, as the step would be. */
  private final Set<Step> touched = new HashSet<>();

  /** Looked over or beeped since the last repair. */
  private final Set<Step> wiring = new HashSet<>();

  /** Symptoms with their places that were asked about since the last repair. */
  private final Set<String> answered = new HashSet<>();

  private Optional<String> held = Optional.empty();

  /** Buttons that were down since anything else was moved; the second time changes nothing. */
  private final Set<String> pressed = new HashSet<>();

  /**
   * From the entries since the last repair.
   *
   * @param entries in the order of the log
   */
  Taken(List<Entry> entries) {
    entries.forEach(this::note);
  }

  private void note(Entry entry) {
    if (entry instanceof Entry.Power
        || entry instanceof Entry.Set
        || entry instanceof Entry.Press) {
      touched.clear();
      pressed.clear();
      held = Optional.empty();
    } else if (entry instanceof Entry.Hold e) {
      held = Optional.of(e.button());
      if (pressed.add(e.button())) {
        touched.clear();
      }
    } else if (entry instanceof Entry.Release) {
      held = Optional.empty();
    } else if (entry instanceof Entry.Measured e) {
      touched.add(new Step.Measure(e.point(), held));
    } else if (entry instanceof Entry.Probed e) {
      touched.add(new Step.Probe(e.point(), held));
    } else if (entry instanceof Entry.Inspected e) {
      wiring.add(new Step.Inspect(e.subject()));
    } else if (entry instanceof Entry.Continuity e) {
      wiring.add(new Step.Beep(e.from(), e.to()));
      wiring.add(new Step.Beep(e.to(), e.from()));
    } else if (entry instanceof Entry.Symptom e) {
      answered.add(e.symptom() + " " + e.place());
    }
  }

  /** Whether a step would only repeat what was read before. */
  boolean repeats(Step step) {
    if (step instanceof Step.MeasureRound round) {
      Stream<Point> points = round.points().stream();
      return points.allMatch(p -> touched.contains(new Step.Measure(p, Optional.empty())));
    }
    if (step instanceof Step.Ask ask) {
      return answered.contains(ask.symptom() + " " + ask.place());
    }
    if (step instanceof Step.Beep beep) {
      return wiring.contains(new Step.Beep(beep.from(), beep.to()));
    }
    return touched.contains(step) || wiring.contains(step);
  }
}
