package org.varwright.transients;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A forest over the closed branches and the loop that each other closed branch makes with it.
 *
 * <p>Branches with least inductance go into the forest first, so that every loop is closed by a branch that has some.
 */
final class Loops {
    private final SwitchedCircuit circuit;
    private final List<Integer> links = new ArrayList<>();
    private final int[] parent;
    private final int[] parentBranch;
    private final int[] depth;
    private final List<Integer> order = new ArrayList<>();
    private final double[][] ofBranch;

    Loops(SwitchedCircuit circuit, boolean[] closed) {
        this.circuit = circuit;
        int nodes = circuit.nodes();
        parent = new int[nodes];
        parentBranch = new int[nodes];
        depth = new int[nodes];
        List<List<Integer>> tree = forest(closed);
        walk(tree);
        ofBranch = new double[circuit.branches().size()][links.size()];
        for (int k = 0; k < links.size(); k++) {
            int link = links.get(k);
            ofBranch[link][k] = 1.0;
            close(k, circuit.branches().get(link));
        }
    }

    /** Branches whose current is that of a loop, one a loop. */
    List<Integer> links() {
        return links;
    }

    /** Share of each loop's current in a branch: −1, 0 or 1. */
    double[] of(int branch) {
        return ofBranch[branch];
    }

    /** Nodes, each after the one that it hangs on. */
    List<Integer> nodesInOrder() {
        return order;
    }

    /** The node that a node hangs on; itself for a root. */
    int parent(int node) {
        return parent[node];
    }

    /** The branch between a node and the one it hangs on. */
    int parentBranch(int node) {
        return parentBranch[node];
    }

    private List<List<Integer>> forest(boolean[] closed) {
        List<Branch> branches = circuit.branches();
        List<Integer> candidates = new ArrayList<>();
        List<List<Integer>> tree = new ArrayList<>();
        for (int n = 0; n < circuit.nodes(); n++) {
            tree.add(new ArrayList<>());
        }
        for (int b = 0; b < branches.size(); b++) {
            if (closed[b]) {
                candidates.add(b);
            }
        }
        candidates.sort(
                Comparator.comparingDouble((Integer b) -> branches.get(b).henries())
                        .thenComparing(Comparator.naturalOrder()));
        int[] group = new int[circuit.nodes()];
        for (int n = 0; n < group.length; n++) {
            group[n] = n;
        }
        for (int b : candidates) {
            int from = group[branches.get(b).from()];
            int to = group[branches.get(b).to()];
            if (from == to) {
                links.add(b);
                continue;
            }
            tree.get(branches.get(b).from()).add(b);
            tree.get(branches.get(b).to()).add(b);
            for (int n = 0; n < group.length; n++) {
                group[n] = group[n] == to ? from : group[n];
            }
        }
        links.sort(Comparator.naturalOrder());
        return tree;
    }

    private void walk(List<List<Integer>> tree) {
        boolean[] seen = new boolean[circuit.nodes()];
        for (int root = 0; root < circuit.nodes(); root++) {
            if (seen[root]) {
                continue;
            }
            seen[root] = true;
            parent[root] = root;
            parentBranch[root] = -1;
            int next = order.size();
            order.add(root);
            while (next < order.size()) {
                int node = order.get(next++);
                for (int b : tree.get(node)) {
                    Branch branch = circuit.branches().get(b);
                    int other = branch.from() == node ? branch.to() : branch.from();
                    if (!seen[other]) {
                        seen[other] = true;
                        parent[other] = node;
                        parentBranch[other] = b;
                        depth[other] = depth[node] + 1;
                        order.add(other);
                    }
                }
            }
        }
    }

    /** Follows the loop from the end of its link through the forest back to the start. */
    private void close(int loop, Branch link) {
        int ahead = link.to();
        int behind = link.from();
        while (ahead != behind) {
            if (depth[ahead] >= depth[behind]) {
                Branch up = circuit.branches().get(parentBranch[ahead]);
                ofBranch[parentBranch[ahead]][loop] = up.from() == ahead ? 1.0 : -1.0;
                ahead = parent[ahead];
            } else {
                Branch down = circuit.branches().get(parentBranch[behind]);
                ofBranch[parentBranch[behind]][loop] = down.to() == behind ? 1.0 : -1.0;
                behind = parent[behind];
            }
        }
    }
}
