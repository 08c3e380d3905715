import { fitStraightLine, lineAt, predictionInterval, studentT } from "../../src/planning/capacity";

/** x and y of the data set Norris, lower level of difficulty. */
const norris: readonly (readonly [number, number])[] = [
  [0.2, 0.1], [337.4, 338.8], [118.2, 118.1], [884.6, 888], [10.1, 9.2], [226.5, 228.1], [666.3, 668.5], [996.3, 998.5], [448.6, 449.1], [777, 778.9], [558.2, 559.2], [0.4, 0.3],
  [0.6, 0.1], [775.5, 778.1], [666.9, 668.8], [338, 339.3], [447.5, 448.9], [11.6, 10.8], [556, 557.7], [228.1, 228.3], [995.8, 998], [887.6, 888.8], [120.2, 119.6], [0.3, 0.3],
  [0.3, 0.6], [556.8, 557.6], [339.1, 339.3], [887.2, 888], [999, 998.5], [779, 778.9], [11.1, 10.2], [118.3, 117.6], [229.2, 228.9], [669.1, 668.4], [448.9, 449.2], [0.5, 0.2],
];

/** Age in weeks and shear strength of 20 motors, from memory: the line and the interval that the book prints come of them. */
const propellant: readonly (readonly [number, number])[] = [
  [15.5, 2158.7], [23.75, 1678.15], [8, 2316], [17, 2061.3], [5.5, 2207.5], [19, 1708.3], [24, 1784.7], [2.5, 2575], [7.5, 2357.9], [11, 2256.7], [13, 2165.2], [3.75, 2399.55],
  [25, 1779.8], [9.75, 2336.75], [22, 1765.3], [18, 2053.5], [6, 2414.4], [12.5, 2200.5], [2, 2654.2], [21.5, 1753.7],
];

test("a straight line through Norris agrees with the certified values of the NIST Statistical Reference Datasets", () => {
  const line = fitStraightLine(norris);
  expect(line.slope).toBeCloseTo(1.00211681802045, 12);
  expect(lineAt(line, 0)).toBeCloseTo(-0.262323073774029, 11);
  expect(line.deviation).toBeCloseTo(0.884796396144373, 11);
});

test("a further motor of ten weeks is foreseen at 2048.32 to 2464.32 psi, as Montgomery, Peck and Vining work it in Introduction to Linear Regression Analysis, example 2.7", () => {
  const line = fitStraightLine(propellant);
  expect([line.slope.toFixed(2), lineAt(line, 0).toFixed(2)]).toEqual(["-37.15", "2627.82"]);
  const [low, high] = predictionInterval(line, 10, 0.95);
  // The book works with figures of two decimals.
  expect(Math.abs(low - 2048.32)).toBeLessThan(0.15);
  expect(Math.abs(high - 2464.32)).toBeLessThan(0.15);
});

test.each([[1, 12.706], [2, 4.303], [3, 3.182], [4, 2.776], [5, 2.571], [10, 2.228], [15, 2.131], [20, 2.086], [30, 2.042], [60, 2], [100, 1.984]])(
  "95 %% of Student's t with %i degrees of freedom lies within %d, as the table of the NIST/SEMATECH e-Handbook, 1.3.6.7.2, says (values from memory)",
  (freedom, t) => {
    expect(studentT(freedom, 0.95).toFixed(3)).toBe(t.toFixed(3));
  },
);

test("99 % of Student's t with 10 degrees of freedom lies within 3.169 (same table)", () => {
  expect(studentT(10, 0.99).toFixed(3)).toBe("3.169");
});
