package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import straywire.advice.SymptomEntry;
import straywire.advice.SymptomTable;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;
import straywire.ranking.Diagnosis.Candidate;
import straywire.symptoms.SymptomQuestion;

/** What nobody asked about, as the first word of a sitting. */
class ToldSymptomTest {
  private static final Entry.Symptom REVERSED = told("reversed-nibble", "memory");

  private static Diagnosis after(Workbench bench, Entry... entries) {
    BenchLog log = new BenchLog(bench.module().name(), "", List.of());
    for (Entry entry : entries) {
      log = log.with(entry);
    }
    Replay replay = new Replay(bench);
    replay.follow(log);
    return replay.diagnosis();
  }

  private static Entry.Symptom told(String symptom, String place) {
    return new Entry.Symptom(symptom, place, Entry.Answer.YES, List.of());
  }

  private static double sound(Diagnosis diagnosis) {
    return diagnosis.candidates().stream()
        .filter(c -> c.hypothesis().edits().isEmpty())
        .mapToDouble(Candidate::probability)
        .sum();
  }

  private static double share(Diagnosis diagnosis, String mechanism) {
    return diagnosis.candidates().stream()
        .filter(c -> c.hypothesis().id().startsWith(mechanism))
        .mapToDouble(Candidate::probability)
        .sum();
  }

  @TestFactory
  Stream<DynamicTest> afterAnySymptomThatIsNotNormalNothingWrongIsNeverFirst() {
    return Stream.of("beat-memory", "beat-decoder", "tally-adder")
        .flatMap(
            name -> {
              Workbench bench =
                  new Workbench(
                      ModuleFile.readShipped(
                          Path.of("cases", name, "module.yaml"), new ShippedParts()),
                      BeatMemory.RULES);
              return symptoms(bench)
                  .map(
                      said ->
                          DynamicTest.dynamicTest(
                              name + ": " + said.symptom() + " " + said.place(),
                              () -> leadsAway(bench, said)));
            });
  }

  private static Stream<Entry.Symptom> symptoms(Workbench bench) {
    Stream<Entry.Symptom> computed =
        bench.symptoms().questions().stream()
            .filter(q -> !q.symptom().endsWith("power-up"))
            .map((SymptomQuestion q) -> told(q.symptom(), q.place()));
    Stream<Entry.Symptom> weighed =
        SymptomTable.shipped().entries().stream()
            .filter(e -> e.kind() == SymptomEntry.Kind.WEIGHED)
            .map(e -> told(e.id(), ""));
    return Stream.concat(computed, weighed);
  }

  private static void leadsAway(Workbench bench, Entry.Symptom said) {
    Diagnosis diagnosis = after(bench, said);
    assertThat(diagnosis.candidates().get(0).hypothesis().edits()).isNotEmpty();
    assertThat(sound(diagnosis)).isLessThan(0.02);
  }

  @Test
  void whatIsNormalForAModuleIsNoComplaint() {
    Diagnosis diagnosis = after(BeatMemory.WORKBENCH, told("random-at-power-up", "memory"));
    assertThat(diagnosis.candidates().get(0).hypothesis().edits()).isEmpty();
  }

  @Test
  void aReversedHalfAsTheOnlyEntryLeadsToAnOrderReversed() {
    Diagnosis diagnosis = after(BeatMemory.WORKBENCH, REVERSED);
    assertThat(diagnosis.candidates().get(0).hypothesis().id()).startsWith("order-reversed");
    assertThat(share(diagnosis, "order-reversed"))
        .isGreaterThan(share(after(BeatMemory.WORKBENCH), "order-reversed") * 30);
  }

  @Test
  void tellingASymptomAgainAddsNothing() {
    Diagnosis once = after(BeatMemory.WORKBENCH, REVERSED);
    Diagnosis thrice = after(BeatMemory.WORKBENCH, REVERSED, REVERSED, REVERSED);
    for (int i = 0; i < 20; i++) {
      Candidate candidate = once.candidates().get(i);
      Candidate again = thrice.candidates().get(i);
      assertThat(again.hypothesis().id()).isEqualTo(candidate.hypothesis().id());
      assertThat(again.probability()).isCloseTo(candidate.probability(), within(1e-12));
    }
  }

  @Test
  void namingThePlaceAfterwardsCountsAsNamingItAtFirst() {
    Diagnosis atOnce = after(BeatMemory.WORKBENCH, told("bit-stuck-low", "R3"));
    Diagnosis later =
        after(BeatMemory.WORKBENCH, told("bit-stuck-low", ""), told("bit-stuck-low", "R3"));
    assertThat(later.candidates().get(0).hypothesis().id())
        .isEqualTo(atOnce.candidates().get(0).hypothesis().id());
    assertThat(later.candidates().get(0).probability())
        .isCloseTo(atOnce.candidates().get(0).probability(), within(1e-9));
  }

  @Test
  void twoSymptomsOfOneFaultSpeakForItMoreThanOne() {
    Entry.Symptom never = told("never-changes-on-write", "memory");
    Entry.Symptom dead = told("half-dead", "memory");
    String noSupply = "supply-jumper-missing VCC-U1.16";
    double one = share(after(BeatMemory.WORKBENCH, never), noSupply);
    double both = share(after(BeatMemory.WORKBENCH, never, dead), noSupply);
    assertThat(both).isGreaterThan(one * 1.4);
    assertThat(sound(after(BeatMemory.WORKBENCH, never, dead)))
        .isLessThan(sound(after(BeatMemory.WORKBENCH, never)));
  }

  @Test
  void withdrawingTheFirstReportMakesTheSecondCount() {
    BenchLog log =
        new BenchLog(BeatMemory.MODULE.name(), "", List.of()).with(REVERSED).with(REVERSED);
    Replay replay = new Replay(BeatMemory.WORKBENCH);
    replay.follow(log);
    replay.follow(log.with(new Entry.Withdrawn(1)));
    Candidate left = replay.diagnosis().candidates().get(0);
    Candidate once = after(BeatMemory.WORKBENCH, REVERSED).candidates().get(0);
    assertThat(left.hypothesis()).isEqualTo(once.hypothesis());
    assertThat(left.probability()).isCloseTo(once.probability(), within(1e-12));
  }

  @Test
  void anAnswerToAQuestionIsWeighedByHowLikelyThatAnswerIs() {
    Entry.Symptom asked =
        new Entry.Symptom("reversed-nibble", "memory", Entry.Answer.YES, List.of(), true);
    Diagnosis before = after(BeatMemory.WORKBENCH);
    Diagnosis after = after(BeatMemory.WORKBENCH, asked);
    double[] yes =
        BeatMemory.WORKBENCH
            .symptoms()
            .yes(BeatMemory.WORKBENCH.hypotheses(), "reversed-nibble", "memory");
    double all = 0;
    for (int i = 0; i < yes.length; i++) {
      all += yes[i] * BeatMemory.WORKBENCH.hypotheses().get(i).prior();
    }
    assertThat(sound(after)).isCloseTo(sound(before) * yes[0] / all, within(1e-9));
  }
}
