import { catalogue, type CatalogueEntry } from "../../src/functions/catalogue";
import { cellAnswer } from "../support/cell-answer";
import { parseCall } from "../support/formula-call";

type Grid = readonly (readonly unknown[])[];

function find(id: string): CatalogueEntry {
  return catalogue.find((one) => one.id === id)!;
}

const ask = (id: string, ...args: unknown[]): unknown => cellAnswer(() => find(id).call(...args));

/** What a cell shows for a formula of ours. */
function shown(formula: string): unknown {
  const { id, args } = parseCall(formula);
  return ask(id, ...args);
}

/** The rows of a spill below its header. */
const below = (spill: unknown): Grid => (spill as Grid).slice(1);

/** What the sheet's own functions make of a spill. */
const choose = (grid: Grid, ...columns: number[]): Grid => grid.map((row) => columns.map((column) => row[column - 1]));
const sort = (grid: Grid, column = 1): Grid => [...grid].sort((a, b) => (String(a[column - 1]) < String(b[column - 1]) ? -1 : 1));
const drop = (grid: Grid, rows = 1): Grid => grid.slice(rows);

describe("a first row is a header only if every filled cell of it is a known name and there are two or more", () => {
  test.each<[string, unknown]>([
    // Was dropped as a header: a need may be called Network.
    ['=BAY.CARVE("10.0.0.0/16",{"Network",40;"Data",20})', [["Network", 40, "10.0.0.0/26", "10.0.0.1", "10.0.0.62"], ["Data", 20, "10.0.0.64/27", "10.0.0.65", "10.0.0.94"]]],
    // Both ports shared one network then.
    ['=BAY.PORTPLAN({"Array","A",2},{"Network","10.1.0.0/24","none";"Other","10.2.0.0/24","none"})',
      [["Array", "A", "0", "Network", "10.1.0.1", "255.255.255.0", "none"], ["Array", "A", "1", "Other", "10.2.0.1", "255.255.255.0", "none"]]],
    ['=BAY.ASSIGN("10.0.0.0/24",{"a"},{"Name","10.0.0.5";"a","10.0.0.9"})', [["a", "10.0.0.9"]]],
    ['=BAY.PLACE({"a";"b"},{"Rack",1;"Room",1})', [["a", "Rack"], ["b", "Room"]]],
    ['=BAY.RACKFIT(42,{"Item",4,60;"Switch",1,5,40})', [["Item", 1, 4], ["Switch", 40, 40]]],
  ])("%s loses no row", (formula, rows) => {
    expect(below(shown(formula))).toEqual(rows);
  });

  test("a node may be called From: one name is no header", () => {
    expect(shown('=BAY.PATHS({"From","sw1";"sw1","array"},"from","array")')).toBe(1);
  });

  test.each<[string, string]>([
    ['=BAY.ASSIGN("10.0.0.0/24",{"Hostname";"ctl-a"})', '#VALUE! names row 1 "Hostname" heads a column. Leave the header out of the range.'],
    ['=BAY.ASSIGN("10.0.0.0/24",{"ctl-a";"name";"ctl-b"})', '#VALUE! names row 2 "name" heads a column. Leave the header out of the range.'],
    ['=BAY.PLACE({"Host";"h1";"h2"},{"R1";"R2"})', '#VALUE! members row 1 "Host" heads a column. Leave the header out of the range.'],
    ['=BAY.PLACE({"h1";"h2"},{"Rack";"R1";"R2"})', '#VALUE! domains row 1 "Rack" heads a column. Leave the header out of the range.'],
  ])("%s: in one column of names a known name is refused", (formula, sentence) => {
    expect(shown(formula)).toBe(sentence);
  });

  test.each<[string, unknown]>([
    ['=BAY.MERGE({"Prefix";"10.20.0.0/24";"";"10.20.1.0/24"})', [["10.20.0.0/23"]]],
    ['=BAY.MIXED("none",{"Drive size";4;"4 TB"})', 8],
    ['=BAY.DEMAND(10,0.2,{"Years";0;2})', [["Demand TB"], [10], [14.4]]],
    ['=BAY.DEMAND(10,0.2,{"Fill","Year";0.5,0;0.7,2})', [["Demand TB"], [10], [14.4]]],
  ])("%s: where the name could be no value, it is a header in one column too", (formula, answer) => {
    expect(shown(formula)).toEqual(answer);
  });
});

describe("with a header, columns are found by their names", () => {
  test.each<[string, string]>([
    ['=BAY.CARVE("10.0.0.0/16",{"Hosts","Kept prefix","Need";40,"","a";20,"10.0.9.0/24","b"})', '=BAY.CARVE("10.0.0.0/16",{"a",40,"";"b",20,"10.0.9.0/24"})'],
    ['=BAY.FEEDLOAD({"Feed A","Watts","Feed B","Device";"L",900,"R","x"},{"Feed","Site","Source","Volts","Phases","Breaker A";"L","here","grid",230,1,16;"R","here","grid",230,1,16})',
      '=BAY.FEEDLOAD({"x",900,"L","R"},{"L",230,16;"R",230,16})'],
    // Hostname and Rack got addresses before.
    ['=BAY.ASSIGN("10.0.0.0/24",{"Hostname","Rack";"a","R1";"b","R1"})', '=BAY.ASSIGN("10.0.0.0/24",{"a";"b"})'],
    ['=BAY.CARVE("10.0.0.0/16",{"Network","VLAN","Gateway","Hosts";"a",7,"none",40})', '=BAY.CARVE("10.0.0.0/16",{"a",40})'],
    ['=BAY.FEEDLOAD({"Array","W","Supply 1","Supply 2";"x",900,"L","R"},{"L",230,16;"R",230,16})', '=BAY.FEEDLOAD({"x",900,"L","R"},{"L",230,16;"R",230,16})'],
    ['=BAY.AVAILABILITY({"Unavailability","To","From";0.1,"b","a"},"a","b")', '=BAY.AVAILABILITY({"a","b",0.1},"a","b")'],
    ['=BAY.POOLROOM({"Used TB","Array","Usable TB";25,"A1",40;20,"A2",40},"A1")', '=BAY.POOLROOM({"A1",40,25;"A2",40,20},"A1")'],
    ['=BAY.RACKFIT(10,{"kg","Units","Item";60,4,"a"},{"Item","Bottom unit","Top unit";"b",1,2})', '=BAY.RACKFIT(10,{"a",4,60},{1,2})'],
    ['=BAY.PORTPLAN({"Ports","Array","Controllers";"0-1","x","A/B"},{"Network","VLAN","Prefix","Gateway";"n",7,"10.1.0.0/24","10.1.0.1"})', '=BAY.PORTPLAN({"x",2,2},{"n","10.1.0.0/24","10.1.0.1"})'],
  ])("%s answers as by position", (named, positioned) => {
    expect(shown(named)).toEqual(shown(positioned));
    expect(shown(named)).toEqual(expect.not.stringMatching(/^#/));
  });

  test.each<[string, string]>([
    ['=BAY.CARVE("10.0.0.0/16",{"Need","Prefix";"a","10.0.1.0/24"})', "#VALUE! needs has no column Hosts. Add it, or leave out the header row."],
    ['=BAY.CARVE("10.0.0.0/16",{"Need","Name","Hosts";"a","b",3})', '#VALUE! needs has two columns for name: "Need" and "Name". Leave one of them out.'],
    ['=BAY.CARVE("10.0.0.0/16",{"Need","Hosts","Remark";"a",3,"x"})', '#VALUE! needs row 1 looks like a header, but its column "Remark" is not known. Leave out that column, or the header row.'],
    ['=BAY.GAPS("10.0.0.0/16",{"Need","Hosts";"a",3})', "#VALUE! taken has no column Address. Add it, or leave out the header row."],
    ['=BAY.CARVE("10.0.0.0/16",{"Need","Hosts";"a","many"})', '#VALUE! needs row 2 hosts is the text "many". Write a whole number from 1 to 4294967296, such as 60.'],
    ['=BAY.MERGE({"10.0.0.0/24","10.0.1.0/24";"10.0.2.0/24","10.0.3.0/33"})',
      '#VALUE! prefixes row 2 column 2 "10.0.3.0/33" has no length from 0 to 32 after the address. Write it like 10.20.0.0/24.'],
    ['=BAY.FEEDLOAD({"x",900,"A"},{"Volts","Feed","Breaker A","Power factor";230,"A",16,2})', "#VALUE! feeds row 2 power factor is 2. Write a number above 0 and at most 1, such as 0.95."],
    ['=BAY.ASSIGN("10.0.0.0/24",{"ctl-a","10.0.0.5";"ctl-b","10.0.0.6"})',
      "#VALUE! names has several columns that are not all of names. Give the column of names alone, or with a header such as Name on top."],
  ])("%s says which column it is about", (formula, sentence) => {
    expect(shown(formula)).toBe(sentence);
  });

  test("rows count from the first of the range, empty ones too", () => {
    expect(ask("CARVE", "10.0.0.0/16", [["", ""], ["Need", "Hosts"], ["", null], ["a", 3], ["b", -3]])).toBe("#VALUE! needs row 5 hosts is -3. Write a whole number from 1 to 4294967296, such as 60.");
  });
});

describe("the titles of OUTAGE's domains are free", () => {
  const members = '"d1","R1";"d2","R1";"d3","R2";"d4","R2"';
  const asked = /^#VALUE! placement row 1 may be a header or a member\. Put a header row on top, with Member as its first title\.$/;

  test("the first title must be known, the others may be anything", () => {
    expect(below(shown(`=BAY.OUTAGE("RAID 10",{"Drive","Cabinet";${members}})`))[0]).toEqual(["Cabinet", "R1", 2, 0, false]);
  });

  test("without a header the first row is a member where some value of it stands below too", () => {
    expect(below(shown(`=BAY.OUTAGE("RAID 10",{${members}})`))[0]).toEqual(["Column 2", "R1", 2, 0, false]);
    expect(below(shown('=BAY.OUTAGE("3 copies",{"d1","A+B";"d2","B";"d3","C"})'))[0]).toEqual(["Column 2", "B", 1, 1, true]);
  });

  test.each([
    // The header was a fifth member before, and the pair survived.
    `=BAY.OUTAGE("RAID 10",{"Slot","Cabinet";${members}})`,
    '=BAY.OUTAGE("mirror",{"A1","R1";"A2","R2"})',
    // The first member was lost as a header before, for its cell Server.
    '=BAY.OUTAGE("mirror",{"Server","R1";"d2","R1"})',
  ])("%s is asked about", (formula) => {
    expect(shown(formula)).toMatch(asked);
  });

  test("a number is no title", () => {
    expect(below(shown('=BAY.OUTAGE("mirror",{"Array",7;"A2",8})'))[0]).toEqual(["Column 2", "7", 1, 0, true]);
  });

  test("a header among the members is known if all of it is, refused if only its first title is", () => {
    const placed = '"m0","R0";"m1","R1";';
    expect(shown(`=BAY.OUTAGE("3 copies",{${placed}"Member","Rack";"m2","R2"})`)).toEqual(shown(`=BAY.OUTAGE("3 copies",{"Member","Rack";${placed}"m2","R2"})`));
    expect(shown(`=BAY.OUTAGE("3 copies",{${placed}"Member","Cage";"m2","R2"})`)).toBe(
      '#VALUE! placement row 3 "Member" looks like a header among the members. Put it in the first row, or leave it out.');
    expect(shown(`=BAY.OUTAGE("4 copies",{${placed}"Server","R1";"m2","R0"})`)).toEqual(expect.not.stringMatching(/^#/));
  });
});

describe("every table we spill is a valid argument of the functions behind it", () => {
  const carve = shown('=BAY.CARVE("10.0.0.0/16",{"Management",40;"Data 1",120;"Data 2",100})') as Grid;
  const assign = shown('=BAY.ASSIGN("10.0.0.0/24",{"ctl-b";"ctl-a";"ctl-c"},{"ctl-a","10.0.0.9"})') as Grid;
  const ports = shown('=BAY.PORTPLAN({"x","A/B","0-1";"a",2,2},{"n1","10.0.1.0/24","10.0.1.1";"n2","10.0.2.0/24","none"})') as Grid;
  const place = shown('=BAY.PLACE({"m0";"m1";"m2";"m3"},{"R0";"R1"})') as Grid;
  const grouped = shown('=BAY.PLACE({"Member","Group";"m0","a";"m1","a";"m2","b";"m3","b"},{"R0";"R1"},"RAID 10")') as Grid;
  const schemes = shown("=BAY.SCHEMES(12,4)") as Grid;
  const repeats = shown('=BAY.REPEATS({"10.0.0.1";"10.0.0.1";"10.0.0.2";"10.0.0.2"})') as Grid;
  const rack = shown('=BAY.RACKFIT(10,{"a",2,60;"b",1,30})') as Grid;
  const expansion = shown('=BAY.EXPANSION(40,"30%",60,24,3)') as Grid;
  const arrays = [["x", 2, 2], ["a", 2, 2]];
  const networks = [["n1", "10.0.1.0/24", "10.0.1.1"], ["n2", "10.0.2.0/24", "none"]];
  const prefixes = choose(below(carve), 3);
  const addresses = choose(below(ports), 5);

  /** Spill, the call that it goes into, and the columns that must stay where columns are chosen; what is wanted is the same call with plain rows. */
  const pairs: readonly [string, Grid, readonly number[], (range: Grid) => unknown, unknown][] = [
    ["CARVE → PORTPLAN networks", carve, [1, 3], (range) => ask("PORTPLAN", arrays, range), ask("PORTPLAN", arrays, below(carve).map(([need, , prefix]) => [need, prefix, "none"]))],
    ["CARVE → CARVE needs, kept", carve, [1, 2, 3], (range) => ask("CARVE", "10.0.0.0/16", range, 0, "10.0.200.0/24"), carve],
    ["CARVE → CARVE taken", carve, [3], (range) => ask("CARVE", "10.0.0.0/16", [["new", 200]], 0, range), ask("CARVE", "10.0.0.0/16", [["new", 200]], 0, prefixes)],
    ["CARVE → NEXTSUBNET", carve, [3], (range) => ask("NEXTSUBNET", "10.0.0.0/16", 24, range), ask("NEXTSUBNET", "10.0.0.0/16", 24, prefixes)],
    ["CARVE → GAPS", carve, [3], (range) => ask("GAPS", "10.0.0.0/16", range), ask("GAPS", "10.0.0.0/16", prefixes)],
    ["CARVE → MERGE", carve, [3], (range) => ask("MERGE", range), ask("MERGE", prefixes)],
    ["CARVE → NEXTFREE", carve, [3], (range) => ask("NEXTFREE", "10.0.0.0/16", range, 2), ask("NEXTFREE", "10.0.0.0/16", prefixes, 2)],
    ["CARVE → ASSIGN reserved", carve, [3], (range) => ask("ASSIGN", "10.0.0.0/16", [["x"]], null, range), ask("ASSIGN", "10.0.0.0/16", [["x"]], null, prefixes)],
    ["ASSIGN → ASSIGN kept", assign, [1, 2], (range) => ask("ASSIGN", "10.0.0.0/24", [["ctl-z"], ["ctl-c"], ["ctl-a"]], range),
      ask("ASSIGN", "10.0.0.0/24", [["ctl-z"], ["ctl-c"], ["ctl-a"]], below(assign))],
    ["ASSIGN → NEXTFREE", assign, [2], (range) => ask("NEXTFREE", "10.0.0.0/24", range), ask("NEXTFREE", "10.0.0.0/24", choose(below(assign), 2))],
    ["PORTPLAN → PORTPLAN kept", ports, [1, 2, 3, 5], (range) => ask("PORTPLAN", arrays, networks, range), ports],
    ["PORTPLAN → GAPS", ports, [5], (range) => ask("GAPS", "10.0.0.0/16", range), ask("GAPS", "10.0.0.0/16", addresses)],
    ["PORTPLAN → ASSIGN reserved", ports, [5], (range) => ask("ASSIGN", "10.0.1.0/24", [["x"]], null, range),
      ask("ASSIGN", "10.0.1.0/24", [["x"]], null, addresses.filter(([one]) => String(one).startsWith("10.0.1.")))],
    ["SCHEMES → SCHEMES", schemes, [1], (range) => below(ask("SCHEMES", 24, 4, 0, range)).map(([name]) => name).sort(), below(schemes).map(([name]) => name).sort()],
    ["REPEATS → MERGE", repeats, [1], (range) => ask("MERGE", range), [["10.0.0.1/32"], ["10.0.0.2/32"]]],
    ["PORTPLAN → PATHCOUNT arrayPorts", ports, [1, 4, 5], (range) => ask("PATHCOUNT", [["h", "n1"], ["h", "n2"]], range),
      ask("PATHCOUNT", [["h", "n1"], ["h", "n2"]], choose(below(ports), 1, 4, 5))],
    ["PLACE with groups → OUTAGE", grouped, [1, 2, 3], (range) => ask("OUTAGE", "RAID 10", range),
      [["Domain", "Worst", "Lost", "Left", "Survives"], ["Domain", "R0", 2, 0, true], ["Pair", "Domain R0 and Domain R1", 4, 0, false]]],
    ["PLACE with groups → PLACE", grouped, [1, 3], (range) => ask("PLACE", range, [["R0"], ["R1"]], "RAID 10"), grouped],
    ["PLACE → OUTAGE", place, [1, 2], (range) => ask("OUTAGE", "mirror", range), ask("OUTAGE", "mirror", place)],
    ["RACKFIT → RACKFIT taken", rack, [2, 3], (range) => ask("RACKFIT", 10, [["c", 2, 50]], range), [["Item", "Bottom unit", "Top unit"], ["c", 4, 5]]],
  ];

  test.each(pairs)("%s: whole, and with rows sorted by any column", (_, spill, __, call, wanted) => {
    expect(call(spill)).toEqual(wanted);
    for (let column = 1; column <= spill[0]!.length; column += 1) expect(call(sort(spill, column))).toEqual(call([spill[0]!, ...sort(drop(spill), column)]));
  });

  test.each(pairs)("%s: with its columns chosen in another order", (_, spill, columns, call, wanted) => {
    expect(call(choose(spill, ...[...columns].reverse()))).toEqual(wanted);
  });

  test.each(pairs)("%s: the first rows alone are answered too", (_, spill, __, call) => {
    expect(call(spill.slice(0, 3))).toEqual(expect.not.stringMatching(/^#/));
  });

  test.each<[string, unknown, unknown]>([
    ["REPEATS finds in a spill of ASSIGN", ask("REPEATS", [...assign, ["ctl-d", "10.0.0.9"]]), [["Address", "Times", "Rows"], ["10.0.0.9", 2, "3, 5"]]],
    ["REPEATS finds in a spill of PORTPLAN", ask("REPEATS", [...ports, ports[3]!]), [["Address", "Times", "Rows"], [ports[3]![4], 2, "4, 10"]]],
    ["CLASHES compares the prefixes of CARVE", ask("CLASHES", carve), [["First", "Second", "First row", "Second row"]]],
    ["DEMAND answers the years of EXPANSION", ask("DEMAND", 40, "30%", expansion), [["Demand TB"], ...choose(below(expansion), 2)]],
    ["PLACE takes the members of PLACE", ask("PLACE", place, [["R0"], ["R1"]]), place],
    ["ASSIGN takes the names of ASSIGN", choose(ask("ASSIGN", "10.0.9.0/24", assign) as Grid, 1), choose(assign, 1)],
  ])("%s", (_, answer, wanted) => expect(answer).toEqual(wanted));

  test("without the header, position: where it is that of the spill, nothing changes", () => {
    expect(ask("CARVE", "10.0.0.0/16", drop(carve), 0, "10.0.200.0/24")).toEqual(carve);
    expect(ask("ASSIGN", "10.0.0.0/24", [["ctl-a"]], drop(assign))).toEqual([["Name", "Address"], ["ctl-a", "10.0.0.9"]]);
    expect(ask("PORTPLAN", arrays, networks, choose(drop(ports), 1, 2, 3, 5))).toEqual(ports);
    expect(ask("POOLROOM", drop([["Name", "Usable", "Used"], ["A1", 40, 10], ["A2", 40, 20]]), "A1")).toEqual(expect.not.stringMatching(/^#/));
    // Where it is not, the sentence names row and column.
    expect(ask("PORTPLAN", arrays, networks, drop(ports))).toBe('#VALUE! kept row 1 address "n1" is not an address. Write IPv4 such as 10.20.0.9, or IPv6 such as 2001:db8::9.');
  });

  test("two spills on top of each other are one table", () => {
    expect(ask("MERGE", [...carve, ...carve])).toEqual(ask("MERGE", carve));
    expect(ask("MERGE", [...carve, ...choose(carve, 3, 1, 2, 4, 5)])).toBe("#VALUE! prefixes row 5 is a second header with other columns. Give one table at a time.");
  });

  // The other pairs: a table that does not say what the argument is about gets a sentence, or is read for what it plainly says.
  const producers = catalogue.filter(({ answers }) => answers.columns !== null).map((one) => [one.id, shown(one.examples[0]!) as Grid] as const);
  const consumers = catalogue.flatMap((one) => one.parameters.flatMap(({ range, name }, place) => (range ? [[one, name, place] as const] : [])));

  test.each(producers)("a spill of %s is answered by every function, or refused by its argument in one sentence", (_, spill) => {
    for (const [one, name, place] of consumers) {
      const args = [...parseCall(one.examples.at(-1)!).args];
      args[place] = spill;
      const answer = ask(one.id, ...args);
      if (typeof answer !== "string") continue;
      expect([one.id, name, answer]).toEqual([one.id, name, expect.not.stringMatching(/inside the add-in/)]);
      expect(answer.replace(/^#\S+ /, "").length).toBeLessThanOrEqual(160);
    }
  });
});
