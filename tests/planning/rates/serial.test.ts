import { serialSeconds } from "../../../src/planning/rates";

test("a character takes ten bits on the line: a start bit, eight of data, a stop bit (common practice, no source)", () => {
  expect(serialSeconds(960, 9600)).toBe(1);
  expect(serialSeconds(1, 115_200)).toBe(10 / 115_200);
});
