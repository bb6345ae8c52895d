package straywire.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import straywire.advice.SymptomTable;
import straywire.format.BadEntry;
import straywire.format.Nearest;
import straywire.module.BenchLog;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Labels;
import straywire.module.Module;
import straywire.module.Word;
import straywire.saying.Heard;
import straywire.saying.Hearing;
import straywire.saying.Meaning;
import straywire.sitting.ExpectedLevels;
import straywire.sitting.Sitting;
import straywire.sitting.Situation;
import straywire.sitting.Situation.Stage;

/** Takes the lines of an interactive sitting, from a terminal or a file alike. */
final class SittingShell {
  static final List<String> WORDS =
      List.of(
          "help",
          "symptoms",
          "next",
          "more",
          "why",
          "show",
          "levels",
          "hidden",
          "repair",
          "accept",
          "undo",
          "log",
          "finish",
          "quit");

  private static final String WHAT_DO_YOU_NOTICE =
      "What do you notice? Say it in words of your own, pick from symptoms, or follow the next step:"
          + " nothing yet, guide me.";

  private static final int EXAMPLES = 5;

  private final Sitting sitting;
  private final Module module;
  private final EntryWords typed;
  private final PrintWriter out;
  private final Screen screen;
  private final Glyphs glyphs;
  private final Hearing hearing;

  /** What the last line may have meant, to pick from by number. */
  private List<Meaning> choices = List.of();

  private boolean over;

  SittingShell(Sitting sitting, PrintWriter out, Glyphs glyphs) {
    this(sitting, out, glyphs, Integer.MAX_VALUE, Integer.MAX_VALUE);
  }

  /**
   * For a terminal.
   *
   * @param columns of the terminal
   * @param rows of the terminal
   */
  SittingShell(Sitting sitting, PrintWriter out, Glyphs glyphs, int columns, int rows) {
    this.sitting = sitting;
    this.out = out;
    this.glyphs = glyphs;
    module = sitting.workbench().module();
    typed = new EntryWords(module, SymptomTable.shipped().ids());
    screen = new Screen(out, module, glyphs, columns, rows);
    hearing = sitting.workbench().hearing();
  }

  /** Says what the sitting is about and how it stands. */
  void greet() {
    int entries = sitting.log().lines().size();
    screen.answer(
        module.title()
            + (entries == 0 ? "." : ", resumed after entry " + entries + ".")
            + " Type help for help."
            + (entries == 0 ? " " + WHAT_DO_YOU_NOTICE : ""),
        List.of(),
        sitting.now(),
        sitting.log());
  }

  boolean over() {
    return over;
  }

  /** What can be typed: the shell's own words and the entries. */
  List<String> completions(List<String> words) {
    List<String> all = new ArrayList<>();
    String first = words.isEmpty() ? "" : words.get(0);
    if (words.size() <= 1) {
      WORDS.stream().filter(w -> w.startsWith(first)).forEach(all::add);
    } else if (words.size() == 2 && first.equals("show")) {
      List<String> shown = new ArrayList<>(module.parts().keySet());
      shown.addAll(List.of("lamps", "controls"));
      shown.stream().filter(w -> w.startsWith(words.get(1))).forEach(all::add);
    } else if (first.equals("levels")) {
      List<String> asSet = new ArrayList<>(words);
      asSet.set(0, "set");
      return typed.completions(asSet);
    }
    all.addAll(typed.completions(words));
    return all;
  }

  /** Does what one line says. What is wrong with it is said in one line. */
  void take(String line) {
    try {
      done(line.strip());
    } catch (BadEntry e) {
      screen.line("  " + e.getMessage());
    }
    out.flush();
  }

  private void done(String line) {
    List<Meaning> offered = choices;
    choices = List.of();
    if (!offered.isEmpty() && line.matches("[0-9]{1,3}")) {
      pick(offered, Integer.parseInt(line));
      return;
    }
    int space = line.indexOf(' ');
    String first = space < 0 ? line : line.substring(0, space);
    String rest = space < 0 ? "" : line.substring(space + 1).strip();
    if (line.matches("(?i)(i )?accept( it| the (risk|caution))?[.!]?")) {
      command("accept", "", "accept");
      return;
    }
    String small = first.toLowerCase(Locale.ROOT);
    boolean known = WORDS.contains(small) || typed.verbs().contains(small);
    String word = known ? small : first;
    String whole = (word + " " + rest).strip();
    if (typed.verbs().contains(word)) {
      entry(word, rest, whole);
    } else if (heardInstead(word, rest, line)) {
      hear(line, new BadEntry("nothing is called " + word));
    } else {
      command(word, rest, whole);
    }
  }

  /** Commands that stand alone are free words when more follows, and so is any sign of danger. */
  private boolean heardInstead(String word, String rest, String line) {
    boolean standsAlone = !List.of("show", "levels", "undo", "repaired").contains(word);
    boolean more = WORDS.contains(word) && !rest.isEmpty() && standsAlone;
    return more || !hearing.danger(line).isEmpty();
  }

  /** An entry, or words that begin like one; danger is heard in a note as well. */
  private void entry(String word, String rest, String line) {
    if (word.equals("repaired")) {
      repaired(line, rest);
      return;
    }
    Entry entry;
    try {
      entry = typed.parse(line);
    } catch (BadEntry e) {
      alternatives(line, e);
      return;
    }
    List<Entry> entries = new ArrayList<>(List.of(entry));
    if (entry instanceof Entry.Note) {
      hearing.danger(line).stream()
          .filter(danger -> danger.answer() == Entry.Answer.YES)
          .forEach(entries::add);
    }
    entered(sitting.enter(entries));
  }

  /** An entry gone wrong is said to be one; that it may be free words is offered, never taken. */
  private void alternatives(String line, BadEntry wrong) {
    boolean sentence = line.matches("\\D+\\s\\D+\\s\\D+");
    if (!sentence || !(hearing.hear(line) instanceof Heard.Clear clear)) {
      throw wrong;
    }
    screen.line("  " + wrong.getMessage());
    screen.line("Or it means this; type its number:");
    offer(clear.meanings());
  }

  /** Takes free words; throws what was wrong with them as anything else when they mean nothing. */
  private void hear(String line, BadEntry otherwise) {
    Heard heard = hearing.hear(line);
    if (heard instanceof Heard.Clear clear) {
      mean(clear.meanings());
    } else if (heard instanceof Heard.Several several) {
      screen.line("That may mean one of these; type its number:");
      offer(several.meanings());
    } else {
      throw otherwise;
    }
  }

  private void mean(List<Meaning> meanings) {
    List<Entry> told = new ArrayList<>();
    for (Meaning meaning : meanings) {
      if (meaning instanceof Meaning.Told t) {
        told.add(t.entry());
        screen.line("Heard: " + t.words() + ". undo takes it back.");
      }
    }
    if (!told.isEmpty()) {
      entered(sitting.enterTogether(told));
    } else if (meanings.get(0) instanceof Meaning.Help help) {
      if (List.of("next", "symptoms", "help").contains(help.command())) {
        command(help.command(), "", help.command());
      } else {
        screen.line("For that type " + help.command() + ".");
      }
    }
  }

  private void offer(List<Meaning> meanings) {
    for (int i = 0; i < meanings.size(); i++) {
      screen.hanging(String.format(Locale.ROOT, "  %3d  ", i + 1), meanings.get(i).words());
    }
    choices = meanings;
  }

  private void pick(List<Meaning> offered, int number) {
    if (number < 1 || number > offered.size()) {
      choices = offered;
      throw new BadEntry("expected a number from 1 to " + offered.size() + ", got " + number);
    }
    mean(List.of(offered.get(number - 1)));
  }

  private void command(String word, String rest, String line) {
    switch (word) {
      case "" -> screen.next(now());
      case "?" -> entered(List.of(sitting.skip()));
      case "help" -> help();
      case "symptoms" -> {
        screen.line("What makes sense at this module; type its number:");
        offer(hearing.all());
      }
      case "next" -> screen.next(now());
      case "more" -> screen.others(now());
      case "why" -> {
        screen.why(now(), sitting.log());
        screen.hints(now());
        screen.remarks(now());
      }
      case "show" -> show(rest);
      case "levels" -> levels(rest, List.copyOf(module.parts().keySet()));
      case "hidden" -> screen.hidden(sitting.hidden());
      case "repair" -> screen.repair(now());
      case "accept" -> entered(List.of(sitting.accept()));
      case "undo" -> undo(rest);
      case "log" -> sitting.log().lines().forEach(screen::entry);
      case "finish" -> entered(List.of(sitting.finish()));
      case "quit" -> over = true;
      default -> answer(line, word);
    }
  }

  private Situation now() {
    return sitting.now();
  }

  private void entered(List<Integer> numbers) {
    List<BenchLog.Line> lines = sitting.log().lines();
    List<BenchLog.Line> entered = numbers.stream().map(n -> lines.get(n - 1)).toList();
    screen.answer("", entered, now(), sitting.log());
  }

  private void answer(String line, String word) {
    List<String> known = new ArrayList<>(typed.verbs());
    known.addAll(WORDS);
    try {
      answered(line);
    } catch (BadEntry e) {
      if (word.matches("[0-9]{1,3}") && now().stage() == Stage.REPAIRING) {
        throw new BadEntry("to say that repair " + word + " was made, type repaired " + word);
      }
      boolean meantAsWord = word.length() > 3 && Nearest.to(word, known).isPresent();
      BadEntry otherwise =
          meantAsWord || now().next().isEmpty()
              ? new BadEntry("nothing is called " + word + Nearest.hint(word, known))
              : e;
      if (meantAsWord && (!line.contains(" ") || line.matches(".*\\d.*"))) {
        throw otherwise;
      }
      boolean plain = !meantAsWord && line.matches(".*\\p{Alpha}{3}.*") && line.contains(" ");
      hear(
          line,
          plain
              ? new BadEntry(otherwise.getMessage() + "; symptoms lists what can be reported")
              : otherwise);
    }
  }

  /** One answer, or the looks of several rounds in a row, parted by semicolons. */
  private void answered(String line) {
    List<String> answers = List.of(line.split("\\s*;\\s*"));
    List<Integer> numbers = new ArrayList<>();
    Stage stage = now().stage();
    int taken = 0;
    String why = "";
    while (taken < answers.size() && why.isEmpty()) {
      boolean asIsAsked = taken == 0 || (now().stage() == stage && now().caution().isEmpty());
      if (asIsAsked) {
        try {
          numbers.addAll(sitting.answer(answers.get(taken)));
          taken++;
        } catch (BadEntry e) {
          if (taken == 0) {
            throw e;
          }
          why = e.getMessage();
        }
      } else {
        why = "the next step is another one now";
      }
    }
    entered(numbers);
    if (!why.isEmpty()) {
      screen.line("  took " + taken + " of " + answers.size() + " answers: " + why);
    }
  }

  private void repaired(String line, String rest) {
    if (rest.isEmpty() || rest.matches("[0-9]{1,3}")) {
      int member = rest.isEmpty() ? 1 : Integer.parseInt(rest);
      entered(sitting.repaired(member));
    } else {
      entered(sitting.repaired(typed.parse(line)));
    }
  }

  private void undo(String rest) {
    if (!rest.isEmpty()) {
      throw new BadEntry(
          "undo takes back the last answer, one at a time; withdraw "
              + rest
              + " takes back an entry");
    }
    List<Integer> withdrawn = sitting.undo();
    List<BenchLog.Line> lines = sitting.log().lines();
    List<BenchLog.Line> back = withdrawn.stream().map(n -> lines.get(n - 1)).toList();
    screen.answer("  taken back:", back, now(), sitting.log());
  }

  private void show(String what) {
    switch (what) {
      case "", "lamps" -> screen.lamps(now());
      case "controls" -> screen.controls(now());
      default -> levels("", List.of(new Labels(module).part(what)));
    }
  }

  private void levels(String setting, List<String> parts) {
    ExpectedLevels levels = new ExpectedLevels(module, sitting.workbench().table(), sitting.log());
    if (!setting.isEmpty()) {
      levels.act(typed.parse("set " + setting));
    }
    new LevelsTable(module, glyphs).lines(levels, parts).forEach(out::println);
  }

  private void help() {
    Map<String, String> words = new TreeMap<>();
    words.put("ok; but R3; ok", "looks as expected, one lamp otherwise, several rounds in a line");
    words.put("?", "don't know: ask something else");
    words.put("symptoms", "what can be reported of this module, picked by number");
    words.put("next", "the step asked for, again (so does an empty line)");
    words.put("more", "other steps worth taking");
    words.put("why", "the reasons of the leading suspects");
    words.put("show U1, show lamps, show controls", "what it should show now");
    words.put("levels address 0001", "what every pin should show with that set");
    words.put("hidden", "what the module may hide though it looks sound");
    words.put("repair", "how to repair the leading suspect");
    words.put("repaired, repaired 2, repaired WORDS", "say that it was done");
    words.put("accept", "go on in spite of the caution that stands, at your own risk");
    words.put("undo", "take the last answer back, or the last entry");
    words.put("finish", "write the finding");
    words.put("log, quit", "all entries; leave, to go on later");
    screen.line("Answer the step in its own short way, or say what you did or saw. Five examples:");
    examples().forEach(e -> out.println("    " + e));
    screen.line("Or say what you notice in words of your own, such as: nothing lights up.");
    screen.line("Entries start with: " + String.join(", ", typed.verbs()) + ".");
    words.forEach(
        (word, what) -> screen.hanging(String.format(Locale.ROOT, "    %-38s ", word), what));
  }

  /** One line of each usual kind, in the names of the module at hand. */
  private List<String> examples() {
    List<String> examples = new ArrayList<>();
    module.controlWords().stream()
        .findFirst()
        .ifPresent(word -> examples.add("set " + word.label() + " " + lowBit(word, "0")));
    if (examples.isEmpty()) {
      module.controls().values().stream()
          .filter(control -> control.kind() == Control.Kind.SWITCH)
          .findFirst()
          .ifPresent(control -> examples.add("set " + control.label() + " high"));
    }
    new Labels(module).buttons().stream().findFirst().ifPresent(b -> examples.add("press " + b));
    module.lampWords().stream()
        .findFirst()
        .ifPresent(word -> examples.add("see " + word.label() + " " + lowBit(word, "-")));
    examples.add("measure " + module.parts().firstKey() + ".1 0.2");
    module.jumpers().stream()
        .findFirst()
        .ifPresent(jumper -> examples.add("inspect jumper " + jumper.name() + " wrong"));
    List.of("note the supply lead was loose", "power on", "power off").stream()
        .limit(EXAMPLES - examples.size())
        .forEach(examples::add);
    return examples;
  }

  private static String lowBit(Word word, String others) {
    return others.repeat(word.members().size() - 1) + "1";
  }
}
