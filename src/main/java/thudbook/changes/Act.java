package thudbook.changes;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What one change does, all of it or nothing: things are written, thrown into the bin, or taken out
 * of it.
 *
 * @param undoes the number of the change that this one undoes; null: none
 */
public record Act(List<Write<?>> writes, List<Binning> binnings, @Nullable Long undoes) {
  public Act {
    writes = List.copyOf(writes);
    binnings = List.copyOf(binnings);
  }

  /** An act that writes. */
  public static Act of(List<? extends Write<?>> writes) {
    return new Act(List.copyOf(writes), List.of(), null);
  }

  /** What it writes of a noun, in order. */
  @SuppressWarnings("unchecked") // A write has the type of its noun.
  public <T extends Thing> List<Write<T>> writes(Noun<T> noun) {
    List<Write<T>> found = new ArrayList<>();
    for (Write<?> write : writes) {
      if (write.noun().equals(noun)) {
        found.add((Write<T>) write);
      }
    }
    return found;
  }

  /** What it throws into the bin of a noun, or takes out of it. */
  public Stream<Binning> binnings(Noun<?> noun, boolean intoBin) {
    return binnings.stream()
        .filter(binning -> binning.noun().equals(noun) && binning.intoBin() == intoBin);
  }

  /** The same act, which writes others. */
  Act writing(List<Write<?>> others) {
    return new Act(others, binnings, undoes);
  }
}
