package thudbook.changes;

/**
 * What follows from a thing and is kept beside it, such as the prediction of a recipe. Only the
 * noun's own rule and its own tables know what it is.
 */
public interface Derived {
  /** What is kept already goes on to hold. */
  Derived AS_BEFORE = new Derived() {};
}
