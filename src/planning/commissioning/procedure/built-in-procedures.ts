import type { TableRow } from "../../plan/schema";
import { addDriveShelf } from "./add-drive-shelf";
import { addToLiveCluster } from "./add-to-live-cluster";
import { changeFirmware } from "./change-firmware";
import { procedureRows, stepRows, type ProcedureDraft } from "./draft";
import { installRackArray } from "./install-rack-array";
import { receiving } from "./receiving";
import { replaceController } from "./replace-controller";
import { replaceDrive } from "./replace-drive";
import { siteSurvey } from "./site-survey";
import { takeOutOfService } from "./take-out-of-service";
import { workshopPreparation } from "./workshop-preparation";
import { yearlyCheck } from "./yearly-check";

const drafts: readonly ProcedureDraft[] = [
  siteSurvey,
  receiving,
  workshopPreparation,
  installRackArray,
  addToLiveCluster,
  addDriveShelf,
  replaceController,
  replaceDrive,
  changeFirmware,
  takeOutOfService,
  yearlyCheck,
];

/** The rows with which set-up fills the Procedures and Steps tables; Prompts differ by maker and are the user's own. */
export const builtInProcedures: { readonly procedures: readonly TableRow<"procedures">[]; readonly steps: readonly TableRow<"steps">[] } = {
  procedures: drafts.flatMap(procedureRows),
  steps: drafts.flatMap(stepRows),
};
