// Parameters that several functions share.
import { choice } from "./choice";
import { number } from "./numbers";
import { optional, parameter } from "./parameter";
import { driveSize as readDriveSize } from "./plausible-sizes";
import { driveCount, proportion, scheme as readScheme, share, size as readSize, sizeOrZero, spareCount, unit as readUnit } from "./quantities";

/** A redundancy scheme; `examples` are those of the help. */
export const scheme = (examples: string, note = ".") => parameter("scheme", `Redundancy scheme in quotes, such as ${examples}${note}`, readScheme);

/** Drives with the spares among them. */
export const drives = (example: number) => parameter("drives", "Number of drives, spares included, such as {example}.", driveCount(example));

/** Drives without spares. */
export const members = (example: number) => parameter("drives", "Number of drives, without spares, such as {example}.", driveCount(example));

export const driveSize = parameter("driveSize", 'Size of one drive: TB as a number, such as 4, or text such as "960 GB".', readDriveSize);

export const spares = (example = 1) => optional("spares", "Hot spare drives among them, such as {example}. Left out: {default}.", spareCount(example));

export const reserve = optional("reserve", "Share of the usable space kept free, such as {example}. Left out: {default}.", share({ default: 0, example: "10%" }));

export const unit = optional("unit", "Unit of the answer, such as {example}. Left out: {default}.", readUnit);

/** The share of a capacity that may be filled. */
export const fill = (of: string) => optional("fill", `Share of ${of} that may be filled, such as {example}. Left out: {default}.`, share({ aboveZero: true, default: 1, example: "80%" }));

export const used = parameter("used", 'Used today: TB as a number, such as 30, or text such as "30 TiB".', sizeOrZero);

export const yearlyGrowth = parameter("yearlyGrowth", "Growth a year, such as {example} or 0.2.", proportion({ above: -1, max: 5, example: 0.2 }, "20%"));

/** A size above 0, with examples of a number of TB and of text. */
export const size = (name: string, what: string, terabytes: number, text: string) =>
  parameter(name, `${what}: TB as a number, such as ${terabytes}, or text such as "${text}".`, readSize);

/** Version of the Internet Protocol; `description` is the help. */
export const ipVersion = (description: string) => optional("ipVersion", description, choice(4, 6));

/** Years from the day of the question. */
export const years = (what: string, most: number) => optional("years", `${what}, such as {example}. Left out: {default}.`, number({ above: 0, max: most, default: 1, example: 5 }));
