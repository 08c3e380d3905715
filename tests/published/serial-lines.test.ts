import { serialtime } from "../../src/functions/rates";

test("8 data bits, no parity, 1 stop bit: 9600 baud carry 960 characters a second", () => {
  expect(960 / serialtime(960, 9600)).toBe(960);
  expect(serialtime(1, 9600) * 1e6).toBeCloseTo(1041.667, 2);
});

/** Clock of the chip over sixteen samples a bit. */
const divided = 1_843_200 / 16;

describe("a serial card's manual: divisors of a 1.8432 MHz UART clock give the character time", () => {
  test.each([
    [50, 2304],
    [75, 1536],
    [150, 768],
    [300, 384],
    [600, 192],
    [1200, 96],
    [1800, 64],
    [2400, 48],
    [3600, 32],
    [4800, 24],
    [7200, 16],
    [9600, 12],
    [19_200, 6],
    [38_400, 3],
    [57_600, 2],
  ])("%i baud, divisor %i: ten bits of it", (baud, divisor) => {
    expect(serialtime(1, baud)).toBeCloseTo((10 * divisor) / divided, 15);
  });

  test.each([
    [110, 1047, 0.026],
    [134.5, 857, 0.058],
    [2000, 58, 0.69],
  ])("%p baud, divisor %i, which is off by %p %%", (baud, divisor, percent) => {
    const off = (100 * Math.abs(serialtime(1, baud) - (10 * divisor) / divided)) / serialtime(1, baud);
    expect(Math.abs(off - percent)).toBeLessThan(0.01);
  });
});
