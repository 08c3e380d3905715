/** Most decimals that a number without a format of its own is shown with in scientific form. */
const mostDecimals = 5;

/**
 * Writes a number so that it fits its cell, as desk spreadsheets do: `text` as it is where that fits; without a format of its own
 * (`value` is its figure then) with fewer decimals, then in scientific form; else as hashes, which nobody takes for a figure.
 */
export function fitNumber(text: string, value: number | null, fits: (text: string) => boolean): string {
  const forms = value === null ? [text] : [scientific(text), ...shorterForms(value)];
  return forms.find(fits) ?? hashes(fits);
}

/** Lists shorter ways to write a number, the most exact first; none of them is twice the number, or half of it. */
function shorterForms(value: number): string[] {
  const [, decimals = ""] = /^-?\d+\.(\d+)$/.exec(String(value)) ?? [];
  const rounded = Array.from({ length: decimals.length }, (_, fewer) => withoutZeros(value.toFixed(decimals.length - 1 - fewer)));
  // A small number says more by its first digits than by its zeros.
  const plain = Math.abs(value) < 0.001 ? [] : rounded.filter((form) => Math.abs(Number(form) - value) < Math.abs(value) / 2);
  const powers = Array.from({ length: mostDecimals + 1 }, (_, fewer) => value.toExponential(mostDecimals - fewer));
  return [...plain, ...powers.map(scientific)];
}

/** Leaves out zeros at the end of decimals: they would say that the number ends there. */
function withoutZeros(form: string): string {
  return form.includes(".") ? form.replace(/\.?0+$/, "") : form;
}

/** Writes a power of ten as spreadsheets do; any other number stays as it is. */
function scientific(form: string): string {
  return form.replace(/(?:\.0+|(\.\d*[1-9])0*)?e([+-])(\d+)$/, (_, decimals: string | undefined, sign: string, power: string) => `${decimals ?? ""}E${sign}${power.padStart(2, "0")}`);
}

function hashes(fits: (text: string) => boolean): string {
  let shown = "#";
  while (shown.length < 255 && fits(`${shown}#`)) shown += "#";
  return shown;
}
