import { invalid, quote } from "../text";
import type { Bytes } from "./brands";
import type { Scalar } from "../../sheet";
import { parseSize } from "./size";

/** What a size is of, and the largest that somebody means by a number alone. */
export interface PlausibleSize {
  /** Such as "drive". */
  readonly thing: string;
  readonly most: Bytes;
  /** What a person would write, with its unit. */
  readonly example: string;
}

/**
 * Reads a size as `parseSize` does, but asks back where a bare number, which is TB, is larger than such a thing is.
 *
 * 4000 for a drive may have been meant in GB, or be a slip: the sentence proposes neither. A size with its unit is taken as it is.
 */
export function parsePlausibleSize(value: Scalar, argument: string, { thing, most, example }: PlausibleSize): Bytes {
  const size = parseSize(value, argument);
  if (typeof value === "string" || size <= most) return size;
  throw invalid(argument, value, `${argument} is ${quote(value)}, and a bare number is TB. No ${thing} is that large: write it with its unit, such as "${example}".`);
}
