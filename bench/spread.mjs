/** Median, 95th percentile and largest of some durations, in milliseconds with two decimals. */
export function spread(durations) {
  const sorted = [...durations].sort((a, b) => a - b);
  const at = (share) =>
    rounded(sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN);
  return { median: at(0.5), p95: at(0.95), most: at(1) };
}

export const rounded = (value) => Math.round(value * 100) / 100;
