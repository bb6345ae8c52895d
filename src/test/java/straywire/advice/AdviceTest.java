package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static straywire.advice.BeatMemory.MODULE;
import static straywire.advice.BeatMemory.log;
import static straywire.advice.BeatMemory.seen;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.faults.PriorsFile;
import straywire.faults.Suggestion;
import straywire.module.BenchLog;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Point;
import straywire.sim.Signal;

class AdviceTest {
  private static final RuleBase RULES = RuleBase.shipped();
  private static final Entry ON = new Entry.Power(true);
  private static final Entry WRITE = new Entry.Press("write");

  @Test
  void aJumbleAfterPowerUpIsNormal() {
    assertThat(normal(log(ON, seen("memory", "01101001")))).contains("NORM-02").hasSize(1);
  }

  @Test
  void aWrittenAddressIsNoJumble() {
    assertThat(normal(log(ON, WRITE, seen("memory", "01101001")))).isEmpty();
  }

  @Test
  void anotherAddressThanTheWrittenOneIsStillAJumble() {
    Entry elsewhere = new Entry.Set(Map.of("A0", true));
    assertThat(normal(log(ON, WRITE, elsewhere, seen("memory", "01101001")))).contains("NORM-02");
  }

  @Test
  void powerOffEmptiesTheMemory() {
    Entry off = new Entry.Power(false);
    assertThat(normal(log(ON, WRITE, off, ON, seen("memory", "01101001")))).contains("NORM-02");
  }

  @Test
  void aWithdrawnWriteDidNotHappen() {
    assertThat(normal(log(ON, WRITE, new Entry.Withdrawn(2), seen("memory", "01101001"))))
        .contains("NORM-02");
  }

  @Test
  void allDarkBeforeAWriteMayBeTheContents() {
    assertThat(normal(log(ON, seen("memory", "00000000")))).contains("NORM-03");
  }

  @Test
  void theLampsGoDarkWhileTheWriteButtonIsHeld() {
    BenchLog held = log(ON, WRITE, new Entry.Hold("write"), seen("memory", "00000000"));
    assertThat(RULES.advise(MODULE, held, List.of(), Map.of()).normal())
        .filteredOn(n -> n.rule().equals("NORM-09"))
        .extracting(Normal::text)
        .anyMatch(t -> t.startsWith("While write is held, U1 lets go of its outputs"));
  }

  @Test
  void nothingIsSaidOfTheButtonOnceItIsLetGo() {
    BenchLog released =
        log(ON, new Entry.Hold("write"), new Entry.Release("write"), seen("memory", "00000000"));
    assertThat(normal(released)).isEmpty();
  }

  @Test
  void aReleasedBusIsDark() {
    BenchLog log = log(ON, WRITE, seen("bus", "00000000"));
    Map<String, Signal> released = Map.of("BUS0", Signal.OPEN_INPUT, "BUS1", Signal.NOTHING);
    assertThat(normal(log, released)).contains("NORM-11");
    assertThat(normal(log, Map.of("BUS0", Signal.LOW))).doesNotContain("NORM-11");
  }

  @Test
  void aTtlHighBelowTheSupplyIsNormal() {
    BenchLog log = log(ON, new Entry.Measured(leg("U3", 2), 3.4));
    assertThat(normal(log, Map.of("M4", Signal.HIGH))).containsExactly("NORM-14");
  }

  @Test
  void warmthIsWeighedForThePartItIsAt() {
    BenchLog log = log(ON, new Entry.Symptom("chip-warm", "U5", Entry.Answer.YES, List.of()));
    Advice advice = RULES.advise(MODULE, log, List.of(), Map.of());
    assertThat(advice.weights())
        .singleElement()
        .satisfies(
            w -> {
              assertThat(w.entry()).isEqualTo(2);
              assertThat(w.concerns(MODULE, hypothesis(Mechanism.TURNED, "U5"))).isTrue();
              assertThat(w.concerns(MODULE, hypothesis(Mechanism.TURNED, "U1"))).isFalse();
              assertThat(w.concerns(MODULE, hypothesis(Mechanism.LEG_NOT_IN_ROW, "U5.2")))
                  .isFalse();
            });
    assertThat(advice.cautions()).first().satisfies(c -> assertThat(c.urgent()).isTrue());
  }

  @Test
  void twoAnswersAboutTheSameAreTwoWeights() {
    Entry warm = new Entry.Symptom("chip-warm", "U5", Entry.Answer.YES, List.of());
    assertThat(RULES.advise(MODULE, log(ON, warm, warm), List.of(), Map.of()).weights())
        .extracting(Weigh::entry)
        .containsExactly(2, 3);
  }

  @Test
  void aReversedSupplyIsSaidBeforeEverythingElse() {
    Leader reversed = new Leader(1, hypothesis(Mechanism.SUPPLY_REVERSED), 0.4, false);
    Advice advice = RULES.advise(MODULE, log(ON), List.of(reversed), Map.of());
    assertThat(advice.cautions())
        .first()
        .satisfies(
            c -> {
              assertThat(c.rule()).isEqualTo("SAFE-02");
              assertThat(c.urgent()).isTrue();
            });
  }

  @Test
  void theSupplyIsCheckedBeforeTheFirstPowerOn() {
    assertThat(RULES.advise(MODULE, log(), List.of(), Map.of()).cautions())
        .singleElement()
        .satisfies(
            c ->
                assertThat(c.text())
                    .contains("plus to plus", "5 V", "250 mA")
                    .contains("licensed practice", "local electrical code"));
    assertThat(cautions(log(ON))).isEmpty();
  }

  @Test
  void rewiringUnderPowerIsWarnedOf() {
    Entry repaired = new Entry.Repaired("moved the end");
    assertThat(cautions(log(ON, repaired))).contains("SAFE-10");
    assertThat(cautions(log(ON, new Entry.Power(false), repaired))).doesNotContain("SAFE-10");
  }

  @Test
  void theSupplyLegsOfTheSuspectPartComeBeforeItsSignals() {
    Entry meter = new Entry.Instruments(List.of("meter"));
    Leader suspect = new Leader(1, hypothesis(Mechanism.OUTPUT_DEAD, "U3.2"), 0.3, false);
    BenchLog before = log(meter, ON, seen("memory", "00000000"));
    assertThat(hints(before, suspect)).contains("ADV-01");
    BenchLog after = before.with(new Entry.Measured(leg("U3", 14), 5.0));
    assertThat(hints(after, suspect)).doesNotContain("ADV-01").contains("READ-08");
  }

  @Test
  void theSameAdviceComesOutEveryTime() {
    Leader suspect = new Leader(1, hypothesis(Mechanism.TURNED, "U5"), 0.6, true);
    BenchLog log = log(ON, seen("memory", "01101001"), seen("bus", "d0000000"));
    Advice advice = RULES.advise(MODULE, log, List.of(suspect), Map.of());
    assertThat(RULES.advise(MODULE, log, List.of(suspect), Map.of())).isEqualTo(advice);
    assertThat(RuleBase.shipped().advise(MODULE, log, List.of(suspect), Map.of()))
        .isEqualTo(advice);
  }

  private static List<String> normal(BenchLog log) {
    return normal(log, Map.of());
  }

  private static List<String> normal(BenchLog log, Map<String, Signal> expected) {
    return RULES.advise(MODULE, log, List.of(), expected).normal().stream()
        .map(Normal::rule)
        .toList();
  }

  private static List<String> cautions(BenchLog log) {
    return RULES.advise(MODULE, log, List.of(), Map.of()).cautions().stream()
        .map(Caution::rule)
        .toList();
  }

  private static List<String> hints(BenchLog log, Leader leader) {
    return RULES.advise(MODULE, log, List.of(leader), Map.of()).hints().stream()
        .map(Hint::rule)
        .toList();
  }

  private static Point leg(String part, int pin) {
    return new Point(End.pin(part, pin), true);
  }

  private static Hypothesis hypothesis(Mechanism mechanism, String... places) {
    return FaultExpansion.expand(
        MODULE,
        new Suggestion("TEST-01", mechanism, List.of(places), 1, "test"),
        PriorsFile.shipped());
  }
}
