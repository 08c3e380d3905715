// Slow twin: the currents of single loads as complex numbers, added line by line.
import type { FeedPhase } from "../../../../src/planning/resilience";

/** Computes the amperes on L1, L2 and L3; `volts` stand between lines. */
export function addPhasors(watts: Readonly<Record<FeedPhase, number>>, volts: number, powerFactor: number): number[] {
  const lines = ["L1", "L2", "L3"];
  const voltage = (line: string): readonly [number, number] => {
    const angle = (-2 * Math.PI * lines.indexOf(line)) / 3;
    return [(volts / Math.sqrt(3)) * Math.cos(angle), (volts / Math.sqrt(3)) * Math.sin(angle)];
  };
  const sums = new Map(lines.map((line) => [line, [0, 0] as [number, number]]));
  for (const [phase, power] of Object.entries(watts)) {
    const [from, to] = phase.split("-") as [string, string | undefined];
    const [x, y] = voltage(from);
    const [u, v] = to === undefined ? [0, 0] : voltage(to);
    // A current of power / (volts · factor) along the voltage across the load; the common lag of all turns nothing among them.
    const scale = power / (((x - u) ** 2 + (y - v) ** 2) * powerFactor);
    for (const [line, sign] of to === undefined ? [[from, 1] as const] : [[from, 1] as const, [to, -1] as const]) {
      const sum = sums.get(line)!;
      sum[0] += sign * scale * (x - u);
      sum[1] += sign * scale * (y - v);
    }
  }
  return [...sums.values()].map(([x, y]) => Math.hypot(x, y));
}
