package io.rowledger.laws;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Strongly connected components of a directed graph. R. E. Tarjan, SIAM J. Comput. 1(2):146-160, 1972. */
final class Cycles {
    private final Map<String, Set<String>> graph;
    private final Map<String, Integer> index = new HashMap<>();
    private final Map<String, Integer> low = new HashMap<>();
    private final Deque<String> open = new ArrayDeque<>();
    private final List<Set<String>> components = new ArrayList<>();

    private Cycles(Map<String, Set<String>> graph) {
        this.graph = graph;
    }

    /** The components, each with the nodes that reach one another. */
    static List<Set<String>> of(Map<String, Set<String>> graph) {
        Cycles cycles = new Cycles(graph);
        for (String node : graph.keySet()) {
            if (!cycles.index.containsKey(node)) {
                cycles.visit(node);
            }
        }
        return cycles.components;
    }

    private void visit(String node) {
        index.put(node, index.size());
        low.put(node, index.get(node));
        open.push(node);
        for (String next : graph.getOrDefault(node, Set.of())) {
            if (!index.containsKey(next)) {
                visit(next);
                low.merge(node, low.get(next), Math::min);
            } else if (open.contains(next)) {
                low.merge(node, index.get(next), Math::min);
            }
        }
        if (low.get(node).equals(index.get(node))) {
            Set<String> component = new TreeSet<>();
            String member;
            do {
                member = open.pop();
                component.add(member);
            } while (!member.equals(node));
            components.add(component);
        }
    }
}
