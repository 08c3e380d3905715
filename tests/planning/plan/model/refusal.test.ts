import { orNull, refusalOf } from "../../../../src/planning/plan/model";
import { invalid } from "../../../../src/planning/text";

const refuse = (): never => {
  throw invalid("drives", 0, "drives is 0. Write 1 or more.");
};
const fail = (): never => {
  throw new RangeError("a defect");
};

describe("asking whether something can be read", () => {
  test("gives what it is, or nothing where it is refused", () => {
    expect([orNull(() => 7), orNull(refuse)]).toEqual([7, null]);
  });

  test("gives the sentence of a refusal, or nothing where there is none", () => {
    expect([refusalOf(() => 7), refusalOf(refuse)]).toEqual([null, "drives is 0. Write 1 or more."]);
  });

  test("takes no defect for a refusal", () => {
    expect(() => orNull(fail)).toThrow(RangeError);
    expect(() => refusalOf(fail)).toThrow(RangeError);
  });
});
