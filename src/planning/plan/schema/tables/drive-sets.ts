import { count, formula, named, scheme, size, text } from "../column";
import { furtherTable } from "../table";
import { arrays } from "./arrays";

export const driveSets = furtherTable("Drive sets", "One row a set of drives, for arrays that have several; then these rows count, and the same columns of the array stay empty.", {
  array: text("Array", "Array it is in.", { required: true, from: "arrays" }),
  set: text("Set", "Name of the set at its array, such as fast.", named),
  drives: count("Drives", "Drives of the set, spares included."),
  driveSize: size("Drive size", arrays.columns.driveSize.meaning),
  scheme: scheme("Scheme", arrays.columns.scheme.meaning, { suggestions: arrays.columns.scheme.suggestions }),
  spares: count("Spares", "Hot spares among the drives of the set."),
  purpose: text("Purpose", "What it is for."),
  pool: text("Pool", "Pool its capacity goes to; that of the array when empty.", { from: "pools" }),
  usable: formula("Usable", "Usable TB, with the reserve of the array kept free. The array shows none of its own then.", {
    formula: '=IF([Scheme]="","",BAY.USABLE([Scheme],[Drives],[Drive size],[Spares],IFERROR(INDEX([Arrays.Reserve],MATCH([Array],[Arrays.Array],0)),0)))',
  }),
});
