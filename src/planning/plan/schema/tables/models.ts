import { choice, count, measure, named, number, text } from "../column";
import { furtherTable } from "../table";

/** What a chassis is like: the columns that arrays take from their model where they leave them empty. */
export const chassis = {
  units: count("Units", "Rack units it fills."),
  depthMm: measure("Depth mm", "Depth with cables and bend radius.", "mm"),
  weightKg: measure("Weight kg", "Weight fully fitted.", "kg"),
  liftKg: measure("Lift kg", "Weight as lifted: drives out, all else in.", "kg"),
  liftBy: choice("Lift by", "Who or what lifts it.", ["one", "two", "lift table"]),
  watts: measure("Watts", "Power the whole array draws.", "W"),
  plug: text("Plug", "Plug of its cords, such as C14."),
};

/** What its controllers are like: arrays take these from their model too. */
export const control = {
  controllers: text("Controllers", "How many (2) or their names (A,B)."),
  ports: text("Ports", "How many a controller (4) or their names (0,1,2,3)."),
  portSharing: choice(
    "Port sharing",
    "controller: every controller port has its own address; array: one address a port number, which moves to the working controller.",
    ["controller", "array"],
  ),
};

export const models = furtherTable("Models", "One row a model, from its maker's guide. What an array leaves empty is taken from its model; what stands on the array wins.", {
  model: text("Model", "Model, as the Arrays table names it.", named),
  guide: text("Guide", "The maker's guide that this row was taken from, and its edition."),
  bays: count("Bays", "Drive bays of the chassis, without those of its shelves."),
  ...chassis,
  supplies: count("Supplies", "Power supplies it has.", { within: { min: 1, max: 100, whole: true, example: 2 } }),
  supplySwitch: choice("Supply switch", "Whether a supply has a switch of its own.", ["yes", "no"]),
  ...control,
  paths: choice("Paths", "all equal: every path carries the same; preferred: those of one controller come first; redirected: the array names the paths.", [
    "all equal", "preferred", "redirected",
  ]),
  numbersPer: choice("Numbers per", "host: each host has volume numbers of its own; target: a number is the same for all hosts.", ["host", "target"]),
  consoleLine: text("Console line", "Settings of its serial console, such as 115200 8N1."),
  warmUpHours: number("Warm-up hours", "Hours it stands unpacked in its room before power comes on.", { within: { min: 0, max: 1000, example: 4 } }),
  startUpMinutes: number("Start-up minutes", "Minutes from power on until it answers.", { within: { min: 0, max: 10_000, example: 15 } }),
  promptsBeforePorts: choice("Prompts before ports", "Whether its first set-up is asked for on the console before the ports have addresses.", ["yes", "no"]),
  joinAddsCapacity: choice("Join adds capacity", "Whether joining a cluster gives its capacity to the hosts at once.", ["yes", "no"]),
});
