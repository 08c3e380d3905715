import { costs, date, named, number, text } from "../column";
import { furtherTable } from "../table";

export const prices = furtherTable("Price list", "One row a part with what it costs you, out of the firm's own list. Quote takes its costs from here, by part or by item.", {
  part: text("Part", "Part number or name, as Part or Item of Quote has it.", { ...named, width: 24 }),
  description: text("Description", "What it is.", { width: 40 }),
  cost: number("Cost", "What one costs you.", { within: costs }),
  currency: text("Currency", "Currency of the cost, such as EUR."),
  list: text("List", "Price list that the cost came from.", { width: 24 }),
  day: date("Day", "Day of that price list."),
});
