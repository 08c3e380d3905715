import { gather, portLabel, type PlanModel } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portBeyondArray: Rule = {
  name: "port-beyond-array",
  family: "intent",
  weight: "stop",
  meaning: "A port in Ports, or in Model ports, is one that the array, or the model, has by its Controllers and Ports.",
  check: (model) => [...ofArrays(model), ...ofModels(model)],
};

function ofArrays(model: PlanModel): Remark[] {
  return gather(model.ports.all(), ({ row, array, socket }): Remark[] => {
    const sockets = array === null ? null : model.ports.socketsOf(array);
    if (sockets === null || row.port === "" || sockets.some((one) => one.socket === socket)) return [];
    return [remarkAt(model, "ports", row, "port", cutSentence(`${row.array} has no port ${portLabel(row)} by its Controllers and Ports. Write one that it has, or mend those.`))];
  });
}

function ofModels(model: PlanModel): Remark[] {
  return gather(model.rows("modelPorts"), (row): Remark[] => {
    const own = model.find("models", row.model);
    const isThere = own === null ? null : model.ports.hasPort(own, row);
    if (isThere !== false) return [];
    return [remarkAt(model, "modelPorts", row, "port", cutSentence(`${row.model} has no port ${portLabel(row)} by its Controllers and Ports in Models. Write one that it has, or mend those.`))];
  });
}
