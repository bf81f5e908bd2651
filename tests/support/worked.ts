/**
 * Time that this thread has worked, milliseconds: unlike the clock, the same on a busy machine; unlike the time of the process,
 * without that of threads which compile and sweep beside it while nobody waits.
 */
export const workedMilliseconds = (): number => process.threadCpuUsage().user / 1e3;
