package straywire;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The tutorial page taken apart.
 *
 * @param files text of each file it shows, by the name given before it
 * @param commands what it types, with the lines shown after it
 */
public record Tutorial(Map<String, String> files, List<Command> commands) {
  private static final Pattern FILE = Pattern.compile("(?ms)^`([^`]+)`:\n\n```\\w+\n(.*?)^```$");
  private static final Pattern CONSOLE = Pattern.compile("(?ms)^```console\n(.*?)^```$");
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  /** One line typed, without the program's name, and the lines the page shows after it. */
  public record Command(List<String> words, List<String> shown) {}

  public static Tutorial read() throws IOException {
    String page = Files.readString(Path.of("docs", "tutorial.md"));
    Map<String, String> files = new LinkedHashMap<>();
    Matcher file = FILE.matcher(page);
    while (file.find()) {
      files.put(file.group(1), file.group(2));
    }
    List<Command> commands = new ArrayList<>();
    Matcher console = CONSOLE.matcher(page);
    while (console.find()) {
      for (String line : console.group(1).split("\n")) {
        if (line.startsWith("$ ./straywire ")) {
          commands.add(
              new Command(words(line.substring("$ ./straywire ".length())), new ArrayList<>()));
        } else {
          commands.get(commands.size() - 1).shown().add(line);
        }
      }
    }
    return new Tutorial(files, commands);
  }

  private static List<String> words(String line) {
    return WORD.matcher(line)
        .results()
        .map(r -> r.group(1) == null ? r.group(2) : r.group(1))
        .toList();
  }
}
