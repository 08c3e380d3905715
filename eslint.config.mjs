import js from "@eslint/js";
import officeAddins from "eslint-plugin-office-addins";
import tseslint from "typescript-eslint";
import { importsFollowLayers } from "./scripts/lint/imports-follow-layers.mjs";

// The recommended set of this plugin cannot parse TypeScript: its rules are taken one by one.
const officeRules = Object.fromEntries(Object.keys(officeAddins.rules).map((rule) => [`office-addins/${rule}`, "error"]));

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "coverage/", "src/functions/functions.json"] },
  js.configs.recommended,
  ...tseslint.configs.strict,
  ...tseslint.configs.stylistic,
  {
    plugins: { "office-addins": officeAddins },
    rules: {
      ...officeRules,
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: "error",
      "max-lines": ["warn", { max: 450, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    files: ["src/**/*.ts"],
    plugins: { baywright: { rules: { "imports-follow-layers": importsFollowLayers } } },
    rules: { "baywright/imports-follow-layers": "error" },
  },
  {
    files: ["src/planning/checks/**/*.ts"],
    rules: {
      "no-restricted-syntax": ["error", { selector: "TSAsExpression > TSNeverKeyword", message: "Give the table or the list its type: `as never` lets every mistake through." }],
    },
  },
  {
    files: ["**/*.js", "**/*.mjs"],
    languageOptions: { globals: { require: "readonly", module: "writable", process: "readonly", console: "readonly", __dirname: "readonly", URL: "readonly", Buffer: "readonly", setTimeout: "readonly" } },
    rules: { "@typescript-eslint/no-require-imports": "off" },
  },
);
