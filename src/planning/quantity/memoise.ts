/** Most texts that one parser remembers; past it, it starts afresh. */
const capacity = 10_000;

/**
 * Wraps a parser of text so that a text it has read before is not read again: a sheet repeats few texts in many cells.
 *
 * The parser must be pure and its results immutable. What throws is not remembered.
 */
export function memoiseByText<Result>(parse: (text: string, argument: string) => Result): (text: string, argument: string) => Result {
  const known = new Map<string, Result>();
  return (text, argument) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const result = parse(text, argument);
    if (known.size >= capacity) known.clear();
    known.set(text, result);
    return result;
  };
}
