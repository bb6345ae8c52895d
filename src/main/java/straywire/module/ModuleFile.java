package straywire.module;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import straywire.format.InputError;
import straywire.format.Schema;
import straywire.format.TextFile;
import straywire.format.YamlValue;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.parts.PartLibrary;

/** Reads a module file. The format is described in {@code docs/formats/module.md}. */
public final class ModuleFile {
  private ModuleFile() {}

  /**
   * Reads a file that a person wrote: strictly, then once more against its JSON Schema.
   *
   * @throws InputError with file, line, what is wrong and what would be right
   */
  public static Module read(Path file, PartLibrary library) {
    return parse(file.toString(), TextFile.read(file), library);
  }

  /**
   * Reads a file of the shipped case book, which the build has held against its schema already, so
   * that starting up need not load a schema validator. All other checks are the same.
   */
  public static Module readShipped(Path file, PartLibrary library) {
    return new ModuleBinder(YamlValue.parse(file.toString(), TextFile.read(file)), library).bind();
  }

  /** As {@link #read}, from memory; {@code name} stands for the file in complaints. */
  public static Module parse(String name, String yaml, PartLibrary library) {
    YamlValue tree = YamlValue.parse(name, yaml);
    Module module = new ModuleBinder(tree, library).bind();
    Schema.MODULE
        .firstProblem(tree.toJson())
        .ifPresent(
            problem -> {
              throw new InputError(name, 0, problem);
            });
    return module;
  }

  /**
   * What may be meant but is worth a word, one line each, in label order: supply pins, controls,
   * lamps and port lines on no net.
   */
  public static List<String> notes(Module module) {
    Set<End> wired = new HashSet<>();
    module.nets().forEach(net -> wired.addAll(net.ends()));
    List<String> notes = new ArrayList<>();
    for (Fitted fitted : module.parts().values()) {
      for (PinSpec pin : fitted.part().pins()) {
        boolean power = pin.kind() == PinKind.SUPPLY || pin.kind() == PinKind.GROUND;
        End end = End.pin(fitted.label(), pin.number());
        if (power && !wired.contains(end)) {
          notes.add(end + " (" + pin.name() + ") is on no net");
        }
      }
    }
    module.terminals().forEach(end -> note(notes, wired, end));
    module.lamps().keySet().forEach(l -> note(notes, wired, new End(End.Kind.LAMP, l, 0)));
    module.passives().ends().forEach(end -> note(notes, wired, end));
    module
        .ports()
        .values()
        .forEach(lines -> lines.forEach(l -> note(notes, wired, new End(End.Kind.PORT, l, 0))));
    return notes;
  }

  private static void note(List<String> notes, Set<End> wired, End end) {
    if (!wired.contains(end)) {
      notes.add(end + " is on no net");
    }
  }
}
