/** Wraps a computation so that it runs when its result is first asked for, and then never again. */
export function once<Result>(compute: () => Result): () => Result {
  let known: { readonly result: Result } | null = null;
  return () => (known ??= { result: compute() }).result;
}

/** Wraps a computation so that it runs once for each key: a text, or a row of the plan. */
export function oncePer<Key, Result>(compute: (key: Key) => Result): (key: Key) => Result {
  const known = new Map<Key, Result>();
  return (key) => {
    const kept = known.get(key);
    if (kept !== undefined || known.has(key)) return kept as Result;
    const result = compute(key);
    known.set(key, result);
    return result;
  };
}
