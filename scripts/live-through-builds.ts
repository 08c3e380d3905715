import { liveThrough } from "../tests/support/tab-life";

/**
 * Lives through chains of five builds with everything that people type and do to a sheet in between, and counts what was lost:
 * `node scripts/run.mjs scripts/live-through-builds.ts --cases 10000 --seed 1`.
 */
function main(): void {
  const option = (name: string, otherwise: number): number => {
    const at = process.argv.indexOf(`--${name}`);
    return at < 0 ? otherwise : Number(process.argv[at + 1]);
  };
  const [cases, seed] = [option("cases", 10_000), option("seed", 1)];
  const typed: Record<string, number> = {};
  const lost: string[] = [];
  let [builds, refused, doubled] = [0, 0, 0];
  for (let index = 0; index < cases; index += 1) {
    const life = liveThrough(seed + index, 5);
    for (const [area, count] of Object.entries(life.typed)) typed[area] = (typed[area] ?? 0) + count;
    lost.push(...life.lost);
    builds += life.builds;
    refused += life.refused;
    doubled += life.doubled;
  }
  console.log(`${cases} cases, ${builds} builds, ${refused} refused by name, ${doubled} doubled, ${lost.length} lost`);
  console.log(Object.entries(typed).map(([area, count]) => `${area}: ${count}`).sort().join("\n"));
  for (const line of lost.slice(0, 20)) console.log(line);
  process.exitCode = lost.length > 0 ? 1 : 0;
}

main();
