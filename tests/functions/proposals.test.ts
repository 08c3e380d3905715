import { catalogue, type CatalogueEntry } from "../../src/functions/catalogue";
import { Problem, quote, type Proposal } from "../../src/planning/text";
import { kindOf } from "../support/argument-kinds";
import { cellAnswer } from "../support/cell-answer";
import { parseCall } from "../support/formula-call";
import { rightValues, wrongInputs, type Kind, type Typed } from "../support/wrong-inputs";

/** Calls with room for what is tried, where the examples are narrow. */
const contexts: Readonly<Record<string, string>> = {
  POOLROOM: '=BAY.POOLROOM({"A1",40,1;"A2",4000,1E-12},"A1")',
  CARVE: '=BAY.CARVE("10.0.0.0/8",{"a",40,"10.20.0.0/24"})',
  NEXTSUBNET: '=BAY.NEXTSUBNET("10.20.0.0/16",28)',
  ASSIGN: '=BAY.ASSIGN("10.0.0.0/8",{"ctl-a"},{"ctl-b","10.20.0.20"})',
  PORTPLAN: '=BAY.PORTPLAN({"Array 1",2,2},{"data-2","10.0.0.0/8","none"})',
  AVAILABILITY: '=BAY.AVAILABILITY({"host","sw1",0.001;"sw1","array",0.001},"host","array",{"sw1",0.0001})',
  AVAILBOUNDS: '=BAY.AVAILBOUNDS({"host","sw1",0.001;"sw1","array",0.001},"host","array",{"sw1",0.0001})',
  SINGLEPOINTS: '=BAY.SINGLEPOINTS({"host","sw1";"sw1","array"},"host","array",{"sw1",0})',
  CUTSET: '=BAY.CUTSET({"host","sw1";"sw1","array"},"host","array",{"sw1",0})',
  PATHS: '=BAY.PATHS({"host","sw1";"sw1","array"},"host","array","node",{"sw1",0})',
  MTTDL: '=BAY.MTTDL("RAID 6",12,1000000,1000000,1)',
  LOSSRISK: '=BAY.LOSSRISK("RAID 6",12,8,"1.5%",1000000,1,0,0,168,0,1)',
  BYTESLOST: '=BAY.BYTESLOST("RAID 6",12,8,"1.5%",1000000,1,0,0,168,0,1)',
  LOSSRANGE: '=BAY.LOSSRANGE("RAID 6",12,8,0.001,0.99,1000000,1,0,0,168,0,1)',
  RACKFIT: '=BAY.RACKFIT(42,{"Array 1",4,60;"Switch",1,5,20},{30,3})',
};

/** A call that answers, and the place of one cell in it. */
interface Slot {
  readonly label: string;
  readonly kind: Kind;
  readonly name: string;
  readonly evaluate: (value: Typed) => Problem | null;
}

function problemOrNull(run: () => unknown): Problem | null {
  try {
    run();
    return null;
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown;
    throw thrown;
  }
}

/** Every cell that a function takes: each argument, and each column of the last row of its ranges, in a call that is right otherwise. */
function slotsOf({ id, parameters, examples, call }: CatalogueEntry): Slot[] {
  const calls = [...(contexts[id] === undefined ? [] : [contexts[id]]), ...examples].map((formula) => parseCall(formula).args);
  return parameters.flatMap(({ name }, place): Slot[] => {
    const kind = kindOf(id, name)!;
    const args = calls.find((given) => given[place] !== null && given[place] !== undefined) ?? calls[0]!;
    const put = (value: unknown): Problem | null => problemOrNull(() => call.evaluate(...parameters.map((_, index) => (index === place ? value : args[index]))));
    if (typeof kind === "string") return [{ label: `${id} ${name}`, kind, name, evaluate: put }];
    const given = args[place];
    const table: readonly (readonly unknown[])[] = Array.isArray(given) ? given : [kind.map((column) => rightValues[column])];
    const lastWith = (index: number, value: Typed): unknown[] => {
      const row = [...table.at(-1)!];
      row[index] = value;
      return Array.from(row);
    };
    return kind.map((column, index) => ({
      label: `${id} ${name} column ${index + 1}`,
      kind: column,
      name,
      evaluate: (value) => put([...table.slice(0, -1), lastWith(index, value)]),
    }));
  });
}

/** Tells whether a problem is about an argument, wherever in it. */
function isAbout(problem: Problem, place: string): boolean {
  return problem.argument.split(" ")[0] === place.split(" ")[0];
}

/** What a sentence says to write: up to its end. A point inside a figure or an address ends nothing. */
const toldBy = (sentence: string): string[] => [...sentence.matchAll(/\b[Ww]rite (.+?)[.?](?= |$)/g)].map(([, clause = ""]) => clause);
/** Words with which a sentence says what kind of thing to write: a bound, a choice, an example. */
const template = /^(a|an|another|any|at|bytes|data|either|fewer|how|IPv4|IPv6|it|larger|less|more|one|text|the|them|two|TB as|what|which|whole)\b|^\S+ or more$/;

/** Tells whether everything that a sentence says to write is a template, or begins with one of its proposals. */
function isToldAsData({ sentence, proposals }: Problem): boolean {
  return toldBy(sentence).every((clause) => template.test(clause) || proposals.some((one) => begins(clause.replace(/^"/, ""), one) || String(one).includes(clause)));
}

function begins(clause: string, proposal: Proposal): boolean {
  const written = typeof proposal === "boolean" ? String(proposal).toUpperCase() : String(proposal);
  return clause.startsWith(written) && /^("|,| or |$)/.test(clause.slice(written.length));
}

const known = catalogue.filter(({ id, parameters }) => parameters.every(({ name }) => kindOf(id, name) !== undefined));
const slots = known.flatMap(slotsOf);
const told = slots.flatMap((slot) => wrongInputs[slot.kind].flatMap(({ typed, means }) => {
  const problem = slot.evaluate(typed);
  return problem === null ? [] : [{ slot, typed, means, problem }];
}));
const proposed = told.flatMap((one) => one.problem.proposals.map((proposal) => ({ ...one, proposal })));

describe("what a sentence tells people to write", () => {
  test("is tried on every argument there is: say in tests/support/argument-kinds.ts what kind a new one is of", () => {
    const unknown = catalogue.flatMap(({ id, parameters }) => parameters.filter(({ name }) => kindOf(id, name) === undefined).map(({ name }) => `${id}.${name}`));
    expect(unknown).toEqual([]);
    expect(told.length).toBeGreaterThan(4000);
    expect(proposed.length).toBeGreaterThan(1500);
  });

  test("is data wherever it is not a bound, a choice or an example", () => {
    expect([...new Set(told.filter(({ problem }) => !isToldAsData(problem)).map(({ problem }) => problem.sentence))]).toEqual([]);
  });

  test("stands in the sentence", () => {
    const says = (clause: string, text: string): boolean =>
      clause.toUpperCase().includes(text.toUpperCase()) || text.includes(clause) || clause.startsWith("it as a number");
    const silent = proposed.filter(({ problem, proposal }) => !toldBy(problem.sentence).some((clause) => says(clause, String(proposal))));
    expect(silent.map(({ problem, proposal }) => [problem.sentence, proposal])).toEqual([]);
  });

  test("is taken at once by at least 98 of 100 arguments", () => {
    const refused = proposed.flatMap(({ slot, typed, proposal, problem }) => {
      const after = slot.evaluate(proposal);
      return after !== null && isAbout(after, problem.argument) ? [`${slot.label} ${String(typed)}: ${String(proposal)}: ${after.sentence}`] : [];
    });
    expect(refused.length / proposed.length).toBeLessThanOrEqual(0.02);
  });

  test("means what was typed; where that could be two things, nothing is proposed", () => {
    const other = proposed.filter(({ means, proposal }) => !means.includes(proposal));
    expect(other.map(({ slot, typed, problem, proposal }) => [slot.label, typed, proposal, problem.sentence])).toEqual([]);
  });

  test("is there wherever it is clear, for every kind of which something is", () => {
    const clear = new Set(Object.entries(wrongInputs).filter(([, rows]) => rows.some(({ means }) => means.length > 0)).map(([kind]) => kind));
    const helped = new Set<string>(proposed.map(({ slot }) => slot.kind));
    expect([...clear].filter((kind) => !helped.has(kind))).toEqual([]);
  });
});

describe("an example or a bound in a sentence", () => {
  /** What stands behind "such as", and before "or more". */
  const pattern = /Write (?:[^?]*? )?such as "?([^",]+?)"?(?:[,.]?$|[.,] | or | for )|Write (\d+) or more/g;
  const examples = told.flatMap((one) => [...one.problem.sentence.matchAll(pattern)].map(([, example, bound]) => ({ ...one, example: example ?? bound! })));

  test("is taken by at least 98 of 100 arguments", () => {
    const refused = examples.filter(({ slot, problem, example }) => {
      const after = slot.evaluate(Number.isFinite(Number(example)) ? Number(example) : example);
      return after?.argument === problem.argument;
    });
    expect(examples.length).toBeGreaterThan(2000);
    expect(refused.length / examples.length).toBeLessThanOrEqual(0.02);
  });
});

describe("a sentence about a wrong input", () => {
  test("is short, ends, and names the argument", () => {
    const bad = told.filter(({ slot, problem }) => {
      const { sentence } = problem;
      return sentence.length > 160 || !/[.?]$/.test(sentence) || (isAbout(problem, slot.name) && !sentence.startsWith(slot.name));
    });
    expect(bad.map(({ problem }) => problem.sentence)).toEqual([]);
  });

  test("quotes what was typed, cut where it is long", () => {
    const shown = (typed: Typed): string => {
      if (typeof typed === "number") return String(Number(typed.toPrecision(15)));
      return typeof typed === "string" && typed.trim() !== "" ? quote(typed.trim()) : quote(typed === true ? typed : null).replace("a ", "");
    };
    // Of several things in one cell the one that is wrong.
    const quotesPart = (sentence: string, typed: Typed): boolean => [...sentence.matchAll(/"([^"]{2,})"/g)].some(([, part = ""]) => String(typed).includes(part));
    const silent = told.filter(
      ({ slot, typed, problem }) =>
        problem.kind === "invalid" && isAbout(problem, slot.name) && !problem.sentence.toUpperCase().includes(shown(typed).toUpperCase()) && !quotesPart(problem.sentence, typed),
    );
    expect([...new Set(silent.map(({ slot, typed, problem }) => `${slot.label} ${String(typed)}: ${problem.sentence}`))]).toEqual([]);
  });
});

describe("a range where one cell belongs", () => {
  /** Every argument of one cell in a call that answers, whose cells are asked about one by one. */
  const single = catalogue.flatMap(({ id, parameters, examples, call, answers }) => {
    const { args } = parseCall(examples[0]!);
    const cells = parameters.map(({ name, range }, place) => ({ id, name, range, place, args, call, parameters, spills: answers.spills }));
    return cells.filter(({ name, range }) => !range && kindOf(id, name) !== "anything");
  });

  test.each(single.map((one) => [`${one.id} ${one.name}`, one] as const))("%s: is told the formula for each cell, which answers", (_, { id, name, place, args, call, parameters, spills }) => {
    const one = args[place] ?? null;
    const sentence = String(cellAnswer(() => call(...parameters.map((__, index) => (index === place ? [[one], [one]] : args[index])))));
    expect(sentence.length).toBeLessThanOrEqual("#VALUE! ".length + 160);
    expect(sentence.startsWith(`#VALUE! ${name} is a range of several cells. `)).toBe(true);
    if (spills) {
      expect(sentence).toMatch(/Give one cell, and the formula once for each\.$/);
      return;
    }
    const [, called, list] = /=MAP\(A2:A9,LAMBDA\(x,BAY\.([A-Z]+)\((.*)\)\)\)\.$/.exec(sentence)!;
    // A name stands for what that argument was given: the range that one person knows and the function does not.
    const isName = (text: string): boolean => parameters.some((other) => other.name === text) || text === "x";
    const written = splitArguments(list!).map((text, index) => (isName(text) ? args[index] : (parseCall(`=BAY.A(${text})`).args[0] ?? null)));
    expect(called).toBe(id);
    expect(cellAnswer(() => call(...written))).toEqual(cellAnswer(() => call(...args)));
  });

  test("holds what the others hold, in short", () => {
    expect(shownFor('=BAY.USABLE({"RAID 6";"RAID 5"},12,4)')).toBe("#VALUE! scheme is a range of several cells. Ask for each: =MAP(A2:A9,LAMBDA(x,BAY.USABLE(x,12,4))).");
    expect(shownFor('=BAY.USABLE("RAID 6",{12;24},"3.84 TB",,0.1)')).toMatch(/LAMBDA\(x,BAY\.USABLE\("RAID 6",x,"3\.84 TB",,0\.1\)\)\)\.$/);
  });

  test("holds the names of the others where they are ranges or long", () => {
    expect(shownFor('=BAY.PATHS({"host","sw1";"sw1","array"},{"host";"h2"},"array")')).toMatch(/LAMBDA\(x,BAY\.PATHS\(links,x,"array"\)\)\)\.$/);
    expect(shownFor(`=BAY.USABLE("RAID 6",{12;24},"${"4".repeat(90)} TB")`)).toMatch(/LAMBDA\(x,BAY\.USABLE\(scheme,x,driveSize\)\)\)\.$/);
  });
});

/** What a cell shows for a formula. */
function shownFor(formula: string): unknown {
  const { id, args } = parseCall(formula);
  return cellAnswer(() => catalogue.find((one) => one.id === id)!.call(...args));
}

/** Splits the arguments of a call at the commas outside quotation marks. */
function splitArguments(text: string): string[] {
  return text.match(/(?:"[^"]*"|[^",])+|(?<=^|,)(?=,|$)/g) ?? [];
}

describe("what people typed and were told wrongly", () => {
  test.each<[string, string]>([
    ["=BAY.ENERGYCOST(900,0.28,5,1.5)", "#VALUE! overhead is 1.5: is it 150% or 1.5%? Write a number from 0 to 1, or a percentage."],
    ["=BAY.SELLPRICE(8000,1.5)", "#VALUE! share is 1.5: is it 150% or 1.5%? Write a number from 0 to below 1, or a percentage."],
    ['=BAY.USABLE("RAID 6",12,4,0,20)', "#VALUE! reserve is 20, which means 2000%. Write 20% or 0.2."],
    ['=BAY.HOSTCOUNT("hello")', '#VALUE! prefix "hello" is not a prefix. Write IPv4 such as 10.20.0.0/24, or IPv6 such as 2001:db8::/64.'],
    ['=BAY.HOSTCOUNT("/24")', '#VALUE! prefix "/24" has no address before its length. Write one such as 10.20.0.0/24.'],
    ['=BAY.HOSTCOUNT("120%")', '#VALUE! prefix "120%" is not a prefix. Write IPv4 such as 10.20.0.0/24, or IPv6 such as 2001:db8::/64.'],
    ['=BAY.CANONICAL("120%")', '#VALUE! address "120%" is not an address. Write IPv4 such as 10.20.0.9, or IPv6 such as 2001:db8::9.'],
    ['=BAY.HOSTCOUNT("4 Tb")', '#VALUE! prefix "4 Tb" is not a prefix. Write IPv4 such as 10.20.0.0/24, or IPv6 such as 2001:db8::/64.'],
    ['=BAY.USABLE("RAID 6",12,"4 Tb")', '#VALUE! driveSize "4 Tb" is in bits. Write it in bytes, with a capital B.'],
    ['=BAY.USABLE("#NAME?",12,4)', '#VALUE! scheme holds "#NAME?". Put the scheme in quotes if it is text, or mend that cell first.'],
    ["=BAY.USABLE(,12,4)", '#VALUE! scheme is blank. Put the scheme in quotes, such as "RAID 6" or "8+2".'],
    ["=BAY.USABLE(8+2,12,4)", '#VALUE! scheme is 10, not text. Put the scheme in quotes: "8+2".'],
    ['=BAY.MIXED("RAID 6",{4;4;"#NAME?";8})', '#VALUE! driveSizes row 3 holds "#NAME?". Mend that cell first.'],
    ['=BAY.CURRENT(1840,230,"0,95")', '#VALUE! powerFactor "0,95" has a comma. Write 0.95.'],
    ['=BAY.CARVE("10.0.0.0/16",{"link",2,"10.0.0.0/31"})', '#VALUE! needs row 1: kept prefix 10.0.0.0/31 for "link" is longer than /30. Clear it or give a larger one.'],
    ["=BAY.EFFECTIVE(100,0.5)", '#VALUE! reduction is 0.5, which looks like a time: 3:1 without quotes is 03:01. Write a ratio in quotes, such as "3:1".'],
    ["=BAY.EFFECTIVE(100,0.209027777777778)", '#VALUE! reduction is 0.209027777777778, which looks like a time: 5:1 without quotes is 05:01. Write "5:1" in quotes.'],
    ['=BAY.UNITPRICE(12000,"40","TiB")', '#VALUE! capacity is the text "40". Write it as a number, without quotes.'],
    ['=BAY.SELLPRICE(8000,"25%","mark-up")', '#VALUE! kind is "mark-up". Write markup.'],
    ['=BAY.PAYLOAD(2,10,1500,"6")', '#VALUE! ipVersion is "6". Write 6, without quotes.'],
    ['=BAY.MERGE({"10.20.0.0/24";"10.20.1.9/24"})', '#VALUE! prefixes row 2 "10.20.1.9/24" has bits set after the /24: is it all of 10.20.1.0/24, or 10.20.1.9 alone? Write the one meant.'],
  ])("%s", (formula, shown) => {
    expect(shownFor(formula)).toBe(shown);
  });
});
