package straywire.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.format.InputError;
import straywire.format.Nearest;
import straywire.pages.PartJson;
import straywire.pages.PartPages;
import straywire.pages.PartSearch;
import straywire.pages.PartText;
import straywire.parts.Family;
import straywire.parts.OwnParts;
import straywire.parts.Part;
import straywire.parts.PartGroup;
import straywire.parts.PartLibrary;
import straywire.parts.ShippedParts;

@Command(
    name = "part",
    description = "Lists, searches and shows parts and families.",
    mixinStandardHelpOptions = true)
final class PartCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Option(
      names = "--parts",
      paramLabel = "PATH",
      description = "a part file of your own, or a folder of them, to take as well")
  private Optional<Path> own = Optional.empty();

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(),
        "say what to do: list, search WORDS, show NUMBER, family NAME, check FILE, or pages");
  }

  /** The shipped parts with those named here, or else with the user's own. */
  private PartLibrary library() {
    return own.<PartLibrary>map(place -> OwnParts.beside(new ShippedParts(), place))
        .orElseGet(() -> Home.usual().parts());
  }

  private void print(List<String> lines) {
    PrintWriter out = spec.commandLine().getOut();
    lines.forEach(out::println);
    out.flush();
  }

  private void print(ObjectNode json) {
    spec.commandLine().getOut().println(json);
    spec.commandLine().getOut().flush();
  }

  private PartText text(PartLibrary library) {
    return new PartText(library, Glyphs.of(Straywire.charset()).notch);
  }

  @Command(description = "Lists all parts by function group.", mixinStandardHelpOptions = true)
  int list(
      @Parameters(
              arity = "0..1",
              paramLabel = "GROUP",
              description = "one group only, such as counter")
          Optional<String> group,
      @Option(names = "--json", description = "for programs") boolean asJson) {
    PartLibrary library = library();
    Optional<PartGroup> only = group.map(PartCommand::group);
    List<Part> parts =
        new PartSearch(library)
            .all().stream()
                .filter(
                    part ->
                        only.isEmpty()
                            || library.notes(part.type()).orElseThrow().group() == only.get())
                .toList();
    if (asJson) {
      print(new PartJson(library).listed(parts));
    } else {
      print(text(library).grouped(parts));
      if (only.isEmpty()) {
        print(List.of("", "Families: " + String.join(", ", library.families())));
      }
    }
    return ExitCode.OK.number();
  }

  private static PartGroup group(String word) {
    return PartGroup.of(word)
        .orElseThrow(
            () ->
                new InputError(
                    word, 0, "no such group of parts" + Nearest.hint(word, PartGroup.words())));
  }

  @Command(
      description = "Finds parts by number, or words of title, function, notes, or pin names.",
      mixinStandardHelpOptions = true)
  int search(
      @Parameters(arity = "1..*", paramLabel = "WORDS", description = "all must fit")
          List<String> words,
      @Option(names = "--json", description = "for programs") boolean asJson) {
    PartLibrary library = library();
    List<Part> found = new PartSearch(library).search(words);
    if (asJson) {
      print(new PartJson(library).listed(found));
    } else {
      print(text(library).listed(found));
    }
    return ExitCode.OK.number();
  }

  @Command(
      description = "Shows a part: pins, function, open inputs, mistakes, makers' differences.",
      mixinStandardHelpOptions = true)
  int show(
      @Parameters(paramLabel = "NUMBER", description = "such as 74x189, 74LS189 or 189")
          String number,
      @Option(names = "--json", description = "for programs") boolean asJson) {
    PartLibrary library = library();
    Part part = new PartSearch(library).numbered(number);
    if (asJson) {
      print(new PartJson(library).shown(part));
    } else {
      print(text(library).shown(part));
    }
    return ExitCode.OK.number();
  }

  @Command(
      description = "Shows the electrical habits of a family, with sources.",
      mixinStandardHelpOptions = true)
  int family(
      @Parameters(paramLabel = "NAME", description = "such as LS or HC") String name,
      @Option(names = "--json", description = "for programs") boolean asJson) {
    PartLibrary library = library();
    Family family =
        library.families().stream()
            .filter(each -> each.equalsIgnoreCase(name))
            .findFirst()
            .flatMap(library::family)
            .orElseThrow(
                () ->
                    new InputError(
                        name,
                        0,
                        "no such family; known are " + String.join(", ", library.families())));
    if (asJson) {
      print(new PartJson(library).shown(family));
    } else {
      print(text(library).shown(family));
    }
    return ExitCode.OK.number();
  }

  @Command(
      description = "Checks a part file: reads it and works it through its function table.",
      mixinStandardHelpOptions = true)
  int check(@Parameters(paramLabel = "FILE", description = "a part file") Path file) {
    PartLibrary shipped = new ShippedParts();
    List<String> types = OwnParts.beside(shipped, file).types();
    for (String type : types) {
      if (!shipped.types().contains(type)) {
        print(List.of(file + ": fine. " + type + " does what its function table says."));
      }
    }
    return ExitCode.OK.number();
  }

  @Command(
      description = "Writes a page with a drawing for each part that ships.",
      mixinStandardHelpOptions = true)
  int pages(
      @Option(
              names = "--write",
              required = true,
              paramLabel = "DIR",
              description = "the folder for the pages; docs/parts are the shipped ones")
          Path folder) {
    // Without a wish for others these are the same pages for everybody.
    PartLibrary library = own.isPresent() ? library() : new ShippedParts();
    Map<String, String> pages = PartPages.of(library);
    PartPages.write(pages, folder);
    print(List.of("Wrote " + pages.size() + " files to " + folder));
    return ExitCode.OK.number();
  }
}
