package straywire.module;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * One line of a bench log: something done or noticed, by its number. Entries are never changed; a
 * {@link Withdrawn} entry takes an earlier one back.
 */
public sealed interface Entry {
  /** Where the controls stand after it; the same for all that moves none. */
  default ControlState moves(ControlState before) {
    return before;
  }

  /** Numbers of the earlier entries it speaks of. */
  default List<Integer> speaksOf() {
    return List.of();
  }

  /** Power switched on or off. */
  record Power(boolean on) implements Entry {
    @Override
    public ControlState moves(ControlState before) {
      return before.withPower(on);
    }
  }

  /** Controls moved. Keys are control labels, in label order, true is level high. */
  record Set(Map<String, Boolean> levels) implements Entry {
    public Set {
      levels = Collections.unmodifiableMap(new TreeMap<>(levels));
    }

    @Override
    public ControlState moves(ControlState before) {
      return before.withLevels(levels);
    }
  }

  /** A button pressed and let go. */
  record Press(String button) implements Entry {
    @Override
    public ControlState moves(ControlState before) {
      return before.withReleased(button);
    }
  }

  /** A button pressed and kept down. */
  record Hold(String button) implements Entry {
    @Override
    public ControlState moves(ControlState before) {
      return before.withHeld(button);
    }
  }

  /** A held button let go. */
  record Release(String button) implements Entry {
    @Override
    public ControlState moves(ControlState before) {
      return before.withReleased(button);
    }
  }

  /** Lamps looked at: lamp label to what was seen, in label order. */
  record Seen(Map<String, LampState> lamps) implements Entry {
    public Seen {
      lamps = Collections.unmodifiableMap(new TreeMap<>(lamps));
    }
  }

  /** A meter reading in volts. */
  record Measured(Point point, double volts) implements Entry {}

  /** A logic probe reading. */
  record Probed(Point point, ProbeShows shows) implements Entry {}

  /** What a logic probe shows. */
  enum ProbeShows {
    LOW,
    HIGH,
    NEITHER,
    PULSES
  }

  /** A continuity check with power off. */
  record Continuity(Point from, Point to, boolean joined) implements Entry {}

  /**
   * An answer to a symptom's question.
   *
   * @param symptom id from the symptom table
   * @param place lamp word, part or other label it is about; empty for the whole module
   * @param entries numbers of log entries the answer is about; empty when about work not logged
   * @param asked whether the question was put; what nobody asked about was chosen by the person
   */
  record Symptom(String symptom, String place, Answer answer, List<Integer> entries, boolean asked)
      implements Entry {
    public Symptom {
      entries = List.copyOf(entries);
    }

    /** Nobody asked. */
    public Symptom(String symptom, String place, Answer answer, List<Integer> entries) {
      this(symptom, place, answer, entries, false);
    }

    /** Reported unasked, out of all that could have been reported, and not of entries. */
    public boolean volunteered() {
      return answer == Answer.YES && entries.isEmpty() && !asked;
    }

    @Override
    public List<Integer> speaksOf() {
      return entries;
    }
  }

  /** Answer to a question. */
  enum Answer {
    YES,
    NO,
    UNKNOWN
  }

  /**
   * Looked over with the eye: a jumper (by name), a part (its marking and which way round), or a
   * leg.
   *
   * @param subject what was inspected, such as {@code jumper U1.3-U2.3} or {@code part U3}
   */
  record Inspected(String subject, boolean asMeant) implements Entry {}

  /**
   * A cure carried out.
   *
   * @param action the repair as worded, or the id of the hypothesis it undoes
   */
  record Repaired(String action) implements Entry {
    @Override
    public ControlState moves(ControlState before) {
      return before.withHandsOff();
    }
  }

  /** A part exchanged for a known good one. */
  record Exchanged(String part) implements Entry {
    @Override
    public ControlState moves(ControlState before) {
      return before.withHandsOff();
    }
  }

  /** What lies at hand: of {@code eyes, meter, logic-probe, spare-parts}; lamps always count. */
  record Instruments(List<String> atHand) implements Entry {
    public Instruments {
      atHand = List.copyOf(atHand);
    }
  }

  /** Takes entry {@code number} back. */
  record Withdrawn(int number) implements Entry {
    @Override
    public List<Integer> speaksOf() {
      return List.of(number);
    }
  }

  /** A step of an exercise: which lamp words or lamps to look at now. Never part of a log. */
  record Look(List<String> what) implements Entry {
    public Look {
      what = List.copyOf(what);
    }
  }

  /** Free words, kept and shown, never weighed. */
  record Note(String text) implements Entry {
    /** How a note begins that says of a step that its answer is not known. */
    public static final String DONT_KNOW = "don't know: ";

    /** How a note begins that says of a round of an exercise that it was left out. */
    public static final String PASSED_OVER = "passed over: ";

    /** How a note begins that says of a caution that its risk is accepted. */
    public static final String ACCEPTED = "accepted: ";

    /** Written for the hand, not by it, of something that was not looked at. */
    public boolean ofTheTool() {
      return text.startsWith(DONT_KNOW) || text.startsWith(PASSED_OVER);
    }

    /** Accepts a caution. */
    public boolean accepts() {
      return text.startsWith(ACCEPTED);
    }
  }

  /** The confirmed cause: ids of hypotheses, empty for "nothing was wrong". */
  record Finding(List<String> faults, String words) implements Entry {
    public Finding {
      faults = List.copyOf(faults);
    }
  }

  /** What the replayer must find: for a case's test. */
  record Expected(List<String> faults, int withinSteps) implements Entry {
    public Expected {
      faults = List.copyOf(faults);
    }
  }
}
