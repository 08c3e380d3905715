import vm from "node:vm";
import { catalogue } from "../../src/functions/catalogue";
import { siteFile } from "../support/built-site";
import { cellAnswer } from "../support/cell-answer";
import { parseCall } from "../support/formula-call";

/** Loads functions.js where there is nothing but the language and the one global that the host gives. */
function loadAlone(): { readonly ids: string[]; readonly ask: (id: string, args: readonly unknown[]) => unknown } {
  const context = vm.createContext(Object.create(null) as object);
  vm.runInContext(
    `const associated = {};
     class CellError extends Error { constructor(code, message) { super(message); this.code = code; } }
     const CustomFunctions = { Error: CellError, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" }, associate: (id, call) => { associated[id] = call; } };
     globalThis.CustomFunctions = CustomFunctions;
     globalThis.ask = (id, text) => {
       try { return JSON.stringify(associated[id](...JSON.parse(text))); }
       catch (thrown) { if (thrown instanceof CellError) return JSON.stringify(thrown.code + " " + thrown.message); throw thrown; }
     };
     globalThis.ids = () => JSON.stringify(Object.keys(associated));`,
    context,
  );
  vm.runInContext(siteFile("functions.js"), context, { filename: "functions.js" });
  const { ids, ask } = context as { ids: () => string; ask: (id: string, text: string) => string };
  return { ids: JSON.parse(ids()) as string[], ask: (id, args) => JSON.parse(ask(id, JSON.stringify(args))) as unknown };
}

describe("functions.js in a bare JavaScript context, with no window and no document", () => {
  const alone = loadAlone();

  test("associates every function of the catalogue and of functions.json", () => {
    const described = (JSON.parse(siteFile("functions.json")) as { functions: { id: string }[] }).functions.map(({ id }) => id);
    expect([...alone.ids].sort()).toEqual(catalogue.map(({ id }) => id).sort());
    expect([...alone.ids].sort()).toEqual(described.sort());
  });

  test.each(catalogue.map((one) => [one.id, one] as const))("BAY.%s answers its examples and refuses its mistakes as it does here", (id, { call, examples, mistakes }) => {
    const formulas = [...examples, ...mistakes];
    expect(formulas.length).toBeGreaterThan(0);
    for (const formula of formulas) {
      const { args } = parseCall(formula);
      const here = cellAnswer(() => call(...args));
      expect([formula, alone.ask(id, args)]).toEqual([formula, JSON.parse(JSON.stringify(here))]);
    }
  });

  test("answers with real values: a usable capacity, a spilled table, a sentence", () => {
    expect(alone.ask("USABLE", ["RAID 6", 12, 4])).toBe(40);
    expect(alone.ask("NETWORK", ["192.0.2.9/24"])).toBe("192.0.2.0");
    expect(alone.ask("USABLE", ["RAID 60", 12, 4])).toMatch(/^#VALUE! .*RAID 60 8\+2/);
  });
});
