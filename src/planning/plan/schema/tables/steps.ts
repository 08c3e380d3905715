import { choice, named, number, text, tick } from "../column";
import { bounds, recordKinds, signs } from "../record-kinds";
import { table } from "../table";

const notBelow0 = { min: 0, max: 1_000_000, example: 5 } as const;

/** Kinds of records that need no words of their own. */
const ownKinds = recordKinds.filter((kind) => kind !== "choice");

export const steps = table("Steps", "Steps of each section, in order. {{Column}} is filled from the plan.", {
  stepId: text("Step id", "Never changed or reused: records are kept by it.", named),
  procedure: text("Procedure", "Procedure it belongs to.", { required: true, from: "procedures" }),
  section: text("Section", "Section it belongs to.", named),
  when: text("When", "Empty, or field = a|b, field <> a|b, field > 2, field < 2, joined by and."),
  do: text("Do", "What is to be done.", { ...named, width: 60 }),
  expect: text("Expect", "What should be found.", { width: 30 }),
  makersGuide: text("From the maker's guide", "What the maker's guide says here; yours to fill.", { width: 30 }),
  record: text("Record", `${ownKinds.join(", ")} or choice:a|b|c.`, { suggestions: ownKinds }),
  unit: text("Unit", "Unit of the record."),
  tolerancePercent: number("Tolerance %", "How far a number may be off, in per cent of what is expected.", { within: notBelow0 }),
  tolerance: number("Tolerance ±", "How far a number may be off.", { within: notBelow0 }),
  required: tick("Required", "Yes where the job cannot be closed without it."),
  caution: text("Caution", "What gets hurt when it goes wrong, and how to keep safe.", { width: 50 }),
  sign: choice("Sign", "Names that sign for it.", signs),
  minutes: number("Minutes", "Time it takes.", { within: notBelow0 }),
  holdPoint: choice("Hold point", "Yes where nothing further may happen before it is done and signed.", ["yes", "no"], { since: 3 }),
  bound: choice("Bound", "Empty or =: as expected, give or take the tolerance. at least, at most: a limit on one side.", bounds, { since: 5 }),
});
