/**
 * From what was seen to what is suspected: likelihood of each log entry under each hypothesis, the
 * posterior, ambiguity groups, the next step. Ranking and step choice know only the probability of
 * each outcome under each hypothesis; no class here prints.
 */
package straywire.diagnosis;
