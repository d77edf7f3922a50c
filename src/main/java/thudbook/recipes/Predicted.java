package thudbook.recipes;

import org.jspecify.annotations.Nullable;
import thudbook.changes.Derived;
import thudbook.predictions.Prediction;

/**
 * What is predicted of a recipe that is about to be written.
 *
 * @param prediction null: the recipe is not complete
 * @param studio the state of the studio's gates from which it follows, see {@link
 *     thudbook.changes.ChangeStore#state}; a gate that is written later marks it
 */
public record Predicted(@Nullable Prediction prediction, long studio) implements Derived {}
