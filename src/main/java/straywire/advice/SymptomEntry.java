package straywire.advice;

/**
 * A symptom that a person may be asked about, or may report.
 *
 * @param id as it stands in the bench log
 * @param question plain, answered by yes, no or don't know
 * @param kind who knows what it means
 * @param about what the place of an answer names
 * @param seconds of the hand's time to find the answer, above 0
 */
public record SymptomEntry(String id, String question, Kind kind, About about, int seconds) {
  /** Who knows what a symptom means. */
  public enum Kind {
    /** The simulation: a predicate over the exercise. */
    EXECUTABLE,
    /** Only the rules: no simulation shows it. */
    WEIGHED
  }

  /** What the place of an answer names. */
  public enum About {
    /** No place: the whole module. */
    MODULE,
    /** A word of lamps. */
    WORD,
    /** A lamp, or a word of lamps. */
    LAMP,
    /** A part, or nothing when it is not known which. */
    PART,
    /** A jumper, or nothing when it is not known which. */
    JUMPER
  }

  public SymptomEntry {
    if (seconds <= 0) {
      throw new IllegalArgumentException("Symptom " + id + " takes time, got " + seconds + " s");
    }
  }
}
