package straywire.figures;

import java.lang.management.ManagementFactory;
import java.util.Map;
import java.util.stream.Collectors;
import straywire.figures.Figures.Way;

/** The figures of one module as a page of Markdown. */
public final class FiguresPage extends MeasuredPage {
  private final Figures figures;

  private FiguresPage(Figures figures, String command) {
    super("Figures: " + figures.workbench().module().name(), command);
    this.figures = figures;
  }

  /**
   * The whole page.
   *
   * @param command the command that makes it again
   * @param complete false when it was stopped before its end
   */
  public static String of(Figures figures, String command, boolean complete) {
    FiguresPage page = new FiguresPage(figures, command);
    page.head(complete);
    page.finding();
    page.ways();
    page.choice();
    page.calibration();
    if (complete) {
      page.speed();
    }
    page.mechanisms();
    return page.text();
  }

  private void head(boolean complete) {
    if (!complete) {
      line(
          "**Stopped before its end: the figures below are of the faults looked for until then, a fair"
              + " sample; speed and memory were not measured.**");
      line("");
    }
    line(
        "Each fault is put into a simulated bench that makes no slips. The by-hand exercise runs"
            + " until something differs from a sound module; then the steps asked for are"
            + " answered until the tool stops of itself, or after %d steps. Eyes, meter and spare"
            + " parts are at hand. Seconds are those of the hand, from `tables/seconds.yaml`."
            + " Contents at power-up and random steps come from the seed. A group is what no step"
            + " tells apart, or what has one and the same cure.",
        Trial.MOST_STEPS);
    line("");
  }

  private void finding() {
    FiguresRow tool = figures.tool();
    line("## Finding single faults");
    line("");
    line("| | |");
    line("|---|---|");
    line(
        "| single faults simulated, of %d | %d |",
        figures.workbench().hypotheses().size() - 1, tool.sittings());
    line(
        "| visible: the exercise shows it, or the tool finds it all the same | %s |",
        percent(tool.visible()));
    line("| of these, group first at the tool's own stop | %s |", percent(tool.first()));
    line("| of these, group first after at most three steps | %s |", percent(tool.foundInThree()));
    line("| steps: mean, p95, most | %s |", three(tool.steps()));
    line("| hand seconds: mean, p95, most | %s |", three(tool.handSeconds()));
    tool.worst().ifPresent(id -> line("| took longest | `%s` |", id));
    line("");
    if (!tool.missed().isEmpty()) {
      line("Visible, but not first at the stop: `%s`.", String.join("`, `", tool.missed()));
      line("");
    }
  }

  private static String three(Quantiles q) {
    return filled("%.1f, %.0f, %.0f", q.mean(), q.p95(), q.worst());
  }

  private void ways() {
    line("## Against other ways of choosing a step");
    line("");
    line(
        "Faults that the exercise shows, the same opening logs, the same stop; only the choice"
            + " differs. *At random*: any step of the menu that tells at least 0.004 bits. *Half-split*: the"
            + " leg or row that is as likely to read as meant as not, whatever it costs; when no"
            + " reading tells anything, the step with the most bits.");
    line("");
    line(
        "| way | faults | first at the stop | found in 3 | mean steps | mean seconds"
            + " | p95 seconds | seconds against the tool |");
    line("|---|--:|--:|--:|--:|--:|--:|--:|");
    double own = figures.compared().get(Way.TOOL).shown().handSeconds().mean();
    for (Map.Entry<Way, FiguresRow> entry : figures.compared().entrySet()) {
      FiguresRow row = entry.getValue().shown();
      line(
          "| %s | %d | %s | %s | %.1f | %.0f | %.0f | %.2f |",
          entry.getKey().words(),
          row.sittings(),
          percent(row.first()),
          percent(row.foundInThree()),
          row.steps().mean(),
          row.handSeconds().mean(),
          row.handSeconds().p95(),
          own > 0 ? row.handSeconds().mean() / own : 0);
    }
    line("");
  }

  private void choice() {
    Quantiles loss = figures.stepLoss();
    line("## What the choice of a step gives away");
    line("");
    line(
        "Steps are worked out on the hypotheses that still matter, 128 at most. Held against the"
            + " same search on all hypotheses, over %d steps: the chosen step was the best in %s;"
            + " its bits per second fell short by %.2f %% on average, %.1f %% at p95, %.1f %% at"
            + " most.",
        loss.count(),
        percent(figures.stepLossFree()),
        loss.mean() * 100,
        loss.p95() * 100,
        loss.worst() * 100);
    line("");
    Quantiles tree = figures.greedyOverBest();
    line(
        "The optimum over whole sittings is out of reach: handling changes what memories hold."
            + " It was computed for readings that leave the module as it is (meter, rounds of"
            + " the meter, looks), taken as certain, over the twelve most probable groups, where"
            + " every order can be tried. Over %d such positions, taking the most bits per second"
            + " each time costs %.3f times the hand's time of the cheapest way on average, %.3f"
            + " at p95, %.3f at most.",
        tree.count(), tree.mean(), tree.p95(), tree.worst());
    line("");
  }

  private void calibration() {
    line("## Can the probabilities be believed?");
    line("");
    line(
        "Every suspect of at least 1 %% at every ranking of the tool's sittings in which the"
            + " exercise showed something; each fault counts as often as its prior says. The"
            + " simulated bench makes no slips and the model allows for some, so a stated"
            + " probability may be lower than the share that is right.");
    line("");
    line("| stated | suspects | mean stated | share right |");
    line("|---|--:|--:|--:|");
    for (Calibration.Bin bin : figures.calibration()) {
      line(
          "| %.0f to %.0f %% | %d | %s | %s |",
          bin.from() * 100,
          bin.to() * 100,
          bin.count(),
          percent(bin.stated()),
          percent(bin.right()));
    }
    line("");
  }

  private void speed() {
    WarmTime time = figures.warmTime();
    Quantiles cpu = time.processorSeconds();
    Quantiles wall = time.wallSeconds();
    Runtime machine = Runtime.getRuntime();
    line("## Speed and memory");
    line("");
    line(
        "On %d processors, Java %s (%s), at most %d MiB of heap. Other work on the machine counts"
            + " in the wall times.",
        machine.availableProcessors(), Runtime.version(), options(), machine.maxMemory() >> 20);
    line("");
    line("| | |");
    line("|---|---|");
    line(
        "| from an entry to the whole answer (ranking, next step, lamps, advice), warm, over %d"
            + " entries: processor time p50, p95, most | %s |",
        cpu.count(), milliseconds(cpu));
    line("| the same, wall time | %s |", milliseconds(wall));
    line(
        "| most heap held after a sitting, garbage taken out | %.0f MiB |",
        time.heldBytes() / 1048576.0);
    line("| lanes x moves of a control, per second | %.0f |", figures.lanesTimesMoves());
    line("");
    line(
        "A one-shot ranking from a cold start is measured from outside, a few times after the first:"
            + " `/usr/bin/time -v ./straywire rank cases/beat-memory/write-wire-missing.jsonl`."
            + " The pieces of the warm path alone are measured by the benchmarks that"
            + " [measuring.md](measuring.md) names.");
    line("");
  }

  /** Those options of the virtual machine that decide how fast it is. */
  private static String options() {
    String options =
        ManagementFactory.getRuntimeMXBean().getInputArguments().stream()
            .filter(o -> o.startsWith("-XX:Tiered") || o.startsWith("-XX:+Use"))
            .collect(Collectors.joining(" "));
    return options.isEmpty() ? "no options" : options;
  }

  private static String milliseconds(Quantiles q) {
    return filled("%.1f, %.1f, %.1f ms", q.p50() * 1000, q.p95() * 1000, q.worst() * 1000);
  }

  private void mechanisms() {
    line("## Hypotheses by mechanism");
    line("");
    line("All that the rules propose for this module and the mechanisms allow, none for padding.");
    line("");
    line("| mechanism | hypotheses |");
    line("|---|--:|");
    figures.byMechanism().forEach((m, count) -> line("| %s | %d |", m.slug(), count));
    line("| **all** | %d |", figures.workbench().hypotheses().size());
  }
}
