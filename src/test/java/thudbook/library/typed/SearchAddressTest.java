package thudbook.library.typed;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import thudbook.library.Days;
import thudbook.library.Facet;
import thudbook.library.Flag;
import thudbook.library.Limits;
import thudbook.library.Ordering;
import thudbook.library.Quantity;
import thudbook.library.Term;
import thudbook.library.Wanted;
import thudbook.quantities.Fault;

/** Property: an address says a search, and the search the address. */
class SearchAddressTest {
  @Test
  void aSearchIsTheSameWhenItsAddressIsRead() {
    SearchAddress search =
        new SearchAddress(
            "kick & \"50 %\" +é",
            Wanted.ALL
                .choosing(Facet.TAG, "second act")
                .choosing(Facet.CHANNEL, "keeper-twin/quick")
                .refusing(Facet.BY, "old tom")
                .with(Flag.FAVOURITE, true)
                .with(Flag.INCOMPLETE, false)
                .madeIn(new Days(LocalDate.of(2026, 10, 1), LocalDate.of(2026, 10, 31)))
                .changedIn(new Days(null, LocalDate.of(2026, 11, 2)))
                .with(Quantity.HOLD, Limits.between(0.0021, 0.1))
                .with(Quantity.PEAK_DB, Limits.between(null, -3.3))
                .with(Quantity.IGNORED_SHARE, Limits.between(0.07, null)),
            Ordering.of(Quantity.HOLD, true));
    SearchAddress.Read read = SearchAddress.ofQuery(search.query());
    assertThat(read.faults()).isEmpty();
    assertThat(read.address()).isEqualTo(search);
    assertThat(read.address().query()).isEqualTo(search.query());
    assertThat(SearchAddress.ofQuery("?" + search.query()).address()).isEqualTo(search);
  }

  @Test
  void everythingIsTheEmptyQueryAndEmptyFieldsSayNothing() {
    assertThat(SearchAddress.ALL.query()).isEmpty();
    assertThat(SearchAddress.ofQuery("").address()).isEqualTo(SearchAddress.ALL);
    assertThat(SearchAddress.ofQuery("q=&tag=&hold.from=&order=&page=7&%zz=1&=&").address())
        .isEqualTo(SearchAddress.ALL);
  }

  @Test
  void whatIsNotUnderstoodIsSaidAllAtOnceAndTheRestHolds() {
    SearchAddress.Read read =
        SearchAddress.read(
            Map.of(
                "hold.from", List.of("80"),
                "hold.to", List.of("1,5 s"),
                "made.from", List.of("soon"),
                "photos", List.of("some"),
                "order", List.of("best"),
                "tag", List.of("Dry")));
    assertThat(read.address()).isEqualTo(SearchAddress.ofQuery("tag=dry").address());
    assertThat(read.faults())
        .extracting(Fault::place)
        .containsExactlyInAnyOrder("hold.from", "hold.to", "made.from", "photos", "order");
    assertThat(read.faults())
        .extracting(Fault::message)
        .contains(
            "hold.from: found 80, expected a time with its unit, such as 80 ms.",
            "hold.to: found 1,5 s, expected 1.5 s.");
  }

  @Test
  void theUsualOrderIsByRelevanceOnlyWhereWordsAreAsked() {
    assertThat(SearchAddress.ALL.ordering(Wanted.ALL)).isEqualTo(Ordering.NEWEST);
    assertThat(SearchAddress.ALL.ordering(Wanted.ALL.with(new Term(List.of("a"), true))))
        .isEqualTo(Ordering.RELEVANCE);
    for (Quantity quantity : Quantity.values()) {
      for (boolean descending : new boolean[] {true, false}) {
        Ordering ordering = Ordering.of(quantity, descending);
        assertThat(Ordering.ofKey(ordering.key())).contains(ordering);
      }
    }
  }

  @Test
  void whatSaysNothingIsTold() {
    assertThat(SearchAddress.saysNothing("q=kick&tag=dry&not.by=x&hold.from=7 ms&made.to=2026"))
        .isEmpty();
    assertThat(SearchAddress.saysNothing("?photos=yes&order=-hold&rating=5")).isEmpty();
    assertThat(SearchAddress.saysNothing("tagg=dry&q=kick&hold=7 ms&tag=&q"))
        .containsExactly("tagg=dry", "hold=7 ms", "tag=", "q");
    assertThat(SearchAddress.saysNothing("")).containsExactly("");
  }
}
