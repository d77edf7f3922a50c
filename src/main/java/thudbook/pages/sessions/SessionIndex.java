package thudbook.pages.sessions;

import java.util.Comparator;
import java.util.List;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.sessions.Session;
import thudbook.wording.Reading;

/** The list of sessions, the latest day first, those without a day behind them. */
public record SessionIndex(List<Row> rows) {
  /** A session of the list. */
  public record Row(String slug, String title, String day, String by, int recipes) {}

  static SessionIndex of(Store<Session> sessions) {
    return new SessionIndex(
        sessions.all().stream()
            .map(Kept::thing)
            .sorted(
                Comparator.comparing(
                    Session::date, Comparator.nullsLast(Comparator.reverseOrder())))
            .map(
                session ->
                    new Row(
                        session.slug(),
                        session.title(),
                        session.date() == null ? "" : Reading.day(session.date()),
                        session.by() == null ? "" : session.by(),
                        session.entries().size()))
            .toList());
  }
}
