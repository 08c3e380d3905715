/**
 * Counts the slips of the keyboard between two words: letters left out, added, mistaken or exchanged with their neighbour (optimal string alignment distance).
 *
 * Words more than four letters apart in length have nothing to do with each other: Infinity.
 */
export function slipsBetween(one: string, other: string): number {
  if (Math.abs(one.length - other.length) > 4) return Infinity;
  let [before, last] = [[] as number[], Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let row = 1; row <= one.length; row += 1) {
    const line = [row];
    for (let column = 1; column <= other.length; column += 1) {
      const same = one[row - 1] === other[column - 1] ? 0 : 1;
      const exchanged = row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      line.push(Math.min(last[column]! + 1, line[column - 1]! + 1, last[column - 1]! + same, exchanged ? before[column - 2]! + 1 : Infinity));
    }
    [before, last] = [last, line];
  }
  return last[other.length]!;
}
