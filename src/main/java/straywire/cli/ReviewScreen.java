package straywire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import straywire.advice.Caution;
import straywire.module.OnPaper.Explained;
import straywire.pages.Wrapped;
import straywire.review.Amounts;
import straywire.review.Finding;
import straywire.review.Review;
import straywire.review.Severity;

/** Prints a wiring review, for a hand that is busy, or for a program. */
final class ReviewScreen {
  private static final String INDENT = "       ";

  private final PrintWriter out;

  ReviewScreen(PrintWriter out) {
    this.out = out;
  }

  void text(Review review) {
    out.println(review.module() + ": " + verdict(review));
    byRule(review.open()).forEach(this::findings);
    if (!review.meant().isEmpty() || !review.idle().isEmpty()) {
      out.println();
    }
    for (Review.Meant meant : review.meant()) {
      wrapped(
          "meant  ",
          meant.finding().place() + " (" + meant.finding().rule() + "): " + meant.because());
    }
    for (Explained idle : review.idle()) {
      wrapped(
          "idle   ",
          idle.place()
              + " ("
              + idle.finding()
              + ") is explained, but is no note;"
              + " take the explanation out");
    }
    out.println();
    wrapped(
        "Supply ",
        String.format(
            "about %s, at most %s; the rails lose about %s.",
            Amounts.milliamps(review.supply().usualMilliamps()),
            Amounts.milliamps(review.supply().mostMilliamps()),
            Amounts.millivolts(review.supply().dropMillivolts())));
    for (Caution caution : review.cautions()) {
      wrapped("Care   ", caution.text());
    }
  }

  /** Findings of one rule, the worst rule first. */
  private static Map<String, List<Finding>> byRule(List<Finding> findings) {
    Map<String, List<Finding>> byRule = new LinkedHashMap<>();
    findings.forEach(f -> byRule.computeIfAbsent(f.rule(), r -> new ArrayList<>()).add(f));
    return byRule;
  }

  /** The first in full, of the others only the place: a whole bus would fill the screen. */
  private void findings(String rule, List<Finding> findings) {
    Finding first = findings.get(0);
    out.println();
    out.printf("%-7s%s (%s)%n", first.severity().word(), first.place(), rule);
    paragraph(first.reason());
    paragraph("So: " + first.consequence());
    paragraph("Do: " + first.cure());
    if (findings.size() > 1) {
      paragraph(
          "The same at "
              + findings.stream().skip(1).map(Finding::place).collect(Collectors.joining(", "))
              + ".");
    }
  }

  private static String verdict(Review review) {
    if (review.clean()) {
      return review.meant().isEmpty()
          ? "nothing wrong on paper"
          : "nothing wrong on paper; notes explained: " + review.meant().size();
    }
    if (review.open().isEmpty()) {
      return "an explanation matches nothing";
    }
    List<String> counts = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      if (review.count(severity) > 0) {
        counts.add(review.count(severity) + " " + severity.word());
      }
    }
    String advice = review.count(Severity.STOP) > 0 ? ". Do not switch on" : "";
    return String.join(", ", counts) + advice;
  }

  private void paragraph(String text) {
    wrapped(INDENT, text);
  }

  private void wrapped(String start, String text) {
    Wrapped.lines(start, INDENT, text, Screen.PAGE_COLUMNS).forEach(out::println);
  }

  void json(Review review) {
    ObjectNode line = new ObjectMapper().createObjectNode();
    line.put("module", review.module());
    line.put("clean", review.clean());
    ArrayNode findings = line.putArray("findings");
    review.open().forEach(finding -> put(findings.addObject(), finding));
    ArrayNode explained = line.putArray("explained");
    for (Review.Meant meant : review.meant()) {
      ObjectNode one = explained.addObject();
      put(one, meant.finding());
      one.put("because", meant.because());
    }
    ArrayNode idle = line.putArray("matches-nothing");
    for (Explained one : review.idle()) {
      idle.addObject().put("finding", one.finding()).put("place", one.place());
    }
    ArrayNode cautions = line.putArray("cautions");
    for (Caution caution : review.cautions()) {
      cautions
          .addObject()
          .put("rule", caution.rule())
          .put("text", caution.text())
          .put("urgent", caution.urgent());
    }
    line.putObject("supply")
        .put("usual-milliamps", Math.round(review.supply().usualMilliamps()))
        .put("most-milliamps", Math.round(review.supply().mostMilliamps()))
        .put("rail-drop-millivolts", Math.round(review.supply().dropMillivolts()));
    out.println(line);
  }

  private static void put(ObjectNode into, Finding finding) {
    into.put("finding", finding.rule())
        .put("severity", finding.severity().word())
        .put("place", finding.place())
        .put("reason", finding.reason())
        .put("consequence", finding.consequence())
        .put("cure", finding.cure());
  }
}
