import { join } from "node:path";
import { RuleTester } from "eslint";
import { parser } from "typescript-eslint";
import { importsFollowLayers } from "../../scripts/lint/imports-follow-layers.mjs";
import { projectRoot } from "../support/source-files";

RuleTester.describe = describe;
RuleTester.it = test;
const tester = new RuleTester({ languageOptions: { parser } });

/** A text as if it stood in a file of ours. */
const at = (file: string, code: string) => ({ filename: join(projectRoot, file), code });

tester.run("imports-follow-layers", importsFollowLayers, {
  valid: [
    { name: "lets a room import one above it", ...at("src/planning/capacity/usable.ts", `import { invalid } from "../text";`) },
    { name: "lets a room import its own files", ...at("src/planning/capacity/usable.ts", `import { layOut } from "./layout"; export * from "./scheme";`) },
    { name: "lets a folder below a room import the room", ...at("src/planning/checks/rules/facility/rack-depth.ts", `import type { Rule } from "../../finding";`) },
    { name: "lets a room import its packages, and a file of one", ...at("src/planning/text/canonical-text.ts", `import { sha256 } from "@noble/hashes/sha2";`) },
    { name: "lets a joining entry choose an adapter", ...at("src/taskpane/main.ts", `import { openOfficePort } from "../workbook/office/office-port";`) },
    { name: "lets an import that is worked out at run time pass", ...at("src/headless/calc.ts", `void import(name);`) },
    { name: "says nothing of files outside src", ...at("tests/docs/links.test.ts", `import { marked } from "marked";`) },
  ],
  invalid: [
    {
      name: "refuses a room below its own",
      ...at("src/planning/capacity/usable.ts", `import { carve } from "../addressing";`),
      errors: [{ message: "src/planning/capacity may not import src/planning/addressing/index.ts: layers.json says what it may.", column: 23 }],
    },
    {
      name: "refuses a type, an import written inside a type, a re-export and an import at run time all the same",
      ...at(
        "src/planning/text/template.ts",
        `import type { Plan } from "../plan/read"; let plan: import("../plan/read").Plan; export { readPlan } from "../plan/read"; export * from "../plan/read"; void import("../plan/read");`,
      ),
      errors: 5,
    },
    {
      name: "refuses the inside of another room",
      ...at("src/planning/capacity/usable.ts", `import { invalid } from "../text/problem";`),
      errors: [{ message: "Import src/planning/text through its index.ts." }],
    },
    {
      name: "refuses a package that the room does not list",
      ...at("src/planning/capacity/usable.ts", `import Decimal from "decimal.js";`),
      errors: [{ message: "src/planning/capacity may not import decimal.js: layers.json lists its packages." }],
    },
    {
      name: "refuses a package whose name only begins like an allowed one",
      ...at("src/planning/quantity/exact.ts", `import x from "decimal.json";`),
      errors: 1,
    },
    {
      name: "refuses an adapter to an action",
      ...at("src/actions/set-up.ts", `import { openOfficePort } from "../workbook/office/office-port";`),
      errors: [{ message: "src/actions may not import src/workbook/office/office-port.ts: layers.json says what it may." }],
    },
    {
      name: "refuses a file beside a listed one",
      ...at("src/actions/set-up.ts", `import { checkEdits } from "../workbook/check-edits";`),
      errors: 1,
    },
    {
      name: "asks for a row where a folder has none",
      ...at("src/elsewhere/new.ts", `import { invalid } from "../planning/text";`),
      errors: [{ message: "src/elsewhere/new.ts has no row in layers.json: add one for its folder." }],
    },
  ],
});
