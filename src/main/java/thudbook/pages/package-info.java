/**
 * HTML: the routes of the pages, in rooms of their own; {@link thudbook.pages.Pages} joins them.
 * All of them use {@code frame}; {@code history}, {@code finding}, {@code writing} and {@code
 * sessions} also {@code reading}, and {@code rack} also {@code history}. The templates of a room
 * stand in the folder of its name. May use the nouns, {@code notebook}, {@code documents}, {@code
 * photos}, {@code wording}, {@code plots}, {@code drawings} and {@code web}, but neither {@code
 * storage} nor {@code api}.
 */
@NullMarked
package thudbook.pages;

import org.jspecify.annotations.NullMarked;
