package thudbook.storage;

import static org.jooq.impl.DSL.row;
import static thudbook.storage.schema.Tables.RECIPE;

import java.util.List;
import org.jooq.Condition;
import org.jooq.OrderField;
import org.jooq.Record;
import thudbook.library.RecipeList;

/** An order of the list as SQL. Each has an index; the key of the recipe decides between equals. */
enum ListOrder {
  NEWEST {
    @Override
    List<OrderField<?>> forward() {
      return List.of(RECIPE.CHANGED_AT.desc(), RECIPE.ID.desc());
    }

    @Override
    List<OrderField<?>> backward() {
      return List.of(RECIPE.CHANGED_AT.asc(), RECIPE.ID.asc());
    }

    @Override
    Condition after(Cursor cursor) {
      return row(RECIPE.CHANGED_AT, RECIPE.ID).lt(row(cursor.changedAt(), cursor.recipe()));
    }

    @Override
    Condition upTo(Cursor cursor) {
      return row(RECIPE.CHANGED_AT, RECIPE.ID).ge(row(cursor.changedAt(), cursor.recipe()));
    }

    @Override
    Cursor cursor(Record row) {
      return new Cursor(row.get(RECIPE.CHANGED_AT), "", row.get(RECIPE.ID));
    }
  },
  TITLE {
    @Override
    List<OrderField<?>> forward() {
      return List.of(RECIPE.TITLE_KEY.asc(), RECIPE.ID.asc());
    }

    @Override
    List<OrderField<?>> backward() {
      return List.of(RECIPE.TITLE_KEY.desc(), RECIPE.ID.desc());
    }

    @Override
    Condition after(Cursor cursor) {
      return row(RECIPE.TITLE_KEY, RECIPE.ID).gt(row(cursor.titleKey(), cursor.recipe()));
    }

    @Override
    Condition upTo(Cursor cursor) {
      return row(RECIPE.TITLE_KEY, RECIPE.ID).le(row(cursor.titleKey(), cursor.recipe()));
    }

    @Override
    Cursor cursor(Record row) {
      return new Cursor(0, row.get(RECIPE.TITLE_KEY), row.get(RECIPE.ID));
    }
  };

  static ListOrder of(RecipeList.Order order) {
    return switch (order) {
      case NEWEST -> NEWEST;
      case TITLE -> TITLE;
    };
  }

  /** The order of the list. */
  abstract List<OrderField<?>> forward();

  /** The order of the list from its end. */
  abstract List<OrderField<?>> backward();

  /** Rows behind a cursor. */
  abstract Condition after(Cursor cursor);

  /** Rows before a cursor, with its own. */
  abstract Condition upTo(Cursor cursor);

  /** The cursor of a row. */
  abstract Cursor cursor(Record row);
}
