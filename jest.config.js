const swc = ["@swc/jest", { jsc: { parser: { syntax: "typescript" }, target: "es2022" }, module: { type: "commonjs" } }];
/** Packages that come as modules only, which jest reads once they are compiled; many of them come with the engine. */
const modules = [
  ...["cjk-regex", "unicode-regex", "regexp-util", "franc-min", "trigram-utils", "n-gram", "collapse-white-space", "lodash-es", "rbush", "quickselect", "kdbush", "nanoid"],
  ...["@fluentui", "@microsoft/fast-[a-z]+", "@noble", "@scure", "cidr-tools", "ip-bigint"],
];
const shared = {
  rootDir: __dirname,
  testEnvironment: "node",
  transform: { "\\.[cm]?[jt]s$": swc, "\\.woff$": "<rootDir>/scripts/font-as-bytes.js" },
  transformIgnorePatterns: [`/node_modules/(?!(${modules.join("|")})/)(?!.*\\.woff$)`],
};

/** @type {import("jest").Config} */
module.exports = {
  projects: [
    {
      ...shared,
      displayName: "unit",
      testMatch: ["<rootDir>/tests/**/*.test.ts"],
      testPathIgnorePatterns: ["<rootDir>/tests/e2e/"],
      setupFiles: ["<rootDir>/tests/support/custom-functions.ts"],
    },
    {
      ...shared,
      displayName: "e2e",
      testMatch: ["<rootDir>/tests/e2e/**/*.test.ts"],
      globalSetup: "<rootDir>/tests/e2e/support/global-setup.ts",
      globalTeardown: "<rootDir>/tests/e2e/support/global-teardown.ts",
      setupFilesAfterEnv: ["<rootDir>/tests/e2e/support/try-again.ts"],
    },
  ],
  // By default one core is left idle, which on two cores is half the machine.
  maxWorkers: "100%",
  // Only to end what hangs: a busy machine is no fault, and how long things take is for the benches to say.
  testTimeout: 600_000,
  reporters: ["default", "<rootDir>/scripts/count-reporter.js"],
};
