package straywire.symptoms;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.sim.Boards;
import straywire.sim.Variation;

/**
 * Holds an answer against the log entries it names. Those entries have been weighed already, so the
 * answer adds no weight; it can only agree or contradict.
 */
public final class SymptomCheck {
  private final SymptomScores scores;

  public SymptomCheck(SymptomScores scores) {
    this.scores = scores;
  }

  /** Word, and the looks at it that the answer names, with what was seen. */
  private record Seen(SymptomGround ground, SymptomTrial trial, List<Integer> numbers) {}

  /**
   * What contradicts the answer, as a sentence; empty when nothing does, when the entries named
   * cannot tell, or when none is named. Looks with a button held, and looks that leave out a lamp
   * of the word, tell nothing.
   *
   * @param log the log up to the answer; later lines are not looked at
   */
  public Optional<String> contradiction(BenchLog log, BenchLog.Line line) {
    Optional<SymptomPredicate> known =
        line.entry() instanceof Entry.Symptom e
            ? SymptomPredicate.of(e.symptom())
            : Optional.empty();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    Entry.Symptom answer = (Entry.Symptom) line.entry();
    SymptomPredicate predicate = known.get();
    List<Seen> words =
        scores.all().stream()
            .filter(ground -> about(ground, answer.place()))
            .map(ground -> seen(ground, log, line.number(), answer))
            .filter(seen -> predicate.answerable(seen.trial().looks))
            .toList();
    boolean no = !words.isEmpty();
    boolean yes = false;
    for (Seen word : words) {
      double degree = degree(predicate, word, answer.place());
      no &= degree == 0;
      yes |= degree == 1;
    }
    if ((answer.answer() == Entry.Answer.YES && no)
        || (answer.answer() == Entry.Answer.NO && yes)) {
      return Optional.of(sentence(answer, words));
    }
    return Optional.empty();
  }

  private boolean about(SymptomGround ground, String place) {
    boolean named = scores.all().stream().anyMatch(g -> here(g, place));
    return !named || here(ground, place);
  }

  private static boolean here(SymptomGround ground, String place) {
    return ground.bit(place) >= 0 || ground.roles.lamps().label().equals(place);
  }

  private static double degree(SymptomPredicate predicate, Seen word, String place) {
    SymptomHeld held = predicate.held(word.trial());
    int bit = word.ground().bit(place);
    return bit >= 0 && predicate.ofLamps() ? held.bits() >>> bit & 1 : held.degree();
  }

  private Seen seen(SymptomGround ground, BenchLog log, int before, Entry.Symptom answer) {
    List<BenchLog.Line> lines =
        log.standing().stream().filter(line -> line.number() < before).toList();
    List<SymptomLook> looks = new ArrayList<>();
    List<Integer> numbers = new ArrayList<>();
    List<Long> expected = new ArrayList<>();
    List<Long> certain = new ArrayList<>();
    List<Entry.Seen> pictures = new ArrayList<>();
    List<String> lamps = ground.roles.lamps().members();
    Boards sound = new Boards(scores.wiring(), List.of(new Variation()));
    new SymptomWalk(ground.roles, sound)
        .along(
            lines.stream().map(BenchLog.Line::entry).toList(),
            (look, entry, state) -> {
              int number = lines.get(look.entry()).number();
              if (answer.entries().contains(number)
                  && look.plain()
                  && entry instanceof Entry.Seen picture
                  && lamps.stream().allMatch(lamp -> looked(picture, lamp))) {
                long lit = 0;
                long sure = 0;
                for (String lamp : lamps) {
                  Boards.Glow glow = sound.glow(state, 0, lamp);
                  lit = lit << 1 | glow.lit();
                  sure = sure << 1 | glow.lit() | glow.dark();
                }
                looks.add(look);
                numbers.add(number);
                expected.add(lit);
                certain.add(sure);
                pictures.add(picture);
              }
            });
    SymptomTrial trial =
        new SymptomTrial(
            new SymptomLooks(
                looks,
                ground.roles.width(),
                ground.looks.addressBits,
                ground.looks.keeps,
                expected.stream().mapToLong(Long::longValue).toArray(),
                certain.stream().mapToLong(Long::longValue).toArray()));
    for (int i = 0; i < pictures.size(); i++) {
      for (String lamp : lamps) {
        LampState state = pictures.get(i).lamps().get(lamp);
        trial.lit[i] = trial.lit[i] << 1 | (state == LampState.LIT ? 1 : 0);
        trial.odd[i] = trial.odd[i] << 1 | (state == LampState.DIM ? 1 : 0);
        trial.restless[i] = trial.restless[i] << 1 | (state == LampState.FLICKERING ? 1 : 0);
      }
    }
    trial.sum();
    return new Seen(ground, trial, numbers);
  }

  private static boolean looked(Entry.Seen picture, String lamp) {
    return picture.lamps().getOrDefault(lamp, LampState.NOT_LOOKED) != LampState.NOT_LOOKED;
  }

  private static String sentence(Entry.Symptom answer, List<Seen> words) {
    String shown = words.stream().map(SymptomCheck::shown).collect(Collectors.joining("; "));
    String place = answer.place().isEmpty() ? "" : " at " + answer.place();
    return "The answer "
        + (answer.answer() == Entry.Answer.YES ? "yes" : "no")
        + " to "
        + answer.symptom()
        + place
        + " does not agree with "
        + shown;
  }

  private static String shown(Seen word) {
    List<String> looks = new ArrayList<>();
    for (int i = 0; i < word.numbers().size(); i++) {
      StringBuilder marks = new StringBuilder();
      for (int bit = word.ground().roles.width() - 1; bit >= 0; bit--) {
        marks.append(mark(word.trial(), i, bit));
      }
      looks.add("entry " + word.numbers().get(i) + " " + marks);
    }
    String label = word.ground().roles.lamps().label();
    return (label.isEmpty() ? "the lamps in " : label + " in ") + String.join(", ", looks);
  }

  private static char mark(SymptomTrial trial, int look, int bit) {
    if ((trial.odd[look] >>> bit & 1) != 0) {
      return LampState.DIM.mark();
    }
    if ((trial.restless[look] >>> bit & 1) != 0) {
      return LampState.FLICKERING.mark();
    }
    return ((trial.lit[look] >>> bit & 1) != 0 ? LampState.LIT : LampState.DARK).mark();
  }
}
