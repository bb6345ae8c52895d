/**
 * Prior, likelihood of each log entry under each hypothesis, posterior. Must not know which step
 * comes next, nor print.
 */
package straywire.ranking;
