/** Writes a number of bytes as TB, to a tenth. */
export function formatTerabytes(size: bigint): string {
  return `${Math.round(Number(size) / 1e11) / 10} TB`;
}
