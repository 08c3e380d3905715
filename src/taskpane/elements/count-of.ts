/** Counts things in words: 1 cell, 2 cells. */
export function countOf(count: number, thing: string, things = `${thing}s`): string {
  return `${count} ${count === 1 ? thing : things}`;
}
