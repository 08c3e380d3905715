import { studentT } from "./student-t";

/** A straight line through points by least squares. */
export interface StraightLine {
  readonly points: number;
  /** Mean of what the points stand at; the line goes through `meanY` there. */
  readonly meanX: number;
  readonly meanY: number;
  readonly slope: number;
  /** Sum of the squared distances from `meanX`. */
  readonly spread: number;
  /** Standard deviation of the points about the line, with two degrees of freedom given up. */
  readonly deviation: number;
}

/** Between what a line is expected to be reached, and where it goes itself. */
export interface Reached {
  readonly earliest: number;
  readonly likely: number;
  readonly latest: number;
}

/** Fits a straight line to three points or more that do not all stand at one place, by least squares (NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.3.1). */
export function fitStraightLine(points: readonly (readonly [x: number, y: number])[]): StraightLine {
  const mean = (of: 0 | 1): number => points.reduce((sum, point) => sum + point[of], 0) / points.length;
  const [meanX, meanY] = [mean(0), mean(1)];
  const spread = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  const slope = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) / spread;
  const squares = points.reduce((sum, [x, y]) => sum + (y - meanY - slope * (x - meanX)) ** 2, 0);
  return { points: points.length, meanX, meanY, slope, spread, deviation: Math.sqrt(squares / (points.length - 2)) };
}

/** Gives what a line is at a place. */
export function lineAt({ meanX, meanY, slope }: StraightLine, x: number): number {
  return meanY + slope * (x - meanX);
}

/**
 * Computes the interval in which one further point at `x` lies with the probability `confidence`: the prediction interval of a straight line
 * (NIST/SEMATECH e-Handbook of Statistical Methods, 4.5.1.2).
 */
export function predictionInterval(line: StraightLine, x: number, confidence: number): readonly [low: number, high: number] {
  const half = studentT(line.points - 2, confidence) * line.deviation * Math.sqrt(1 + 1 / line.points + (x - line.meanX) ** 2 / line.spread);
  return [lineAt(line, x) - half, lineAt(line, x) + half];
}

/**
 * Computes where a rising line reaches `level`: the places at which the upper and the lower bound of the prediction interval do, and the line itself.
 *
 * The bounds are hyperbolas, so both places are the roots of one quadratic: calibration turned around (NIST/SEMATECH e-Handbook of Statistical Methods, 4.5.2.1).
 * Null where the line does not rise, or rises so little against the scatter of its points that with this confidence it might be level.
 */
export function placesReached(line: StraightLine, level: number, confidence: number): Reached | null {
  const { slope, spread, deviation, points, meanX, meanY } = line;
  const half = (studentT(points - 2, confidence) * deviation) ** 2;
  const square = slope ** 2 - half / spread;
  if (slope <= 0 || square <= 0) return null;
  const rise = level - meanY;
  const root = Math.sqrt((half / spread) * rise ** 2 + square * half * (1 + 1 / points));
  return { earliest: meanX + (slope * rise - root) / square, likely: meanX + rise / slope, latest: meanX + (slope * rise + root) / square };
}
