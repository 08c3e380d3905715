import { count, date, formula, named, scheme, share, size, text } from "../column";
import { table } from "../table";
import { unlessBlank } from "../unless-blank";
import { chassis, control } from "./models";

/** The scheme that is laid over the arrays of the pool. */
const across = "INDEX([Pools.Across arrays],MATCH([Pool],[Pools.Pool],0))";

/** What it brings to hosts of what that scheme leaves of all arrays of the pool, which may differ. */
const partOfPool = `[Usable]*BAY.MIXED(${across},FILTER([Arrays.Usable],[Arrays.Pool]=[Pool]))/SUMIF([Arrays.Pool],[Pool],[Arrays.Usable])`;

/** What hosts can store on an array: as is said where a scheme is laid over its pool, else all of it. */
const toHosts = (underScheme: string): string => `=IF([Usable]="","",IF([Pool]="",[Usable],IF(OR(${across}="",LOWER(${across})="none"),[Usable],${underScheme})))`;

export const arrays = table("Arrays", "One row an array. Ids are written once and never reused: names may change, records stay.", {
  id: text("Id", "Written by set-up; never changed."),
  array: text("Array", "Name of the array.", named),
  site: text("Site", "Where it goes.", { from: "sites" }),
  model: text("Model", "Model, as the tables Models and Prompts name it."),
  serial: text("Serial", "Serial number of the chassis."),
  firmware: text("Firmware", "Firmware of its controllers, as prepared or as built."),
  rack: text("Rack", "Rack it goes into.", { from: "racks" }),
  bottomUnit: count("Bottom unit", "Rack unit lowest down that it fills."),
  ...chassis,
  feedA: text("Feed A", "Feed of its first supply.", { from: "feeds" }),
  feedB: text("Feed B", "Feed of its second supply.", { from: "feeds" }),
  ...control,
  drives: count("Drives", "Drives fitted, spares included. An array of several sets leaves this, their size, scheme and spares to Drive sets."),
  driveSize: size("Drive size", "Marketed size of a drive, such as 4 TB."),
  scheme: scheme("Scheme", "Redundancy scheme, such as RAID 6 8+2.", {
    suggestions: ["none", "RAID 1", "RAID 10", "RAID 5", "RAID 6", "RAID 60 8+2", "triple parity", "8+2", "3 copies"],
  }),
  spares: count("Spares", "Hot spares among the drives."),
  reserve: share("Reserve", "Share of the capacity kept free, such as 10%."),
  cluster: text("Cluster", "Cluster it belongs to.", { from: "clusters" }),
  clusterOrder: count("Cluster order", "1 for the array that creates a new cluster, then 2, 3 ..."),
  pool: text("Pool", "Pool its capacity goes to.", { from: "pools" }),
  used: size("Used", "Space in use, or expected to be.", { zero: true }),
  warrantyUntil: date("Warranty until", "Last day of the warranty."),
  usable: formula("Usable", "Usable TB, computed in the sheet; blank where Drive sets says what it has, which shows it set by set.", {
    formula: '=IF([Scheme]="","",BAY.USABLE([Scheme],[Drives],[Drive size],[Spares],[Reserve]))',
  }),
  toHosts: formula("To hosts", "TB of it that hosts can store: its part of what the scheme across the arrays of its pool leaves; blank where Usable is for one of them.", {
    formula: toHosts(unlessBlank("[Arrays.Usable]", "([Arrays.Pool]=[Pool])", partOfPool)),
    formerly: [toHosts(partOfPool)],
    since: 2,
  }),
});
