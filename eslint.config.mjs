import js from "@eslint/js";
import officeAddins from "eslint-plugin-office-addins";
import tseslint from "typescript-eslint";
import { importsFollowLayers } from "./scripts/lint/imports-follow-layers.mjs";

// The recommended set of this plugin cannot parse TypeScript: its rules are taken one by one.
const officeRules = Object.fromEntries(Object.keys(officeAddins.rules).map((rule) => [`office-addins/${rule}`, "error"]));

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "coverage/", "src/functions/functions.json"] },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  js.configs.recommended,
  ...tseslint.configs.strictTypeChecked,
  ...tseslint.configs.stylisticTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    plugins: { "office-addins": officeAddins },
    rules: {
      ...officeRules,
      // An index that the line above proved to be there is written `row[at]!`.
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: "error",
      // A number reads in a sentence as it is; what has no text of its own (an object, null) is still refused.
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true }],
      // `() => save()` hands on that there is nothing to hand on: a block around it would say no more.
      "@typescript-eslint/no-confusing-void-expression": ["error", { ignoreArrowShorthand: true }],
      // A key of an open record (an environment variable, a part of a file) stands in brackets: it is no property that a type knows.
      "@typescript-eslint/dot-notation": ["error", { allowIndexSignaturePropertyAccess: true }],
      "max-lines": ["warn", { max: 450, skipBlankLines: true, skipComments: true }],
      "max-len": ["error", { code: 200 }],
      // Texts are cut by code points on purpose: addresses, names and formulas have no others.
      "@typescript-eslint/no-misused-spread": ["error", { allow: ["string"] }],
    },
  },
  {
    files: ["src/**/*.ts"],
    plugins: { baywright: { rules: { "imports-follow-layers": importsFollowLayers } } },
    rules: { "baywright/imports-follow-layers": "error" },
  },
  {
    // Packages bring the types of Node into what is checked for the page: what would not be there is refused here.
    files: ["src/{workbook,actions,taskpane,standalone,step}/**/*.ts"],
    rules: { "no-restricted-globals": ["error", "process", "Buffer", "global", "require", "__dirname", "__filename", "setImmediate"] },
  },
  {
    files: ["src/planning/checks/**/*.ts"],
    rules: {
      "no-restricted-syntax": [
        "error",
        { selector: "TSAsExpression > TSNeverKeyword", message: "Give the table or the list its type: `as never` lets every mistake through." },
      ],
    },
  },
  {
    // Texts of procedures are one line each, however long a step is.
    files: ["src/planning/commissioning/procedure/**/*.ts", "tests/support/survey-in-rows.ts"],
    rules: { "max-len": "off" },
  },
  {
    files: ["tests/**/*.ts", "bench/**/*.ts"],
    rules: {
      // A part that is missing shows as "undefined" in what is compared, and the test fails.
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true, allowNullish: true }],
      // Workbooks and stories of the tests are made of closures: taken apart they work as well.
      "@typescript-eslint/unbound-method": "off",
    },
  },
  {
    files: ["**/*.js", "**/*.mjs"],
    extends: [tseslint.configs.disableTypeChecked],
    languageOptions: {
      globals: {
        ...{ require: "readonly", module: "writable", process: "readonly", console: "readonly" },
        ...{ __dirname: "readonly", URL: "readonly", Buffer: "readonly", setTimeout: "readonly" },
      },
    },
    rules: { "@typescript-eslint/no-require-imports": "off" },
  },
);
