/** What the benchmarks take from the bundled engine. */
export * from '../../sim/index.ts';
export { compileSchedule } from '../../sim/schedule/compile.ts';
