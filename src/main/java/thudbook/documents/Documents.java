package thudbook.documents;

import java.util.List;
import thudbook.equipment.Gate;
import thudbook.predictions.Sound;
import thudbook.recipes.Recipe;

/** Reads and writes the documents of the notebook, as text and as JSON. */
public final class Documents {
  private Documents() {}

  /** What a document turned out to be. */
  public sealed interface Noun {}

  /** A recipe. */
  public record ARecipe(Recipe recipe) implements Noun {}

  /** A gate. */
  public record AGate(Gate gate) implements Noun {}

  /**
   * A document that was read.
   *
   * @param notes what a reader should be told, such as "2 comments were dropped"
   */
  public record Read(Noun noun, List<String> notes) {
    public Read {
      notes = List.copyOf(notes);
    }
  }

  /**
   * Reads a document of any noun.
   *
   * @param bytes UTF-8 text
   * @param identity gives an id and a slug to a document without them
   * @throws thudbook.quantities.Refusal with all faults of the document
   */
  public static Read read(byte[] bytes, Identity identity) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The canonical text of a recipe. */
  public static String write(Recipe recipe) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The canonical text of a gate. */
  public static String write(Gate gate) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** A recipe as JSON: the documents' keys with plain SI numbers, and {@code notes}. */
  public static String json(Recipe recipe) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** A gate as JSON. */
  public static String json(Gate gate) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** Reads a recipe from JSON. */
  public static Recipe recipeFromJson(byte[] json, Identity identity) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** Reads a gate from JSON. */
  public static Gate gateFromJson(byte[] json, Identity identity) {
    throw new UnsupportedOperationException("not built yet");
  }

  /**
   * Reads the body of a prediction: {@code {source, envelope, strikes?, stages, output?}}, stages
   * with gate and channel or with an inline channel.
   */
  public static Sound soundFromJson(byte[] json, thudbook.equipment.GateStore gates) {
    throw new UnsupportedOperationException("not built yet");
  }
}
