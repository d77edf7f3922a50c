package thudbook.library;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;

/**
 * The names that a typed search may use.
 *
 * @param channels what each name of a gate, a channel or both together stands for; a channel's name
 *     alone may stand for channels of several gates. Names are folded words with single spaces.
 * @param tags by folded name, as they are shown
 * @param people by folded name, as they are shown
 */
public record Vocabulary(
    Map<String, List<ChannelName>> channels, Map<String, String> tags, Map<String, String> people) {

  /** The names of a studio and of what its recipes say. */
  public static Vocabulary of(Collection<Gate> gates, Catalogue catalogue) {
    Map<String, TreeSet<ChannelName>> channels = new TreeMap<>();
    for (String key : catalogue.labels(Facet.CHANNEL).keySet()) {
      ChannelName name = ChannelName.of(key);
      add(channels, name, name.gate());
    }
    for (Gate gate : gates) {
      add(channels, new ChannelName(gate.slug(), null), gate.title());
      add(channels, new ChannelName(gate.slug(), null), gate.slug());
      for (StudioChannel channel : gate.channels()) {
        ChannelName name = new ChannelName(gate.slug(), channel.channel().name());
        add(channels, name, gate.title());
        add(channels, name, gate.slug());
      }
    }
    Map<String, List<ChannelName>> lists = new HashMap<>();
    channels.forEach((words, names) -> lists.put(words, List.copyOf(names)));
    return new Vocabulary(lists, catalogue.labels(Facet.TAG), catalogue.labels(Facet.BY));
  }

  private static void add(
      Map<String, TreeSet<ChannelName>> channels, ChannelName name, String gate) {
    String gateWords = words(gate);
    String channel = name.channel();
    List<String> spoken = new ArrayList<>();
    if (channel == null) {
      spoken.add(gateWords);
    } else {
      spoken.add(words(channel));
      spoken.add(gateWords + " " + words(channel));
    }
    for (String words : spoken) {
      if (!words.isBlank()) {
        channels.computeIfAbsent(words, any -> new TreeSet<>()).add(name);
      }
    }
  }

  /** A name as it is compared: folded words with single spaces. */
  public static String words(String name) {
    return String.join(" ", Words.of(name));
  }
}
