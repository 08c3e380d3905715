/** Tells whether something is another thing, or comes after it, however many stand between; `before` tells what has to come first. */
export function comesAfter<Item>(one: Item, other: Item, before: (item: Item) => readonly Item[]): boolean {
  const reached = new Set([one]);
  // A set goes on with what is added to it on the way.
  for (const item of reached) {
    if (item === other) return true;
    for (const earlier of before(item)) reached.add(earlier);
  }
  return false;
}
