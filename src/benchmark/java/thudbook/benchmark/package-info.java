/**
 * The figures of DEVELOPERS.md: what is timed and measured, never asserted. {@link
 * thudbook.benchmark.Benchmarks} runs them all and prints one table. Microbenchmarks are classes
 * named {@code …Benchmark}; what needs processes of its own is a {@link
 * thudbook.benchmark.Measurement}.
 */
package thudbook.benchmark;
