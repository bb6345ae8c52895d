package straywire.steps;

import java.util.List;
import java.util.Map;
import straywire.advice.RuleBase;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.faults.PriorsFile;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.ReadingTable;
import straywire.observe.StepSeconds;
import straywire.ranking.Bank;
import straywire.ranking.Diagnosis;
import straywire.sim.Wiring;
import straywire.symptoms.SymptomBench;

/** The demo module with a few faults, or with all that the rules propose. */
public final class DiagnosisBench {
  public static final Module MODULE = SymptomBench.BEAT_MEMORY;
  public static final ReadingTable TABLE = ReadingTable.shipped();
  public static final StepSeconds SECONDS = StepSeconds.shipped();

  public static final Entry POWER_ON = new Entry.Power(true);
  static final Entry POWER_OFF = new Entry.Power(false);
  static final Entry ADDRESS_FIVE =
      new Entry.Set(Map.of("A3", false, "A2", true, "A1", false, "A0", true));

  private DiagnosisBench() {}

  /** Nothing wrong. */
  public static Hypothesis sound(double prior) {
    return new Hypothesis(
        "nothing-wrong", Mechanism.NOTHING_WRONG, List.of(), prior, "", "", "nothing", "");
  }

  public static Hypothesis missing(String jumper, double prior) {
    return new Hypothesis(
        "jumper-missing " + jumper,
        Mechanism.JUMPER_MISSING,
        List.of(SymptomBench.missing(jumper)),
        prior,
        "",
        "",
        jumper + " is missing",
        "put it in");
  }

  public static Hypothesis leg(String pin, double prior) {
    return new Hypothesis(
        "leg-not-in-row " + pin,
        Mechanism.LEG_NOT_IN_ROW,
        List.of(SymptomBench.open(pin)),
        prior,
        "",
        "",
        pin + " is bent under",
        "straighten it");
  }

  public static Bank bank(Hypothesis... hypotheses) {
    return new Bank(MODULE, new Wiring(MODULE), List.of(hypotheses), TABLE);
  }

  public static Diagnosis diagnosis(Hypothesis... hypotheses) {
    return new Diagnosis(MODULE, List.of(hypotheses), TABLE);
  }

  public static void accept(Diagnosis diagnosis, Entry... entries) {
    for (Entry entry : entries) {
      diagnosis.accept(entry, h -> 0);
    }
  }

  /** Everything the rules propose; "nothing is wrong" first. */
  public static List<Hypothesis> proposed() {
    return FaultExpansion.expandAll(
        MODULE, RuleBase.shipped().propose(MODULE), PriorsFile.shipped());
  }
}
