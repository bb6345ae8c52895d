/**
 * The look at a drawing before power: facts about loads, clocks and enables, the rules that join
 * them, the findings. Must not know hypotheses or what anybody saw.
 */
package straywire.review;
