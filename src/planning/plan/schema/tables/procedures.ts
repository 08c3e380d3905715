import { choice, named, text } from "../column";
import { forEachWords } from "../for-each";
import { table } from "../table";

/** How the tab shows the steps of a section. */
const sectionLooks = ["list", "grid"] as const;

export const procedures = table("Procedures", "Sections of each procedure, in order. Built-in ones stand here to be changed.", {
  procedure: text("Procedure", "Name of the procedure.", named),
  section: text("Section", "Name of the section.", named),
  forEach: choice("For each", "What the section is repeated for.", forEachWords),
  when: text("When", "Empty, or field = a|b, field <> a|b, field > 2, field < 2, joined by and."),
  shownAs: choice("Shown as", "Empty or list: a row a step. grid: a row a subject with up to four steps side by side.", sectionLooks, { since: 2 }),
  visit: text("Visit", "Visit in which it is done; empty: that of the section above. With several, each has its heading on the tab.", { since: 3 }),
  edition: text("Edition", "Edition of a built-in procedure, such as 2; yours to write in one of your own.", { since: 5 }),
});
