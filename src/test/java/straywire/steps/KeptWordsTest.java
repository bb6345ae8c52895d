package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.advice.RuleBase;
import straywire.casebook.SimulatedBench;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.ranking.AfterRepair;
import straywire.ranking.Bank;
import straywire.ranking.Diagnosis;
import straywire.sim.Wiring;

/** What is made of words that an EEPROM keeps over a power cycle. */
class KeptWordsTest {
  private static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases", "tune-store", "module.yaml"), new ShippedParts());

  private static final Workbench WORKBENCH = new Workbench(MODULE, RuleBase.shipped());

  private static final String STATIC_RAM = "wrong-part U1 6116 HCT";

  private static Diagnosis told(String... lines) {
    Diagnosis diagnosis = WORKBENCH.diagnosis();
    for (String line : lines) {
      diagnosis.accept(new EntryWords(MODULE).parse(line), h -> 0);
    }
    return diagnosis;
  }

  private static double probability(Diagnosis diagnosis, String hypothesis) {
    return diagnosis.candidates().stream()
        .filter(c -> c.hypothesis().id().equals(hypothesis))
        .mapToDouble(Diagnosis.Candidate::probability)
        .sum();
  }

  @Test
  void aWordThatIsGoneAfterAPowerCycleSpeaksForAStaticRamInTheSocket() {
    String[] taught = {
      "power on",
      "set address 0000 data 10010110 sleep low teach low",
      "press write",
      "set teach high",
      "see bus 10010110",
      "power off",
      "power on",
      "see bus 01110100"
    };
    assertThat(told(taught).candidates().get(0).hypothesis().id()).isEqualTo(STATIC_RAM);
    taught[7] = "see bus 10010110";
    assertThat(told(taught).candidates().get(0).hypothesis().edits()).isEmpty();
    assertThat(probability(told(taught), STATIC_RAM)).isLessThan(0.001);
  }

  @Test
  void aWordNobodyWroteThatChangesOverAPowerCycleSpeaksAgainstASoundEeprom() {
    Diagnosis changed =
        told(
            "power on",
            "set sleep low teach high",
            "see bus 01110100",
            "power off",
            "power on",
            "see bus 10110010");
    Diagnosis same =
        told(
            "power on",
            "set sleep low teach high",
            "see bus 01110100",
            "power off",
            "power on",
            "see bus 01110100");
    // Many faults leave an enable open and show anything; the static RAM is one of them now.
    assertThat(probability(changed, STATIC_RAM)).isGreaterThan(5 * probability(same, STATIC_RAM));
    assertThat(probability(changed, "nothing-wrong")).isLessThan(0.01);
    assertThat(probability(same, "nothing-wrong")).isGreaterThan(0.5);
  }

  @Test
  void aWordNobodyWroteIsAsSureTheSecondTimeWhetherThePowerWasOffOrNot() {
    Bank bank = bank(WORKBENCH.nothingWrong());
    EntryWords words = new EntryWords(MODULE);
    for (String line :
        List.of(
            "power on",
            "set sleep low teach high",
            "see bus 01110100",
            "see bus 01110100",
            "power off",
            "power on",
            "see bus 01110100")) {
      bank.accept(words.parse(line), new double[1]);
    }
    // The first reading halves for each of eight bits; a further one only loses a misreading.
    assertThat(bank.logLikelihoodOf(2, 0)).isLessThan(8 * Math.log(0.52));
    assertThat(bank.logLikelihoodOf(3, 0)).isGreaterThan(-0.3);
    assertThat(bank.logLikelihoodOf(6, 0)).isCloseTo(bank.logLikelihoodOf(3, 0), within(0.2));
  }

  @Test
  void afterARepairNothingIsReliedOnThatWasStoredBefore() {
    Diagnosis diagnosis =
        told(
            "power on",
            "set address 0000 data 10010110 sleep low teach low",
            "press write",
            "power off",
            "repaired jumper-missing write-U1.21",
            "power on",
            "set teach high",
            "see bus 01110100");
    assertThat(diagnosis.slips()).as("nothing was written with the wire missing").isZero();
  }

  private static Bank bank(Hypothesis... hypotheses) {
    return new Bank(MODULE, new Wiring(MODULE), List.of(hypotheses), WORKBENCH.table());
  }

  /** The exercise, which cuts the power, and then some looks at words nobody wrote. */
  private static void assertNeverContradicted(Hypothesis truth, long seed) {
    SimulatedBench bench = new SimulatedBench(MODULE, truth, WORKBENCH.table(), seed);
    Bank bank = bank(truth);
    List<Entry> entries = new ArrayList<>(MODULE.exercise());
    EntryWords words = new EntryWords(MODULE);
    for (String address : List.of("0011", "0000", "0111")) {
      for (String power : List.of("power off", "power on")) {
        entries.add(words.parse("set address " + address));
        entries.add(new Entry.Look(List.of("bus")));
        entries.add(words.parse(power));
        entries.add(new Entry.Look(List.of("bus")));
      }
    }
    for (Entry step : entries) {
      Entry entry = step;
      if (step instanceof Entry.Look look) {
        entry = bench.look(look.what());
      } else {
        bench.act(step);
      }
      List<Entry> parts = new ArrayList<>();
      if (entry instanceof Entry.Seen seen) {
        // Lamps one by one, so that no sure one makes up for a wrong one.
        seen.lamps().forEach((lamp, shown) -> parts.add(new Entry.Seen(Map.of(lamp, shown))));
      } else {
        parts.add(entry);
      }
      for (Entry part : parts) {
        bank.accept(part, new double[1]);
        assertThat(bank.slips(0)).as("%s slips at %s", truth.id(), part).isZero();
      }
    }
  }

  @Test
  void nothingSeenOverPowerCyclesSpeaksAgainstTheTruth() {
    Map<Object, Hypothesis> ofEach = new TreeMap<>();
    WORKBENCH.hypotheses().forEach(h -> ofEach.putIfAbsent(h.mechanism(), h));
    ofEach.values().forEach(truth -> assertNeverContradicted(truth, 1));
    assertNeverContradicted(WORKBENCH.hypothesis(STATIC_RAM).orElseThrow(), 2);
  }

  @Tag("slow")
  @Test
  void nothingSeenOverPowerCyclesSpeaksAgainstAnyFault() {
    WORKBENCH.hypotheses().forEach(truth -> assertNeverContradicted(truth, 3));
  }

  private static String bus(SimulatedBench bench) {
    StringBuilder bits = new StringBuilder();
    Map<String, LampState> seen = bench.look(List.of("bus")).lamps();
    for (int bit = 7; bit >= 0; bit--) {
      bits.append(seen.get("B" + bit) == LampState.LIT ? '1' : '0');
    }
    return bits.toString();
  }

  private static void act(SimulatedBench bench, String... lines) {
    for (String line : lines) {
      bench.act(new EntryWords(MODULE).parse(line));
    }
  }

  @Test
  void aBenchThatIsRepairedKeepsItsWordsUnlessTheEepromIsANewOne() {
    SimulatedBench bench =
        new SimulatedBench(MODULE, WORKBENCH.nothingWrong(), WORKBENCH.table(), 1);
    act(bench, "power on", "set address 0001 sleep low teach high");
    String neverWritten = bus(bench);
    act(bench, "set address 0000 data 10010110 teach low", "press write", "power off");
    SimulatedBench same = bench.repaired(WORKBENCH.nothingWrong(), 2, Set.of("U2"));
    act(same, "power on", "set address 0000 sleep low teach high");
    assertThat(bus(same)).isEqualTo("10010110");
    act(same, "set address 0001");
    assertThat(bus(same)).isEqualTo(neverWritten);
    SimulatedBench fresh = bench.repaired(WORKBENCH.nothingWrong(), 2, Set.of("U1"));
    act(fresh, "power on", "set address 0000 sleep low teach high");
    assertThat(bus(fresh)).isNotEqualTo("10010110");
  }

  @Test
  void onlyACureOfThePartItselfBringsANewOne() {
    assertThat(fresh(STATIC_RAM)).containsExactly("U1");
    assertThat(fresh("jumper-missing write-U1.21")).isEmpty();
    assertThat(fresh("turned U1")).isEmpty();
  }

  @Test
  void ofTwoFaultsEachCureCountsByItself() {
    assertThat(fresh("jumper-missing write-U1.21", STATIC_RAM)).containsExactly("U1");
    assertThat(fresh("output-dead U2.18", "leg-not-in-row U1.21")).containsExactly("U2");
  }

  private static Set<String> fresh(String... mended) {
    return AfterRepair.fromTheDrawer(
        MODULE, Stream.of(mended).map(KeptWordsTest::hypothesis).toList());
  }

  private static Hypothesis hypothesis(String id) {
    return WORKBENCH.hypothesis(id).orElseThrow();
  }
}
