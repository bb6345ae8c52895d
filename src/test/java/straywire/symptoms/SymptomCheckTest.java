package straywire.symptoms;

import static org.assertj.core.api.Assertions.assertThat;
import static straywire.symptoms.SymptomBench.BEAT_MEMORY;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Word;

class SymptomCheckTest {
  private static final SymptomScores SCORES = SymptomBench.scores(BEAT_MEMORY);

  private BenchLog log = new BenchLog("beat-memory", "", List.of());

  private int add(Entry entry) {
    log = log.with(entry);
    return log.lines().size();
  }

  private int seen(String memory) {
    return add(new Entry.Seen(lamps(memory)));
  }

  private static Map<String, LampState> lamps(String memory) {
    Word word = BEAT_MEMORY.lampWord("memory").orElseThrow();
    Map<String, LampState> lamps = new TreeMap<>();
    for (int i = 0; i < memory.length(); i++) {
      lamps.put(word.members().get(i), memory.charAt(i) == '1' ? LampState.LIT : LampState.DARK);
    }
    return lamps;
  }

  private void set(String word, String bits) {
    Map<String, Boolean> levels = new TreeMap<>();
    List<String> members = BEAT_MEMORY.controlWord(word).orElseThrow().members();
    for (int i = 0; i < bits.length(); i++) {
      levels.put(members.get(i), bits.charAt(i) == '1');
    }
    add(new Entry.Set(levels));
  }

  private void write(String address, String data) {
    set("address", address);
    set("data", data);
    add(new Entry.Press("write"));
  }

  private Optional<String> answer(
      String symptom, String place, Entry.Answer answer, Integer... entries) {
    add(new Entry.Symptom(symptom, place, answer, List.of(entries)));
    return new SymptomCheck(SCORES).contradiction(log, log.lines().get(log.lines().size() - 1));
  }

  @Test
  void anAnswerThatTheNamedEntriesBearOutAgrees() {
    add(new Entry.Power(true));
    write("0000", "10010110");
    int first = seen("01101001");
    write("0001", "11110001");
    int second = seen("00001110");
    assertThat(answer("complemented-all", "memory", Entry.Answer.YES, first, second)).isEmpty();
    assertThat(answer("complemented-one", "memory", Entry.Answer.NO, first, second)).isEmpty();
    assertThat(answer("two-swapped", "memory", Entry.Answer.NO, first, second)).isEmpty();
  }

  @Test
  void anAnswerThatTheNamedEntriesBelieIsContradicted() {
    add(new Entry.Power(true));
    int dark = seen("00000000");
    int lit = seen("01000000");
    assertThat(answer("all-zeros", "memory", Entry.Answer.YES, dark, lit))
        .contains(
            "The answer yes to all-zeros at memory does not agree with memory in entry 2 00000000,"
                + " entry 3 01000000");
    assertThat(answer("all-zeros", "memory", Entry.Answer.YES, dark)).isEmpty();
    assertThat(answer("all-zeros", "memory", Entry.Answer.NO, dark)).isPresent();
    assertThat(answer("all-zeros", "", Entry.Answer.YES, dark, lit)).isPresent();
  }

  @Test
  void aWriteThatChangedTheWordBeliesOneThatNeverChanges() {
    add(new Entry.Power(true));
    set("address", "0000");
    set("data", "10010110");
    int before = seen("11110000");
    add(new Entry.Press("write"));
    int after = seen("10010110");
    assertThat(answer("never-changes-on-write", "memory", Entry.Answer.YES, before, after))
        .isPresent();
    assertThat(answer("never-changes-on-write", "memory", Entry.Answer.NO, before, after))
        .isEmpty();
  }

  @Test
  void aLampThatIsAskedAboutIsJudgedAlone() {
    add(new Entry.Power(true));
    write("0000", "11111111");
    int first = seen("01111110");
    write("0001", "00000000");
    int second = seen("00000000");
    assertThat(answer("bit-stuck-low", "R7", Entry.Answer.YES, first, second)).isEmpty();
    assertThat(answer("bit-stuck-low", "R6", Entry.Answer.YES, first, second)).isPresent();
    assertThat(answer("bit-stuck-low", "R0", Entry.Answer.NO, first, second)).isPresent();
  }

  @Test
  void aWordThatChangesWithNothingMovedIsNoticed() {
    add(new Entry.Power(true));
    int first = seen("01111110");
    int second = seen("01111010");
    assertThat(answer("changes-untouched", "memory", Entry.Answer.NO, first, second)).isPresent();
    assertThat(answer("changes-untouched", "memory", Entry.Answer.YES, first, second)).isEmpty();
  }

  @Test
  void whatTheEntriesCannotTellIsNotContradicted() {
    add(new Entry.Power(true));
    int partly = add(new Entry.Seen(Map.of("R7", LampState.LIT)));
    add(new Entry.Hold("write"));
    int held = seen("11111111");
    add(new Entry.Release("write"));
    int one = seen("11110000");
    assertThat(answer("all-zeros", "memory", Entry.Answer.YES, partly)).isEmpty();
    assertThat(answer("all-zeros", "memory", Entry.Answer.YES, held)).isEmpty();
    assertThat(answer("writes-elsewhere", "memory", Entry.Answer.YES, one)).isEmpty();
    assertThat(answer("chip-warm", "U1", Entry.Answer.YES, one)).isEmpty();
    assertThat(answer("all-zeros", "memory", Entry.Answer.YES)).isEmpty();
    assertThat(answer("all-zeros", "memory", Entry.Answer.UNKNOWN, one)).isEmpty();
  }
}
