// Capacity: how much of the raw space is usable, and when it will be full.
import {
  breakDown,
  commonSchemes,
  compareSchemes,
  demandTerabytes,
  driveBytes,
  driveKinds,
  drivesFor,
  drivesInChassis,
  effectiveBytes,
  enduranceYears,
  layoutDrives,
  layoutRows,
  mostDrives,
  planExpansion,
  roomWithout,
  schemeEfficiency,
  sectorSizes,
  survivedFailures,
  usableBytes,
  usableOfMixed,
  yearsUntilFull,
} from "../planning/capacity";
import { bytesIn, formatSize, partOf, tebibyte, terabyte, type Bytes } from "../planning/quantity";
import { number, numbers, table, text } from "./support/answers";
import { driveSizeCells, poolMembers, schemeCells, years } from "./support/capacity-tables";
import { choice } from "./support/choice";
import { name } from "./support/names";
import { count, number as anyNumber, orNone } from "./support/numbers";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { driveCountOrNone, reduction, sizeOrZero } from "./support/quantities";
import { worksheetFunction } from "./support/worksheet-function";
import { writeRating } from "./support/write-rating";

export const usable = worksheetFunction({
  id: "USABLE",
  description: "Computes the usable capacity of equal drives after spares, redundancy and the reserved share.",
  parameters: [given.scheme('"RAID 6", "RAID 60 8+2", "3 copies" or "8+2"'), given.drives(12), given.driveSize, given.spares(), given.reserve, given.unit],
  answers: number("Usable capacity in the unit asked for."),
  examples: ['=BAY.USABLE("RAID 6",12,4)', '=BAY.USABLE("8+2",24,"3.84 TB",1,"10%","TiB")'],
  mistakes: ['=BAY.USABLE("RAID 60",12,4)', "=BAY.USABLE(8+2,24,4)", '=BAY.USABLE("RAID 6",12,"4 Tb")', '=BAY.USABLE("RAID 6",12,4,0,20)'],
  compute: (scheme, drives, size, spares, reserve, unit) => bytesIn(usableBytes(layoutDrives(scheme, drives, spares), size, reserve), unit),
});

export const breakdown = worksheetFunction({
  id: "BREAKDOWN",
  description: "Shows where the raw capacity goes, line by line; the lines add up to Raw.",
  parameters: [given.scheme('"RAID 6"'), given.drives(12), given.driveSize, given.spares(), given.reserve],
  answers: table(["Line", "TB", "TiB", "Share"], "Table of Line, TB, TiB and Share of raw."),
  examples: ['=BAY.BREAKDOWN("RAID 60 8+2",24,8,2,"5%")'],
  mistakes: ['=BAY.BREAKDOWN("RAID 5",12.5,4)'],
  compute: (scheme, drives, size, spares, reserve) => {
    const parts = breakDown(layoutDrives(scheme, drives, spares), size, reserve);
    const line = (called: string, part: Bytes) => [called, bytesIn(part, terabyte), bytesIn(part, tebibyte), partOf(part, parts.raw)];
    return [
      line("Raw", parts.raw),
      line("Spare drives", parts.spares),
      line("Outside a group", parts.outside),
      line("Redundancy", parts.redundancy),
      line("Reserve", parts.reserve),
      line("Usable", parts.usable),
    ];
  },
});

export const schemes = worksheetFunction({
  id: "SCHEMES",
  description: "Compares redundancy schemes on the same drives.",
  parameters: [
    given.drives(24),
    given.driveSize,
    given.spares(),
    optional("schemes", "Range of schemes to compare, such as A2:A6. Left out: the common ones that fit.", schemeCells),
  ],
  answers: table(
    ["Scheme", "Usable TB", "Usable TiB", "Efficiency", "Always survives", "At best survives", "Write cost"],
    "Table of Scheme, Usable TB, Usable TiB, Efficiency, Always survives, At best survives and Write cost.",
  ),
  examples: ["=BAY.SCHEMES(12,4)", '=BAY.SCHEMES(24,"3.84 TB",1,{"RAID 10";"RAID 60 8+2";"8+3"})'],
  mistakes: ['=BAY.SCHEMES(12,"3,84 TB")'],
  compute: (drives, size, spares, compared) =>
    compareSchemes(compared ?? commonSchemes(drives, spares), drives, size, spares).map((one) => [
      one.scheme.name,
      bytesIn(one.usable, terabyte),
      bytesIn(one.usable, tebibyte),
      one.efficiency,
      one.always,
      one.best,
      one.writeCost,
    ]),
});

const rowNames = { group: "", spread: "Spread", spares: "Spares", outside: "Outside a group" };

export const layout = worksheetFunction({
  id: "LAYOUT",
  description: "Shows which drives form which group, then the spares, then the drives that fill no group.",
  parameters: [given.scheme('"RAID 60 8+2"'), given.drives(24), given.spares(2)],
  answers: table(
    ["Group", "First drive", "Last drive", "Data", "Redundancy"],
    "Table of Group, First drive, Last drive, Data and Redundancy; in a Spread scheme the last two are drives of one stripe.",
  ),
  examples: ['=BAY.LAYOUT("RAID 60 4+2",15,2)'],
  mistakes: ['=BAY.LAYOUT("RAID 6 8+1",24)'],
  compute: (scheme, drives, spares) =>
    layoutRows(layoutDrives(scheme, drives, spares)).map((row) => [row.group ?? rowNames[row.kind], row.firstDrive, row.lastDrive, row.data ?? "", row.redundancy ?? ""]),
});

export const mixed = worksheetFunction({
  id: "MIXED",
  description: "Computes the usable capacity of drives of unequal sizes; the largest are the spares.",
  parameters: [
    given.scheme('"RAID 6"'),
    parameter("driveSizes", 'Range with the size of every drive, such as A2:A13: TB as numbers, or text such as "960 GB".', driveSizeCells),
    given.spares(),
    given.reserve,
    given.unit,
  ],
  answers: number("Usable capacity in the unit asked for."),
  examples: ['=BAY.MIXED("RAID 6",{4;4;4;8;8;8},1)', '=BAY.MIXED("2+1",{2;4;4;8})'],
  mistakes: ['=BAY.MIXED("RAID 6",{4;4;"four";8})'],
  compute: (scheme, sizes, spares, reserve, unit) => bytesIn(usableOfMixed(scheme, sizes, spares, reserve), unit),
});

export const drivesfor = worksheetFunction({
  id: "DRIVESFOR",
  description: "Finds the fewest drives, spares included, whose usable capacity reaches a target; or so many whole chassis of them.",
  parameters: [
    given.scheme('"RAID 6"'),
    given.size("target", "Usable capacity wanted", 100, "100 TiB"),
    given.driveSize,
    given.spares(),
    given.reserve,
    given.fill("the usable space"),
    optional("bays", "Bays of a chassis, such as {example}: each is filled, and holds its own spares and whole groups. Left out: any number of drives.", driveCountOrNone(24)),
  ],
  answers: number("Number of drives."),
  examples: ['=BAY.DRIVESFOR("RAID 6",100,8,1,0,"80%")', '=BAY.DRIVESFOR("RAID 60 8+2",300,8,2,0,"80%",24)'],
  mistakes: ['=BAY.DRIVESFOR("RAID 6",10000000,4)', '=BAY.DRIVESFOR("RAID 60 8+2",300,8,2,0,"80%",8)'],
  compute: (scheme, target, driveSize, spares, reserve, fill, bays) => {
    const need = { target, driveSize, spares, reserve, fill };
    return bays === null ? drivesFor(scheme, need) : drivesInChassis(scheme, need, bays);
  },
});

export const efficiency = worksheetFunction({
  id: "EFFICIENCY",
  description: "Computes the usable share of raw capacity, drives that fill no group counted.",
  parameters: [given.scheme('"8+2"'), optional("drives", 'Number of drives, such as {example}; schemes of one group, such as "RAID 6", need it.', driveCountOrNone(12))],
  answers: number("Share from 0 to 1."),
  examples: ['=BAY.EFFICIENCY("RAID 60 8+2")', '=BAY.EFFICIENCY("RAID 6",12)'],
  mistakes: ['=BAY.EFFICIENCY("RAID 6")'],
  compute: schemeEfficiency,
});

export const survives = worksheetFunction({
  id: "SURVIVES",
  description: "Counts the drive failures that are survived at once.",
  parameters: [
    given.scheme('"RAID 60 8+2"'),
    given.members(20),
    optional("failureCase", '"always" whichever drives fail, or "best" where they fall best. Left out: {default}.', choice("always", "best")),
  ],
  answers: number("Number of drives."),
  examples: ['=BAY.SURVIVES("RAID 60 4+2",12)', '=BAY.SURVIVES("RAID 60 4+2",12,"best")'],
  mistakes: ['=BAY.SURVIVES("RAID 6",12,"mostly")'],
  compute: (scheme, drives, failureCase) => survivedFailures(layoutDrives(scheme, drives), failureCase),
});

export const convertsize = worksheetFunction({
  id: "CONVERTSIZE",
  description: "Converts a size to a unit.",
  parameters: [given.size("size", "Size", 4, "3.5 TiB"), given.unit],
  answers: number("Size in the unit asked for."),
  examples: ['=BAY.CONVERTSIZE("12 TiB")', '=BAY.CONVERTSIZE("4 TB","GiB")'],
  mistakes: ['=BAY.CONVERTSIZE("12 parsecs")'],
  compute: bytesIn,
});

export const sizetext = worksheetFunction({
  id: "SIZETEXT",
  description: "Writes a size as text with its unit, which every argument that is a size reads; SUM leaves it out.",
  parameters: [
    parameter("size", 'Size: TB as a number, such as 40, or text such as "40 TiB".', sizeOrZero),
    given.unit,
    optional("digits", "Decimals, such as {example}, rounded down. Left out: the fewest that read back to the same bytes.", orNone(count({ min: 0, max: 20, example: 2 }))),
  ],
  answers: text("Size with its unit."),
  examples: ['=BAY.SIZETEXT(40,"TiB",2)', '=BAY.SIZETEXT("15362991415296 B")'],
  mistakes: ['=BAY.SIZETEXT("40 Tb")', '=BAY.SIZETEXT(40,2)'],
  compute: formatSize,
});

export const drivebytes = worksheetFunction({
  id: "DRIVEBYTES",
  description: "Computes the exact bytes of a drive from the size it is sold as, by the published block counts.",
  parameters: [
    given.size("size", "Size it is sold as, whole GB", 4, "500 GB"),
    optional("sector", "Bytes of a block, 512 or 4096. Left out: {default}.", choice(...sectorSizes)),
    optional("kind", '"disk", or "flash" for solid-state drives, which differ above 8 TB. Left out: {default}.', choice(...driveKinds)),
  ],
  answers: number("Bytes."),
  examples: ['=BAY.DRIVEBYTES("8 TB")', '=BAY.DRIVEBYTES("16 TB",4096)', '=BAY.DRIVEBYTES("15.36 TB",512,"flash")'],
  mistakes: ['=BAY.DRIVEBYTES("8 TB",1024)', '=BAY.DRIVEBYTES("15.36 TB",512,"ssd")'],
  compute: (size, sector, kind) => Number(driveBytes(size, sector, kind)),
});

export const endurance = worksheetFunction({
  id: "ENDURANCE",
  description: "Computes the years until solid-state drives have written what they are rated for.",
  parameters: [
    given.driveSize,
    parameter("driveWritesADay", 'Rating: writes of the whole drive a day, such as {example}, or terabytes written as text, such as "7000 TB".', writeRating),
    given.size("dailyWrites", "Written to the array a day", 20, "500 GB"),
    optional("drives", "Number of drives that share the writes, such as {example}. Left out: {default}.", count({ min: 1, max: mostDrives, default: 1, example: 12 })),
    optional("writeFactor", "Bytes that the array writes for each byte it is given, such as {example} for pairs. Left out: {default}.", anyNumber({ above: 0, max: 1000, default: 1, example: 2 })),
    optional("ratedYears", "Years over which drive writes a day are rated, such as {example}. Left out: {default}.", anyNumber({ above: 0, max: 100, default: 5, example: 3 })),
  ],
  answers: number("Years."),
  examples: ['=BAY.ENDURANCE("7.68 TB",1,"20 TB",12,2)', '=BAY.ENDURANCE(3.84,"7000 TB","2 TB")'],
  mistakes: ['=BAY.ENDURANCE("7.68 TB",7000,"20 TB")', '=BAY.ENDURANCE("7.68 TB",1,0)'],
  compute: (size, rating, dailyWrites, drives, writeFactor, ratedYears) => enduranceYears(size, rating(ratedYears), { dailyWrites, drives, writeFactor }),
});

export const effective = worksheetFunction({
  id: "EFFECTIVE",
  description: "Computes the logical capacity after data reduction.",
  parameters: [
    given.size("usable", "Usable capacity", 40, "40 TiB"),
    parameter("reduction", 'Data reduction, 1 or more, such as 3 or "3:1".', reduction),
    given.fill("the usable space"),
  ],
  answers: number("Logical capacity in TB."),
  examples: ['=BAY.EFFECTIVE(100,"3:1","80%")'],
  mistakes: ["=BAY.EFFECTIVE(100,0.5)"],
  compute: (usable, reduced, fill) => bytesIn(effectiveBytes(usable, reduced, fill), terabyte),
});

export const demand = worksheetFunction({
  id: "DEMAND",
  description: "Computes what will be used after years of compound growth.",
  parameters: [given.used, given.yearlyGrowth, parameter("years", "Years from today, such as {example}, or a range of them.", years)],
  answers: numbers("Demand in TB; for a range of years, one answer for each."),
  examples: ['=BAY.DEMAND(40,"20%",3)', '=BAY.DEMAND(40,"20%",{1;2;3})'],
  mistakes: ["=BAY.DEMAND(40,-1,3)"],
  compute: (used, yearlyGrowth, asked) => asked.answer("Demand TB", (after) => demandTerabytes({ used, yearlyGrowth }, after).toNumber()),
});

export const runway = worksheetFunction({
  id: "RUNWAY",
  description: "Computes the years until a growing demand fills a capacity; 0 when it is full already.",
  parameters: [given.used, given.yearlyGrowth, given.size("capacity", "Usable capacity", 80, "80 TiB"), given.fill("the capacity")],
  answers: number("Years."),
  examples: ['=BAY.RUNWAY(40,"20%",100,"80%")'],
  mistakes: ["=BAY.RUNWAY(40,0,100)"],
  compute: (used, yearlyGrowth, capacity, fill) => yearsUntilFull({ used, yearlyGrowth }, capacity, fill),
});

export const expansion = worksheetFunction({
  id: "EXPANSION",
  description: "Plans year by year how many steps of capacity to buy so that demand stays within the fill share.",
  parameters: [
    given.used,
    given.yearlyGrowth,
    given.size("capacity", "Usable capacity today", 40, "40 TiB"),
    given.size("step", "Usable capacity bought at a time", 10, "10 TiB"),
    parameter("years", "Years to plan, such as {example}.", count({ min: 1, max: 100, example: 5 })),
    given.fill("the capacity"),
  ],
  answers: table(
    ["Year", "Demand TB", "Capacity TB", "Steps bought", "Fill"],
    "Table of Year, Demand TB, Capacity TB, Steps bought and Fill, each at the end of the year.",
  ),
  examples: ['=BAY.EXPANSION(40,"30%",60,24,3,"80%")'],
  mistakes: ['=BAY.EXPANSION(40,"30%",60,0,3)'],
  compute: (used, yearlyGrowth, capacity, step, asked, fill) =>
    planExpansion({ used, yearlyGrowth }, capacity, step, asked, fill).map((year) => [
      year.year,
      year.demandTerabytes,
      year.capacityTerabytes,
      year.stepsBought,
      year.fill,
    ]),
});

export const poolroom = worksheetFunction({
  id: "POOLROOM",
  description: "Tells whether an array can be taken out of its pool: what must move, and what room the others have.",
  parameters: [
    parameter("members", "Range of array name, usable and used, such as A2:C5; sizes in TB or text with a unit.", poolMembers),
    parameter("remove", 'Name of the array to take out, such as "North 1".', name),
    given.fill("each array"),
  ],
  answers: table(["Can be removed", "Must move TB", "Free room TB", "Fill afterwards"], "Table of Can be removed, Must move TB, Free room TB and Fill afterwards."),
  examples: ['=BAY.POOLROOM({"A1",40,25;"A2",40,20;"A3",40,10},"A3","80%")'],
  mistakes: ['=BAY.POOLROOM({"A1",40,25;"A2",40,20},"A9")'],
  compute: (members, remove, fill) => {
    const room = roomWithout(members, remove, fill);
    return [[room.removable, bytesIn(room.moving, terabyte), bytesIn(room.room, terabyte), room.fillAfterwards]];
  },
});
