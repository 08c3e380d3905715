import fc from "fast-check";
import { fieldsOf, fillTemplate, parseTemplate } from "../../../src/planning/text";
import { problemOf } from "../../support/sentence";

const lookup = (fields: Readonly<Record<string, string>>) => (name: string) => fields[name] ?? "";
const fill = (text: string, fields: Readonly<Record<string, string>>): string => fillTemplate(parseTemplate(text, "Step X-1"), lookup(fields));

describe("filling a step's text", () => {
  test.each([
    ["a field", "Rack {{Rack}}", { Rack: "R1" }, "Rack R1"],
    ["a field of a named table", "{{Rack.Units}} U", { "Rack.Units": "42" }, "42 U"],
    ["blanks inside the braces", "{{ Bottom unit }}", { "Bottom unit": "7" }, "7"],
    ["signs that a page would escape", "{{Contact}}", { Contact: `<b>"Desk" & 'hall'</b>` }, `<b>"Desk" & 'hall'</b>`],
    ["a value that looks like a field", "{{A}}", { A: "{{B}}", B: "no" }, "{{B}}"],
    ["a blank field in a sentence", "Gateway {{Gateway}}.", {}, "Gateway (not planned)."],
    ["a field that asks for no escaping", "{{{A}}} or {{&A}}", { A: "<b>" }, "<b> or <b>"],
    ["a blank field alone", "{{Serial}}", {}, ""],
    ["no field at all", "Clip the strap on.", {}, "Clip the strap on."],
  ])("takes %s", (_, text, fields, filled) => {
    expect(fill(text, fields)).toBe(filled);
  });

  test.each([
    ["a section", "{{#Arrays}}x{{/Arrays}}", "{{#Arrays}}"],
    ["an inverted section", "{{^Arrays}}x{{/Arrays}}", "{{^Arrays}}"],
    ["a partial", "{{> other}}", "{{>other}}"],
    ["a comment", "{{! note}}", "{{!note}}"],
    ["a change of the delimiters", "{{=<% %>=}}", "{{=<% %>}}"],
  ])("refuses %s", (_, text, quoted) => {
    const sentence = `Step X-1 holds "${quoted}". Only fields such as {{Column}} are filled; use When for conditions.`;
    expect(problemOf(() => parseTemplate(text, "Step X-1"))).toMatchObject({ kind: "invalid", argument: "Step X-1", received: text, sentence });
  });

  test("refuses braces that are not closed", () => {
    const sentence = 'Step X-1 "Rack {{Rack" opens {{ and does not close it. Write a field as {{Column}}.';
    expect(problemOf(() => parseTemplate("Rack {{Rack", "Step X-1")).sentence).toBe(sentence);
  });

  test("puts every value in as it is, whatever it holds", () => {
    fc.assert(
      fc.property(fc.string(), (value) => {
        expect(fill("[{{A}}]", { A: value })).toBe(value === "" ? "[(not planned)]" : `[${value}]`);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test("an empty text has no pieces, and fills to nothing", () => {
    expect(parseTemplate("", "Step X-1")).toEqual([]);
    expect(fill("", {})).toBe("");
  });
});

test("the fields of a text are named in order, as often as they stand there", () => {
  expect(fieldsOf(parseTemplate("{{Rack}} unit {{Bottom unit}}, {{Rack}}.", "Step X-1"))).toEqual(["Rack", "Bottom unit", "Rack"]);
  expect(fieldsOf(parseTemplate("Clip the strap on.", "Step X-1"))).toEqual([]);
});
