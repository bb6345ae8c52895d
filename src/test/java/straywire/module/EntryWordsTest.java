package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.format.BadEntry;

class EntryWordsTest {
  private final EntryWords words = new EntryWords(BeatMemory.MODULE);

  @ParameterizedTest
  @ValueSource(
      strings = {
        "power on",
        "power off",
        "set address 0001 data 10010110",
        "set drive low",
        "press write",
        "hold write",
        "release write",
        "see memory 10010110 bus 00000000",
        "see memory 10df011-",
        "see R3 dim",
        "measure U1.3 0.2",
        "measure U1.3 row -0.25",
        "measure VCC 5",
        "probe U1.3 high",
        "probe U1.3 row pulses",
        "joined U1.3 U2.3 yes",
        "joined U1.3 U1.3/row no",
        "symptom all-dark memory yes",
        "symptom all-dark memory yes 3 5",
        "symptom chip-warm unknown",
        "inspect jumper U1.3-U2.3 wrong",
        "inspect part U3 ok",
        "inspect leg U3.7 ok",
        "inspect rail GND ok",
        "repaired put the jumper U1.3-U2.3 back",
        "exchanged U3",
        "have meter eyes",
        "have nothing",
        "withdraw 7",
        "look memory R3",
        "note the board was moved",
        "finding jumper-missing U1.3-U2.3 ; turned U3 : both at once",
        "finding nothing : it was garbage at power-up",
        "expect jumper-missing U1.3-U2.3 within 3",
        "expect nothing within 0"
      })
  void aLineIsPrintedAsItWasTyped(String line) {
    assertThat(words.print(words.parse(line))).isEqualTo(line);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          set A0 1 A1 0          | set A0 high A1 low
          see R3 d R4 1          | see R3 dim R4 lit
          measure U1./WE row 0.2 | measure U1.3 row 0.2
          measure U1.3/row 0.2V  | measure U1.3 row 0.2
          measure U1.3 leg 3.40  | measure U1.3 3.4
          measure U1.3 1,45 V    | measure U1.3 1.45
          measure U1.3 -300 mV   | measure U1.3 -0.3
          measure U1.3 20mv      | measure U1.3 0.02
          symptom smell          | symptom smell yes
          symptom chip-warm U1   | symptom chip-warm U1 yes
          inspect jumper U2.3-U1./WE ok | inspect jumper U1.3-U2.3 ok
          """)
  void shorterWaysToTypeMeanTheSame(String typed, String printed) {
    assertThat(words.print(words.parse("  " + typed + " "))).isEqualTo(printed);
  }

  @Test
  void everyExampleIsValidAndStartsWithItsVerb() {
    List<String> verbs = new ArrayList<>();
    for (String example : words.examples()) {
      assertThat(words.print(words.parse(example))).isEqualTo(example);
      verbs.add(example.split(" ")[0]);
    }

    assertThat(verbs).isEqualTo(words.verbs()).hasSize(19);
  }

  @Test
  void randomEntriesOfEveryKindComeBackEqual() {
    for (long seed = 0; seed < 40; seed++) {
      RandomEntries random = new RandomEntries(BeatMemory.MODULE, seed);
      for (int kind = 0; kind < RandomEntries.KINDS; kind++) {
        Entry entry = random.ofKind(kind, 9);
        String line = words.print(entry);

        assertThat(words.parse(line)).as("seed %d: %s", seed, line).isEqualTo(entry);
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      maxCharsPerColumn = 300,
      textBlock =
          """
          `` | missing: an entry, such as power on
          pres write | no entry starts with pres; nearest is press
          power | power: missing: one of on, off
          power up | power: expected one of on, off, got up
          power on now | power: nothing goes after that, got now
          set address | set: missing: a value for address
          set address 001 | set: address has 4 places, high bit first (A3 A2 A1 A0), got 3 in "001"
          set write high | set: write is a button; press it, or hold and release it
          set drive up | set: drive: up is not one of high, low
          set drive low drive high | set: drive is given twice
          press wirte | press: no button is labelled wirte; nearest is write
          see memry 10010110 | see: no lamp or word of them is labelled memry; nearest is memory
          measure U1.3 | measure: missing: volts
          measure U1.3 high | measure: expected volts such as 0.2, got high
          measure U1.33 0.2 | measure: U1 (74x189) has no pin 33; its pins are 1 to 16
          measure R3 leg 0.2 | measure: R3 has no leg
          probe U1.3 on | probe: expected one of low, high, neither, pulses, got on
          joined U1.3 U1.3 yes | joined: expected two places, got U1.3 twice
          symptom all-dark memory maybe | symptom: expected one of yes, no, unknown, got maybe
          symptom all-dark yes x | symptom: expected the number of an entry, got x
          inspect wire U1.3-U2.3 ok | inspect: expected one of jumper, part, leg, lamp, control, rail, supply, got wire
          inspect part U3 good | inspect: expected one of ok, wrong, got good
          note | note: note: expected words, got nothing
          have scope | have: scope is no instrument; known are eyes, meter, logic-probe, spare-parts
          withdraw all | withdraw: expected the number of an entry, got all
          finding it was loose | finding: expected what was found, then " : " and words for it
          expect turned U3 | expect: expected what must be found, then "within" and a number of steps
          """)
  void oneLineSaysWhatIsWrong(String typed, String complaint) {
    assertThatThrownBy(() -> words.parse(typed)).isInstanceOf(BadEntry.class).hasMessage(complaint);
  }

  private List<String> completions(String typed) {
    return words.completions(Arrays.asList(typed.split(" ", -1)));
  }

  @Test
  void verbsAreCompletedFirst() {
    assertThat(words.completions(List.of())).isEqualTo(words.verbs());
    assertThat(completions("se")).containsExactly("set", "see");
    assertThat(completions("nonsense x")).isEmpty();
  }

  @Test
  void namesAndValuesAreCompletedAfterTheirVerb() {
    assertThat(completions("power ")).containsExactly("on", "off");
    assertThat(completions("set d")).containsExactly("data", "drive");
    assertThat(completions("set drive ")).containsExactly("high", "low");
    assertThat(completions("set address ")).isEmpty();
    assertThat(completions("set data 00000000 d")).containsExactly("drive");
    assertThat(completions("press ")).containsExactly("write");
    assertThat(completions("see R3 d")).containsExactly("dark", "dim");
    assertThat(completions("have meter ")).containsExactly("eyes", "logic-probe", "spare-parts");
    assertThat(completions("exchanged U")).containsExactly("U1", "U2", "U3", "U4", "U5");
  }

  @Test
  void placesAreCompletedAsPinsRowsAndLabels() {
    assertThat(completions("measure U1.1"))
        .containsExactly("U1.1", "U1.10", "U1.11", "U1.12", "U1.13", "U1.14", "U1.15", "U1.16");
    assertThat(completions("measure wr")).containsExactly("write");
    assertThat(completions("measure U1.3 ")).containsExactly("row");
    assertThat(completions("probe U1.3 "))
        .containsExactly("low", "high", "neither", "pulses", "row");
    assertThat(completions("probe U1.3 row h")).containsExactly("high");
    assertThat(completions("joined U1.3 U2.3")).containsExactly("U2.3", "U2.3/row");
    assertThat(completions("joined U1.3 U2.3 ")).containsExactly("yes", "no");
    assertThat(completions("inspect jumper U1.3")).containsExactly("U1.3-U2.3");
    assertThat(completions("inspect part U3 ")).containsExactly("ok", "wrong");
    assertThat(completions("symptom all-dark mem")).containsExactly("memory");
    assertThat(completions("symptom all-dark memory ")).containsExactly("yes", "no", "unknown");
  }

  @Test
  void symptomsAreCompletedAndCheckedWhenTheyAreKnown() {
    EntryWords known = new EntryWords(BeatMemory.MODULE, List.of("all-dark", "all-lit"));

    assertThat(known.completions(List.of("symptom", "all-")))
        .containsExactly("all-dark", "all-lit");
    assertThat(known.print(known.parse("symptom all-lit no"))).isEqualTo("symptom all-lit no");
    assertThatThrownBy(() -> known.parse("symptom all-drak yes"))
        .hasMessage("symptom: no symptom is called all-drak; nearest is all-dark");
  }

  @Test
  void everyCompletedPlaceIsOneThatParses() {
    for (String point : completions("joined U1.1 ")) {
      if (!point.equals("U1.1")) {
        assertThat(words.parse("joined U1.1 " + point + " yes"))
            .isInstanceOf(Entry.Continuity.class);
      }
    }
    for (String jumper : completions("inspect jumper ")) {
      assertThat(words.print(words.parse("inspect jumper " + jumper + " ok"))).contains(jumper);
    }
  }
}
