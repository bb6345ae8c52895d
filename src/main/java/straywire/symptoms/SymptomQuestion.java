package straywire.symptoms;

/**
 * A symptom that a person may be asked about on one module.
 *
 * @param symptom id in the symptom table
 * @param place label of the lamp word it is about; empty for a module whose lamps form no word
 * @param text the question, answered by yes, no or don't know
 * @param seconds of the hand's time to find the answer
 */
public record SymptomQuestion(String symptom, String place, String text, int seconds) {}
