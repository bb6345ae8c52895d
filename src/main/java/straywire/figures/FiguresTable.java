package straywire.figures;

import java.util.ArrayList;
import java.util.List;
import straywire.figures.Figures.Way;

/**
 * The figures of many modules, a row each. Keeps the rows alone: what they were measured on would
 * not fit into the memory side by side.
 */
public final class FiguresTable {
  private final List<String> found = new ArrayList<>();
  private final List<String> missed = new ArrayList<>();
  private final List<String> speed = new ArrayList<>();

  /** Takes the figures of a module, and the time of its answers. */
  public void add(Figures figures) {
    String module = figures.workbench().module().name();
    found.add(finding(module, figures));
    List<String> late = figures.tool().missed();
    if (!late.isEmpty()) {
      missed.add(MeasuredPage.filled("- %s: `%s`", module, String.join("`, `", late)));
    }
    WarmTime time = figures.warmTime();
    speed.add(
        MeasuredPage.filled(
            "| %s | %d | %d | %s | %s |",
            module,
            figures.workbench().hypotheses().size(),
            time.wallSeconds().count(),
            milliseconds(time.processorSeconds()),
            milliseconds(time.wallSeconds())));
  }

  private static String finding(String module, Figures figures) {
    FiguresRow tool = figures.tool();
    return MeasuredPage.filled(
        "| %s | %d of %d | %s | %s | %s | %.1f | %.0f, %.0f | %s | %d | %.2f | %.2f | %s |",
        module,
        tool.sittings(),
        figures.workbench().hypotheses().size() - 1,
        MeasuredPage.percent(tool.visible()),
        MeasuredPage.percent(tool.first()),
        MeasuredPage.percent(tool.foundInThree()),
        tool.steps().mean(),
        tool.handSeconds().mean(),
        tool.handSeconds().worst(),
        tool.worst().map(id -> "`" + id + "`").orElse(""),
        figures.compared().get(Way.TOOL).shown().sittings(),
        against(figures, Way.RANDOM),
        against(figures, Way.HALF_SPLIT),
        MeasuredPage.percent(figures.compared().get(Way.HALF_SPLIT).shown().first()));
  }

  private static double against(Figures figures, Way way) {
    double own = figures.compared().get(Way.TOOL).shown().handSeconds().mean();
    double other = figures.compared().get(way).shown().handSeconds().mean();
    return own > 0 ? other / own : 0;
  }

  private static String milliseconds(Quantiles q) {
    return MeasuredPage.filled("%.1f, %.1f", q.p50() * 1000, q.p95() * 1000);
  }

  /**
   * The whole page, in Markdown.
   *
   * @param command the command that makes it again
   * @param complete false when it was stopped before its end
   */
  public String page(String command, boolean complete) {
    Page page = new Page(command);
    if (!complete) {
      page.line("**Stopped before its end: modules that are not listed were not measured.**");
      page.line("");
    }
    page.finding(found);
    page.missed(missed);
    page.speed(speed);
    return page.text();
  }

  private static final class Page extends MeasuredPage {
    Page(String command) {
      super("Figures of all modules", command);
    }

    void finding(List<String> rows) {
      line(
          "Single faults, drawn from all that the rules propose, each put into a simulated bench"
              + " that makes no slips; the by-hand exercise runs until something differs, then the"
              + " steps asked for are answered until the tool stops of itself. What each column"
              + " means is said in [figures.md](figures.md). Seconds are those of the hand.");
      line("");
      line("## Finding single faults");
      line("");
      line(
          "The last four columns are of the faults that the exercise shows and that were looked for"
              + " in every way.");
      line("");
      line(
          "| module | faults looked for | visible | first at the stop | found in 3 | steps, mean |"
              + " seconds, mean, most | took longest | in every way | at random, seconds against"
              + " the tool | half-split, seconds against the tool | half-split, first at the"
              + " stop |");
      line("|---|--:|--:|--:|--:|--:|--:|---|--:|--:|--:|--:|");
      rows.forEach(row -> line("%s", row));
      line("");
    }

    void missed(List<String> rows) {
      line("## Visible, but not first at the stop");
      line("");
      (rows.isEmpty() ? List.of("None of those looked for.") : rows).forEach(r -> line("%s", r));
      line("");
    }

    void speed(List<String> rows) {
      line("## Warm time from an entry to the whole answer");
      line("");
      line(
          "On %d processors, Java %s. Other work on the machine counts in the wall times.",
          Runtime.getRuntime().availableProcessors(), Runtime.version());
      line("");
      line("| module | hypotheses | entries | processor ms, p50, p95 | wall ms, p50, p95 |");
      line("|---|--:|--:|--:|--:|");
      rows.forEach(row -> line("%s", row));
    }
  }
}
