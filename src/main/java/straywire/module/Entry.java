package straywire.module;

import java.util.List;
import java.util.Map;

/**
 * One line of a bench log: something done or noticed, by its number. Entries are never changed; a
 * {@link Withdrawn} entry takes an earlier one back.
 */
public sealed interface Entry {

  /** Power switched on or off. */
  record Power(boolean on) implements Entry {}

  /** Controls moved. Keys are control labels, in label order, true is level high. */
  record Set(Map<String, Boolean> levels) implements Entry {}

  /** A button pressed and let go. */
  record Press(String button) implements Entry {}

  /** A button pressed and kept down. */
  record Hold(String button) implements Entry {}

  /** A held button let go. */
  record Release(String button) implements Entry {}

  /** Lamps looked at: lamp label to what was seen. */
  record Seen(Map<String, LampState> lamps) implements Entry {}

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
   */
  record Symptom(String symptom, String place, Answer answer, List<Integer> entries)
      implements Entry {}

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
  record Repaired(String action) implements Entry {}

  /** A part exchanged for a known good one. */
  record Exchanged(String part) implements Entry {}

  /** What lies at hand: of {@code eyes, meter, logic-probe, spare-parts}; lamps always count. */
  record Instruments(List<String> atHand) implements Entry {}

  /** Takes entry {@code number} back. */
  record Withdrawn(int number) implements Entry {}

  /** A step of an exercise: which lamp words or lamps to look at now. Never part of a log. */
  record Look(List<String> what) implements Entry {}

  /** Free words, kept and shown, never weighed. */
  record Note(String text) implements Entry {}

  /** The confirmed cause: ids of hypotheses, empty for "nothing was wrong". */
  record Finding(List<String> faults, String words) implements Entry {}

  /** What the replayer must find: for a case's test. */
  record Expected(List<String> faults, int withinSteps) implements Entry {}
}
