package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import straywire.figures.Trial;

/**
 * Faults that must be in the first group after so many steps beyond the first deviation, whatever
 * the memories hold at power-up.
 */
class SituationsTest {
  /** A fault and the steps it may take, told in the words of the bench. */
  private record Situation(String told, String fault, int most) {
    @Override
    public String toString() {
      return told + ", found in " + most;
    }
  }

  private static final List<Situation> SITUATIONS =
      List.of(
          new Situation("jumper to the write pins missing", "jumper-missing write-U1.3", 3),
          new Situation("write button without contact", "contact-dead write", 3),
          new Situation("chip select open at one RAM, jumper", "jumper-missing GND-U1.2", 3),
          new Situation("chip select open at one RAM, leg", "leg-not-in-row U1.2", 3),
          new Situation("four open outputs at one RAM", Faults.FOUR_OPEN, 3),
          new Situation("one RAM without supply", "supply-jumper-missing VCC-U1.16", 3),
          new Situation("an inverter of the high half bypassed", "inverter-bypassed U3.1-U3.2", 1),
          new Situation("an inverter of the low half bypassed", "inverter-bypassed U4.5-U4.6", 1),
          new Situation(
              "all four inverters of the high half bypassed",
              "inverter-bypassed U3.1-U3.2 U3.3-U3.4 U3.5-U3.6 U3.9-U3.8",
              2),
          new Situation(
              "all four inverters of the low half bypassed",
              "inverter-bypassed U4.1-U4.2 U4.3-U4.4 U4.5-U4.6 U4.9-U4.8",
              2),
          new Situation("a RAM with true outputs in the socket", "wrong-part U1 74x219 LS", 2),
          new Situation("nibble reversed on the input side", Faults.REVERSED_IN, 3),
          new Situation("nibble reversed on the output side", Faults.REVERSED_OUT, 3),
          new Situation("address line 2 open at both RAMs", "jumper-missing A1-U1.15", 3),
          new Situation("address line 4 open at both RAMs", "jumper-missing A2-U1.14", 3),
          new Situation("address leg of one RAM not in its row", "leg-not-in-row U1.15", 3),
          new Situation("output enable held low by its switch", "contact-stuck drive", 2),
          new Situation("output enable tied to ground", "shorted-low U5.19", 2),
          new Situation("output enable open", "jumper-missing drive-U5.19", 2),
          new Situation("direction pin tied low", "wrong-rail VCC-U5.1 to GND", 2),
          new Situation("transceiver pins 2 and 3 bridged", "bridged U5.2 U5.3", 3),
          new Situation("one lamp wire moved by a hole", "end-moved U5.9-R7 U5.9 to U5.8", 3),
          new Situation("inverter chip without ground", "supply-jumper-missing GND-U3.7", 3),
          new Situation("inverter chip wired as 16-pin part", "counted-as-16 U3", 4),
          new Situation("inverter chip supplied as 16-pin part", "supply-as-16 U3", 4),
          new Situation(
              "chip select open at one RAM and one inverter bypassed at the other",
              "jumper-missing GND-U1.2 + inverter-bypassed U4.5-U4.6",
              8));

  static List<Situation> situations() {
    return SITUATIONS;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("situations")
  void theFaultIsFirstInTimeForThreeFillingsOfTheMemory(Situation situation) {
    assertFoundInTime(situation, 3);
  }

  @Tag("slow")
  @ParameterizedTest(name = "{0}")
  @MethodSource("situations")
  void theFaultIsFirstInTimeForTwentyFillingsOfTheMemory(Situation situation) {
    assertFoundInTime(situation, 20);
  }

  private static void assertFoundInTime(Situation situation, int seeds) {
    Map<Long, String> late = new TreeMap<>();
    for (long seed : BeatMemory.seeds(seeds)) {
      Trial.Result result = BeatMemory.trial(situation.fault(), seed);
      if (!result.foundIn(situation.most()) || !result.right()) {
        late.put(
            seed,
            "found after "
                + result.found().map(String::valueOf).orElse("no step")
                + (result.right() ? "" : ", not first at the end")
                + ": "
                + BeatMemory.typed(BeatMemory.steps(result)));
      }
    }
    assertThat(late).as("seeds on which %s took longer", situation.told()).isEmpty();
  }
}
