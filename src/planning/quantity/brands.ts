declare const unit: unique symbol;

/** A value that carries its unit in its type, so that mixing units does not compile. */
type Branded<Value, Unit extends string> = Value & { readonly [unit]: Unit };

/** A whole number of bytes, exact at any size. */
export type Bytes = Branded<bigint, "Bytes">;
/** A length of time in hours. */
export type Hours = Branded<number, "Hours">;
/** Electrical power in watts. */
export type Watts = Branded<number, "Watts">;
/** A mass in kilograms. */
export type Kilograms = Branded<number, "Kilograms">;
/** A length in millimetres. */
export type Millimetres = Branded<number, "Millimetres">;
/** A part of a whole, 0 to 1, of at most 15 significant digits. */
export type Share = Branded<number, "Share">;
/** A rate of 10^6 bytes a second. */
export type MegabytesPerSecond = Branded<number, "MegabytesPerSecond">;

export const bytes = (value: bigint): Bytes => value as Bytes;
export const hours = (value: number): Hours => value as Hours;
export const share = (value: number): Share => value as Share;
export const watts = (value: number): Watts => value as Watts;
export const kilograms = (value: number): Kilograms => value as Kilograms;
export const millimetres = (value: number): Millimetres => value as Millimetres;
export const megabytesPerSecond = (value: number): MegabytesPerSecond => value as MegabytesPerSecond;
