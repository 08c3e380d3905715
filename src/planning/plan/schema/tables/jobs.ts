import { choice, count, date, named, text } from "../column";
import { table } from "../table";

export const jobs = table("Jobs", "One row a piece of work at a site; each has its own commissioning tab.", {
  id: text("Id", "Written by set-up; never changed."),
  job: text("Job", "Name of the job and of its tab.", named),
  site: text("Site", "Where it is done.", { from: "sites" }),
  procedure: text("Procedure", "Procedure that is followed.", { from: "procedures" }),
  arrays: text("Arrays", "Arrays it is about, with commas between; all at the site when empty.", { from: "arrays", several: true }),
  subject: text("Subject", "What else it is about: the shelf, the controller."),
  plannedDate: date("Planned date", "When it is planned."),
  state: choice("State", "Where it stands.", ["planned", "open", "closed"]),
  drivesTravel: choice("Drives travel", "boxed (so when empty): packed by themselves, fitted on site; in: in the chassis, which is lifted as heavy as it is.", ["boxed", "in"], { since: 5 }),
  longestStandstill: count("Longest standstill s", "Longest time in seconds for which hosts may wait while a part is pulled, as the site agreed.", { since: 5 }),
  crew: text("Crew", "Who does it: a name for people who travel together.", { since: 5 }),
  after: text("After", "Jobs that have to be closed before it begins, with commas between.", { from: "jobs", several: true, since: 5 }),
  minutesUsed: count("Minutes used", "Minutes that the crew wrote down for it, beside those that its steps plan.", { since: 5 }),
});
