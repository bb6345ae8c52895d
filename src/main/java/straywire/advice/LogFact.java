package straywire.advice;

import java.util.regex.Pattern;
import straywire.faults.Mechanism;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.sim.Signal;

/**
 * What rules know of a sitting: the standing entries of the log by number, and what the ranking
 * makes of them. Places are labels as in {@link WiringFact}; a missing label is the empty text.
 */
public sealed interface LogFact {

  /**
   * The moment that advice is for.
   *
   * @param entry number of the latest standing entry; 0 before the first
   * @param poweredAt entry of the last power-on; 0 when there was none
   */
  record Now(int entry, boolean powered, int poweredAt) implements LogFact {}

  /** Something at hand: {@code eyes}, {@code meter}, {@code logic-probe} or {@code spare-parts}. */
  record Instrument(String name) implements LogFact {}

  /**
   * A button pressed.
   *
   * @param net the net of the button
   * @param settings level of every control on an address line at that moment
   */
  record Pressed(int entry, String button, String net, String settings) implements LogFact {}

  /** A button kept down now. */
  record Held(String button, String net) implements LogFact {}

  /** How the lamps of a word looked together. */
  enum Look {
    ALL_DARK,
    ALL_LIT,
    MIXED,
    /** Not all were looked at, or some were dim or flickering. */
    UNSURE
  }

  /**
   * A word of lamps as seen.
   *
   * @param marks one character a lamp, high bit first, as in the log
   * @param settings as in {@link Pressed}
   */
  record WordSeen(int entry, String word, Look look, String marks, String settings)
      implements LogFact {}

  /** One lamp as seen. */
  record LampSeen(int entry, String lamp, String net, LampState state) implements LogFact {}

  /**
   * A meter reading.
   *
   * @param leg true when the leg was touched, false for its row
   * @param part empty when not at a pin
   */
  record Reading(
      int entry, String end, boolean leg, String part, String net, Band band, double volts)
      implements LogFact {}

  /** A logic probe reading. */
  record ProbeReading(
      int entry, String end, boolean leg, String part, String net, Entry.ProbeShows shows)
      implements LogFact {}

  /** A continuity check, and whether power was on at that moment. */
  record ContinuityCheck(int entry, String from, String to, boolean joined, boolean powered)
      implements LogFact {}

  /** An answer about something that no simulation shows. */
  record Noticed(int entry, String symptom, String place, Entry.Answer answer) implements LogFact {}

  /** Words that no rule was made for, as written. */
  record Noted(int entry, String text) implements LogFact {
    private static final Pattern ALARM =
        Pattern.compile(
            "(?i).*\\b(hot|warm|burn(s|t|ing)?|smok(e|es|ing)|smells?|smelly|popped|bang)\\b.*");

    /** Speaks of heat, smoke or a smell. */
    public boolean alarming() {
      return ALARM.matcher(text).matches();
    }
  }

  /** A caution that was read and accepted. */
  record Accepted(int entry) implements LogFact {}

  /** A cure carried out, and whether power was on at that moment. */
  record Repair(int entry, String action, boolean powered) implements LogFact {}

  /** A part exchanged, and whether power was on at that moment. */
  record Exchange(int entry, String part, boolean powered) implements LogFact {}

  /**
   * One of the leading suspects.
   *
   * @param rank from 1
   * @param fights true when two outputs fight under it as the controls stand
   */
  record LeaderFact(int rank, Mechanism mechanism, double probability, boolean fights)
      implements LogFact {}

  /** A part at which a leading suspect lies. */
  record SuspectPart(int rank, String part) implements LogFact {}

  /** What a net of the healthy module would be, as the controls stand. */
  record Expected(String net, Signal signal) implements LogFact {
    /** A plain low. */
    public boolean low() {
      return signal == Signal.LOW || signal == Signal.RAIL_LOW || signal == Signal.PULLED_LOW;
    }

    /** Nobody drives it. */
    public boolean released() {
      return signal == Signal.OPEN_INPUT
          || signal == Signal.NOTHING
          || signal == Signal.PULLED_LOW
          || signal == Signal.PULLED_HIGH;
    }
  }

  /** Since the last power-up nothing was written where a word was just looked at. Derived. */
  record Unwritten(int entry, String word) implements LogFact {}

  /** A word of lamps shows what a part drives, directly or through inverters. Derived. */
  record Shows(String word, String part) implements LogFact {}
}
