package straywire.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import straywire.parts.Family;

/** What is known of a family's electrical habits, each habit with its value. */
record FamilyTable(List<Habit> habits) {
  /** One line of the table. */
  record Habit(String name, String value) {}

  FamilyTable {
    habits = List.copyOf(habits);
  }

  static FamilyTable of(Family family) {
    List<Habit> habits = new ArrayList<>();
    habits.add(new Habit("surely reads low (VIL)", "up to " + volts(family.inputLowMax())));
    habits.add(new Habit("surely reads high (VIH)", "from " + volts(family.inputHighMin())));
    habits.add(new Habit("an open input reads", family.openReadsHigh() ? "high" : "anything"));
    habits.add(new Habit("a meter on a driven low", band(family.low())));
    habits.add(new Habit("a meter on a driven high", band(family.high())));
    habits.add(new Habit("a meter on an open input", band(family.open())));
    habits.add(new Habit("two outputs fight", fight(family.lowRank(), family.highRank())));
    habits.add(
        new Habit("two bus drivers fight", fight(family.busLowRank(), family.busHighRank())));
    habits.add(
        new Habit(
            "without its supply pin",
            family.feedsThroughInputs() ? "lives on current from a high input" : "lets go"));
    return new FamilyTable(habits);
  }

  private static String fight(int low, int high) {
    return low > high ? "the low one wins" : low < high ? "the high one wins" : "undecided";
  }

  private static String volts(double volts) {
    return String.format(Locale.ROOT, "%.1f V", volts);
  }

  private static String band(Family.Band band) {
    return String.format(
        Locale.ROOT, "%.2f to %.2f V, usually %.2f V", band.least(), band.most(), band.usual());
  }
}
