/**
 * The command line, one class a command. It is given the environment, the clock and what starts a
 * notebook; it never asks for them. May use the nouns, {@code documents}, {@code wording}, {@code
 * storage}, {@code settings}, and {@code api} for a prediction as JSON.
 */
@NullMarked
package thudbook.commands;

import org.jspecify.annotations.NullMarked;
