package straywire.advice;

import straywire.faults.Hypothesis;

/**
 * One of the leading suspects, as the ranking has it.
 *
 * @param rank from 1
 * @param probability 0 to 1
 * @param fights true when two outputs fight under it as the controls stand
 */
public record Leader(int rank, Hypothesis hypothesis, double probability, boolean fights) {}
