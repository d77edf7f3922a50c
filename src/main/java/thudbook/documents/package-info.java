/**
 * Documents: one reader and one writer per noun over a neutral tree with places. May use all nouns.
 */
@NullMarked
package thudbook.documents;

import org.jspecify.annotations.NullMarked;
