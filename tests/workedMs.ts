/** Processor time of this process since a first call: what a busy machine does not lengthen, unlike the clock on the wall. */
export function startWork(): () => number {
  const before = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  };
}
