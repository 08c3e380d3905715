/** A start bit, 8 data bits and a stop bit; no parity. */
const bitsPerCharacter = 10;

/** Computes the seconds that `characters` take on a serial line of `baud` with 8 data bits, no parity and 1 stop bit. */
export function serialSeconds(characters: number, baud: number): number {
  return (characters * bitsPerCharacter) / baud;
}
