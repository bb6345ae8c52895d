package straywire.symptoms;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/** What each executable symptom of {@code tables/symptoms.yaml} means, said of one trial. */
@SuppressWarnings("ImmutableEnumChecker") // the functions keep nothing
enum SymptomPredicate {
  ALL_ZEROS(
      "every lamp of the word is dark at every look",
      looks -> looks.size() > 0,
      trial -> SymptomHeld.of(trial.dark() == trial.word())),

  ALL_ONES(
      "every lamp of the word is lit at every look at driven lines",
      looks -> looks.size() > 0,
      trial -> SymptomHeld.of(trial.bright() == trial.word())),

  HALF_DEAD(
      "one half of the word is the same at every look at driven lines, the other half is always"
          + " as meant",
      looks -> looks.hasHalves() && looks.judged.length > 1,
      SymptomWords::halfDead),

  RANDOM_AT_POWER_UP(
      "where nothing was written yet, some picture is neither all dark nor all lit, and pictures"
          + " differ from look to look",
      looks -> looks.fresh.length > 1,
      SymptomWriting::random),

  CHANGES_EACH_POWER_UP(
      "at a place where nothing was written yet, every power-up shows another picture",
      looks -> !looks.powerUps.isEmpty(),
      SymptomWriting::wakesOtherwise),

  CHANGES_UNTOUCHED(
      "a lamp of the word flickers, or shows something else at a second look with nothing moved",
      looks -> looks.size() > 0,
      SymptomWriting::untouched),

  NEVER_CHANGES_ON_WRITE(
      "at no place does the picture change over a press that should change it; either answer when"
          + " that is true of one half only",
      looks -> looks.keeps && !looks.writes.isEmpty(),
      SymptomWriting::neverChanges),

  WRITES_UNASKED(
      "at one place the picture changes, or is another one on coming back, with no press between",
      looks -> looks.keeps && !looks.idle.isEmpty(),
      trial -> SymptomHeld.of(trial.changedOver(trial.looks.idle) != 0)),

  WRITES_ELSEWHERE(
      "in every round of reading back, a word that is missing where it was written is at a place"
          + " meant to hold another",
      looks -> !looks.rounds.isEmpty() && looks.addressBits > 0,
      SymptomWriting::elsewhere),

  ADDRESSES_SHARE(
      "in every round of reading back, two places one address bit apart show the same though"
          + " written differently, and what was written at one of them is gone; either answer when"
          + " that is true of one half only",
      looks -> !looks.rounds.isEmpty() && looks.addressBits > 0,
      SymptomWriting::share),

  BIT_STUCK_LOW(
      "one lamp is dark at every look, and not all are; either answer when several are",
      looks -> looks.size() > 1,
      trial -> SymptomHeld.one(trial.dark(), trial.word())),

  BIT_STUCK_HIGH(
      "one lamp is lit at every look at driven lines, and not all are; either answer when several"
          + " are",
      looks -> looks.size() > 1,
      trial -> SymptomHeld.one(trial.bright(), trial.word())),

  COMPLEMENTED_ALL(
      "every lamp of the word is the opposite of what is meant, at every judged look",
      looks -> looks.judged.length > 0,
      trial -> SymptomHeld.of(trial.complemented() == trial.word())),

  COMPLEMENTED_NIBBLE(
      "all lamps of one half are the opposite of what is meant at every judged look, and no lamp of"
          + " the other half is",
      looks -> looks.hasHalves() && looks.judged.length > 0,
      SymptomWords::complementedHalf),

  COMPLEMENTED_ONE(
      "one lamp is the opposite of what is meant at every judged look; either answer when several"
          + " are, but neither a half nor all",
      looks -> looks.judged.length > 0,
      SymptomWords::complementedOne),

  REVERSED_ALL(
      "every judged look shows the word meant, last bit first, and the word is not as meant",
      looks -> looks.width > 2 && looks.hasDirection(),
      SymptomWords::reversedAll),

  REVERSED_NIBBLE(
      "one half shows what is meant, last bit first, at every judged look, and is not as meant;"
          + " either answer when both halves do",
      looks -> looks.hasHalves() && looks.judged.length > 0,
      SymptomWords::reversedHalf),

  TWO_SWAPPED(
      "every judged look shows the word meant with the same two bits exchanged, and the word is not"
          + " as meant",
      looks -> looks.judged.length > 0,
      SymptomWords::twoSwapped),

  TWO_EQUAL(
      "two lamps show the same at every look, though neither is constant; either answer when there"
          + " is more than one such pair",
      looks -> looks.size() > 1,
      SymptomWords::twoEqual),

  BUS_NEVER_DRIVES(
      "at every place the lamps show the same whether the lines should be driven or released,"
          + " and that is what released lines show",
      looks -> !looks.gate.isEmpty(),
      SymptomWriting::neverDrives),

  BUS_NEVER_RELEASES(
      "at every place the lamps show the same whether the lines should be driven or released,"
          + " and somewhere that is not what released lines show",
      looks -> !looks.gate.isEmpty(),
      SymptomWriting::neverReleases),

  BUS_FIGHTS(
      "where the lines should be driven, a lamp is dim or restless that is plainly lit or dark when"
          + " they are released, or a lamp of another word changes as it should not",
      looks -> !looks.gate.isEmpty(),
      SymptomWriting::fights),

  NEVER_COUNTS(
      "no press that should take the word on changes it",
      looks -> looks.steps.size() >= SymptomSteps.LEAST,
      SymptomSteps::never),

  COUNTS_DOUBLE(
      "two thirds or more of the presses that should count one count two, three or "
          + "four; either answer from one third",
      looks -> looks.counts.size() >= SymptomSteps.LEAST,
      SymptomSteps::severalAtOnce),

  SKIPS_NUMBERS(
      "some presses that should count one count more, but less than two thirds of them",
      looks -> looks.counts.size() >= SymptomSteps.LEAST,
      SymptomSteps::leavesOut),

  STARTS_OVER_EARLY(
      "a press that should count one up takes the word from above 1 to all dark, and a "
          + "third or more of the presses count one",
      looks -> looks.counts.size() >= SymptomSteps.LEAST,
      SymptomSteps::startsOverEarly),

  COUNTS_BACKWARDS(
      "two thirds or more of the presses that should count one way count one the other " + "way",
      looks -> looks.counts.size() >= SymptomSteps.LEAST,
      SymptomSteps::backwards),

  FIRST_ONLY(
      "over all presses that should take the word on, one lamp at an end of it changes "
          + "and no other",
      looks -> looks.steps.size() >= SymptomSteps.LEAST && looks.width > 2,
      SymptomSteps::onlyOneEnd),

  STOPS_HALF_WAY(
      "the lamps from some place to an end of the word never change though they should, "
          + "and the rest of it is always as meant",
      looks -> looks.steps.size() >= SymptomSteps.LEAST && looks.width > 2,
      SymptomSteps::stopsHalfWay),

  ONE_BEHIND(
      "after every press that should take the word on it shows what was meant before "
          + "the press",
      looks -> looks.steps.size() >= SymptomSteps.LEAST,
      SymptomSteps::oneBehind),

  LOADS_ALWAYS(
      "after every press that should take the word on it shows what the preset switches " + "say",
      looks -> looks.steps.size() >= SymptomSteps.LEAST && looks.keeps && looks.presets(),
      SymptomSteps::loadsAlways),

  NEVER_CLEARS(
      "the word is not all dark after anything that should make it so, and once it "
          + "stays as it was",
      looks -> !SymptomSteps.clears(looks).isEmpty(),
      SymptomSteps::neverClears),

  WRONG_EDGE(
      "at every slow press the word changes when the button is let go where it should "
          + "when it goes down, or the other way round",
      looks -> !SymptomSteps.oneSided(looks).isEmpty(),
      SymptomSteps::otherEdge),

  SEVERAL_SELECTED(
      "at some look two lamps or more are lit where one is meant to be",
      SymptomNumbers::oneOfMany,
      SymptomNumbers::several),

  WRONG_SELECTED(
      "wherever one lamp is meant to be lit one is, but not always that one",
      SymptomNumbers::oneOfMany,
      SymptomNumbers::anotherOne),

  SELECT_REVERSED(
      "wherever one lamp is meant to be lit, it is the one whose number has the same "
          + "bits in reverse order",
      looks -> SymptomNumbers.oneOfMany(looks) && SymptomNumbers.powerOfTwo(looks.width),
      SymptomNumbers::selectReversed),

  ONE_TOO_HIGH(
      "every judged look shows the number meant or one more, counted round, and a third or more"
          + " of them one more",
      looks -> !looks.keeps && SymptomNumbers.enough(looks) && looks.width > 2,
      trial -> SymptomNumbers.off(trial, 1)),

  ONE_TOO_LOW(
      "every judged look shows the number meant or one less, counted round, and a third or more"
          + " of them one less",
      looks -> !looks.keeps && SymptomNumbers.enough(looks) && looks.width > 2,
      trial -> SymptomNumbers.off(trial, -1)),

  CARRY_WRONG(
      "the low half is always as meant, the high half sometimes one too high or "
          + "sometimes one too low, never both",
      looks -> !looks.keeps && SymptomNumbers.enough(looks) && looks.hasHalves(),
      SymptomNumbers::carryWrong),

  ONE_SETTING_WRONG(
      "of four settings of the controls or more one is never as meant, and the others "
          + "are at times",
      looks -> !looks.keeps && SymptomNumbers.settings(looks) > 3,
      SymptomNumbers::oneSettingWrong),

  FROZEN(
      "the word is the same at every look at driven lines, and neither all dark nor all " + "lit",
      SymptomNumbers::enough,
      SymptomNumbers::frozen),

  SWITCH_IGNORED(
      "moving one switch alone never changes the word though it should, and moving "
          + "another one does",
      SymptomNumbers::severalSwitches,
      SymptomNumbers::switchIgnored);

  private final String words;
  private final Predicate<SymptomLooks> answerable;
  private final Function<SymptomTrial, SymptomHeld> held;

  SymptomPredicate(
      String words, Predicate<SymptomLooks> answerable, Function<SymptomTrial, SymptomHeld> held) {
    this.words = words;
    this.answerable = answerable;
    this.held = held;
  }

  /** The symptom's id in the table, such as {@code all-zeros}. */
  String id() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** What is true of the exercise when the symptom is there. */
  String words() {
    return words;
  }

  /** Whether these looks can show the symptom, or its absence, at all. */
  boolean answerable(SymptomLooks looks) {
    return answerable.test(looks);
  }

  SymptomHeld held(SymptomTrial trial) {
    return held.apply(trial);
  }

  /** True of a sound module, at least now and then. */
  boolean normal() {
    return this == RANDOM_AT_POWER_UP || this == CHANGES_EACH_POWER_UP;
  }

  /** About one lamp, or two, so that it can be asked of a lamp. */
  boolean ofLamps() {
    return this == BIT_STUCK_LOW
        || this == BIT_STUCK_HIGH
        || this == COMPLEMENTED_ONE
        || this == TWO_SWAPPED
        || this == TWO_EQUAL;
  }

  static Optional<SymptomPredicate> of(String id) {
    return Arrays.stream(values()).filter(p -> p.id().equals(id)).findFirst();
  }
}
