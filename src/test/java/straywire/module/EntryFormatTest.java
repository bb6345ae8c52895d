package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.format.BadEntry;

class EntryFormatTest {
  private final EntryFormat format = new EntryFormat(BeatMemory.MODULE);

  private Entry read(String json) {
    return format.read(LogLine.json(json).orElseThrow());
  }

  /** One line of each kind as the format writes it, so that writing gives the same again. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"power\":\"on\"}",
        "{\"power\":\"off\"}",
        "{\"set\":{\"address\":\"0001\",\"data\":\"10010110\",\"drive\":\"high\"}}",
        "{\"set\":{\"A0\":\"low\",\"A1\":\"high\"}}",
        "{\"press\":\"write\"}",
        "{\"hold\":\"write\"}",
        "{\"release\":\"write\"}",
        "{\"seen\":{\"memory\":\"10df011-\"}}",
        "{\"seen\":{\"bus\":\"00000000\",\"R3\":\"dim\",\"R4\":\"not-looked\"}}",
        "{\"measured\":\"U1.3\",\"volts\":0.2}",
        "{\"measured\":\"U1.3/row\",\"volts\":5}",
        "{\"measured\":\"VCC\",\"volts\":4.98}",
        "{\"measured\":\"R3\",\"volts\":-10}",
        "{\"probed\":\"U1.3\",\"shows\":\"pulses\"}",
        "{\"continuity\":[\"U1.3\",\"U1.3/row\"],\"joined\":false}",
        "{\"symptom\":\"all-dark\",\"place\":\"memory\",\"answer\":\"yes\",\"entries\":[3]}",
        "{\"symptom\":\"chip-warm\",\"answer\":\"unknown\"}",
        "{\"inspected\":\"jumper U1.3-U2.3\",\"as-meant\":false}",
        "{\"inspected\":\"part U3\",\"as-meant\":true}",
        "{\"inspected\":\"leg U3.7\",\"as-meant\":true}",
        "{\"repaired\":\"put the jumper back\"}",
        "{\"exchanged\":\"U3\"}",
        "{\"instruments\":[\"meter\",\"eyes\"]}",
        "{\"instruments\":[]}",
        "{\"withdrawn\":7}",
        "{\"look\":[\"memory\",\"R3\"]}",
        "{\"note\":\"a \\\"loose\\\" wire\"}",
        "{\"finding\":[\"jumper-missing U1.3-U2.3\"],\"words\":\"the write wire was off\"}",
        "{\"expected\":[],\"within-steps\":0}"
      })
  void whatIsReadIsWrittenTheSame(String json) {
    assertThat(format.write(read(json)).toString()).isEqualTo(json);
  }

  @Test
  void aWordIsSpreadOverItsMembersHighBitFirst() {
    assertThat(read("{\"set\":{\"address\":\"0011\",\"drive\":\"high\"}}"))
        .isEqualTo(
            new Entry.Set(Map.of("A3", false, "A2", false, "A1", true, "A0", true, "drive", true)));
  }

  @Test
  void aWholeWordIsGatheredHoweverItWasWritten() {
    Entry entry =
        read(
            "{\"set\":{\"A0\":\"high\",\"A1\":\"low\",\"D0\":\"low\",\"A2\":\"low\","
                + "\"A3\":\"high\"}}");

    assertThat(format.write(entry).toString())
        .isEqualTo("{\"set\":{\"address\":\"1001\",\"D0\":\"low\"}}");
  }

  @Test
  void pinsByNameAndJumpersBackwardsAreWrittenTheUsualWay() {
    assertThat(read("{\"measured\":\"U1./WE/row\",\"volts\":0.20}"))
        .isEqualTo(new Entry.Measured(new Point(End.pin("U1", 3), false), 0.2));
    assertThat(read("{\"inspected\":\"jumper U2./WE-U1./WE\",\"as-meant\":true}"))
        .isEqualTo(new Entry.Inspected("jumper U1.3-U2.3", true));
  }

  @Test
  void randomEntriesOfEveryKindComeBackEqual() {
    for (long seed = 0; seed < 40; seed++) {
      RandomEntries random = new RandomEntries(BeatMemory.MODULE, seed);
      for (int kind = 0; kind < RandomEntries.KINDS; kind++) {
        Entry entry = random.ofKind(kind, 9);
        String json = format.write(entry).toString();

        assertThat(read(json)).as("seed %d: %s", seed, json).isEqualTo(entry);
        assertThat(format.write(read(json)).toString()).isEqualTo(json);
      }
    }
  }

  @Test
  void everyVerbIsListedOnce() {
    assertThat(format.verbs())
        .isEqualTo(
            List.of(
                "power",
                "set",
                "press",
                "hold",
                "release",
                "seen",
                "measured",
                "probed",
                "continuity",
                "symptom",
                "inspected",
                "repaired",
                "exchanged",
                "instruments",
                "withdrawn",
                "look",
                "note",
                "finding",
                "expected"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      maxCharsPerColumn = 400,
      textBlock =
          """
          {} | there is no entry; write one of power, set, press, hold, release, seen, measured, probed, continuity, symptom, inspected, repaired, exchanged, instruments, withdrawn, look, note, finding, expected
          {"pwoer":"on"} | no entry is called pwoer; nearest is power
          {"power":"on","press":"write"} | one entry at a time, got power and press
          {"power":"on","volts":1} | unknown field volts; known are power
          {"power":true} | power: expected a text, got true
          {"power":"up"} | power: up is not one of on, off
          {"set":"high"} | set: expected controls with levels, got "high"
          {"set":{"address":"00001"}} | address has 4 places, high bit first (A3 A2 A1 A0), got 5 in "00001"
          {"set":{"address":"00d1"}} | address: "00d1" has a 'd'; write 1 high, 0 low
          {"set":{"adress":"0001"}} | no switch or word of them is labelled adress; nearest is address
          {"set":{"address":"0001","A1":"low"}} | A1 is given twice
          {"set":{"address":1}} | set.address: expected a text, got 1
          {"press":"drive"} | drive is a switch; set it high or low
          {"press":"rite"} | no button is labelled rite; nearest is write
          {"seen":{"memory":"1001011"}} | memory has 8 places, high bit first (R7 R6 R5 R4 R3 R2 R1 R0), got 7 in "1001011"
          {"seen":{"memory":"1001011x"}} | memory: "1001011x" has a 'x'; write 1 lit, 0 dark, d dim, f flickering, - not looked at
          {"seen":{"R3":"bright"}} | R3: bright is not one of lit, dark, dim, flickering, not-looked
          {"seen":{"R8":"lit"}} | no lamp or word of them is labelled R8; nearest is R0
          {"seen":{}} | no lamp is named; known are B0, B1, B2, B3, B4, B5, B6, B7 and 10 more
          {"measured":"U1.3"} | the field volts is missing
          {"measured":"U1.3","volts":"0.2"} | volts: expected a number, got "0.2"
          {"measured":"U1.3","volts":50} | volts: expected -30 to 30, got 50
          {"measured":"U9.3","volts":1} | no part is labelled U9; nearest is U1
          {"measured":"U1.17","volts":1} | U1 (74x189) has no pin 17; its pins are 1 to 16
          {"measured":"U1.3/raw","volts":1} | U1 (74x189) has no pin 3/raw; known are /CS, /Q1, /Q2, /Q3, /Q4, /WE, A0, A1 and 8 more
          {"probed":"U1.3","shows":"on"} | shows: on is not one of low, high, neither, pulses
          {"continuity":["U1.3"],"joined":true} | continuity: expected two points, got 1
          {"continuity":["U1.3","U1./WE"],"joined":true} | continuity: expected two points, got U1.3 twice
          {"continuity":["U1.3","U2.3"],"joined":"yes"} | joined: expected true or false, got "yes"
          {"symptom":"All dark","answer":"yes"} | symptom: expected an id such as all-dark, got All dark
          {"symptom":"all-dark","answer":"maybe"} | answer: maybe is not one of yes, no, unknown
          {"symptom":"all-dark","place":"memry","answer":"yes"} | nothing is labelled memry; nearest is memory
          {"symptom":"all-dark","answer":"yes","entries":[0]} | entries: expected a whole number from 1, got 0
          {"inspected":"wire U1.3-U2.3","as-meant":true} | inspected: expected one of jumper, part, leg, lamp, control, rail and a name, such as jumper U1.3-U2.3, or supply, got "wire U1.3-U2.3"
          {"inspected":"jumper U1.3-U2.4","as-meant":true} | no jumper is U1.3-U2.4; nearest is U1.3-U2.3
          {"inspected":"part U6","as-meant":true} | no part is labelled U6; nearest is U1
          {"inspected":"leg R3","as-meant":true} | R3 has no leg; name a pin, such as U1.3
          {"repaired":" "} | repaired: expected words, got nothing
          {"note":"two\\nlines"} | note: expected one line of words
          {"exchanged":"R3"} | no part is labelled R3; nearest is U3
          {"instruments":["scope"]} | scope is no instrument; known are eyes, meter, logic-probe, spare-parts
          {"instruments":["eyes","eyes"]} | eyes is named twice
          {"withdrawn":"7"} | withdrawn: expected a whole number from 1, got "7"
          {"look":["R9"]} | no lamp or word of lamps is labelled R9; nearest is R0
          {"finding":["a ; b"],"words":"x"} | expected the id of a hypothesis, got "a ; b"
          {"finding":"a","words":"x"} | finding: expected a list, got "a"
          {"expected":[],"within-steps":-1} | within-steps: expected a whole number from 0, got -1
          """)
  void oneLineSaysWhatIsWrong(String json, String complaint) {
    assertThatThrownBy(() -> read(json)).isInstanceOf(BadEntry.class).hasMessage(complaint);
  }
}
