import { named, number, text } from "../column";
import { table } from "../table";

export const prompts = table("Prompts", "What a first-time set-up asks, model by model, in the order of the maker's guide. Replace the sample rows by your own.", {
  model: text("Model", "Model, as the Arrays table names it.", named),
  order: number("Order", "Order in which it is asked."),
  prompt: text("Prompt", "What the console asks.", named),
  value: text("Value", "What is answered; {{Column}} is filled from the plan."),
});
