/** Lifts a minute of the rows of table 5. */
const rows = [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15] as const;

/** Table 5 of NIOSH publication 94-110, column by column: up to so many hours of lifting, from below 75 cm and from there up. */
const columns = [
  {
    hours: 1,
    below: [1, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37, 0, 0, 0],
    above: [1, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37, 0.34, 0.31, 0.28],
  },
  {
    hours: 2,
    below: [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26, 0, 0, 0, 0, 0],
    above: [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26, 0.23, 0.21, 0, 0, 0],
  },
  {
    hours: 8,
    below: [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0, 0, 0, 0, 0, 0, 0],
    above: [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0.15, 0.13, 0, 0, 0, 0, 0],
  },
] as const;

/**
 * Reads the frequency multiplier off table 5 of NIOSH publication 94-110, interpolating between its rows.
 *
 * Durations are classes, not interpolated: a lift of an hour and a half is in the class of up to two hours. Fewer than 0.2 lifts a minute
 * count as 0.2; more than 15 give 0, as do more than 8 hours. `height` is that of the hands in centimetres where the lift begins.
 */
export function frequencyMultiplier(liftsPerMinute: number, hours: number, height: number): number {
  const column = columns.find((one) => hours <= one.hours);
  if (column === undefined || liftsPerMinute > 15) return 0;
  const values = height < 75 ? column.below : column.above;
  const after = rows.findIndex((row) => liftsPerMinute <= row);
  if (after === 0) return values[0];
  const [low, high] = [rows[after - 1]!, rows[after]!];
  const part = (liftsPerMinute - low) / (high - low);
  return values[after - 1]! * (1 - part) + values[after]! * part;
}
