import { named, text } from "../column";
import { table } from "../table";

export const sites = table("Sites", "One row a site. Contacts are roles with a way to reach them, not private data.", {
  site: text("Site", "Name of the site.", named),
  room: text("Room", "Room the racks stand in."),
  contact: text("Contact", "Role to ask for, and where."),
  timeServers: text("Time servers", "NTP servers the arrays use."),
  nameServers: text("Name servers", "DNS servers the arrays use."),
  alertsTo: text("Alerts to", "Where alerts are sent."),
  access: text("Access and lift", "How to get in and how to bring a rack array up.", { width: 50 }),
  customer: text("Customer", "Whose site it is; with several customers each has routing tables of its own, so that two may use one range.", { since: 5 }),
});
