const plain = /^[+-]?(\d+\.?\d*|\.\d+)$/;
const powerOfTen = /e[+-]?\d+$/i;

/** Tells whether a text is a number in plain digits, with a point where it has decimals, such as -0.5. */
export function isPlainNumber(text: string): boolean {
  return plain.test(text);
}

/** Tells whether a text is a number, in plain digits or with a power of ten, such as 1E-15. */
export function isNumberText(text: string): boolean {
  return plain.test(text.replace(powerOfTen, ""));
}
