package thudbook.recipes;

import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;

/**
 * What one change does, all of it or nothing: documents are written, things are thrown into the bin
 * or taken out of it.
 *
 * @param studio the state of the studio's gates from which the predictions follow, see {@link
 *     ChangeStore#studio}
 * @param undoes the number of the change that this one undoes; null: none
 */
public record Act(
    List<GateWrite> gates,
    List<RecipeWrite> recipes,
    List<PlainWrite> plain,
    List<Binning> binnings,
    long studio,
    @Nullable Long undoes) {
  public Act {
    gates = List.copyOf(gates);
    recipes = List.copyOf(recipes);
    plain = List.copyOf(plain);
    binnings = List.copyOf(binnings);
  }

  /** An act about recipes and gates. */
  public Act(
      List<GateWrite> gates,
      List<RecipeWrite> recipes,
      List<Binning> binnings,
      long studio,
      @Nullable Long undoes) {
    this(gates, recipes, List.of(), binnings, studio, undoes);
  }

  /** The same act, which also writes these. */
  public Act with(List<PlainWrite> others) {
    return new Act(gates, recipes, others, binnings, studio, undoes);
  }

  /** What an act can be about. */
  public enum Noun {
    RECIPE,
    GATE,
    MODULE,
    SESSION;

    /** In lower case, as in addresses, where it stands in the plural. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A document to be added or changed of which nothing else is kept: a module or a session.
   *
   * @param document its canonical text
   * @param version the version that is changed; null: it is new
   */
  public record PlainWrite(
      Noun noun, UUID id, String slug, String title, String document, @Nullable Long version) {}

  /**
   * A gate to be added or changed.
   *
   * @param document its canonical text
   * @param version the version that is changed; null: the gate is new
   */
  public record GateWrite(Gate gate, String document, @Nullable Long version) {}

  /**
   * A recipe to be added or changed.
   *
   * @param document its canonical text
   * @param version the version that is changed; null: the recipe is new
   * @param prediction null: not complete
   * @param sameSound whether the sound is that of the version before, so that its prediction stays
   */
  public record RecipeWrite(
      Recipe recipe,
      String document,
      @Nullable Long version,
      @Nullable Prediction prediction,
      boolean sameSound) {
    public RecipeWrite {
      if (sameSound && version == null) {
        throw new IllegalArgumentException("a new recipe has no sound before");
      }
    }

    /** A recipe whose sound may be another one than before. */
    public RecipeWrite(
        Recipe recipe, String document, @Nullable Long version, @Nullable Prediction prediction) {
      this(recipe, document, version, prediction, false);
    }

    /** A recipe of which other things than the sound are changed. */
    public static RecipeWrite ofSameSound(Recipe recipe, String document, long version) {
      return new RecipeWrite(recipe, document, version, null, true);
    }

    /** The same with another prediction. */
    RecipeWrite predicted(@Nullable Prediction other) {
      return new RecipeWrite(recipe, document, version, other);
    }
  }

  /**
   * A thing on its way into the bin or out of it.
   *
   * @param version the version that is meant
   */
  public record Binning(Noun noun, UUID id, long version, boolean intoBin) {}
}
