import { fitNumber } from "../../../src/standalone/grid/fit-number";

const inCharacters = (most: number) => (text: string) => text.length <= most;

test.each([
  [12345678901000, 14, "12345678901000"],
  [12345678901000, 11, "1.23457E+13"],
  [12345678901000, 7, "1.2E+13"],
  [12345678901000, 6, "1E+13"],
  [12345678901000, 4, "####"],
  [-12345678901000, 7, "-1E+13"],
  [333333.3333333333, 9, "333333.33"],
  [333333.3333333333, 6, "333333"],
  [333333.3333333333, 5, "3E+05"],
  [0.123456789, 6, "0.1235"],
  [0.00001234567, 8, "1.23E-05"],
  [0.04, 3, "###"],
  [2e300, 6, "2E+300"],
  [99.999999999, 7, "100"],
  [2.00001, 5, "2"],
])("%d in a cell of %d characters is shown as %s", (value, most, shown) => {
  expect(fitNumber(String(value), value, inCharacters(most))).toBe(shown);
});

test("what has a format of its own is shown in it or as hashes", () => {
  expect(fitNumber("1,234.50", null, inCharacters(8))).toBe("1,234.50");
  expect(fitNumber("1,234.50", null, inCharacters(7))).toBe("#######");
});

test("a figure never becomes one that says nothing of it", () => {
  for (let most = 1; most < 24; most += 1) {
    for (const value of [0.5, 0.049, 999.999, -0.0012, 1e-7, 123456.789, 9.9e22]) {
      const shown = fitNumber(String(value), value, inCharacters(most));
      if (shown.startsWith("#")) continue;
      expect(Math.abs(Number(shown) - value)).toBeLessThanOrEqual(Math.abs(value) / 2);
    }
  }
});
