import { invalid, isTaken, noAnswer, Problem, quote } from "../../../src/planning/text";

describe("a problem quotes what was received", () => {
  test.each([
    [null, "a blank"],
    [undefined, "a blank"],
    ["", "a blank"],
    [" ", '" "'],
    ["4 Tb", '"4 Tb"'],
    ["1234567890123456789012345678901234567890", '"1234567890123456789012345678901234567890"'],
    ["12345678901234567890123456789012345678901", '"123456789012345678901234567890123456789…"'],
    [0, "0"],
    [false, "FALSE"],
  ])("%j as %s", (received, quoted) => {
    expect(quote(received)).toBe(quoted);
  });
});

describe("a problem is an error that says what to do", () => {
  test("of input that can be mended", () => {
    const problem = invalid("drives", 0, "drives is 0. Write 1 or more.");
    expect(problem).toBeInstanceOf(Problem);
    expect(problem).toMatchObject({ name: "Problem", kind: "invalid", argument: "drives", received: 0, message: problem.sentence, sentence: "drives is 0. Write 1 or more." });
  });

  test("of a question that has no answer", () => {
    expect(noAnswer("fill", 1, "It never fills.")).toMatchObject({ name: "Problem", kind: "no-answer", argument: "fill", received: 1, sentence: "It never fills." });
  });
});

describe("a problem carries what it tells people to write", () => {
  test("as data, each alone in place of what was received", () => {
    expect(invalid("reserve", 20, "reserve is 20. Write 20% or 0.2.", "20%", 0.2).proposals).toEqual(["20%", 0.2]);
    expect(invalid("drives", 0, "drives is 0. Write 1 or more.").proposals).toEqual([]);
  });

  test("in the whole text where the fault is in a part of it", () => {
    const part = invalid("taken", "b-a", 'taken "b-a" runs backwards. Write a-b.', "a-b");
    expect(part.within("c, b-a, d")).toMatchObject({ received: "c, b-a, d", sentence: part.sentence, proposals: ["c, a-b, d"] });
  });

  test("where it would be taken, which a defect is not mistaken for", () => {
    const refuse = (): never => {
      throw invalid("drives", 0, "drives is 0. Write 1 or more.");
    };
    const fail = (): never => {
      throw new RangeError("a defect");
    };
    expect([isTaken(() => 1), isTaken(refuse)]).toEqual([true, false]);
    expect(() => isTaken(fail)).toThrow(RangeError);
  });
});
