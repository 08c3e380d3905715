import { readFileSync } from "node:fs";
import { join } from "node:path";

interface Named {
  readonly id: string;
}

interface Value {
  readonly name: string;
  readonly stringValue?: string;
  readonly numberValue?: number;
  readonly tooltip?: string;
}

interface Metadata {
  readonly allowErrorForDataTypeAny: boolean;
  readonly enums: readonly (Named & { readonly type: "string" | "number"; readonly values: readonly Value[] })[];
  readonly functions: readonly (Named & { readonly parameters: readonly { readonly type: string; readonly customEnumId?: string }[] })[];
}

const metadata = JSON.parse(readFileSync(join(__dirname, "..", "..", "src", "functions", "functions.json"), "utf8")) as Metadata;
const keysOf = (all: readonly object[]): string[] => [...new Set(all.flatMap((one) => Object.keys(one)))].sort();

// The vendor's reference "Manually create JSON metadata for custom functions", as of 27 October 2025.
describe("what the host is told of functions keeps to the vendor's metadata reference", () => {
  test("in the names of its members", () => {
    expect(keysOf([metadata])).toEqual(["allowCustomDataForDataTypeAny", "allowErrorForDataTypeAny", "enums", "functions"]);
    expect(keysOf(metadata.functions)).toEqual(["description", "id", "name", "parameters", "result"]);
    expect(keysOf(metadata.functions.flatMap(({ parameters }) => parameters))).toEqual(["customEnumId", "description", "dimensionality", "name", "optional", "type"]);
    expect(keysOf(metadata.enums)).toEqual(["id", "type", "values"]);
    expect(keysOf(metadata.enums.flatMap(({ values }) => values))).toEqual(["name", "numberValue", "stringValue", "tooltip"]);
  });

  test("lets cells that show an error reach the functions, by the member at the top that counts", () => {
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
    expect(metadata.functions.every(({ parameters }) => parameters.every(({ type }) => type === "any"))).toBe(true);
  });

  test("gives each list of choices an id of its own, values of its type, and a parameter that offers it", () => {
    const ids = metadata.enums.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[A-Z][A-Z0-9_]{0,127}$/);
    for (const { type, values } of metadata.enums) {
      for (const { stringValue, numberValue } of values) expect([typeof stringValue, typeof numberValue]).toEqual(type === "string" ? ["string", "undefined"] : ["undefined", "number"]);
    }
    const used = new Set(metadata.functions.flatMap(({ parameters }) => parameters.flatMap(({ customEnumId }) => customEnumId ?? [])));
    expect([...used].sort()).toEqual([...ids].sort());
  });
});
