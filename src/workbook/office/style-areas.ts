import { areaAddress, type Area, type Cell } from "../../sheet";

/** Longest list of areas of one call, in characters: the host is known to fail unpredictably long before the 8,192 it documents. */
const longestAddress = 2_000;

/**
 * Gathers the cells of each style into rectangles, for one call a style instead of one a cell.
 *
 * Runs of equal style in a row are joined with the run right below them that spans the same columns:
 *
 * ```
 * a a b        a: A1:B2, A3   b: C1:C2, B3:C3
 * a a b
 * a b b
 * ```
 */
export function styleAreas(rows: readonly (readonly Cell[])[]): Map<string, Area[]> {
  const finished = new Map<string, Area[]>();
  let open: { style: string; area: Area }[] = [];
  rows.forEach((line, row) => {
    const next: typeof open = [];
    for (const { style, column, columns } of styleRuns(line)) {
      const above = open.findIndex((one) => one.style === style && one.area.column === column && one.area.columns === columns);
      const joined = above < 0 ? undefined : open.splice(above, 1)[0];
      next.push({ style, area: joined === undefined ? { row, column, rows: 1, columns } : { ...joined.area, rows: joined.area.rows + 1 } });
    }
    close(open);
    open = next;
  });
  close(open);
  return finished;

  function close(done: typeof open): void {
    for (const { style, area } of done) finished.set(style, [...(finished.get(style) ?? []), area]);
  }
}

/** Writes areas as addresses of the host, such as `A1:B2,C3`, in as many texts as its limit asks for. */
export function addressTexts(areas: readonly Area[], longest = longestAddress): string[] {
  const texts: string[] = [];
  for (const area of areas) {
    const address = areaAddress(area);
    const last = texts.at(-1);
    if (last === undefined || last.length + 1 + address.length > longest) texts.push(address);
    else texts[texts.length - 1] = `${last},${address}`;
  }
  return texts;
}

function styleRuns(line: readonly Cell[]): { style: string; column: number; columns: number }[] {
  const runs: { style: string; column: number; columns: number }[] = [];
  line.forEach(({ style }, column) => {
    if (style === undefined) return;
    const last = runs.at(-1);
    if (last?.style === style && last.column + last.columns === column) last.columns += 1;
    else runs.push({ style, column, columns: 1 });
  });
  return runs;
}
