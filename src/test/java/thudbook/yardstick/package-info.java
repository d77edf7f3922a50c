/**
 * The yardstick of the numerical core, for tests and the benchmark: the model's definitions written
 * down literally, a general-purpose integrator for the cells, brute-force search for every number.
 * It shares the records of the core and none of its formulas, and is slow on purpose.
 */
package thudbook.yardstick;
