import fc from "fast-check";
import { catalogue } from "../../src/functions/catalogue";
import { bytes, formatSize, parseUnit } from "../../src/planning/quantity";
import { goldenFormulas } from "../support/golden-answers";
import { cellAnswer } from "../support/cell-answer";
import { parseCall } from "../support/formula-call";

const byId = new Map(catalogue.map((one) => [one.id, one]));

/** What a parameter makes of something; null where it refuses it. */
function readBy(read: (received: unknown) => unknown, received: unknown): unknown {
  try {
    return read(received);
  } catch {
    return null;
  }
}

/** Arguments that are sizes, as they behave: a size in any unit is one, the same in bits is none. */
const sizeArguments = catalogue.flatMap((one) =>
  one.parameters.flatMap(({ name, read }, place) => (readBy(read, "4 TB") !== null && readBy(read, "4 Tb") === null ? [[one.id, name, place] as const] : [])),
);

/** Cells of tables that are sizes. */
const sizeCells = [
  ["POOLROOM", (text: string) => [[["A1", text, text], ["A2", "900 EB", 0]], "A1"]],
] as const;

const anySize = fc.tuple(fc.bigInt({ min: 1n, max: 10n ** 24n }), fc.constantFrom("B", "kB", "MB", "GB", "TB", "PB", "EB", "KiB", "MiB", "GiB", "TiB", "PiB", "EiB"));

test("the arguments that are sizes are found by what they read", () => {
  const found = new Set(sizeArguments.map(([id, name]) => `${id} ${name}`));
  for (const one of ["USABLE driveSize", "MIXED driveSizes", "DRIVESFOR target", "WRITECOST stripeUnit", "ENDURANCE driveWritesADay", "UNITPRICE capacity", "SIZETEXT size"]) {
    expect(found).toContain(one);
  }
});

describe.each(sizeArguments)("%s reads as its %s what SIZETEXT writes", (id, _, place) => {
  const { call } = byId.get(id)!;
  const given = goldenFormulas().map(parseCall).find((one) => one.id === id && typeof cellAnswer(() => call(...one.args)) !== "string")?.args ?? [];
  const answer = (size: string): unknown => cellAnswer(() => call(...Array.from({ length: Math.max(given.length, place + 1) }, (_value, index) => (index === place ? size : given[index]))));

  test("to the same bytes", () => {
    fc.assert(
      fc.property(anySize, ([size, unit]) => {
        const written = formatSize(bytes(size), parseUnit(unit, "unit"), null);
        const plain = `${size} B`;
        // A sentence quotes what was written; what it says beside that is the same.
        expect(unquoted(answer(written), written)).toEqual(unquoted(answer(plain), plain));
      }),
      { seed: 31, numRuns: 60 },
    );
  });
});

test.each(sizeCells)("%s reads in its table what SIZETEXT writes", (id, argumentsWith) => {
  fc.assert(
    fc.property(anySize, ([size, unit]) => {
      const answer = (text: string): unknown => cellAnswer(() => byId.get(id)!.call(...argumentsWith(text)));
      expect(answer(formatSize(bytes(size), parseUnit(unit, "unit"), null))).toEqual(answer(`${size} B`));
    }),
    { seed: 32, numRuns: 100 },
  );
});

function unquoted(answer: unknown, written: string): unknown {
  return typeof answer === "string" && answer.startsWith("#") ? answer.replace(written, "…") : answer;
}
