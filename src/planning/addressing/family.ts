/** Version of the Internet Protocol an address belongs to. */
export type Family = 4 | 6;

/** Tells how many bits an address of `family` has: 32 or 128. */
export function bitsOf(family: Family): 32 | 128 {
  return family === 4 ? 32 : 128;
}

/** Tells how many 32-bit words an address of `family` fills: 1 or 4. */
export function wordsOf(family: Family): 1 | 4 {
  return family === 4 ? 1 : 4;
}
