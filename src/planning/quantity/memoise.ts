/** Most keys that one function remembers; past it, it starts afresh. */
const capacity = 10_000;

/**
 * Wraps a function so that what it has worked out for a key is not worked out again: a sheet repeats few texts and numbers in many cells.
 *
 * The function must be pure and its results immutable. What throws is not remembered, so that `argument`, which only sentences use, is
 * always the caller's own.
 */
export function memoise<Key extends string | number, Result>(compute: (key: Key, argument: string) => Result): (key: Key, argument?: string) => Result {
  const known = new Map<Key, Result>();
  return (key, argument = "") => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const result = compute(key, argument);
    if (known.size >= capacity) known.clear();
    known.set(key, result);
    return result;
  };
}
