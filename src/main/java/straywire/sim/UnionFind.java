package straywire.sim;

/** Disjoint sets over 0..n-1. */
public final class UnionFind {
  private final int[] parent;

  /** {@code size} sets of one item each. */
  public UnionFind(int size) {
    parent = new int[size];
    for (int i = 0; i < size; i++) {
      parent[i] = i;
    }
  }

  private int root(int item) {
    int root = item;
    while (parent[root] != root) {
      root = parent[root];
    }
    parent[item] = root;
    return root;
  }

  /** Makes the sets of two items one. */
  public void join(int a, int b) {
    int rootA = root(a);
    int rootB = root(b);
    // The smaller number stays root, so that numbering does not depend on the order of joins.
    parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
  }

  int count() {
    int count = 0;
    for (int i = 0; i < parent.length; i++) {
      count += root(i) == i ? 1 : 0;
    }
    return count;
  }

  /** For each item the number of its set; sets are numbered by their smallest item. */
  public int[] numbered() {
    int[] number = new int[parent.length];
    int next = 0;
    for (int i = 0; i < parent.length; i++) {
      number[i] = root(i) == i ? next++ : number[root(i)];
    }
    return number;
  }
}
