import { payload } from "../../src/functions/rates";

/** Frames a second behind the payload that our function gives: each frame of `frame` bytes carries MTU - 40 bytes of TCP payload. */
function framesPerSecond(frame: number, gigabits: number, vlan: boolean): number {
  const mtu = frame - 18 - (vlan ? 4 : 0);
  return (payload(1, gigabits, mtu, 4, false, vlan) * 1e6) / (mtu - 40);
}

// Printed cells that do not follow from the RFC's own formula are left out: 4096 and 9216 bytes at 1 Gb/s, 4096 bytes at 10 Gb/s.
describe("RFC 5180 appendix A.1: frames a second on Ethernet, rounded down", () => {
  test.each<[number, number | null, number | null, number | null, number | null]>([
    [128, 8_445, 84_459, 844_594, 8_445_945],
    [256, 4_528, 45_289, 452_898, 4_528_985],
    [512, 2_349, 23_496, 234_962, 2_349_624],
    [1024, 1_197, 11_973, 119_731, 1_197_318],
    [1280, 961, 9_615, 96_153, 961_538],
    [1518, 812, 8_127, 81_274, 812_743],
    [2048, 604, 6_044, 60_444, 604_448],
    [4096, 303, 3_036, null, null],
    [8192, 152, 1_522, 15_221, 152_216],
    [9216, 135, 1_353, null, 135_339],
  ])("frames of %i bytes", (frame, ...printed) => {
    const measured = [0.01, 0.1, 1, 10].map((gigabits) => Math.floor(framesPerSecond(frame, gigabits, false) + 1e-6));
    printed.forEach((rate, index) => {
      if (rate !== null) expect(measured[index]).toBe(rate);
    });
  });

  test("1522 bytes is the largest frame with a VLAN tag", () => {
    expect([0.01, 0.1, 1, 10].map((gigabits) => Math.floor(framesPerSecond(1522, gigabits, true) + 1e-6))).toEqual([810, 8_106, 81_063, 810_635]);
  });
});

describe("RFC 2544 appendix B: frames a second at 10 Mb/s", () => {
  test.each([[128, 8445], [256, 4528], [512, 2349], [768, 1586], [1024, 1197], [1280, 961], [1518, 812]])("%i bytes: %i", (frame, rate) => {
    expect(Math.floor(framesPerSecond(frame, 0.01, false) + 1e-6)).toBe(rate);
  });
});

describe("TCP payload as a share of the line, from RFC 894, 791, 8200 and 7323 header sizes", () => {
  test.each<[number, 4 | 6, boolean, boolean, number]>([
    [1500, 4, false, false, 94.928],
    [9000, 4, false, false, 99.137],
    [1500, 4, true, false, 94.148],
    [9000, 4, true, false, 99.004],
    [1500, 6, false, false, 93.628],
    [9000, 6, false, false, 98.916],
    [1500, 6, true, false, 92.848],
    [1500, 4, false, true, 94.682],
    [9000, 4, false, true, 99.093],
    [1500, 6, true, true, 92.607],
    [9000, 6, true, true, 98.739],
  ])("MTU %i, IPv%i, timestamps %p, VLAN %p: %p %%", (mtu, version, timestamps, vlan, percent) => {
    expect((100 * payload(1, 1, mtu, version, timestamps, vlan)) / 125).toBeCloseTo(percent, 3);
  });
});
