package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.figures.Trial;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.observe.Instruments;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;
import straywire.steps.Unseen;
import straywire.steps.Unseen.Hidden;

/** LEDs without resistors on the re-inverted outputs, before a transceiver of either family. */
class BareLampsTest {
  private static final String BARE = "bare-led R0 R1 R2 R3 R4 R5 R6 R7";

  private static Workbench withCmosTransceiver() throws IOException {
    String yaml = Files.readString(BeatMemory.FOLDER.resolve("module.yaml"));
    String bipolar = "U5: {type: 74x245, family: LS";
    assertThat(yaml).contains(bipolar);
    String cmos = yaml.replace(bipolar, "U5: {type: 74x245, family: HC");
    Module module = ModuleFile.parse("module.yaml", cmos, new ShippedParts());
    return new Workbench(module, BeatMemory.RULES);
  }

  @Test
  void aCmosTransceiverMisreadsTheHighsAndOneReadingNamesTheBareLamps() throws IOException {
    assertNamed(3);
  }

  @Tag("slow")
  @Test
  void aCmosTransceiverMisreadsTheHighsForTwentyFillingsOfTheMemory() throws IOException {
    assertNamed(20);
  }

  private static void assertNamed(int seeds) throws IOException {
    Workbench bench = withCmosTransceiver();
    Trial trial = new Trial(bench.module(), bench.hypotheses(), Instruments.USUAL);
    double surelyHigh = bench.module().parts().get("U5").family().inputHighMin();
    for (long seed : BeatMemory.seeds(seeds)) {
      Trial.Result result = trial.run(bench.hypothesis(BARE).orElseThrow(), seed);

      assertThat(result.deviated()).isTrue();
      assertThat(result.foundIn(1)).isTrue();
      assertThat(result.last().verdict()).isEqualTo(Outlook.Verdict.NAMED);
      assertThat(BeatMemory.steps(result))
          .as("a high that the lamp holds below what the transceiver takes for one")
          .anyMatch(
              e -> e instanceof Entry.Measured m && m.volts() > 1.5 && m.volts() < surelyHigh);
    }
  }

  @Test
  void aBipolarTransceiverStillReadsThemSoNothingShowsAndTheyAreListedAsInvisible() {
    for (long seed : BeatMemory.seeds(3)) {
      Trial.Result result = BeatMemory.trial(BARE, seed);
      assertThat(result.deviated()).isFalse();
      assertThat(result.last().verdict()).isEqualTo(Outlook.Verdict.NOTHING_WRONG);

      Diagnosis diagnosis = BeatMemory.after(BeatMemory.entries(result.log()));
      Hidden hidden =
          Unseen.of(diagnosis).stream()
              .filter(h -> h.hypothesis().id().equals(BARE))
              .findFirst()
              .orElseThrow();
      assertThat(hidden.invisible()).isTrue();
    }
  }
}
