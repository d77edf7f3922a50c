package thudbook.api;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.library.typed.SearchAddress;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Reads the query of an address and collects what is wrong with it. */
final class Query {
  private static final int LONGEST_ECHO = 40;

  private final Context ctx;
  private final List<Fault> faults = new ArrayList<>();

  Query(Context ctx) {
    this.ctx = ctx;
  }

  /** The value as it was given; null: not given. */
  @Nullable String text(String name) {
    return ctx.queryParam(name);
  }

  /** The search that the parameters say. */
  SearchAddress search() {
    SearchAddress.Read read = SearchAddress.read(ctx.queryParamMap());
    faults.addAll(read.faults());
    return read.address();
  }

  /** One of some words; null: not given, or refused. */
  @Nullable String oneOf(String name, String... words) {
    String value = ctx.queryParam(name);
    if (value == null || List.of(words).contains(value)) {
      return value;
    }
    refuse(name, "unknown-word", value, String.join(" or ", words));
    return null;
  }

  /** A whole number; the default if not given, or refused. */
  int whole(String name, int least, int most, int otherwise) {
    String value = ctx.queryParam(name);
    if (value == null) {
      return otherwise;
    }
    if (value.matches("\\d{1,9}")) {
      int number = Integer.parseInt(value);
      if (number >= least && number <= most) {
        return number;
      }
    }
    refuse(name, "out-of-range", value, "a whole number from " + least + " to " + most);
    return otherwise;
  }

  /**
   * Ends the reading.
   *
   * @throws Refusal with all faults, if there are any
   */
  void refuseFaults() {
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
  }

  void refuse(String name, String code, String value, String expected) {
    String found = value.length() > LONGEST_ECHO ? value.substring(0, LONGEST_ECHO) + "…" : value;
    faults.add(
        new Fault(
            name, 0, code, found, expected, name + ": found " + found + ", expected " + expected));
  }
}
