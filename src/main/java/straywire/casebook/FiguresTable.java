package straywire.casebook;

import java.util.List;
import java.util.Locale;
import straywire.casebook.Figures.Way;
import straywire.prove.Quantiles;
import straywire.prove.WarmTime;

/** The figures of many modules, a row each, as a page of Markdown. */
public final class FiguresTable extends MeasuredPage {
  private FiguresTable(String command) {
    super("Figures of all modules", command);
  }

  /**
   * The whole page.
   *
   * @param command the command that makes it again
   * @param complete false when it was stopped before its end; the last module is then left out
   */
  public static String of(List<Figures> modules, String command, boolean complete) {
    FiguresTable table = new FiguresTable(command);
    table.head(complete);
    table.finding(modules);
    table.missed(modules);
    if (complete) {
      table.speed(modules);
    }
    return table.text();
  }

  private void head(boolean complete) {
    if (!complete) {
      line("**Stopped before its end: modules that are not listed were not measured.**");
      line("");
    }
    line(
        "Single faults, drawn from all that the rules propose, each put into a simulated bench that"
            + " makes no slips; the by-hand exercise runs until something differs, then the steps"
            + " asked for are answered until the tool stops of itself. What each column means is"
            + " said in [figures.md](figures.md). Seconds are those of the hand.");
    line("");
  }

  private void finding(List<Figures> modules) {
    line("## Finding single faults");
    line("");
    line(
        "The last three columns are of the faults that the exercise shows and that were looked for"
            + " in every way.");
    line("");
    line(
        "| module | faults looked for | visible | first at the stop | found in 3 | steps, mean |"
            + " seconds, mean, most | took longest | at random, seconds against the tool |"
            + " half-split, seconds against the tool | half-split, first at the stop |");
    line("|---|--:|--:|--:|--:|--:|--:|---|--:|--:|--:|");
    for (Figures figures : modules) {
      FiguresRow tool = figures.tool();
      line(
          "| %s | %d of %d | %s | %s | %s | %.1f | %.0f, %.0f | %s | %.2f | %.2f | %s |",
          figures.workbench().module().name(),
          tool.sittings(),
          figures.workbench().hypotheses().size() - 1,
          percent(tool.visible()),
          percent(tool.first()),
          percent(tool.foundInThree()),
          tool.steps().mean(),
          tool.handSeconds().mean(),
          tool.handSeconds().worst(),
          tool.worst().map(id -> "`" + id + "`").orElse(""),
          against(figures, Way.RANDOM),
          against(figures, Way.HALF_SPLIT),
          percent(figures.compared().get(Way.HALF_SPLIT).shown().first()));
    }
    line("");
  }

  private static double against(Figures figures, Way way) {
    double own = figures.compared().get(Way.TOOL).shown().handSeconds().mean();
    double other = figures.compared().get(way).shown().handSeconds().mean();
    return own > 0 ? other / own : 0;
  }

  private void missed(List<Figures> modules) {
    line("## Visible, but not first at the stop");
    line("");
    boolean none = true;
    for (Figures figures : modules) {
      List<String> missed = figures.tool().missed();
      if (!missed.isEmpty()) {
        none = false;
        line("- %s: `%s`", figures.workbench().module().name(), String.join("`, `", missed));
      }
    }
    if (none) {
      line("None of those looked for.");
    }
    line("");
  }

  private void speed(List<Figures> modules) {
    line("## Warm time from an entry to the whole answer");
    line("");
    line(
        "On %d processors, Java %s. Other work on the machine counts in the wall times.",
        Runtime.getRuntime().availableProcessors(), Runtime.version());
    line("");
    line("| module | hypotheses | entries | processor ms, p50, p95 | wall ms, p50, p95 |");
    line("|---|--:|--:|--:|--:|");
    for (Figures figures : modules) {
      WarmTime time = figures.warmTime();
      line(
          "| %s | %d | %d | %s | %s |",
          figures.workbench().module().name(),
          figures.workbench().hypotheses().size(),
          time.wallSeconds().count(),
          milliseconds(time.processorSeconds()),
          milliseconds(time.wallSeconds()));
    }
  }

  private static String milliseconds(Quantiles q) {
    return String.format(Locale.ROOT, "%.1f, %.1f", q.p50() * 1000, q.p95() * 1000);
  }
}
