package straywire.observe;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import straywire.module.Point;

/** Something the hand can do next, with an answer that tells hypotheses apart. */
public sealed interface Step {

  /** Asks each kind of step its own question; a new kind has to be answered for everywhere. */
  interface Cases<R> {
    R measure(Measure step);

    R round(MeasureRound step);

    R probe(Probe step);

    R work(Work step);

    R inspect(Inspect step);

    R beep(Beep step);

    R exchange(Exchange step);

    R ask(Ask step);
  }

  <R> R by(Cases<R> cases);

  /** Touch a point with the meter and read volts; a held button stays down meanwhile. */
  record Measure(Point point, Optional<String> holding) implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.measure(this);
    }
  }

  /** Touch several points in turn with the meter, such as the ground leg of every chip. */
  record MeasureRound(List<Point> points) implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.round(this);
    }

    public MeasureRound {
      points = List.copyOf(points);
    }
  }

  /** Touch a point with the logic probe. */
  record Probe(Point point, Optional<String> holding) implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.probe(this);
    }
  }

  /**
   * Move controls, press a button if one is named, look at the lamps.
   *
   * @param set controls to move, by label, true is high; may be empty
   * @param press button to press after that
   * @param words lamp words to look at
   */
  record Work(Map<String, Boolean> set, Optional<String> press, List<String> words)
      implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.work(this);
    }
  }

  /** Look closely at a jumper, part, leg, lamp, control or rail. */
  record Inspect(String subject) implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.inspect(this);
    }
  }

  /**
   * Power off, then beep from one point to another.
   *
   * @param set switches to move first, whose contacts would join the two or hide whether anything
   *     else does; true is high
   */
  record Beep(Point from, Point to, Map<String, Boolean> set) implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.beep(this);
    }

    /** With the controls where they are. */
    public Beep(Point from, Point to) {
      this(from, to, Map.of());
    }
  }

  /** Put a known good part in its place. */
  record Exchange(String part) implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.exchange(this);
    }
  }

  /**
   * Answer a question about what was noticed.
   *
   * @param place what the answer is about; empty for the whole module
   * @param seconds of the hand, to find the answer when it is not known already
   */
  record Ask(String symptom, String place, int seconds) implements Step {
    @Override
    public <R> R by(Cases<R> cases) {
      return cases.ask(this);
    }
  }
}
