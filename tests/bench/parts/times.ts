/** Middle, 95th percentile and longest of some times, ms, as a line prints them. */
export function middleAndTail(times: readonly number[]): string {
  const ordered = times.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    (ordered[Math.min(ordered.length - 1, Math.floor(share * ordered.length))] ?? 0).toFixed(1);
  return `${at(0.5)} ms, p95 ${at(0.95)} ms, longest ${at(1)} ms`;
}
