import fc from "fast-check";
import { fillTemplate, parseTemplate } from "../../../src/planning/text/template";

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
    ["a blank field alone", "{{Serial}}", {}, ""],
    ["no field at all", "Clip the strap on.", {}, "Clip the strap on."],
  ])("takes %s", (_, text, fields, filled) => {
    expect(fill(text, fields)).toBe(filled);
  });

  test.each([
    ["a section", "{{#Arrays}}x{{/Arrays}}", "Only fields such as {{Column}} are filled"],
    ["an inverted section", "{{^Arrays}}x{{/Arrays}}", "Only fields"],
    ["a partial", "{{> other}}", "Only fields"],
    ["a comment", "{{! note}}", "Only fields"],
    ["a change of the delimiters", "{{=<% %>=}}", "Only fields"],
    ["braces that are not closed", "Rack {{Rack", "does not close it"],
  ])("refuses %s", (_, text, reason) => {
    expect(() => parseTemplate(text, "Step X-1")).toThrow(reason);
  });

  test("puts every value in as it is, whatever it holds", () => {
    fc.assert(
      fc.property(fc.string(), (value) => {
        expect(fill("[{{A}}]", { A: value })).toBe(value === "" ? "[(not planned)]" : `[${value}]`);
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});
