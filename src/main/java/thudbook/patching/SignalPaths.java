package thudbook.patching;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Rack.Socket;
import thudbook.patching.Cabling.Cable;

/**
 * The ways that signals go through cables and modules; a cable leads on where its input leads to.
 */
final class SignalPaths {
  private final List<Cable> cables;

  /** The cables behind each cable. */
  private final List<List<Integer>> next = new ArrayList<>();

  SignalPaths(List<Cable> cables) {
    this.cables = cables;
    for (Cable cable : cables) {
      List<Integer> behind = new ArrayList<>();
      for (int i = 0; i < cables.size(); i++) {
        if (leads(cable.to(), cables.get(i).from())) {
          behind.add(i);
        }
      }
      next.add(behind);
    }
  }

  private static boolean leads(Optional<Socket> in, Optional<Socket> out) {
    return in.isPresent()
        && out.isPresent()
        && in.get().module().id().equals(out.get().module().id())
        && in.get().port().leadsTo(out.get().port());
  }

  /** Whether a signal comes from one cable to the other, over any number of modules. */
  boolean reaches(int from, int to) {
    Set<Integer> seen = new HashSet<>();
    Deque<Integer> open = new ArrayDeque<>(List.of(from));
    while (!open.isEmpty()) {
      int cable = open.pop();
      if (cable == to) {
        return true;
      }
      if (seen.add(cable)) {
        next.get(cable).forEach(open::push);
      }
    }
    return false;
  }

  /**
   * Each cable behind those that feed it, otherwise as listed; what is left of a loop as listed.
   */
  List<Integer> order() {
    int[] waiting = new int[cables.size()];
    next.forEach(behind -> behind.forEach(i -> waiting[i]++));
    TreeSet<Integer> left = new TreeSet<>();
    for (int i = 0; i < waiting.length; i++) {
      left.add(i);
    }
    List<Integer> order = new ArrayList<>();
    while (!left.isEmpty()) {
      int first = left.stream().filter(i -> waiting[i] == 0).findFirst().orElse(left.first());
      left.remove(first);
      order.add(first);
      next.get(first).forEach(i -> waiting[i]--);
    }
    return order;
  }

  /** The cables of a loop, if there is one, beginning with the one that is listed first. */
  Optional<List<Integer>> loop() {
    for (int i = 0; i < cables.size(); i++) {
      List<Integer> way = wayBack(i);
      if (way != null) {
        return Optional.of(way);
      }
    }
    return Optional.empty();
  }

  /** The shortest way from a cable back to itself; null: there is none. */
  private @Nullable List<Integer> wayBack(int start) {
    Deque<List<Integer>> open = new ArrayDeque<>();
    Set<Integer> seen = new HashSet<>();
    open.add(List.of(start));
    while (!open.isEmpty()) {
      List<Integer> way = open.remove();
      for (int behind : next.get(way.get(way.size() - 1))) {
        if (behind == start) {
          return way;
        }
        if (seen.add(behind)) {
          List<Integer> longer = new ArrayList<>(way);
          longer.add(behind);
          open.add(longer);
        }
      }
    }
    return null;
  }
}
