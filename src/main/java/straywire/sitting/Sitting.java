package straywire.sitting;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import straywire.advice.SymptomTable;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.format.BadEntry;
import straywire.format.Nearest;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LogFile;
import straywire.module.LogWriter;
import straywire.module.Module;
import straywire.steps.Unseen;

/**
 * One sitting over one module. Every entry is in the journal, on the disk, before anything is
 * worked out from it. Not for use by several threads at once.
 */
public final class Sitting implements Closeable {
  private final Workbench workbench;
  private final Optional<LogWriter> journal;
  private final Optional<String> torn;
  private final Judgement judgement;
  private BenchLog log;
  private Optional<Situation> latest = Optional.empty();

  /** Numbers of what the last answer wrote down; empty when something else came after it. */
  private List<Integer> lastAnswer = List.of();

  private Sitting(
      Workbench workbench, BenchLog log, Optional<LogWriter> journal, Optional<String> torn) {
    this.workbench = workbench;
    this.log = log;
    this.journal = journal;
    this.torn = torn;
    judgement = new Judgement(workbench);
  }

  /** A sitting that leaves no file, going on from a log. */
  public static Sitting over(Workbench workbench, BenchLog log) {
    return new Sitting(workbench, log, Optional.empty(), Optional.empty());
  }

  /** A sitting that leaves no file, from the start. */
  public static Sitting unrecorded(Workbench workbench) {
    return over(workbench, new BenchLog(workbench.module().name(), "", List.of()));
  }

  /**
   * Starts a journal, or goes on with one that is there.
   *
   * @throws straywire.format.InputError when the file is no journal of this module, or in use
   */
  public static Sitting open(Workbench workbench, Path file, LogWriter.Style style) {
    Module module = workbench.module();
    try {
      if (!Files.exists(file)) {
        LogWriter fresh = LogWriter.create(file, module, "", style);
        return new Sitting(workbench, fresh.log(), Optional.of(fresh), Optional.empty());
      }
      LogFile.Resumed resumed = LogFile.resume(file, module);
      LogWriter writer = LogWriter.resume(file, module, resumed, style);
      return new Sitting(workbench, writer.log(), Optional.of(writer), resumed.torn());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public Workbench workbench() {
    return workbench;
  }

  /** What a crash left of a last line in the journal; it is left out. */
  public Optional<String> torn() {
    return torn;
  }

  public BenchLog log() {
    return log;
  }

  /** How it stands. Worked out when first asked after an entry. */
  public Situation now() {
    if (latest.isEmpty()) {
      latest = Optional.of(judgement.of(log));
    }
    return latest.orElseThrow();
  }

  /** Faults that the log has not ruled out, most probable first, and which no lamp can show. */
  public List<Unseen.Hidden> hidden() {
    now();
    return judgement.hidden();
  }

  /**
   * Writes one entry down.
   *
   * @return its number
   * @throws BadEntry when the sitting is closed, or it withdraws what does not stand
   */
  public int enter(Entry entry) {
    return enter(List.of(entry)).get(0);
  }

  /** As {@link #enter(Entry)}, for entries that belong together. */
  public List<Integer> enter(List<Entry> entries) {
    List<Integer> numbers = new ArrayList<>();
    lastAnswer = List.of();
    for (Entry entry : entries) {
      check(entry);
      BenchLog longer = log.with(entry);
      try {
        if (journal.isPresent()) {
          journal.get().append(entry);
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      log = longer;
      latest = Optional.empty();
      numbers.add(longer.lines().get(longer.lines().size() - 1).number());
    }
    return numbers;
  }

  /** As {@link #enter(List)}; undo takes all of them back at once. */
  public List<Integer> enterTogether(List<Entry> entries) {
    List<Integer> numbers = enter(entries);
    lastAnswer = numbers;
    return numbers;
  }

  private void check(Entry entry) {
    if (entry instanceof Entry.Look) {
      throw new BadEntry("look is a step of an exercise; say what was seen");
    }
    if (entry instanceof Entry.Withdrawn withdrawn) {
      checkWithdrawn(withdrawn);
    } else if (closed()) {
      throw new BadEntry("the sitting is closed by its finding; undo the finding to go on");
    }
    if (entry instanceof Entry.Finding finding) {
      finding.faults().forEach(this::checkFault);
    }
    if (entry instanceof Entry.Symptom symptom) {
      SymptomTable.shipped().check(symptom.symptom());
    }
    for (int number : entry.speaksOf()) {
      if (number < 1 || number > log.lines().size()) {
        throw new BadEntry("there is no entry " + number + " so far");
      }
    }
  }

  private void checkFault(String fault) {
    if (workbench.hypothesis(fault).isEmpty()) {
      List<String> known = workbench.hypotheses().stream().map(Hypothesis::id).toList();
      throw new BadEntry(
          "no fault is called "
              + fault
              + Nearest.to(fault, known).map(n -> "; nearest is " + n).orElse("")
              + "; a finding without ids says that nothing was wrong");
    }
  }

  private void checkWithdrawn(Entry.Withdrawn withdrawn) {
    int number = withdrawn.number();
    if (number < 1 || number > log.lines().size()) {
      throw new BadEntry("there is no entry " + number + " so far");
    }
    if (log.with(withdrawn).standing().equals(log.standing())) {
      throw new BadEntry("entry " + number + " is withdrawn already");
    }
  }

  private boolean closed() {
    List<BenchLog.Line> standing = log.standing();
    return standing.stream().anyMatch(l -> l.entry() instanceof Entry.Finding);
  }

  /**
   * Answers the step asked for in a few keystrokes; the handling that goes with it is written down
   * around the reading.
   *
   * @throws BadEntry when no step is asked for or the answer does not fit it
   */
  public List<Integer> answer(String text) {
    Proposed step = asked();
    return answered(step.entries(step.read(text, workbench.module())));
  }

  /** As {@link #answer(String)}, with the reading, or all of a round, as entries. */
  public List<Integer> answer(List<Entry> readings) {
    Proposed step = asked();
    for (Entry reading : readings) {
      boolean partly = reading instanceof Entry.Seen && step.wanted() instanceof Wanted.Lamps;
      if (!partly && !step.wanted().answeredBy(reading, workbench.module())) {
        throw new BadEntry(
            "that does not answer the step asked for: "
                + new StepWords(workbench.module()).reading(step.wanted()));
      }
    }
    return answered(step.entries(readings));
  }

  private List<Integer> answered(List<Entry> entries) {
    List<Integer> numbers = enter(entries);
    lastAnswer = numbers;
    return numbers;
  }

  private Proposed asked() {
    return now().next().orElseThrow(() -> new BadEntry("no step is asked for now"));
  }

  /** "Don't know": the step asked for is not asked again as things stand. */
  public int skip() {
    return enter(judgement.skipping(asked(), now()));
  }

  /**
   * Goes on in spite of the caution that stands, at the hand's own risk.
   *
   * @throws BadEntry when none stands
   */
  public int accept() {
    return enter(judgement.accepting(now()));
  }

  /**
   * Takes back what was entered last: the whole of an answer that was just given, else one entry,
   * or a reading with the hand's work around it when a button was held or the power was off for it.
   *
   * @return numbers of the entries taken back, the latest first
   */
  public List<Integer> undo() {
    List<BenchLog.Line> standing = log.standing();
    if (standing.isEmpty()) {
      throw new BadEntry("there is nothing to undo");
    }
    int size = standing.size();
    int count = lastAnswer.isEmpty() ? withHandling(standing) : lastAnswer.size();
    List<Integer> withdrawn = new ArrayList<>();
    for (int i = size - 1; i >= size - count; i--) {
      withdrawn.add(standing.get(i).number());
    }
    enter(withdrawn.stream().<Entry>map(Entry.Withdrawn::new).toList());
    return withdrawn;
  }

  /** Entries of the last reading with what the hand did around it; 1 when it did nothing. */
  private static int withHandling(List<BenchLog.Line> standing) {
    int size = standing.size();
    // Switches may have been moved out of the way before a beep.
    boolean moved = size >= 4 && standing.get(size - 3).entry() instanceof Entry.Set;
    int count = moved ? 4 : 3;
    return size >= count && closesAround(standing.subList(size - count, size)) ? count : 1;
  }

  private static boolean closesAround(List<BenchLog.Line> entries) {
    Entry first = entries.get(0).entry();
    Entry reading = entries.get(entries.size() - 2).entry();
    Entry last = entries.get(entries.size() - 1).entry();
    boolean held =
        first instanceof Entry.Hold hold
            && last instanceof Entry.Release release
            && hold.button().equals(release.button())
            && (reading instanceof Entry.Measured || reading instanceof Entry.Probed);
    boolean off =
        first instanceof Entry.Power before
            && last instanceof Entry.Power after
            && !before.on()
            && after.on()
            && reading instanceof Entry.Continuity;
    return held || off;
  }

  /**
   * Says that the leading suspect was repaired, with the power off for it.
   *
   * @param member which of its faults, from 1
   * @return numbers of the entries written down
   * @throws BadEntry when it has not so many, or nothing is suspected
   */
  public List<Integer> repaired(int member) {
    return repaired(judgement.repairing(now(), member));
  }

  /** The same in words of one's own: the power went off before. */
  public List<Integer> repaired(Entry repaired) {
    return enter(
        now().controls().power() ? List.of(new Entry.Power(false), repaired) : List.of(repaired));
  }

  /**
   * Closes the sitting with its finding: what was repaired, or that nothing was wrong.
   *
   * @throws BadEntry when that is not shown yet, with what is left to do
   */
  public int finish() {
    return enter(judgement.finding(now()));
  }

  @Override
  public void close() throws IOException {
    if (journal.isPresent()) {
      journal.get().close();
    }
  }
}
