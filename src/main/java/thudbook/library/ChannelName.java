package thudbook.library;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;

/**
 * A gate, or one of its channels, as recipes name it.
 *
 * @param gate the gate's slug of today; in a recipe that names a gate that the studio lacks, its
 *     own words
 * @param channel null: any
 */
public record ChannelName(String gate, @Nullable String channel)
    implements Comparable<ChannelName> {
  private static final Comparator<ChannelName> ORDER =
      Comparator.comparing(ChannelName::gate)
          .thenComparing(ChannelName::channel, Comparator.nullsFirst(Comparator.naturalOrder()));

  /** The gate, and the channel behind a slash. */
  public String text() {
    return channel == null ? gate : gate + "/" + channel;
  }

  /** Reads what {@link #text} wrote. */
  public static ChannelName of(String text) {
    int slash = text.indexOf('/');
    return slash < 0
        ? new ChannelName(text, null)
        : new ChannelName(text.substring(0, slash), text.substring(slash + 1));
  }

  @Override
  public int compareTo(ChannelName other) {
    return ORDER.compare(this, other);
  }
}
