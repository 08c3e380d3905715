import { explainComma, foldName, invalid, isNumberText, Problem, quote } from "../../text";
import { parseNumber, parseShare, type NumberRule } from "../../quantity";
import { rowsOf, type PlanTables } from "./read-plan";
import type { PlanRow } from "./row";

interface SettingRule {
  /** Text in the column Setting, by which the row is found. */
  readonly name: string;
  /** What holds where the row is missing or blank, as it is written in the sheet. */
  readonly initial: string;
  readonly meaning: string;
  /** Null for a share, which may be written 20% or 0.2; a list for one of some words; "text" for whatever is written. */
  readonly rule: NumberRule | null | readonly string[] | "text";
}

/** Every threshold of the checks, the size of labels, the paper of tabs and the name on offers, in the order in which set-up writes them. */
export const settingRules = {
  sparesPerArray: {
    name: "Spares an array",
    initial: "1",
    meaning: "Fewest hot spares of an array with redundancy.",
    rule: { min: 0, max: 1000, whole: true, example: 1 },
  },
  fillLimit: { name: "Fill limit", initial: "80%", meaning: "Fill limit of a pool that names none.", rule: null },
  promisedLimit: {
    name: "Promised limit",
    initial: "2",
    meaning: "Most that the volumes of a pool, thin ones too, may promise for each byte that it gives to hosts.",
    rule: { min: 1, max: 1000, example: 2 },
  },
  readErrorRate: {
    name: "Read error rate",
    initial: "1E-15",
    meaning: "Unreadable bits for each bit read, by the data sheet of the drive.",
    rule: { min: 0, max: 1, example: 1e-15 },
  },
  readFaultShare: {
    name: "Read fault share",
    initial: "10%",
    meaning: "Most acceptable probability that a rebuild without further redundancy meets an unreadable bit.",
    rule: null,
  },
  driveRate: {
    name: "Drive rate MB/s",
    initial: "100",
    meaning: "How fast a drive is read and written while it is rebuilt; for large hard disks under load.",
    rule: { above: 0, max: 100_000, example: 100 },
  },
  liftReachCm: {
    name: "Lift reach cm",
    initial: "35",
    meaning: "Horizontal distance from the ankles to the hands while an array is lifted.",
    rule: { above: 0, max: 200, example: 35 },
  },
  liftFromCm: {
    name: "Lift from cm",
    initial: "75",
    meaning: "Height of the hands where a lift begins, such as a trolley.",
    rule: { min: 0, max: 300, example: 75 },
  },
  rackFootCm: {
    name: "Rack foot cm",
    initial: "10",
    meaning: "Height of the lower edge of the lowest rack unit above the floor.",
    rule: { min: 0, max: 100, example: 10 },
  },
  twoPersonShare: {
    name: "Two person share",
    initial: "66.7%",
    meaning: "Share of the sum of two persons' limits that they lift together.",
    rule: null,
  },
  liftTableAboveCm: {
    name: "Lift table above cm",
    initial: "175",
    meaning: "Height of the hands above which nobody lifts by hand.",
    rule: { min: 0, max: 300, example: 175 },
  },
  heavierAboveKg: {
    name: "Heavier above kg",
    initial: "10",
    meaning: "How much heavier than a unit below it a unit in the upper half of a rack may not be.",
    rule: { above: 0, max: 1000, example: 10 },
  },
  marginFloor: { name: "Margin floor", initial: "0%", meaning: "Least margin of a row of the quote, its discount taken off.", rule: null },
  offerMarginFloor: { name: "Offer margin floor", initial: "0%", meaning: "Least margin of an offer as a whole, without its optional rows.", rule: null },
  marginCeiling: { name: "Margin ceiling", initial: "75%", meaning: "Margin of a row of the quote above which it is taken for a slip.", rule: null },
  warrantyNoticeDays: {
    name: "Warranty notice days",
    initial: "90",
    meaning: "How many days ahead the end of a warranty is told.",
    rule: { min: 0, max: 3650, whole: true, example: 90 },
  },
  labelWidthMm: { name: "Label width mm", initial: "48.5", meaning: "Width of a label for cables, as the packet of the sheets says.", rule: { min: 10, max: 210, example: 48.5 } },
  labelHeightMm: { name: "Label height mm", initial: "25.4", meaning: "Height of a label for cables.", rule: { min: 8, max: 140, example: 25.4 } },
  labelsAcross: { name: "Labels across", initial: "4", meaning: "Labels side by side on a sheet of A4.", rule: { min: 1, max: 20, whole: true, example: 4 } },
  labelsDown: { name: "Labels down", initial: "10", meaning: "Labels one below the other on a sheet of A4.", rule: { min: 1, max: 36, whole: true, example: 10 } },
  labelGapMm: { name: "Label gap mm", initial: "0", meaning: "Gap between labels that stand side by side. The labels lie in the middle of the sheet.", rule: { min: 0, max: 50, example: 2.5 } },
  paper: { name: "Paper", initial: "A4", meaning: "Paper on which commissioning tabs, handovers and offers are printed: A4 or Letter.", rule: ["A4", "Letter"] },
  firm: { name: "Firm", initial: "", meaning: "Name of your firm, as it stands on offers.", rule: "text" },
} as const satisfies Record<string, SettingRule>;

export type SettingKey = keyof typeof settingRules;

/** The value of every setting. */
export type Settings = { readonly [Key in SettingKey]: ValueOf<(typeof settingRules)[Key]["rule"]> };

type ValueOf<Rule> = Rule extends readonly (infer Word)[] ? Word : Rule extends "text" ? string : number;

/** A row of the Settings table that says nothing the checks can use. */
export interface SettingFault {
  readonly row: PlanRow<"settings">;
  readonly kind: "unknown" | "unreadable";
  readonly sentence: string;
}

/** Rows of the Settings table that remember the last id ever given, so that one whose row was deleted is not given again. */
export const lastIdSettings = { arrays: "Last array id", jobs: "Last job id", cables: "Last cable id" } as const;

/** Reads the thresholds; where a row is missing, blank or unreadable its initial value holds and the fault is told. */
export function readSettings(plan: PlanTables): { readonly settings: Settings; readonly faults: readonly SettingFault[] } {
  const byName = new Map<string, SettingKey>(settingKeys().map((key) => [foldName(settingRules[key].name), key]));
  const settings = Object.fromEntries(settingKeys().map((key) => [key, parseSetting(settingRules[key].initial, settingRules[key])])) as Record<
    SettingKey,
    number | string
  >;
  const faults: SettingFault[] = [];
  for (const row of rowsOf(plan, "settings")) {
    const name = foldName(row.setting);
    const key = byName.get(name);
    if (key === undefined) {
      const remembersIds = Object.values(lastIdSettings).some((known) => foldName(known) === name);
      if (name !== "" && !remembersIds) {
        faults.push({ row, kind: "unknown", sentence: `Setting ${quote(row.setting)} is not known, so nothing follows from it.` });
      }
      continue;
    }
    if (row.value === "") continue;
    try {
      settings[key] = parseSetting(row.value, settingRules[key]);
    } catch (thrown) {
      if (!(thrown instanceof Problem)) throw thrown;
      faults.push({ row, kind: "unreadable", sentence: thrown.sentence });
    }
  }
  return { settings: settings as Settings, faults };
}

function settingKeys(): SettingKey[] {
  return Object.keys(settingRules) as SettingKey[];
}

/** Reads the text of the column Value: the column is text, so digits there are a number. */
function parseSetting(text: string, { name, rule }: SettingRule): number | string {
  if (rule === "text") return text;
  if (rule !== null && !("example" in rule)) {
    const word = rule.find((one) => foldName(one) === foldName(text));
    if (word === undefined) throw invalid(name, text, `${name} ${quote(text)} is not known. Write ${rule.join(" or ")}.`);
    return word;
  }
  const value = isNumberText(text) ? Number(text) : text;
  if (rule === null) return parseShare(value, name);
  if (typeof value === "string") {
    const comma = explainComma(text, name, (proposal) => parseNumber(proposal, name, rule));
    throw comma ?? invalid(name, text, `${name} ${quote(text)} is not a number. Write one such as ${rule.example}.`);
  }
  return parseNumber(value, name, rule);
}

/** Rows with which set-up fills the Settings table. */
export function initialSettings(): { readonly setting: string; readonly value: string; readonly meaning: string }[] {
  return [
    ...settingKeys().map((key) => ({ setting: settingRules[key].name, value: settingRules[key].initial, meaning: settingRules[key].meaning })),
    ...Object.values(lastIdSettings).map((setting) => ({ setting, value: "", meaning: "Last id given; written when ids are, so that none is ever used again." })),
  ];
}
