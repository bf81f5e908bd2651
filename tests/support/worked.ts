/** Time that this process has worked, milliseconds: unlike the clock, the same on a busy machine. */
export const workedMilliseconds = (): number => process.cpuUsage().user / 1e3;
