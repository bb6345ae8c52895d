package straywire.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import straywire.advice.Caution;
import straywire.advice.Hint;
import straywire.advice.Normal;
import straywire.cli.OnePage.Matters;
import straywire.faults.Hypothesis;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Module;
import straywire.module.Word;
import straywire.pages.Wrapped;
import straywire.sitting.Proposed;
import straywire.sitting.Situation;
import straywire.sitting.Situation.LampForecast;
import straywire.sitting.Situation.Stage;
import straywire.sitting.StepWords;
import straywire.sitting.Wanted;
import straywire.steps.Outlook.Ground;
import straywire.steps.Outlook.Suspect;
import straywire.steps.Outlook.Verdict;
import straywire.steps.Unseen;

/** Prints how a sitting stands, in short plain lines. */
final class Screen {
  /** Suspects shown. */
  private static final int MOST_SUSPECTS = 3;

  /** Faults of one suspect shown. */
  private static final int MOST_FAULTS = 4;

  private static final int MOST_GROUNDS = 3;

  /** Faults not ruled out that are listed. */
  private static final int MOST_HIDDEN = 20;

  private static final int LEAST_COLUMNS = 40;

  private static final int LEAST_ROWS = 12;

  /** What the hand does before a reading, when more than this many lines of it stand in a row. */
  private static final int MOST_LINES_TO_DO = 4;

  /** Rows of the screen that the line typed and the prompt take. */
  private static final int OF_THE_PROMPT = 2;

  /** Of a page that may be piped or printed, whatever the terminal. */
  static final int PAGE_COLUMNS = 98;

  /** A suspect below this is not worth a line. */
  private static final double LEAST_SHOWN = 0.01;

  private final PrintWriter out;
  private final Module module;
  private final Glyphs glyphs;
  private final StepWords words;
  private final EntryWords typed;

  /** Whether anybody can type an answer. */
  private final boolean answered;

  private final int columns;
  private final int rows;

  /** Lines of an answer that must fit the screen; empty while lines are printed as they come. */
  private Optional<OnePage> page = Optional.empty();

  private Matters matters = Matters.MOST;

  Screen(PrintWriter out, Module module, Glyphs glyphs) {
    this(out, module, glyphs, Integer.MAX_VALUE, Integer.MAX_VALUE, true);
  }

  /**
   * For a terminal.
   *
   * @param columns that a line may have; below 40 it is taken not to be known
   * @param rows of the screen; below 12 it is taken not to be known
   */
  Screen(PrintWriter out, Module module, Glyphs glyphs, int columns, int rows) {
    this(
        out,
        module,
        glyphs,
        columns < LEAST_COLUMNS ? Integer.MAX_VALUE : columns,
        rows < LEAST_ROWS ? Integer.MAX_VALUE : rows,
        true);
  }

  private Screen(
      PrintWriter out, Module module, Glyphs glyphs, int columns, int rows, boolean answered) {
    this.out = out;
    this.module = module;
    this.glyphs = glyphs;
    this.columns = columns;
    this.rows = rows;
    this.answered = answered;
    words = new StepWords(module);
    typed = new EntryWords(module);
  }

  /** For a report: nobody is asked to type anything. */
  static Screen ofReport(PrintWriter out, Module module, Glyphs glyphs) {
    return new Screen(out, module, glyphs, PAGE_COLUMNS, Integer.MAX_VALUE, false);
  }

  /** One line; one too long for the terminal goes on below, set in a little further. */
  void line(String text) {
    String words = text.stripLeading();
    String start = text.substring(0, text.length() - words.length());
    wrapped(start, start + "    ", words);
  }

  /** A line whose further lines stand under its words, not under its number. */
  void hanging(String start, String words) {
    wrapped(start, " ".repeat(start.length()), words);
  }

  /** What fits stays as it is, with the spaces at its end. */
  private void wrapped(String start, String indent, String words) {
    if (start.length() + words.length() <= columns) {
      put(start + words);
    } else {
      Wrapped.lines(start, indent, words, columns).forEach(this::put);
    }
  }

  private void put(String text) {
    page.ifPresentOrElse(p -> p.add(matters, text), () -> out.println(text));
  }

  /** Prints what matters this much, on a page. */
  private void at(Matters these, Runnable lines) {
    Matters before = matters;
    matters = these;
    lines.run();
    matters = before;
  }

  /** How it stands after some entries, on one screen of a terminal. */
  void answer(String head, List<BenchLog.Line> entered, Situation now, BenchLog log) {
    boolean fits = rows < Integer.MAX_VALUE;
    if (fits) {
      page = Optional.of(new OnePage(rows - OF_THE_PROMPT, "  (more: why, show lamps, log)"));
    }
    at(
        Matters.ECHO,
        () -> {
          if (!head.isEmpty()) {
            line(head);
          }
          entered.forEach(this::entry);
        });
    situation(now, log);
    List<String> lines = page.map(OnePage::fitted).orElse(List.of());
    page = Optional.empty();
    lines.forEach(out::println);
    out.flush();
  }

  /** What to type; left out of a report. */
  private void toType(String text) {
    if (answered) {
      line(text);
    }
  }

  /** Everything, in the order a person needs it. */
  void situation(Situation now, BenchLog log) {
    if (now.stage() == Stage.CLOSED) {
      line("Closed by its finding: " + finding(log).replaceFirst("\\.$", "") + ".");
      out.flush();
      return;
    }
    at(Matters.REMARKS, () -> remarks(now));
    at(Matters.LAMPS, () -> lamps(now));
    ranking(now, log);
    next(now);
    out.flush();
  }

  private static String finding(BenchLog log) {
    return log.standing().stream()
        .map(BenchLog.Line::entry)
        .filter(Entry.Finding.class::isInstance)
        .map(e -> ((Entry.Finding) e).words())
        .collect(Collectors.joining("; "));
  }

  /** What is normal, then what does not go together. */
  void remarks(Situation now) {
    for (Normal normal : now.advice().normal()) {
      line("  Normal: " + normal.text());
    }
    now.contradictions().forEach(c -> line("  Look again: " + c));
  }

  /** Cautions, those that were answered or do not press; the one that stands is a step. */
  private void cautions(Situation now) {
    for (Caution caution : now.advice().cautions()) {
      if (!caution.urgent()) {
        line("Caution: " + caution.text());
      }
    }
  }

  /** Cautions and remarks without the rest. */
  void advice(Situation now) {
    remarks(now);
    cautions(now);
    now.caution().ifPresent(caution -> stop(caution, now));
  }

  private void stop(Caution caution, Situation now) {
    line("STOP: " + caution.text());
    now.next()
        .ifPresent(
            step -> {
              List<String> todo = words.handling(step.before(), now.controls());
              todo.forEach(h -> line("    " + h));
              line("    " + words.reading(step.wanted()));
              toType(
                  "    answer: "
                      + step.wanted().howToAnswer()
                      + "; or accept, to go on at your own risk");
            });
  }

  void hints(Situation now) {
    if (now.stage() == Stage.CONFIRMED || now.stage() == Stage.CLOSED) {
      return;
    }
    for (Hint hint : now.advice().hints()) {
      line("  Hint: " + hint.text());
    }
  }

  void lamps(Situation now) {
    LampPicture picture = new LampPicture(glyphs);
    for (LampForecast word : now.lamps()) {
      picture.of(word).forEach(this::line);
    }
  }

  void ranking(Situation now, BenchLog log) {
    List<Suspect> suspects = now.outlook().suspects();
    List<BenchLog.Line> standing = log.standing();
    line(verdict(now));
    double shown = 0;
    int count = 0;
    for (Suspect suspect : suspects) {
      if (count == MOST_SUSPECTS || (count > 0 && suspect.probability() < LEAST_SHOWN)) {
        break;
      }
      count++;
      shown += suspect.probability();
      suspect(count, suspect, standing);
    }
    if (suspects.size() > count) {
      line(
          String.format(
              Locale.ROOT, "     %3s  in %d others", percent(1 - shown), suspects.size() - count));
    }
  }

  private static String verdict(Situation now) {
    Verdict verdict = now.outlook().verdict();
    return switch (verdict) {
      case OPEN -> "Undecided:";
      case NAMED -> "Beyond doubt:";
      case NOTHING_WRONG -> "Nothing is wrong, beyond doubt:";
      case INSEPARABLE -> "No step at hand tells these apart:";
    };
  }

  private void suspect(int rank, Suspect suspect, List<BenchLog.Line> standing) {
    List<Hypothesis> members = suspect.members();
    String head = String.format(Locale.ROOT, "  %d. %4s  ", rank, percent(suspect.probability()));
    hanging(head, members.get(0).words());
    at(Matters.FAULTS, () -> beside(suspect));
    String grounds =
        grounds("for", suspect, standing, true) + grounds("against", suspect, standing, false);
    if (!grounds.isEmpty()) {
      at(Matters.GROUNDS, () -> line("           " + grounds.strip()));
    }
  }

  private void beside(Suspect suspect) {
    List<Hypothesis> members = suspect.members();
    for (int i = 1; i < Math.min(MOST_FAULTS, members.size()); i++) {
      hanging("           or: ", members.get(i).words());
    }
    if (members.size() > MOST_FAULTS) {
      int more = members.size() - MOST_FAULTS;
      line("           or one of " + more + " more that look the same or have the same cure");
    }
    if (suspect.withAnother() >= LEAST_SHOWN) {
      line("           in " + percent(suspect.withAnother()) + " of all, another fault beside it");
    }
  }

  private String grounds(
      String word, Suspect suspect, List<BenchLog.Line> standing, boolean speaksFor) {
    List<String> entries = new ArrayList<>();
    for (Ground ground : suspect.grounds()) {
      if (ground.logFactor() > 0 == speaksFor && entries.size() < MOST_GROUNDS) {
        entries.add(String.valueOf(standing.get(ground.entry()).number()));
      }
    }
    return entries.isEmpty()
        ? ""
        : word
            + (entries.size() == 1 ? " it, entry " : " it, entries ")
            + String.join(", ", entries)
            + ". ";
  }

  static String percent(double probability) {
    if (probability > 0 && probability < 0.005) {
      return "<1 %";
    }
    if (probability < 1 && probability > 0.995) {
      return ">99 %";
    }
    return String.format(Locale.ROOT, "%.0f %%", 100 * probability);
  }

  /** What to do now: the caution that stands, else the step with what to mind. */
  void next(Situation now) {
    if (now.caution().isPresent()) {
      stop(now.caution().get(), now);
    } else {
      asked(now);
      cautions(now);
    }
  }

  private void asked(Situation now) {
    switch (now.stage()) {
      case REPAIRING -> repair(now);
      case CONFIRMED -> {
        line("All works as it should.");
        toType("Type finish to write the finding.");
        if (now.outlook().verdict() == Verdict.OPEN) {
          toType("Working the module does not show everything: type hidden, or more for steps.");
        }
      }
      case CLOSED -> {}
      case EXERCISING, SEARCHING, CONFIRMING -> {
        if (now.mayFinish()) {
          line("The exercise shows nothing wrong.");
          toType("Type finish to leave it at that, or go on:");
        }
        now.next().ifPresentOrElse(step -> step("Next", step, now), () -> line("No step left."));
      }
    }
  }

  /** The repair of the leading suspect, one line for each cure, with its first fault's number. */
  void repair(Situation now) {
    Suspect first = now.outlook().suspects().get(0);
    if (first.healthy()) {
      line("Nothing to repair: nothing is wrong as far as is known.");
      return;
    }
    Map<String, Integer> cures = new LinkedHashMap<>();
    for (int i = 0; i < first.members().size(); i++) {
      cures.putIfAbsent(first.members().get(i).repair(), i + 1);
    }
    line("Repair:");
    cures.entrySet().stream()
        .limit(MOST_FAULTS)
        .forEach(cure -> hanging("  " + cure.getValue() + ") ", cure.getKey()));
    toType(
        cures.size() == 1
            ? "Then type repaired."
            : "Then type repaired and its number, such as repaired 1.");
  }

  /** A step with what to expect and how to answer. */
  void step(String head, Proposed step, Situation now) {
    List<String> handling = words.handling(step.before(), now.controls());
    line(
        String.format(Locale.ROOT, "%s (about %.0f s): %s", head, step.seconds(), words.why(step)));
    if (rows < Integer.MAX_VALUE && handling.size() > MOST_LINES_TO_DO) {
      line("    " + String.join(", ", handling));
    } else {
      handling.forEach(h -> line("    " + h));
    }
    line("    " + words.reading(step.wanted()));
    expected(step);
    toType("    answer: " + howToAnswer(step) + "; ? for don't know");
  }

  private String howToAnswer(Proposed step) {
    if (step.wanted() instanceof Wanted.Lamps look && step.pictures().size() == 1) {
      String lamp = look.lamps(module).get(0);
      return "ok if so, but "
          + lamp
          + " if "
          + lamp
          + " is not so, or 1 lit 0 dark d dim f flickering";
    }
    return step.wanted().howToAnswer();
  }

  private void expected(Proposed step) {
    if (step.purpose() != Proposed.Purpose.SEARCH) {
      step.expected().forEach(e -> line("    expect " + e));
      return;
    }
    Map<Integer, String> byFirst = new TreeMap<>();
    List<String> done = new ArrayList<>();
    for (int i = 0; i < step.expected().size(); i++) {
      String reading = step.expected().get(i);
      if (!done.contains(reading) && !reading.isEmpty()) {
        done.add(reading);
        List<String> ranks = new ArrayList<>();
        for (int j = i; j < step.expected().size(); j++) {
          if (step.expected().get(j).equals(reading)) {
            ranks.add(String.valueOf(j + 1));
          }
        }
        byFirst.put(i, "    expect " + reading + " if it is " + String.join(" or ", ranks));
      }
    }
    byFirst.values().forEach(this::line);
  }

  /** Reasons of the leading suspects: the rule that proposed each, the entries for and against. */
  void why(Situation now, BenchLog log) {
    List<BenchLog.Line> standing = log.standing();
    int rank = 0;
    for (Suspect suspect : now.outlook().suspects()) {
      rank++;
      if (rank > MOST_SUSPECTS || (rank > 1 && suspect.probability() < LEAST_SHOWN)) {
        break;
      }
      Hypothesis first = suspect.first();
      hanging("  " + rank + ". " + percent(suspect.probability()) + "  ", first.words());
      line("     rule " + first.rule() + ": " + first.reason());
      for (Ground ground : suspect.grounds().stream().limit(2 * MOST_GROUNDS).toList()) {
        BenchLog.Line entry = standing.get(ground.entry());
        line(
            String.format(
                Locale.ROOT,
                "     %s %d (%s): %s",
                ground.logFactor() > 0 ? "for    " : "against",
                entry.number(),
                typed.print(entry.entry()),
                times(ground.logFactor())));
      }
    }
    now.next().ifPresent(step -> line("  The step: " + words.why(step) + "."));
  }

  private static String times(double logFactor) {
    double factor = Math.exp(Math.abs(logFactor));
    String number = factor >= 1000 ? "over 1000" : String.format(Locale.ROOT, "%.1f", factor);
    return number + " times " + (logFactor > 0 ? "likelier" : "less likely") + " than otherwise";
  }

  /** Other steps worth taking. */
  void others(Situation now) {
    for (Proposed step : now.others()) {
      line(
          String.format(
              Locale.ROOT,
              "  about %3.0f s: %s",
              step.seconds(),
              words.line(step, now.controls())));
    }
  }

  /** What a sound-looking module may still hide. */
  void hidden(List<Unseen.Hidden> hidden) {
    long invisible = hidden.stream().filter(Unseen.Hidden::invisible).count();
    line(
        (hidden.size() == 1 ? "One fault is" : hidden.size() + " faults are")
            + " not ruled out"
            + (invisible == 0
                ? "; each of them some setting shows at a lamp."
                : "; "
                    + invisible
                    + " of them no lamp shows here, whatever is set; what time or heat would show is not"
                    + " simulated."));
    for (Unseen.Hidden one : hidden.stream().limit(MOST_HIDDEN).toList()) {
      line(
          "  "
              + one.hypothesis().words()
              + (one.invisible() ? " (no lamp shows it)" : "")
              + one.check().map(step -> "; check: " + words.check(step)).orElse(""));
    }
    if (hidden.size() > MOST_HIDDEN) {
      line("  and " + (hidden.size() - MOST_HIDDEN) + " less probable ones");
    }
  }

  /** One entry of the log. */
  void entry(BenchLog.Line line) {
    line(String.format(Locale.ROOT, "  %3d  %s", line.number(), typed.print(line.entry())));
  }

  /** Controls and power in one line, words high bit first. */
  void controls(Situation now) {
    Map<String, Boolean> left = new TreeMap<>(now.controls().levels());
    List<String> shown = new ArrayList<>();
    for (Word word : module.controlWords()) {
      if (left.keySet().containsAll(word.members())) {
        shown.add(
            word.label()
                + " "
                + word.members().stream()
                    .map(m -> left.remove(m) ? "1" : "0")
                    .collect(Collectors.joining()));
      }
    }
    left.forEach((control, high) -> shown.add(control + " " + (high ? "high" : "low")));
    line("  power " + (now.controls().power() ? "on" : "off") + ", " + String.join(", ", shown));
  }

  Module module() {
    return module;
  }

  Glyphs glyphs() {
    return glyphs;
  }
}
