/** What the work gives, and the milliseconds that this thread computes for it: a machine that is busy with other things does not count. */
export function computed<Result>(work: () => Result): { readonly result: Result; readonly milliseconds: number } {
  const before = process.threadCpuUsage();
  const result = work();
  const { user, system } = process.threadCpuUsage(before);
  return { result, milliseconds: (user + system) / 1_000 };
}
