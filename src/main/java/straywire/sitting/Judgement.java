package straywire.sitting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import straywire.advice.Advice;
import straywire.advice.Caution;
import straywire.advice.Leader;
import straywire.casebook.Replay;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.format.BadEntry;
import straywire.module.BenchLog;
import straywire.module.ControlState;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Point;
import straywire.module.Word;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.observe.StepSeconds;
import straywire.ranking.AfterRepair;
import straywire.ranking.Diagnosis;
import straywire.sim.Signal;
import straywire.sitting.Exercise.Round;
import straywire.sitting.Proposed.Purpose;
import straywire.sitting.Situation.LampForecast;
import straywire.sitting.Situation.Stage;
import straywire.steps.Outlook;
import straywire.steps.Outlook.Proposal;
import straywire.steps.Outlook.Suspect;
import straywire.steps.Outlook.Verdict;
import straywire.steps.Unseen;

/** Works out how a sitting stands from its log alone. */
final class Judgement {
  /** Leading suspects that are simulated beside the healthy module. */
  private static final int LEADERS = 3;

  /** What is looked over for which way round the supply is. */
  private static final String SUPPLY = "supply";

  private final Workbench workbench;
  private final Module module;
  private final Replay replay;
  private final StepWords words;
  private final StepSeconds seconds;
  private final Exercise exercise;
  private final Map<Set<String>, Exercise> confirming = new LinkedHashMap<>();

  Judgement(Workbench workbench) {
    this.workbench = workbench;
    module = workbench.module();
    replay = new Replay(workbench);
    words = new StepWords(module);
    seconds = workbench.seconds();
    exercise = Exercise.of(module);
  }

  Situation of(BenchLog log) {
    replay.follow(log);
    Diagnosis diagnosis = replay.diagnosis();
    List<BenchLog.Line> standing = replay.standing();
    ControlState start = startOfPhase(standing);
    ControlState controls = start;
    for (BenchLog.Line line : replay.sinceRepair()) {
      controls = controls.after(line.entry());
    }
    Outlook outlook = workbench.outlooks().of(diagnosis, instruments(standing), offered(controls));
    Optional<Round> round = round(standing, start);
    boolean differs = differs(outlook, standing);
    Stage stage = stage(outlook, standing, differs, round.isPresent());
    boolean shownWell = !differs && round.isEmpty() && outlook.suspects().get(0).healthy();
    BoardReplay boards = boards(outlook, start);
    Advice advice = advice(log, outlook, boards, controls);
    Optional<Caution> caution = standing(stage, advice, controls);
    Optional<Proposed> next;
    if (caution.isPresent()) {
      next = Optional.of(cautioned(caution.get(), diagnosis, standing, controls));
    } else if (advice.powerOffFirst() && stage != Stage.REPAIRING && stage != Stage.CLOSED) {
      next = Optional.of(withPowerOff(diagnosis, standing, controls));
    } else {
      next = next(stage, outlook, round, controls, boards);
    }
    return new Situation(
        log.lines().size(),
        stage,
        caution.isEmpty() && (stage == Stage.CONFIRMED || (stage == Stage.SEARCHING && shownWell)),
        controls,
        outlook,
        caution,
        next,
        others(stage, outlook, controls),
        lamps(boards),
        contradictions(log, outlook, standing, start),
        advice);
  }

  /** The caution that comes before every other step. */
  private Optional<Caution> standing(Stage stage, Advice advice, ControlState controls) {
    // A repair is made with the power off: then it answers the caution by itself.
    boolean answers = stage == Stage.REPAIRING && !controls.power();
    return answers || stage == Stage.CLOSED
        ? Optional.empty()
        : new StandingCaution(module, replay.sinceRepair(), controls.power())
            .first(advice.cautions());
  }

  /** Power off and the look that a caution asks for. */
  private Proposed cautioned(
      Caution caution, Diagnosis diagnosis, List<BenchLog.Line> standing, ControlState controls) {
    Optional<String> subject =
        new StandingCaution(module, replay.sinceRepair(), controls.power()).subject(caution);
    Proposed look =
        subject.isPresent()
            ? look(subject.get(), controls)
            : withPowerOff(diagnosis, standing, controls);
    return look.cautioned();
  }

  private Proposed look(String subject, ControlState controls) {
    Step step = new Step.Inspect(subject);
    Proposed look = proposed(step, controls, seconds.of(step), 0, List.of());
    return controls.power() ? look.after(new Entry.Power(false)) : look;
  }

  private static Instruments instruments(List<BenchLog.Line> standing) {
    Instruments instruments = Instruments.USUAL;
    for (BenchLog.Line line : standing) {
      if (line.entry() instanceof Entry.Instruments i) {
        instruments = Instruments.of(i.atHand());
      }
    }
    return instruments;
  }

  private static boolean cures(Entry entry) {
    return entry instanceof Entry.Repaired || entry instanceof Entry.Exchanged;
  }

  /** Controls at the start of the log or after the last repair, for which the power was off. */
  private ControlState startOfPhase(List<BenchLog.Line> standing) {
    ControlState state = ControlState.atStart(module);
    for (BenchLog.Line line : standing.subList(0, replay.diagnosis().phaseStart())) {
      state = state.after(line.entry());
    }
    return new ControlState(false, state.levels(), state.held());
  }

  private boolean repairMade() {
    return replay.diagnosis().phaseStart() > 0;
  }

  private Optional<Round> round(List<BenchLog.Line> standing, ControlState start) {
    List<Integer> skips = new ArrayList<>();
    for (BenchLog.Line line : replay.sinceRepair()) {
      if (line.entry() instanceof Entry.Note note
          && note.text().startsWith(Entry.Note.PASSED_OVER)) {
        skips.add(line.number());
      }
    }
    Exercise now = repairMade() ? confirming(new TreeSet<>(repairedFaults(standing))) : exercise;
    return now.next(replay.sinceRepair(), start, skips);
  }

  private Exercise confirming(Set<String> repaired) {
    return confirming.computeIfAbsent(
        repaired, r -> ConfirmingRounds.of(workbench, replay.diagnosis().wiring(), r));
  }

  /** Something was seen or told that a module with nothing wrong does not show. */
  private boolean differs(Outlook outlook, List<BenchLog.Line> standing) {
    boolean told = standing.stream().anyMatch(l -> l.entry() instanceof Entry.Symptom);
    return replay.diagnosis().slips() > 0 || (told && !outlook.suspects().get(0).healthy());
  }

  private Stage stage(
      Outlook outlook, List<BenchLog.Line> standing, boolean differs, boolean roundsLeft) {
    if (standing.stream().anyMatch(l -> l.entry() instanceof Entry.Finding)) {
      return Stage.CLOSED;
    }
    Verdict verdict = outlook.verdict();
    boolean healthy = outlook.suspects().get(0).healthy();
    if (verdict == Verdict.NAMED || (verdict == Verdict.INSEPARABLE && !healthy)) {
      return Stage.REPAIRING;
    }
    if (roundsLeft && !differs) {
      return repairMade() ? Stage.CONFIRMING : Stage.EXERCISING;
    }
    // After a repair it is enough that working the module shows nothing wrong.
    boolean cured = repairMade() && healthy && !differs;
    return cured || verdict != Verdict.OPEN ? Stage.CONFIRMED : Stage.SEARCHING;
  }

  private Optional<Proposed> next(
      Stage stage,
      Outlook outlook,
      Optional<Round> round,
      ControlState controls,
      BoardReplay boards) {
    return switch (stage) {
      case EXERCISING -> round.map(r -> proposed(Purpose.EXERCISE, r, boards));
      case CONFIRMING -> round.map(r -> proposed(Purpose.CONFIRM, r, boards));
      case SEARCHING ->
          !controls.power() && round.isPresent()
              ? round.map(r -> proposed(Purpose.EXERCISE, r, boards))
              : outlook.next().map(p -> proposed(p, controls));
      case REPAIRING, CONFIRMED, CLOSED -> Optional.empty();
    };
  }

  /** Something to look at after the power went off, the way round of the supply if nothing else. */
  private Proposed withPowerOff(
      Diagnosis diagnosis, List<BenchLog.Line> standing, ControlState controls) {
    Predicate<Step> look = step -> step instanceof Step.Inspect;
    Optional<Proposed> best =
        workbench
            .outlooks()
            .of(diagnosis, instruments(standing), offered(controls).and(look))
            .next()
            .map(p -> proposed(p, controls));
    return best.map(b -> controls.power() ? b.after(new Entry.Power(false)) : b)
        .orElseGet(() -> look(SUPPLY, controls));
  }

  private Proposed proposed(Proposal p, ControlState controls) {
    return proposed(p.step(), controls, p.seconds(), p.bits(), p.expected());
  }

  private Proposed proposed(
      Step step, ControlState controls, double time, double bits, List<String> expected) {
    return Proposed.of(wholeWords(step, controls), controls.power(), time, bits, expected);
  }

  /** A word of which several switches move is set as a word. */
  private Step wholeWords(Step step, ControlState controls) {
    if (!(step instanceof Step.Work work)) {
      return step;
    }
    Map<String, Boolean> set = new TreeMap<>(work.set());
    for (Word word : module.controlWords()) {
      if (word.members().stream().filter(work.set()::containsKey).count() > 1) {
        word.members().forEach(m -> set.putIfAbsent(m, controls.levels().get(m)));
      }
    }
    return new Step.Work(set, work.press(), work.words());
  }

  private Proposed proposed(Purpose purpose, Round round, BoardReplay boards) {
    BoardReplay ahead = boards.copy();
    double time = time(Map.of(), Optional.empty(), round.look().words());
    double nothing = time(Map.of(), Optional.empty(), List.of());
    for (Entry entry : round.handling()) {
      Map<String, Boolean> set = entry instanceof Entry.Set s ? moved(s, ahead) : Map.of();
      Optional<String> press =
          entry instanceof Entry.Press p ? Optional.of(p.button()) : Optional.empty();
      time += time(set, press, List.of()) - nothing;
      ahead.act(entry);
    }
    List<String> healthy = new ArrayList<>();
    for (String word : round.look().words()) {
      List<String> lamps = module.lampWord(word).map(Word::members).orElse(List.of(word));
      healthy.add(word + " " + ahead.marks(0, lamps));
    }
    return new Proposed(
        purpose,
        round.handling(),
        round.look(),
        List.of(),
        time,
        0,
        List.of(String.join(", ", healthy)));
  }

  private double time(Map<String, Boolean> set, Optional<String> press, List<String> words) {
    return seconds.of(new Step.Work(set, press, words));
  }

  private static Map<String, Boolean> moved(Entry.Set set, BoardReplay before) {
    Map<String, Boolean> moved = new TreeMap<>(set.levels());
    moved.entrySet().removeAll(before.state().controls().entrySet());
    return moved;
  }

  private List<Proposed> others(Stage stage, Outlook outlook, ControlState controls) {
    if (stage == Stage.CLOSED) {
      return List.of();
    }
    List<Proposal> proposals = new ArrayList<>();
    if (stage != Stage.SEARCHING) {
      outlook.next().ifPresent(proposals::add);
    }
    proposals.addAll(outlook.others());
    return proposals.stream().map(p -> proposed(p, controls)).toList();
  }

  /** Steps that nobody has said "don't know" to, as things stand. */
  private Predicate<Step> offered(ControlState controls) {
    Set<String> untilRepair = new TreeSet<>();
    Set<String> untilMoved = new TreeSet<>();
    for (BenchLog.Line line : replay.sinceRepair()) {
      if (line.entry() instanceof Entry.Note note && note.text().startsWith(Entry.Note.DONT_KNOW)) {
        untilRepair.add(note.text());
        untilMoved.add(note.text());
      } else if (handles(line.entry())) {
        untilMoved.clear();
      }
    }
    if (untilRepair.isEmpty()) {
      return step -> true;
    }
    return step -> {
      Proposed proposed = proposed(step, controls, 1, 0, List.of());
      String line = Entry.Note.DONT_KNOW + words.line(proposed, controls);
      return !(proposed.dependsOnControls() ? untilMoved : untilRepair).contains(line);
    };
  }

  private static boolean handles(Entry entry) {
    return entry instanceof Entry.Power
        || entry instanceof Entry.Set
        || entry instanceof Entry.Press
        || entry instanceof Entry.Hold
        || entry instanceof Entry.Release;
  }

  /** The entry that says "don't know" to a step. */
  Entry skipping(Proposed step, Situation now) {
    if (now.caution().isPresent()) {
      throw StandingCaution.refused("nothing is passed over");
    }
    if (step.wanted() instanceof Wanted.Noticed asked) {
      return asked.answer(Entry.Answer.UNKNOWN);
    }
    String how = step.purpose() == Purpose.SEARCH ? Entry.Note.DONT_KNOW : Entry.Note.PASSED_OVER;
    return new Entry.Note(how + words.line(step, now.controls()));
  }

  /** Lane 0 with nothing wrong, then the leading suspects, worked as the log says. */
  private BoardReplay boards(Outlook outlook, ControlState start) {
    List<Hypothesis> hypotheses = new ArrayList<>();
    hypotheses.add(workbench.nothingWrong());
    outlook.suspects().stream().limit(LEADERS).map(Suspect::first).forEach(hypotheses::add);
    BoardReplay boards = new BoardReplay(replay.diagnosis().wiring(), hypotheses, start.levels());
    replay.sinceRepair().forEach(line -> boards.act(line.entry()));
    return boards;
  }

  private List<LampForecast> lamps(BoardReplay boards) {
    Map<String, LampState> seen = lastSeen();
    List<LampForecast> lamps = new ArrayList<>();
    for (Word word : module.lampWords()) {
      String marks =
          word.members().stream()
              .map(l -> String.valueOf(seen.getOrDefault(l, LampState.NOT_LOOKED).mark()))
              .collect(Collectors.joining());
      lamps.add(
          new LampForecast(
              word.label(),
              word.members(),
              marks,
              boards.marks(0, word.members()),
              boards.marks(1, word.members())));
    }
    return lamps;
  }

  /** What was seen since anything was touched. */
  private Map<String, LampState> lastSeen() {
    Map<String, LampState> seen = new TreeMap<>();
    for (BenchLog.Line line : replay.sinceRepair()) {
      if (line.entry() instanceof Entry.Seen s) {
        seen.putAll(s.lamps());
      } else if (handles(line.entry())) {
        seen.clear();
      }
    }
    return seen;
  }

  private List<String> contradictions(
      BenchLog log, Outlook outlook, List<BenchLog.Line> standing, ControlState start) {
    List<String> found =
        new ArrayList<>(Contradictions.readings(replay.sinceRepair(), start, workbench.table()));
    found.addAll(Contradictions.unexplained(outlook, standing));
    for (BenchLog.Line line : standing) {
      workbench.symptomCheck().contradiction(log, line).ifPresent(found::add);
    }
    return found;
  }

  private Advice advice(BenchLog log, Outlook outlook, BoardReplay boards, ControlState controls) {
    List<Leader> leaders = new ArrayList<>();
    for (int i = 0; i < Math.min(LEADERS, outlook.suspects().size()); i++) {
      Suspect suspect = outlook.suspects().get(i);
      leaders.add(new Leader(i + 1, suspect.first(), suspect.probability(), boards.fights(i + 1)));
    }
    Map<String, Signal> expected = new TreeMap<>();
    if (controls.power()) {
      for (Net net : module.nets()) {
        expected.put(net.name(), boards.signal(0, new Point(net.ends().get(0), false)));
      }
    }
    return workbench.rules().advise(module, log, leaders, expected);
  }

  /** Faults that the log last judged has not ruled out. */
  List<Unseen.Hidden> hidden() {
    return Unseen.of(replay.diagnosis());
  }

  /** The entry that says the leading suspect was repaired. */
  Entry repairing(Situation now, int member) {
    Suspect first = now.outlook().suspects().get(0);
    if (first.healthy()) {
      throw new BadEntry("nothing is suspected now; say what you did: repaired WORDS");
    }
    if (member < 1 || member > first.members().size()) {
      throw new BadEntry(
          first.members().size() == 1
              ? "the leading suspect is one fault: repaired 1"
              : "the leading suspect is one of "
                  + first.members().size()
                  + " faults: repaired 1 to repaired "
                  + first.members().size());
    }
    return new Entry.Repaired(first.members().get(member - 1).id());
  }

  /** The entry that accepts the caution that stands. */
  Entry accepting(Situation now) {
    return now.caution()
        .map(StandingCaution::acceptance)
        .orElseThrow(() -> new BadEntry("no caution stands that could be accepted"));
  }

  /** The entry that closes the sitting. */
  Entry finding(Situation now) {
    if (now.stage() == Stage.CLOSED) {
      throw new BadEntry("the sitting is closed already");
    }
    if (now.caution().isPresent()) {
      throw StandingCaution.refused("nothing is finished");
    }
    if (!now.mayFinish()) {
      throw new BadEntry(
          switch (now.stage()) {
                case EXERCISING -> "the by-hand exercise is not through; go on, or write";
                case CONFIRMING -> "the repair is not confirmed; go on with the steps, or write";
                case REPAIRING -> "nothing is repaired yet; repair it and say so, or write";
                default -> "the cause is not found yet; go on with the steps, or write";
              }
              + " the finding yourself: finding IDS : WORDS");
    }
    List<String> faults = repairedFaults(replay.standing());
    if (faults.isEmpty() && !repairMade()) {
      return new Entry.Finding(List.of(), "Nothing was wrong" + notChecked());
    }
    String told =
        faults.stream()
            .map(id -> workbench.hypothesis(id).map(Hypothesis::words).orElse(id))
            .collect(Collectors.joining("; "));
    return new Entry.Finding(faults, (told.isEmpty() ? repairsInWords() : told) + notChecked());
  }

  /** What was asked for and not looked at since the last repair; a record must not hide it. */
  private String notChecked() {
    List<String> left =
        replay.sinceRepair().stream()
            .map(BenchLog.Line::entry)
            .filter(Entry.Note.class::isInstance)
            .map(Entry.Note.class::cast)
            .filter(Entry.Note::ofTheTool)
            .map(Entry.Note::text)
            .map(text -> text.substring(text.indexOf(": ") + 2))
            .distinct()
            .toList();
    return left.isEmpty() ? "" : ". Not checked: " + String.join("; ", left);
  }

  private String repairsInWords() {
    return replay.standing().stream()
        .map(BenchLog.Line::entry)
        .filter(Judgement::cures)
        .map(e -> e instanceof Entry.Repaired r ? r.action() : "Exchanged " + part(e))
        .collect(Collectors.joining("; "));
  }

  private static String part(Entry entry) {
    return entry instanceof Entry.Exchanged e ? e.part() : "";
  }

  /** Single faults that the log says were repaired, in order, each once. */
  private List<String> repairedFaults(List<BenchLog.Line> standing) {
    Set<String> faults = new LinkedHashSet<>();
    for (int i = 0; i < standing.size(); i++) {
      Entry entry = standing.get(i).entry();
      if (entry instanceof Entry.Repaired repaired
          && workbench.hypothesis(repaired.action()).isPresent()) {
        faults.addAll(Workbench.singles(repaired.action()));
      } else if (entry instanceof Entry.Exchanged) {
        mended(entry, standing.subList(0, i)).ifPresent(h -> faults.add(h.id()));
      }
    }
    return List.copyOf(faults);
  }

  /** The likeliest of what an exchange mended, as the log stood before it. */
  private Optional<Hypothesis> mended(Entry exchanged, List<BenchLog.Line> before) {
    Replay until = new Replay(workbench);
    until.follow(new BenchLog(module.name(), "", before));
    return until.diagnosis().candidates().stream()
        .map(Diagnosis.Candidate::hypothesis)
        .filter(h -> AfterRepair.mends(exchanged, h))
        .findFirst();
  }
}
