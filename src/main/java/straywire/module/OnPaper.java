package straywire.module;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What is not simulated: capacitors, for the wiring review and as a risk where one lacks, and notes
 * of the review that are meant.
 *
 * @param capacitorsToGround nanofarads by place: a part's label for one across its own supply legs,
 *     else the end, such as {@code U1.5} or {@code take}, from which it goes to ground
 */
public record OnPaper(SortedMap<String, Double> capacitorsToGround, List<Explained> explained) {

  /** No capacitors, nothing explained. */
  public static final OnPaper NOTHING = new OnPaper(new TreeMap<>(), List.of());

  /**
   * Why a note of the review is as it should be.
   *
   * @param finding id of the rule that tells it, such as {@code DRV-11}
   * @param place the place that it names
   */
  public record Explained(String finding, String place, String because) {}

  public OnPaper {
    capacitorsToGround = Collections.unmodifiableSortedMap(new TreeMap<>(capacitorsToGround));
    explained = List.copyOf(explained);
  }

  /** Nanofarads at a place; 0 for none. */
  public double nanofarads(String place) {
    return capacitorsToGround.getOrDefault(place, 0.0);
  }
}
