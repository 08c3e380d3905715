import fc from "fast-check";
import { catalogue } from "../../src/functions/catalogue";
import { CellFault } from "../../src/functions/support/custom-functions";

const scalar = fc.oneof(
  fc.constantFrom<unknown>(null, undefined, "", " ", true, false, 0, -0, 1, 2, 4, 10, 12, 0.5, 1.5, 20, -1, 1e-300, 1e308, -1e308, NaN, Infinity, 1e15, 99_999.5),
  fc.constantFrom<unknown>(
    "10.20.0.0/24", "10.20.0.9", "10.20.0.9-10.20.0.20", "2001:db8::/64", "2001:db8::1", "255.255.255.0", "2024-05", "example.com", "RAID 6",
    "RAID 60 8+2", "8+2", "3 copies", "mirror", "RAID 1", "none", "raid 5 999+1", "9999+9999", "20%", "-100%", "3:1", "960 GB", "1 EiB", "4 Tb", "1e308",
    "TiB", "#N/A", "best", "markup", "constructor", "__proto__", "=1+1", "٤", "x".repeat(5000),
  ),
  fc.double(),
  fc.integer(),
  fc.string(),
  fc.constantFrom<unknown>({ basicValue: 4 }, { basicType: "Error" }, {}, [], [[]], 4n, Symbol.iterator, () => 4),
);
const range = fc.array(fc.array(scalar, { maxLength: 4 }), { maxLength: 5 });
const argument = fc.oneof({ weight: 4, arbitrary: scalar }, { weight: 1, arbitrary: range });

/** Everything a cell shows must be finite numbers, text or truth. */
function isShowable(value: unknown): boolean {
  if (Array.isArray(value)) return value.every(isShowable);
  return typeof value === "string" || typeof value === "boolean" || (typeof value === "number" && Number.isFinite(value));
}

describe.each(catalogue.map((one) => [one.id, one] as const))(
  "%s",
  (_id, { call, parameters }) => {
    test("answers anything with a value or with one short sentence, never with a defect of ours", () => {
      fc.assert(
        fc.property(fc.array(argument, { minLength: 0, maxLength: parameters.length }), (args) => {
          try {
            expect(isShowable(call(...args))).toBe(true);
          } catch (thrown) {
            if (!(thrown instanceof CellFault)) throw thrown;
            expect(thrown.message).not.toContain("inside the add-in");
            expect(thrown.message.length).toBeLessThanOrEqual(160);
            expect(thrown.message).toMatch(/[.!?]$/);
            const argument = thrown.message.split(/:? /)[0]!;
            expect(parameters.map(({ name }) => name)).toContain(argument);
          }
        }),
        { seed: 20, numRuns: 300 },
      );
    });
  },
);
