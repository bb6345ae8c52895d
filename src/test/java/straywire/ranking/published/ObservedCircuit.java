package straywire.ranking.published;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.GZIPInputStream;
import straywire.ranking.Posterior;

/**
 * A circuit with observed vectors, read from a weighted clause file of the mbd-mobs data set. A
 * gate is named by its variable that says "healthy"; its output is the variable before that one.
 *
 * <p>Levels are kept as two words a variable, "may be 0" and "may be 1", one bit an observation.
 */
final class ObservedCircuit {
  /** One clause of a gate: when none of the other literals holds, the output has this level. */
  private record Clause(int level, int[] others) {}

  private record Gate(int health, List<Clause> clauses) {
    int output() {
      return health - 1;
    }
  }

  /** May be 0, may be 1; index is the variable. */
  private record Levels(long[] low, long[] high) {}

  private final List<Gate> gates = new ArrayList<>();
  private final List<int[]> observations = new ArrayList<>();
  private final int variables;

  private ObservedCircuit(String text) {
    TreeMap<Integer, List<int[]>> byHealth = new TreeMap<>();
    List<int[]> hard = new ArrayList<>();
    for (String line : text.lines().toList()) {
      if (line.startsWith("o ")) {
        observations.add(numbers(line.substring(2)));
      } else if (line.startsWith("1 ")) {
        byHealth.put(numbers(line)[1], new ArrayList<>());
      } else if (!line.startsWith("c") && !line.startsWith("p")) {
        hard.add(numbers(line));
      }
    }
    for (int[] clause : hard) {
      int health =
          Arrays.stream(clause).filter(l -> byHealth.containsKey(-l)).findFirst().orElseThrow();
      byHealth.get(-health).add(Arrays.stream(clause).skip(1).filter(l -> l != health).toArray());
    }
    Set<Integer> placed = new HashSet<>();
    byHealth.keySet().forEach(health -> place(health, byHealth, placed));
    variables = byHealth.lastKey() + 1;
  }

  static ObservedCircuit published(String instance) {
    String path = "/published/mobs/" + instance + ".wcnf.gz";
    try (InputStream in = new GZIPInputStream(ObservedCircuit.class.getResourceAsStream(path))) {
      return new ObservedCircuit(new String(in.readAllBytes(), StandardCharsets.US_ASCII));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Numbers of a line without the 0 at its end. */
  private static int[] numbers(String line) {
    int[] all = Arrays.stream(line.trim().split(" ")).mapToInt(Integer::parseInt).toArray();
    return Arrays.copyOf(all, all.length - 1);
  }

  /** Places a gate after the gates it reads. */
  private void place(int health, Map<Integer, List<int[]>> byHealth, Set<Integer> placed) {
    if (!byHealth.containsKey(health) || !placed.add(health)) {
      return;
    }
    int output = health - 1;
    List<Clause> clauses = new ArrayList<>();
    for (int[] clause : byHealth.get(health)) {
      int[] others = Arrays.stream(clause).filter(l -> Math.abs(l) != output).toArray();
      for (int other : others) {
        place(Math.abs(other) + 1, byHealth, placed);
      }
      boolean high = Arrays.stream(clause).anyMatch(l -> l == output);
      clauses.add(new Clause(high ? 1 : 0, others));
    }
    gates.add(new Gate(health, clauses));
  }

  /**
   * Levels in 64 observations.
   *
   * @param held level of each gate held, 2 for either
   */
  private Levels levels(int first, Map<Integer, Integer> held) {
    Levels levels = new Levels(new long[variables], new long[variables]);
    for (int i = 0; i < Math.min(Long.SIZE, observations.size() - first); i++) {
      for (int literal : observations.get(first + i)) {
        (literal < 0 ? levels.low : levels.high)[Math.abs(literal)] |= 1L << i;
      }
    }
    for (Gate gate : gates) {
      long low = 0;
      long high = 0;
      int hold = held.getOrDefault(gate.health, -1);
      if (hold >= 0) {
        low = hold == 1 ? 0 : -1;
        high = hold == 0 ? 0 : -1;
      } else {
        for (Clause clause : gate.clauses) {
          long forced = -1;
          for (int literal : clause.others) {
            forced &= literal > 0 ? levels.low[literal] : levels.high[-literal];
          }
          low |= clause.level == 0 ? forced : 0;
          high |= clause.level == 1 ? forced : 0;
        }
      }
      levels.low[gate.output()] = low;
      levels.high[gate.output()] = high;
    }
    return levels;
  }

  /** Observations, of 64, whose outputs these levels allow; all ones beyond the last one. */
  private long allowed(int first, Levels levels) {
    long allowed = -1;
    for (int i = 0; i < Math.min(Long.SIZE, observations.size() - first); i++) {
      for (int literal : observations.get(first + i)) {
        long may = literal < 0 ? levels.low[-literal] : levels.high[literal];
        if ((may >>> i & 1) == 0) {
          allowed &= ~(1L << i);
        }
      }
    }
    return allowed;
  }

  /** Whether some behaviour of these gates, free in every observation, explains all of them. */
  private boolean explains(Set<Integer> broken) {
    for (int first = 0; first < observations.size(); first += Long.SIZE) {
      long explained = 0;
      for (int choice = 0; choice < 1 << broken.size(); choice++) {
        Map<Integer, Integer> held = new TreeMap<>();
        for (int health : broken) {
          held.put(health, choice >> held.size() & 1);
        }
        explained |= allowed(first, levels(first, held));
      }
      if (explained != -1) {
        return false;
      }
    }
    return true;
  }

  /** Whether the gates outside of a set contradict some observation whatever the set does. */
  private boolean contradicted(Set<Integer> free) {
    Map<Integer, Integer> held = new TreeMap<>();
    free.forEach(health -> held.put(health, 2));
    for (int first = 0; first < observations.size(); first += Long.SIZE) {
      if (allowed(first, levels(first, held)) != -1) {
        return true;
      }
    }
    return false;
  }

  /** Gates outside of a set that does not explain, of which every diagnosis has at least one. */
  private Set<Integer> conflict(Set<Integer> broken) {
    Set<Integer> free = new TreeSet<>(broken);
    Set<Integer> conflict = new TreeSet<>();
    gates.forEach(gate -> conflict.add(gate.health));
    conflict.removeAll(broken);
    if (contradicted(free)) {
      for (Gate gate : gates) {
        free.add(gate.health);
        if (contradicted(free)) {
          conflict.remove(gate.health);
        } else if (!broken.contains(gate.health)) {
          free.remove(gate.health);
        }
      }
    }
    return conflict;
  }

  /**
   * Smallest sets of gates, of at most so many, that explain every observation. Sets are tried by
   * Reiter's tree (1987): a set that does not explain is grown by each gate of a conflict in turn.
   * Which of the sets tried stay possible is the program's posterior with likelihoods 0 and 1.
   */
  Set<Set<Integer>> minimalDiagnoses(int most) {
    List<Set<Integer>> tried = new ArrayList<>();
    List<Double> logLikelihoods = new ArrayList<>();
    Set<Set<Integer>> seen = new HashSet<>();
    List<Set<Integer>> explaining = new ArrayList<>();
    ArrayDeque<Set<Integer>> next = new ArrayDeque<>(List.of(new TreeSet<>()));
    while (!next.isEmpty()) {
      Set<Integer> broken = next.remove();
      if (!seen.add(broken) || explaining.stream().anyMatch(broken::containsAll)) {
        continue;
      }
      boolean explains = explains(broken);
      tried.add(broken);
      logLikelihoods.add(explains ? 0 : Double.NEGATIVE_INFINITY);
      if (explains) {
        explaining.add(broken);
      } else if (broken.size() < most) {
        for (int gate : conflict(broken)) {
          Set<Integer> grown = new TreeSet<>(broken);
          grown.add(gate);
          next.add(grown);
        }
      }
    }
    double[] posterior =
        Posterior.of(
            tried.stream().mapToDouble(set -> Math.pow(0.01, set.size())).toArray(),
            logLikelihoods.stream().mapToDouble(Double::doubleValue).toArray());
    Set<Set<Integer>> diagnoses = new HashSet<>();
    for (int i = 0; i < posterior.length; i++) {
      if (posterior[i] > 0) {
        diagnoses.add(tried.get(i));
      }
    }
    return diagnoses;
  }
}
