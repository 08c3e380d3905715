import type { Bytes } from "./brands";
import { divideToNearest } from "./exact";
import type { SizeUnit } from "./size-unit";

/**
 * Writes a size as text with its unit, such as `36.37 TiB`, which `parseSize` reads: a figure that carries its unit from cell to cell.
 *
 * With `digits`, so many decimals, rounded down, so that no room is promised that is not there. Without, the fewest decimals that read back
 * to the same bytes.
 */
export function formatSize(size: Bytes, unit: SizeUnit, digits: number | null): string {
  if (digits !== null) return written((size * 10n ** BigInt(digits)) / unit.bytes, digits, unit);
  for (let decimals = 0; ; decimals += 1) {
    const scale = 10n ** BigInt(decimals);
    const shown = divideToNearest(size * scale, unit.bytes);
    if (divideToNearest(shown * unit.bytes, scale) === size) return written(shown, decimals, unit);
  }
}

function written(scaled: bigint, decimals: number, { symbol }: SizeUnit): string {
  const figures = scaled.toString().padStart(decimals + 1, "0");
  const whole = figures.slice(0, figures.length - decimals);
  return decimals === 0 ? `${whole} ${symbol}` : `${whole}.${figures.slice(-decimals)} ${symbol}`;
}
