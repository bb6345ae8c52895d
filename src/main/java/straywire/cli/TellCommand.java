package straywire.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.format.BadEntry;
import straywire.module.Entry;
import straywire.module.EntryFormat;
import straywire.module.Module;
import straywire.saying.Heard;
import straywire.saying.Meaning;
import straywire.sitting.Sitting;
import straywire.sitting.SituationJson;

@Command(
    name = "tell",
    description = "Ranks the suspects from what you notice, in words of your own.",
    mixinStandardHelpOptions = true)
final class TellCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "MODULE", description = "name of a module, or its file")
  private String module;

  @Parameters(
      index = "1",
      arity = "1..*",
      paramLabel = "WORDS",
      description = "what you notice, such as: the bus never releases, and U2 is hot")
  private List<String> words = new ArrayList<>();

  @Option(
      names = "--pick",
      paramLabel = "NUMBER",
      description = "which of several meanings, from 1, when the words alone are not clear")
  private int pick;

  @Option(names = "--json", description = "one line of JSON")
  private boolean json;

  @Mixin private TableOptions tables;

  @Override
  public Integer call() {
    RuleBase rules = RuleBase.shipped();
    Module about = Home.usual().module(module);
    Workbench workbench = tables.workbench(rules, about);
    String said = String.join(" ", words);
    Heard heard = workbench.hearing().hear(said);
    List<Entry> told = new ArrayList<>();
    for (Meaning meaning : chosen(heard)) {
      if (meaning instanceof Meaning.Told t) {
        told.add(t.entry());
      }
    }
    PrintWriter out = spec.commandLine().getOut();
    if (heard instanceof Heard.Several several && pick == 0) {
      several(several.meanings(), about, out);
      return ExitCode.OK.number();
    }
    if (told.isEmpty()) {
      throw new BadEntry(
          "\"" + said + "\" reports nothing known here; in a sitting, symptoms lists what can be");
    }
    Sitting sitting = Sitting.unrecorded(workbench);
    sitting.enterTogether(told);
    if (json) {
      ObjectNode line = new SituationJson(about).of(sitting.now(), sitting.log());
      out.println(heard(told, about, line));
    } else {
      Screen screen = Screen.ofReport(out, about, Glyphs.of(Straywire.charset()));
      sitting.log().lines().forEach(screen::entry);
      screen.situation(sitting.now(), sitting.log());
    }
    return ExitCode.OK.number();
  }

  private List<Meaning> chosen(Heard heard) {
    if (heard instanceof Heard.Clear clear) {
      return clear.meanings();
    }
    if (heard instanceof Heard.Several several && pick != 0) {
      int many = several.meanings().size();
      if (pick < 1 || pick > many) {
        throw new BadEntry("--pick: expected a number from 1 to " + many + ", got " + pick);
      }
      return List.of(several.meanings().get(pick - 1));
    }
    return List.of();
  }

  private static ObjectNode heard(List<Entry> told, Module about, ObjectNode line) {
    EntryFormat format = new EntryFormat(about);
    ArrayNode entries = line.putArray("heard");
    told.forEach(entry -> entries.add(format.write(entry)));
    return line;
  }

  private void several(List<Meaning> meanings, Module about, PrintWriter out) {
    if (json) {
      EntryFormat format = new EntryFormat(about);
      ObjectNode line = JsonNodeFactory.instance.objectNode();
      ArrayNode all = line.putArray("pick");
      for (Meaning meaning : meanings) {
        ObjectNode one = all.addObject().put("words", meaning.words());
        if (meaning instanceof Meaning.Told t) {
          one.set("entry", format.write(t.entry()));
        }
      }
      out.println(line);
      return;
    }
    out.println("That may mean one of these; say which with --pick:");
    for (int i = 0; i < meanings.size(); i++) {
      out.println("  " + (i + 1) + "  " + meanings.get(i).words());
    }
  }
}
