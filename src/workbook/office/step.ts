/** One piece of work that may not be cut: about how many bytes it adds to a request, and how it is queued. */
export interface Step {
  readonly bytes: number;
  readonly queue: (context: Excel.RequestContext) => void;
}

/** Most bytes of one request. The host on the web refuses 5 MB; the rest is for what our estimate does not see. */
const requestBytes = 4_000_000;

/** Puts steps together into requests that each stay under `limit` bytes; a step that is over it alone goes alone. */
export function packSteps(steps: Iterable<Step>, limit = requestBytes): Step[][] {
  const requests: Step[][] = [];
  let bytes = Infinity;
  for (const step of steps) {
    if (bytes + step.bytes > limit) {
      requests.push([]);
      bytes = 0;
    }
    requests.at(-1)!.push(step);
    bytes += step.bytes;
  }
  return requests;
}

/** Cuts rows into blocks of at most about `limit` bytes each; gives the first row and the one after the last of each block. */
export function rowBlocks(rows: readonly unknown[], limit = requestBytes / 4): { from: number; to: number; bytes: number }[] {
  const blocks: { from: number; to: number; bytes: number }[] = [];
  rows.forEach((row, index) => {
    const bytes = jsonBytes(row);
    const last = blocks.at(-1);
    if (last === undefined || last.bytes + bytes > limit) blocks.push({ from: index, to: index + 1, bytes });
    else {
      last.to = index + 1;
      last.bytes += bytes;
    }
  });
  return blocks;
}

const encoder = new TextEncoder();

/** Counts the bytes of a value as it goes to the host, as JSON in UTF-8. */
export function jsonBytes(value: unknown): number {
  return encoder.encode(JSON.stringify(value)).length;
}
