/**
 * What comes in and goes out: parcels of files, tables, what an import would do, archives. Bounded
 * in bytes and counts; nothing is written. May use {@code documents} and its tree, and what they
 * may.
 */
@NullMarked
package thudbook.documents.exchange;

import org.jspecify.annotations.NullMarked;
