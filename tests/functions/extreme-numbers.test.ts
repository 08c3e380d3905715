import { catalogue } from "../../src/functions/catalogue";
import { rowsOf } from "../../src/functions/support/rows";
import { cellAnswer } from "../support/cell-answer";
import { goldenFormulas } from "../support/golden-answers";
import { parseCall } from "../support/formula-call";

const extremes = [1e-308, 5e-324, 1e308, -1e-308, -1e308];

/** The arguments of a formula with `extreme` in one place at a time: each argument, also one left out, and each cell of a range. */
function* withExtreme(args: readonly unknown[], places: number, extreme: number): Generator<readonly unknown[]> {
  for (let place = 0; place < places; place += 1) {
    const put = (value: unknown): unknown[] => Array.from({ length: places }, (_, index) => (index === place ? value : args[index]));
    yield put(extreme);
    if (!Array.isArray(args[place])) continue;
    const rows = rowsOf(args[place]);
    for (const [row, line] of rows.entries()) {
      for (const column of line.keys()) yield put(rows.map((other, at) => (at === row ? other.map((cell, index) => (index === column ? extreme : cell)) : other)));
    }
  }
}

test.each(catalogue.filter(({ parameters }) => parameters.length > 0).map((one) => [one.id, one] as const))(
  "%s answers the smallest and the largest numbers of a sheet in every place, or says why not",
  (id, { call, parameters }) => {
    const calls = goldenFormulas().map(parseCall).filter((one) => one.id === id);
    const faults: unknown[] = [];
    for (const { args } of calls) {
      for (const extreme of extremes) {
        for (const given of withExtreme(args, parameters.length, extreme)) {
          const answer = cellAnswer(() => call(...given));
          const isSentence = typeof answer === "string" && answer.startsWith("#");
          if (isSentence && (answer.includes("inside the add-in") || answer.replace(/^#\S+ /, "").length > 160)) faults.push([given, answer]);
        }
      }
    }
    expect(calls.length === 0 && id !== "VERSION").toBe(false);
    expect(faults).toEqual([]);
  },
);
