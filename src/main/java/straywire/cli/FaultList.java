package straywire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.List;
import java.util.regex.Pattern;
import straywire.faults.Hypothesis;
import straywire.pages.Wrapped;
import straywire.review.Amounts;
import straywire.sitting.SituationJson;

/** Prints what can be wrong with a module before anything was seen of it. */
final class FaultList {
  private static final String INDENT = "    ";

  private final String module;
  private final List<Hypothesis> all;

  /** Faults in the order of their ids' mechanisms, as the rules suggest them. */
  FaultList(String module, List<Hypothesis> all) {
    this.module = module;
    this.all = List.copyOf(all);
  }

  /** Those that speak of every one of {@code words}, in the id or in what a person says. */
  FaultList about(List<String> words) {
    List<Pattern> patterns =
        words.stream()
            .map(
                word ->
                    Pattern.compile(
                        "(?<![A-Za-z0-9])" + Pattern.quote(word) + "(?![A-Za-z0-9])",
                        Pattern.CASE_INSENSITIVE))
            .toList();
    return new FaultList(
        module,
        all.stream().filter(fault -> patterns.stream().allMatch(p -> speaksOf(fault, p))).toList());
  }

  private static boolean speaksOf(Hypothesis fault, Pattern word) {
    return word.matcher(fault.id()).find() || word.matcher(fault.words()).find();
  }

  boolean isEmpty() {
    return all.isEmpty();
  }

  void text(PrintWriter out) {
    out.println(module + ": " + Amounts.counted(all.size(), "fault"));
    for (Hypothesis fault : all) {
      out.println();
      out.println(fault.id());
      Wrapped.lines(INDENT, INDENT, fault.words() + ".", Screen.PAGE_COLUMNS).forEach(out::println);
    }
  }

  void json(PrintWriter out) {
    ObjectNode line = new ObjectMapper().createObjectNode();
    line.put("module", module);
    ArrayNode faults = line.putArray("faults");
    all.forEach(fault -> faults.add(SituationJson.fault(fault)));
    out.println(line);
  }
}
