package straywire.advice;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import straywire.faults.Suggestion;
import straywire.module.BenchLog;
import straywire.module.Module;
import straywire.sim.Signal;

/**
 * The trade's knowledge as rules: proposes what may be wrong with a module, and advises at the
 * bench. Loading takes about half a second; keep one for the life of the program. Not for use by
 * several threads at once.
 */
public final class RuleBase {
  static final String PROPOSAL = "straywire.rules.proposal";
  static final String ADVICE = "straywire.rules.advice";

  /** Both load, one after the other, while the module and its log are being read. */
  private final CompletableFuture<RuleSessions> proposal =
      CompletableFuture.supplyAsync(() -> RuleSessions.compiled(PROPOSAL));

  private final CompletableFuture<RuleSessions> advice =
      proposal.thenApplyAsync(first -> RuleSessions.compiled(ADVICE));

  /** What was last advised on: a sitting asks about the same module each time. */
  private Optional<Circuit> latest = Optional.empty();

  private record Circuit(Module module, List<WiringFact> facts) {}

  private RuleBase() {}

  /** The rules that ship with the tool. */
  public static RuleBase shipped() {
    return new RuleBase();
  }

  /**
   * Every mechanism at every place where the rules find it plausible on {@code module}, sorted by
   * rule, mechanism and places; the same list in every run.
   */
  public List<Suggestion> propose(Module module) {
    List<Suggestion> suggestions =
        of(Suggestion.class, proposal.join().conclude(WiringFacts.of(module).all())).toList();
    return new Proposals(module).once(suggestions);
  }

  /**
   * What to say, and how to weigh what cannot be simulated, after the latest entry of {@code log}.
   * Weights are those of the whole log, by entry; everything else is about the latest entry or the
   * leading suspects.
   *
   * @param leaders the leading suspects, best first; may be empty
   * @param expected what each net of the healthy module would be as the controls stand, by net
   *     name; may be empty
   */
  public Advice advise(
      Module module, BenchLog log, Collection<Leader> leaders, Map<String, Signal> expected) {
    List<WiringFact> circuit = circuit(module);
    List<Object> conclusions =
        advice
            .join()
            .conclude(
                Stream.concat(
                        circuit.stream(),
                        LogFacts.of(module, circuit, log, leaders, expected).stream())
                    .toList());
    return new Advice(
        of(Weigh.class, conclusions)
            .sorted(
                Comparator.comparing(Weigh::rule)
                    .thenComparing(Weigh::entry)
                    .thenComparing(Weigh::place)
                    .thenComparing(w -> w.mechanisms().toString()))
            .toList(),
        of(Normal.class, conclusions)
            .sorted(
                Comparator.comparing(Normal::rule)
                    .thenComparing(Normal::entry)
                    .thenComparing(Normal::text))
            .toList(),
        of(Caution.class, conclusions).sorted(Caution.ORDER).toList(),
        of(Hint.class, conclusions)
            .sorted(Comparator.comparing(Hint::rule).thenComparing(Hint::text))
            .toList(),
        of(PowerOffFirst.class, conclusions).findAny().isPresent());
  }

  /** The sentence of every rule by its id, for reports that name rules. */
  public SortedMap<String, String> sentences() {
    SortedMap<String, String> sentences = new TreeMap<>(proposal.join().sentences());
    sentences.putAll(advice.join().sentences());
    return sentences;
  }

  private List<WiringFact> circuit(Module module) {
    if (latest.filter(c -> c.module().equals(module)).isEmpty()) {
      latest = Optional.of(new Circuit(module, WiringFacts.of(module).circuit()));
    }
    return latest.orElseThrow().facts();
  }

  private static <T> Stream<T> of(Class<T> kind, List<Object> conclusions) {
    return conclusions.stream().filter(kind::isInstance).map(kind::cast);
  }
}
